package org.gritwright.examples.telemetry;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import javax.measure.quantity.Mass;
import org.apache.spark.sql.Row;
import org.apache.spark.sql.RowFactory;
import org.apache.spark.sql.types.DataTypes;
import org.apache.spark.sql.types.StructType;
import org.gritwright.core.telemetry.AppliedTotal;
import org.gritwright.core.telemetry.RateShares;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.jspecify.annotations.Nullable;

/**
 * The season of each truck and of the fleet, added up on the driver: whole numbers, so that the order doesn't matter, with errors that
 * trucks share kept by what they are of.
 *
 * @param lines a line a truck, and the fleet's last
 */
record Summary(List<Line> lines) {
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
            .add("above_band_percent", DataTypes.DoubleType, true);

    private static final double COVERAGE = 0.95;
    private static final double PERCENT = 100;

    /**
     * A truck or the fleet.
     *
     * @param leftHopper milligrams, on the road or not
     * @param unattributed pulses that nobody can say what they laid of, as far as readings tell
     * @param laneMiles treated
     */
    record Line(
            String name,
            long rows,
            long badRows,
            int trips,
            AppliedTotal laid,
            long leftHopper,
            long unattributed,
            TruckTotals.Way way,
            double laneMiles,
            RateShares shares) {
        Line plus(Line other) {
            return new Line(
                    name,
                    rows + other.rows,
                    badRows + other.badRows,
                    trips + other.trips,
                    laid.plus(other.laid),
                    leftHopper + other.leftHopper,
                    unattributed + other.unattributed,
                    way.plus(other.way),
                    laneMiles + other.laneMiles,
                    shares.plus(other.shares));
        }

        Line named(String other) {
            return new Line(other, rows, badRows, trips, laid, leftHopper, unattributed, way, laneMiles, shares);
        }

        Measured<Mass> pounds() {
            return laid.mass(SpreadingUnits.POUND);
        }

        double expandedPounds() {
            return Amounts.in(pounds().expandedUncertainty(COVERAGE).orElseThrow(), SpreadingUnits.POUND);
        }

        /** A share of the way of which it is known; nothing if it is known of none. */
        Optional<Double> percent(long millimeters) {
            long known = shares.below() + shares.within() + shares.above();
            return known == 0 ? Optional.empty() : Optional.of(PERCENT * millimeters / known);
        }

        Row row() {
            return RowFactory.create(
                    name,
                    rows,
                    badRows,
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
                    orNull(shares.within()),
                    orNull(shares.below()),
                    orNull(shares.above()));
        }

        private @Nullable Double orNull(long millimeters) {
            return percent(millimeters).orElse(null);
        }
    }

    static Summary of(Map<String, TruckTotals> trucks, Map<String, TruckSetup> setups) {
        List<Line> lines = new ArrayList<>();
        for (TruckTotals truck : trucks.values()) {
            lines.add(line(truck, Objects.requireNonNull(setups.get(truck.truck()), "setup")));
        }
        lines.add(lines.stream().reduce(Line::plus).orElseThrow().named(FLEET));
        return new Summary(List.copyOf(lines));
    }

    private static Line line(TruckTotals truck, TruckSetup setup) {
        return new Line(
                truck.truck(),
                truck.rows(),
                truck.badRows(),
                truck.trips(),
                setup.shaft().total(truck.sums()),
                truck.sums().left(),
                truck.sums().unattributed(),
                truck.way(),
                UsUnits.miles(truck.way().spreading()) * setup.target().lanes(),
                truck.shares());
    }

    List<Line> trucks() {
        return lines.subList(0, lines.size() - 1);
    }

    Line fleet() {
        return lines.get(lines.size() - 1);
    }
}
