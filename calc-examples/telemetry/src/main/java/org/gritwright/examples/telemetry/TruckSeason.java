package org.gritwright.examples.telemetry;

import java.io.Serializable;
import java.util.Collections;
import java.util.List;
import java.util.Objects;
import java.util.SortedMap;
import java.util.TreeMap;
import org.gritwright.core.telemetry.PieceSums;
import org.gritwright.core.telemetry.RateShares;
import org.gritwright.core.telemetry.RowSums;

/** What one truck's rows come to. */
final class TruckSeason implements Serializable {
    private static final long serialVersionUID = 1L;

    private final String truck;
    private final Target target;
    private final RowSums sums;
    private final Liquid liquid;
    private final PieceSums hours;

    @SuppressWarnings("serial") // lists that are
    private final List<Trip> trips;

    @SuppressWarnings("serial")
    private final SortedMap<String, RoadTotals> roads;

    @SuppressWarnings("serial")
    private final List<BadRow> badRows;

    private final long rows;

    TruckSeason(
            String truck,
            Target target,
            long rows,
            RowSums sums,
            Liquid liquid,
            PieceSums hours,
            List<Trip> trips,
            SortedMap<String, RoadTotals> roads,
            List<BadRow> badRows) {
        this.truck = truck;
        this.target = target;
        this.rows = rows;
        this.sums = sums;
        this.liquid = liquid;
        this.hours = hours;
        this.trips = List.copyOf(trips);
        this.roads = new TreeMap<>(roads);
        this.badRows = List.copyOf(badRows);
    }

    String truck() {
        return truck;
    }

    Target target() {
        return target;
    }

    /** Pieces of an hour each, numbered from 1970-01-01T00:00Z on. */
    PieceSums hours() {
        return hours;
    }

    List<Trip> trips() {
        return trips;
    }

    /** By their names; by an empty one where none is named. */
    SortedMap<String, RoadTotals> roads() {
        return Collections.unmodifiableSortedMap(roads);
    }

    List<BadRow> badRows() {
        return badRows;
    }

    /** What the driver gets of it: a few hundred bytes, however long the season was. */
    TruckTotals totals() {
        RateShares shares = new RateShares(0, 0, 0, 0);
        Way way = Way.NONE;
        for (Trip trip : trips) {
            shares = shares.plus(target.shares(trip.wanted()));
            way = way.plus(trip.way());
        }
        SortedMap<String, Long> reasons = new TreeMap<>();
        badRows.stream().filter(BadRow::isUncounted).forEach(row -> reasons.merge(row.reason(), 1L, Long::sum));
        RoadTotals nowhere = roads.get("");
        return new TruckTotals(
                truck,
                rows,
                reasons,
                trips.size(),
                sums,
                shares,
                way,
                liquid,
                nowhere == null ? 0 : nowhere.laid().amount());
    }

    @Override
    public boolean equals(Object other) {
        return this == other
                || (other instanceof TruckSeason that
                        && truck.equals(that.truck)
                        && target.equals(that.target)
                        && rows == that.rows
                        && sums.equals(that.sums)
                        && liquid.equals(that.liquid)
                        && roads.equals(that.roads)
                        && hours.equals(that.hours)
                        && trips.equals(that.trips)
                        && badRows.equals(that.badRows));
    }

    @Override
    public int hashCode() {
        return Objects.hash(truck, rows, trips.size());
    }

    @Override
    public String toString() {
        return truck + ": " + rows + " rows, " + trips.size() + " trips, " + sums;
    }
}
