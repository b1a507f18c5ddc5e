package org.gritwright.core;

import static org.gritwright.units.SpreadingUnits.CENTIMETER;
import static org.gritwright.units.SpreadingUnits.CUBIC_INCH_PER_REVOLUTION;
import static org.gritwright.units.SpreadingUnits.CUBIC_METER_PER_SECOND;
import static org.gritwright.units.SpreadingUnits.MILLILITER_PER_REVOLUTION;
import static org.gritwright.units.SpreadingUnits.PERCENT;
import static org.gritwright.units.SpreadingUnits.PULSE;
import static org.gritwright.units.SpreadingUnits.PULSE_PER_US_GALLON;
import static org.gritwright.units.SpreadingUnits.REVOLUTION_PER_MINUTE;
import static org.gritwright.units.SpreadingUnits.SECOND;
import static org.gritwright.units.SpreadingUnits.US_GALLON_PER_MINUTE;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.function.DoubleSupplier;
import org.gritwright.core.PublishedCheck.Source;
import org.gritwright.core.PublishedCheck.Tolerance;
import org.gritwright.core.curve.SlipCurve;
import org.gritwright.core.curve.SlipSamples;
import org.gritwright.core.metering.DisplacementPump;
import org.gritwright.core.metering.FlowMeter;
import org.gritwright.core.metering.GearPump;
import org.gritwright.core.metering.KFactorMeter;
import org.gritwright.core.metering.Pump;
import org.gritwright.core.metering.TableFlowMeter;
import org.gritwright.core.metering.TablePump;
import org.gritwright.units.Amounts;

/** Published and derived numbers of pumps and flow meters. */
final class PumpChecks extends CheckList {
    /** A calibration in five points: gal/min, pulses per gallon. */
    private static final double[][] FIVE_POINTS = {
        {2.00, 3101.80}, {3.32, 3103.95}, {5.49, 3118.64}, {9.06, 3086.75}, {15.00, 3078.59}
    };

    private PumpChecks() {}

    static List<PublishedCheck> all() {
        PumpChecks checks = new PumpChecks();
        checks.gears();
        checks.displacements();
        checks.worn();
        checks.leak();
        checks.kFactors();
        checks.fivePoints();
        return checks.rows();
    }

    private void add(String id, String what, Source source, String stated, String unit, DoubleSupplier computed) {
        add(id, what, source, stated, unit, Tolerance.LAST_DIGIT, computed);
    }

    private void gears() {
        add(
                "gear-pump-sheet",
                "gear pump: gears 1.614 cm wide, 5.039 cm over the tips, 4.206 cm between centers",
                Source.GEAR_PUMPS,
                "19.52",
                "cm³/rev",
                () -> gears(1.614, 5.039, 4.206));
        add(
                "gear-pump",
                "gear pump: gears 2 cm wide, 4.2 cm over the tips, 3.5 cm between centers",
                Source.GEOMETRY,
                "16.9332",
                "cm³/rev",
                () -> gears(2, 4.2, 3.5));
    }

    private static double gears(double width, double tips, double centers) {
        Pump pump = Pump.of(
                new GearPump(),
                Map.of(
                        "gearWidth", Amounts.of(width, CENTIMETER),
                        "tipDiameter", Amounts.of(tips, CENTIMETER),
                        "centerDistance", Amounts.of(centers, CENTIMETER)));
        return Amounts.in(pump.displacement(), MILLILITER_PER_REVOLUTION);
    }

    private void displacements() {
        String[][] stated = {{"2.51", "1200", "13.04"}, {"3.75", "1500", "24.35"}};
        for (String[] row : stated) {
            add(
                    "displacement-pump-" + row[1],
                    "pump type of " + row[0] + " in³/rev at " + row[1] + " rev/min",
                    Source.FLUID_POWER,
                    row[2],
                    "gal/min",
                    () -> gallonsPerMinute(Double.parseDouble(row[0]), 0, Double.parseDouble(row[1])));
        }
        add(
                "displacement-pump-slip",
                "pump type of 1.5 in³/rev at 1800 rev/min, 10 % slip",
                Source.ARITHMETIC,
                "10.51948",
                "gal/min",
                () -> gallonsPerMinute(1.5, 10, 1800));
    }

    private static double gallonsPerMinute(double cubicInches, double slip, double turns) {
        Pump pump = Pump.of(
                new DisplacementPump(),
                Map.of(
                        "displacement", Amounts.of(cubicInches, CUBIC_INCH_PER_REVOLUTION),
                        "slip", Amounts.of(slip, PERCENT)));
        return Amounts.in(pump.flow(Amounts.of(turns, REVOLUTION_PER_MINUTE)), US_GALLON_PER_MINUTE);
    }

    /** A pump that gives 11.69 gal/min at 1500 rev/min when new and 10.0 when worn, by the table type. */
    private void worn() {
        add(
                "pump-table-new",
                "pump by table, 11.69 gal/min at 1500 rev/min",
                Source.ARITHMETIC,
                "1.80026",
                "in³/rev",
                () -> Amounts.in(table(11.69).displacement(), CUBIC_INCH_PER_REVOLUTION));
        add(
                "pump-table-worn",
                "the same, 10.0 gal/min when worn, over that when new",
                Source.ARITHMETIC,
                "85.543",
                "%",
                () -> 100
                        * table(10.0).cubicMetersPerRevolution(25)
                        / table(11.69).cubicMetersPerRevolution());
    }

    private static Pump table(double gallonsPerMinute) {
        return Pump.of(
                new TablePump(),
                Map.of(
                        "speeds",
                                List.of(
                                        Amounts.of(750, REVOLUTION_PER_MINUTE),
                                        Amounts.of(1500, REVOLUTION_PER_MINUTE)),
                        "flows",
                                List.of(
                                        Amounts.of(gallonsPerMinute / 2, US_GALLON_PER_MINUTE),
                                        Amounts.of(gallonsPerMinute, US_GALLON_PER_MINUTE))));
    }

    /** v = a − b/n from two speeds: b = (0.045 − 0.03) ÷ (1/100 − 1/400), a = 0.045 + b/400. */
    private void leak() {
        SlipCurve curve = SlipCurve.chosenByTest(SlipSamples.pairs(SlipSamples::leaking, 100, 400));
        String what = "pump caught with 0.03 gal/rev at 100 rev/min, 0.045 at 400: ";
        add(
                "pump-leak",
                what + "leak flow",
                Source.ARITHMETIC,
                "2.000",
                "gal/min",
                () -> Amounts.in(curve.leak().orElseThrow().value(), US_GALLON_PER_MINUTE));
        add(
                "pump-leak-between",
                what + "volume at 250 rev/min",
                Source.ARITHMETIC,
                "0.042",
                "gal/rev",
                () -> SlipSamples.gallonsPerRevolution(curve, 250));
        add(
                "pump-leak-constant",
                "the same with as many turns at either speed: calibration error of one constant value at 100 rev/min",
                Source.ARITHMETIC,
                "25.0",
                "%",
                () -> Amounts.in(curve.errorOfConstant(SlipSamples.rpm(100)), PERCENT));
    }

    private void kFactors() {
        add(
                "k-factor-1200",
                "1000 pulses a second with K 1200 pulse/gal",
                Source.FLOW_METERS,
                "50",
                "gal/min",
                () -> flow(1200, 1000));
        // 42 gallons a barrel, 1440 minutes a day.
        add(
                "k-factor-1143",
                "1000 pulses a second with K 1143 pulse/gal, in barrels a day",
                Source.FLOW_METERS,
                "1800",
                "bbl/d",
                () -> flow(1143, 1000) * 1440 / 42);
        add(
                "k-factor-hertz",
                "60 × Hz ÷ K: 90 pulses in 6 s with K 450 pulse/gal",
                Source.ARITHMETIC,
                "2",
                "gal/min",
                () -> flow(450, 15));
    }

    private static double flow(double kFactor, double hertz) {
        FlowMeter meter = FlowMeter.of(new KFactorMeter(), Map.of("kFactor", Amounts.of(kFactor, PULSE_PER_US_GALLON)));
        return Amounts.in(meter.flow(Amounts.of(hertz, PULSE), Amounts.of(1, SECOND)), US_GALLON_PER_MINUTE);
    }

    private void fivePoints() {
        FlowMeter meter = FlowMeter.of(
                new TableFlowMeter(),
                Map.of(
                        "meterFlows",
                                Arrays.stream(FIVE_POINTS)
                                        .map(row -> Amounts.of(row[0], US_GALLON_PER_MINUTE))
                                        .toList(),
                        "kFactors",
                                Arrays.stream(FIVE_POINTS)
                                        .map(row -> Amounts.of(row[1], PULSE_PER_US_GALLON))
                                        .toList()));
        add(
                "k-table-hertz",
                "flow meter calibrated in five points: pulses a second at 9.06 gal/min, K 3086.75 pulse/gal",
                Source.FLOW_METERS,
                "466.1",
                "pulse/s",
                () -> meter.pulsesPerSecond(Amounts.of(9.06, US_GALLON_PER_MINUTE)));
        String[][] byNominal = {
            {"103.6", "2.01"}, {"171.7", "3.32"}, {"285.2", "5.52"}, {"466.1", "9.03"}, {"769.7", "14.90"}
        };
        for (String[] row : byNominal) {
            add(
                    "k-table-nominal-" + row[0],
                    "the same: flow by its nominal K-factor at " + row[0] + " pulses a second",
                    Source.FLOW_METERS,
                    row[1],
                    "gal/min",
                    () -> Amounts.in(
                            Amounts.of(
                                    Double.parseDouble(row[0]) * meter.cubicMetersPerPulse(), CUBIC_METER_PER_SECOND),
                            US_GALLON_PER_MINUTE));
        }
    }
}
