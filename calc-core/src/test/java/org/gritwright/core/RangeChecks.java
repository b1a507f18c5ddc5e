package org.gritwright.core;

import java.util.Arrays;
import java.util.List;
import java.util.function.DoubleSupplier;
import javax.measure.Quantity;
import org.gritwright.core.PublishedCheck.Source;
import org.gritwright.core.PublishedCheck.Tolerance;
import org.gritwright.core.range.Command;
import org.gritwright.core.range.CommandScale;
import org.gritwright.core.range.Direction;
import org.gritwright.core.range.DriveConditions;
import org.gritwright.core.range.DriveMeasurement;
import org.gritwright.core.range.DrivePoint;
import org.gritwright.core.range.DriveResponse;
import org.gritwright.core.range.DriveRun;
import org.gritwright.core.range.OilSupply;
import org.gritwright.core.range.Stretch;
import org.gritwright.core.statistics.MonotoneCurve;
import org.gritwright.core.statistics.MonotoneRegression;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.quantity.FlowRate;
import org.gritwright.units.quantity.RotationalSpeed;
import org.gritwright.units.quantity.VolumePerRevolution;

/** Published and derived numbers of what a drive can do: fits that never fall, curves between points, a valve. */
final class RangeChecks extends CheckList {
    private RangeChecks() {}

    static List<PublishedCheck> all() {
        RangeChecks checks = new RangeChecks();
        checks.monotoneRegression();
        checks.monotoneCubic();
        checks.valve();
        checks.oil();
        return checks.rows();
    }

    private void add(String id, String what, Source source, String stated, DoubleSupplier computed) {
        add(id, what, source, stated, "", Tolerance.LAST_DIGIT, computed);
    }

    private static List<MonotoneRegression.Row> fit(double[] y, double[] weights) {
        double[] x = new double[y.length];
        Arrays.setAll(x, i -> i);
        return MonotoneRegression.fit(x, y, weights).rows();
    }

    private static double[] ones(int n) {
        double[] ones = new double[n];
        Arrays.fill(ones, 1);
        return ones;
    }

    private void monotoneRegression() {
        double[] paper = {8, 4, 8, 2, 2, 0, 8};
        String what = "monotone regression of (8, 4, 8, 2, 2, 0, 8): ";
        add(
                "monotone-1-first",
                what + "first to sixth value",
                Source.BUSING,
                "4",
                () -> fit(paper, ones(7)).get(5).value());
        add(
                "monotone-1-last",
                what + "last value",
                Source.BUSING,
                "8",
                () -> fit(paper, ones(7)).get(6).value());
        add(
                "monotone-1-weight",
                what + "weight of the first block",
                Source.BUSING,
                "6",
                () -> fit(paper, ones(7)).get(0).blockWeight());
        double[] program = {0, 6, 8, 3, 5, 2, 1, 7, 9, 4};
        what = "monotone regression of (0, 6, 8, 3, 5, 2, 1, 7, 9, 4): ";
        add(
                "monotone-2-second",
                what + "second to seventh value",
                Source.BUSING,
                "4.1666667",
                () -> fit(program, ones(10)).get(6).value());
        add(
                "monotone-2-last",
                what + "last three values",
                Source.BUSING,
                "6.6666667",
                () -> fit(program, ones(10)).get(7).value());
        double[] y = {3, 2, 1, 10, 9, 8, 20, 10};
        double[] weights = {1, 2, 5, 0.5, 0.5, 0.5, 1, 3};
        what = "weighted monotone regression of (3, 2, 1, 10, 9, 8, 20, 10): ";
        add(
                "monotone-3-first",
                what + "first three values",
                Source.ARITHMETIC,
                "1.5",
                () -> fit(y, weights).get(0).value());
        add(
                "monotone-3-middle",
                what + "next three values",
                Source.ARITHMETIC,
                "9",
                () -> fit(y, weights).get(4).value());
        add(
                "monotone-3-last",
                what + "last two values",
                Source.ARITHMETIC,
                "12.5",
                () -> fit(y, weights).get(7).value());
        add(
                "monotone-3-weight",
                what + "weight of the middle block",
                Source.ARITHMETIC,
                "1.5",
                () -> fit(y, weights).get(4).blockWeight());
    }

    private void monotoneCubic() {
        double[] x = {7.99, 8.09, 8.19, 8.7, 9.2, 10, 12, 15, 20};
        double[] y = {0, 2.7643e-5, 0.04375, 0.16918, 0.46943, 0.94374, 0.99864, 0.99992, 0.99999};
        String[][] printed = {
            {"9.191", "0.4640"},
            {"10.392", "0.9645"},
            {"11.593", "0.9965"},
            {"12.794", "0.9992"},
            {"13.995", "0.9998"},
            {"15.196", "0.9999"},
            {"16.397", "1.0000"},
            {"17.598", "1.0000"},
            {"18.799", "1.0000"}
        };
        for (String[] row : printed) {
            add(
                    "cubic-" + row[0],
                    "monotone cubic through the data at " + row[0],
                    Source.FRITSCH_CARLSON,
                    row[1],
                    () -> MonotoneCurve.cubic(x, y).at(Double.parseDouble(row[0])));
        }
    }

    /** Here the shaft speed stands for the flow, as a motor of a fixed displacement has it. */
    private void valve() {
        DrivePoint closed = DrivePoint.of(Command.percent(0), Amounts.of(0, SpreadingUnits.REVOLUTION_PER_MINUTE));
        DrivePoint less = DrivePoint.of(Command.percent(40), Amounts.of(5, SpreadingUnits.REVOLUTION_PER_MINUTE));
        DrivePoint more = DrivePoint.of(Command.percent(80), Amounts.of(50, SpreadingUnits.REVOLUTION_PER_MINUTE));
        DriveMeasurement test = new DriveMeasurement(
                CommandScale.percent(1),
                Amounts.of(0.1, SpreadingUnits.REVOLUTION_PER_MINUTE),
                DriveConditions.NOT_SAID,
                List.of(DriveRun.of(Direction.RISING, closed, less, more)));
        DoubleSupplier gain = () -> {
            Stretch stretch = DriveResponse.of(test)
                    .curve(Direction.RISING)
                    .orElseThrow()
                    .gain()
                    .get(0);
            return Amounts.in(stretch.perUnit(), SpreadingUnits.REVOLUTION_PER_MINUTE);
        };
        String what = "valve with overlap, command 40 % for 5 % of the flow and 80 % for 50 %: ";
        add("valve-gain", what + "gain per percent", Source.ARITHMETIC, "1.125", gain);
        add(
                "valve-start",
                what + "command at which the line starts",
                Source.ARITHMETIC,
                "35.556",
                () -> 40 - 5 / gain.getAsDouble());
    }

    private void oil() {
        add(
                "motor-flow",
                "motor of 2.51 in³ at 1200 rev/min: flow in gal/min",
                Source.FLUID_POWER,
                "13.04",
                () -> Amounts.in(supply(2.51, 100, 1).flow(turns(1200)), SpreadingUnits.US_GALLON_PER_MINUTE));
        add(
                "pump-flow",
                "pump of 3.75 in³ at 1500 rev/min: flow in gal/min",
                Source.FLUID_POWER,
                "24.35",
                () -> Amounts.in(supply(3.75, 100, 1).flow(turns(1500)), SpreadingUnits.US_GALLON_PER_MINUTE));
        add(
                "motor-speed-1",
                "8 gal/min into a motor of 0.95 in³: rev/min",
                Source.FLUID_POWER,
                "1945",
                () -> motorSpeed(8, 0.95));
        add(
                "motor-speed-2",
                "6 gal/min into a motor of 0.75 in³: rev/min",
                Source.FLUID_POWER,
                "1848",
                () -> motorSpeed(6, 0.75));
        add(
                "pump-efficiency",
                "10.0 gal/min from a pump that gives 11.69 gal/min at 1500 rev/min if tight: volumetric efficiency in percent",
                Source.ARITHMETIC,
                "85.54",
                () -> Amounts.in(
                        OilSupply.volumetricEfficiency(displacement(11.69 * 231 / 1500), turns(1500), gallons(10)),
                        SpreadingUnits.PERCENT));
        add(
                "pump-flow-worn",
                "pump of 1.5 in³ at 1800 rev/min, volumetric efficiency 90 %: flow in gal/min",
                Source.ARITHMETIC,
                "10.51948",
                () -> Amounts.in(supply(1.5, 90, 1).flow(turns(1800)), SpreadingUnits.US_GALLON_PER_MINUTE));
    }

    private static double motorSpeed(double gallonsPerMinute, double cubicInches) {
        return Amounts.in(
                supply(1, 100, cubicInches).motorSpeed(gallons(gallonsPerMinute)),
                SpreadingUnits.REVOLUTION_PER_MINUTE);
    }

    private static OilSupply supply(double pump, double percent, double motor) {
        return new OilSupply(
                displacement(pump),
                Amounts.of(percent, SpreadingUnits.PERCENT),
                displacement(motor),
                Amounts.of(100, SpreadingUnits.PERCENT));
    }

    private static Quantity<VolumePerRevolution> displacement(double cubicInches) {
        return Amounts.of(cubicInches, SpreadingUnits.CUBIC_INCH_PER_REVOLUTION);
    }

    private static Quantity<RotationalSpeed> turns(double perMinute) {
        return Amounts.of(perMinute, SpreadingUnits.REVOLUTION_PER_MINUTE);
    }

    private static Quantity<FlowRate> gallons(double perMinute) {
        return Amounts.of(perMinute, SpreadingUnits.US_GALLON_PER_MINUTE);
    }
}
