package org.gritwright.examples.telemetry;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import org.apache.spark.sql.Row;
import org.apache.spark.sql.RowFactory;
import org.apache.spark.sql.types.DataTypes;
import org.apache.spark.sql.types.StructType;
import org.gritwright.core.telemetry.AppliedTotal;
import org.gritwright.core.telemetry.RateShares;

/**
 * The season of each truck, of the fleet, and of each road, added up in whole numbers, so that the order doesn't matter, with errors that
 * trucks share kept by what they are of.
 *
 * @param lines a line a truck, and the fleet's last
 * @param roads by their names; by an empty one where none is named
 * @param corrected what verifications found, and what became of it
 */
record Summary(List<Line> lines, SortedMap<String, RoadTotals> roads, List<Corrected> corrected) {
    static final String FLEET = "fleet";

    static final StructType SCHEMA = new StructType()
            .add("truck", DataTypes.StringType, false)
            .add("rows", DataTypes.LongType, false)
            .add("bad_rows", DataTypes.LongType, false)
            .add("trips", DataTypes.IntegerType, false)
            .add("laid_mg", DataTypes.LongType, false)
            .add("laid_lb", DataTypes.DoubleType, false)
            .add("laid_uncertainty_95_lb", DataTypes.DoubleType, false)
            .add("left_hopper_lb", DataTypes.DoubleType, false)
            .add("unattributed_pulse", DataTypes.LongType, false)
            .add("distance_spreading_mi", DataTypes.DoubleType, false)
            .add("distance_off_mi", DataTypes.DoubleType, false)
            .add("distance_unknown_mi", DataTypes.DoubleType, false)
            .add("treated_lane_mi", DataTypes.DoubleType, false)
            .add("within_band_percent", DataTypes.DoubleType, true)
            .add("below_band_percent", DataTypes.DoubleType, true)
            .add("above_band_percent", DataTypes.DoubleType, true)
            .add("laid_on_no_road_lb", DataTypes.DoubleType, false)
            .add("liquid_ul", DataTypes.LongType, true)
            .add("liquid_gal", DataTypes.DoubleType, true)
            .add("liquid_uncertainty_95_gal", DataTypes.DoubleType, true)
            .add("prewet_gal_per_ton", DataTypes.DoubleType, true)
            .add("prewet_stated_gal_per_ton", DataTypes.DoubleType, true);

    /**
     * A truck or the fleet.
     *
     * @param reasons why rows can't be counted, and how many
     * @param leftHopper milligrams, on the road or not
     * @param unattributed pulses that nobody can say what they laid of, as far as readings tell
     * @param laneMiles treated
     * @param nowhere milligrams laid where no road is named
     * @param liquid what wetted it
     * @param statedGallonsPerTon how much of that is asked for; NaN where nobody says, and of the fleet
     */
    record Line(
            String name,
            long rows,
            SortedMap<String, Long> reasons,
            int trips,
            AppliedTotal laid,
            long leftHopper,
            long unattributed,
            Way way,
            double laneMiles,
            RateShares shares,
            long nowhere,
            Liquid liquid,
            double statedGallonsPerTon) {
        /** As the fleet's, with no name of its own yet. */
        Line plus(Line other) {
            SortedMap<String, Long> all = new TreeMap<>(reasons);
            other.reasons.forEach((reason, many) -> all.merge(reason, many, Long::sum));
            return new Line(
                    FLEET,
                    rows + other.rows,
                    all,
                    trips + other.trips,
                    laid.plus(other.laid),
                    leftHopper + other.leftHopper,
                    unattributed + other.unattributed,
                    way.plus(other.way),
                    laneMiles + other.laneMiles,
                    shares.plus(other.shares),
                    nowhere + other.nowhere,
                    liquid.plus(other.liquid),
                    Double.NaN);
        }

        long badRows() {
            return reasons.values().stream().mapToLong(Long::longValue).sum();
        }

        double expandedPounds() {
            return UsUnits.expandedPounds(laid);
        }

        /** A share of the way of which it is known; nothing if it is known of none. */
        Optional<Double> percent(long millimeters) {
            return UsUnits.percent(shares, millimeters);
        }

        Row row() {
            AppliedTotal volume = liquid.laid();
            return RowFactory.create(
                    name,
                    rows,
                    badRows(),
                    trips,
                    laid.amount(),
                    UsUnits.pounds(laid.amount()),
                    expandedPounds(),
                    UsUnits.pounds(leftHopper),
                    unattributed,
                    UsUnits.miles(way.spreading()),
                    UsUnits.miles(way.off()),
                    UsUnits.miles(way.unknown()),
                    laneMiles,
                    percent(shares.within()).orElse(null),
                    percent(shares.below()).orElse(null),
                    percent(shares.above()).orElse(null),
                    UsUnits.pounds(nowhere),
                    liquid.isMetered() ? volume.amount() : null,
                    liquid.isMetered() ? UsUnits.gallons(volume.amount()) : null,
                    liquid.isMetered() ? UsUnits.expandedGallons(volume) : null,
                    UsUnits.gallonsPerTon(liquid.wetted()).orElse(null),
                    Double.isNaN(statedGallonsPerTon) ? null : statedGallonsPerTon);
        }
    }

    static Summary of(
            Map<String, TruckTotals> trucks,
            Map<String, TruckSetup> setups,
            SortedMap<String, RoadTotals> roads,
            List<Corrected> corrected) {
        List<Line> lines = new ArrayList<>();
        for (TruckTotals truck : trucks.values()) {
            lines.add(line(truck, Objects.requireNonNull(setups.get(truck.truck()), "setup")));
        }
        Line nothing = new Line(
                FLEET,
                0,
                new TreeMap<>(),
                0,
                new AppliedTotal(false, 0, Map.of(), BigInteger.ZERO),
                0,
                0,
                Way.NONE,
                0,
                new RateShares(0, 0, 0, 0),
                0,
                new Liquid(false, RoadTotals.NO_LIQUID, Wetting.Sums.NONE),
                Double.NaN);
        lines.add(lines.stream().reduce(nothing, Line::plus));
        return new Summary(List.copyOf(lines), roads, corrected);
    }

    private static Line line(TruckTotals truck, TruckSetup setup) {
        return new Line(
                truck.truck(),
                truck.rows(),
                truck.reasons(),
                truck.trips(),
                setup.shaft().total(truck.sums()),
                truck.sums().left(),
                truck.sums().unattributed(),
                truck.way(),
                UsUnits.miles(truck.way().spreading()) * setup.target().lanes(),
                truck.shares(),
                truck.nowhere(),
                truck.liquid(),
                setup.liquid().map(TruckSetup.Liquid::statedGallonsPerTon).orElse(Double.NaN));
    }

    List<Line> trucks() {
        return lines.subList(0, lines.size() - 1);
    }

    Line fleet() {
        return lines.get(lines.size() - 1);
    }
}
