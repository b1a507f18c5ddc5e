package org.gritwright.examples.telemetry;

import java.io.Serializable;
import java.util.List;
import java.util.Objects;
import org.gritwright.core.telemetry.PieceSums;
import org.gritwright.core.telemetry.RateShares;
import org.gritwright.core.telemetry.RowSums;

/** What one truck's rows come to. */
final class TruckSeason implements Serializable {
    private static final long serialVersionUID = 1L;

    private final String truck;
    private final Target target;
    private final RowSums sums;
    private final PieceSums hours;

    @SuppressWarnings("serial") // lists that are
    private final List<Trip> trips;

    @SuppressWarnings("serial")
    private final List<BadRow> badRows;

    private final long rows;

    TruckSeason(
            String truck,
            Target target,
            long rows,
            RowSums sums,
            PieceSums hours,
            List<Trip> trips,
            List<BadRow> badRows) {
        this.truck = truck;
        this.target = target;
        this.rows = rows;
        this.sums = sums;
        this.hours = hours;
        this.trips = List.copyOf(trips);
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

    List<BadRow> badRows() {
        return badRows;
    }

    /** What the driver gets of it: a few hundred bytes, however long the season was. */
    TruckTotals totals() {
        RateShares shares = new RateShares(0, 0, 0, 0);
        long off = 0;
        long unknown = 0;
        for (Trip trip : trips) {
            shares = shares.plus(target.shares(trip.wanted()));
            for (long piece : trip.all().pieces()) {
                unknown += trip.all().unknown(piece);
                off += trip.wanted().unknown(piece) - trip.all().unknown(piece);
            }
        }
        long spreading = 0;
        for (Trip trip : trips) {
            spreading += trip.wanted().pieces().stream()
                    .mapToLong(trip.wanted()::covered)
                    .sum();
        }
        return new TruckTotals(
                truck, rows, badRows.size(), trips.size(), sums, shares, new TruckTotals.Way(spreading, off, unknown));
    }

    @Override
    public boolean equals(Object other) {
        return this == other
                || (other instanceof TruckSeason that
                        && truck.equals(that.truck)
                        && target.equals(that.target)
                        && rows == that.rows
                        && sums.equals(that.sums)
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
