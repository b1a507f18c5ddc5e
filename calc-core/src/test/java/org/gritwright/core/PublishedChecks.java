package org.gritwright.core;

import static org.gritwright.core.Samples.AUGER;
import static org.gritwright.core.Samples.CHAIN;
import static org.gritwright.core.Samples.SENSOR;
import static org.gritwright.core.Samples.height;
import static org.gritwright.core.Samples.inches;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.function.DoubleSupplier;
import javax.measure.Quantity;
import javax.measure.Unit;
import javax.measure.quantity.Area;
import javax.measure.quantity.Length;
import javax.measure.quantity.Speed;
import org.gritwright.core.PublishedCheck.Source;
import org.gritwright.core.PublishedCheck.Tolerance;
import org.gritwright.core.calibration.CalibrationCatch;
import org.gritwright.core.curve.CurveModel;
import org.gritwright.core.curve.DischargeCurve;
import org.gritwright.core.metering.Auger;
import org.gritwright.core.metering.Belt;
import org.gritwright.core.metering.Conveyor;
import org.gritwright.core.metering.DragChain;
import org.gritwright.core.metering.FeedRoller;
import org.gritwright.core.metering.Gate;
import org.gritwright.core.metering.NoGate;
import org.gritwright.core.metering.RoundGate;
import org.gritwright.core.metering.SlidingGate;
import org.gritwright.core.metering.Spreader;
import org.gritwright.core.metering.TwinAuger;
import org.gritwright.core.plausibility.GrainFlow;
import org.gritwright.core.spi.Setting;
import org.gritwright.core.statistics.RatioEstimator;
import org.gritwright.core.statistics.StraightLine;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.quantity.ArealApplicationRate;
import org.gritwright.units.quantity.BulkDensity;
import org.gritwright.units.quantity.DischargePerRevolution;
import org.gritwright.units.quantity.DischargeRate;
import org.gritwright.units.quantity.LaneApplicationRate;
import org.gritwright.units.quantity.LaneWidth;
import org.gritwright.units.quantity.LiquidApplicationRate;
import org.gritwright.units.quantity.PrewetRate;
import org.gritwright.units.rate.LiquidRates;
import org.gritwright.units.rate.PrewetRates;
import org.gritwright.units.rate.Rates;

/** Every published or derived number that units and core are compared with, and its source. */
final class PublishedChecks extends CheckList {
    private static final Quantity<LaneWidth> TWELVE_FEET = Amounts.of(12, SpreadingUnits.FOOT_PER_LANE);
    private static final Quantity<LaneWidth> ELEVEN_FEET = Amounts.of(11, SpreadingUnits.FOOT_PER_LANE);
    private static final Quantity<LaneWidth> THREE_AND_A_HALF_METERS = Amounts.of(3.5, SpreadingUnits.METER_PER_LANE);
    private static final Quantity<LaneWidth> THREE_AND_THREE_QUARTER_METERS =
            Amounts.of(3.75, SpreadingUnits.METER_PER_LANE);
    private static final Quantity<LaneApplicationRate> HUNDRED_POUNDS =
            Amounts.of(100, SpreadingUnits.POUND_PER_LANE_MILE);
    private static final Quantity<PrewetRate> TEN_GALLONS = Amounts.of(10, SpreadingUnits.US_GALLON_PER_SHORT_TON);

    private PublishedChecks() {}

    static List<PublishedCheck> all() {
        PublishedChecks checks = new PublishedChecks();
        checks.granular();
        checks.units();
        checks.lanesAndWidths();
        checks.liquids();
        checks.prewet();
        checks.auger();
        checks.chain();
        checks.otherConveyors();
        checks.gates();
        checks.deadOpening();
        checks.grainFlow();
        checks.estimators();
        checks.lines();
        checks.addAll(MetrologyChecks.all());
        checks.addAll(UncertaintyChecks.all());
        checks.addAll(RangeChecks.all());
        checks.addAll(SpreadChecks.all());
        checks.addAll(PumpChecks.all());
        checks.addAll(BoomChecks.all());
        checks.addAll(BrineChecks.all());
        checks.addAll(ControlChecks.all());
        checks.addAll(BalanceChecks.all());
        return checks.rows();
    }

    private void granular() {
        add(
                "minnesota-rate",
                "200 lb/min at 20 mph, per mile",
                Source.MINNESOTA,
                "600",
                "lb/mi",
                Tolerance.EXACT,
                () -> in(
                        SpreadingUnits.POUND_PER_MILE,
                        Rates.rateFromDischarge(poundsPerMinute(200), milesPerHour(20))));
        for (String[] chart :
                new String[][] {{"20", "3", "3"}, {"35", "1.714286", "1.71"}, {"45", "1.333333", "1.33"}}) {
            // A discharge of 1 lb/min lays as many lb/mi as a mile takes minutes.
            DoubleSupplier minutes = () -> in(
                    SpreadingUnits.POUND_PER_MILE,
                    Rates.rateFromDischarge(poundsPerMinute(1), milesPerHour(Double.parseDouble(chart[0]))));
            String what = "minutes to drive a mile at " + chart[0] + " mph, 60 ÷ mph";
            add("mile-minutes-" + chart[0], what, Source.ARITHMETIC, chart[1], "min", Tolerance.LAST_DIGIT, minutes);
            if (!chart[1].equals(chart[2])) {
                add(
                        "mile-minutes-chart-" + chart[0],
                        what + ", as charts print it",
                        Source.CUSTOM,
                        chart[2],
                        "min",
                        Tolerance.CUT_OFF,
                        minutes);
            }
        }
        String wheel = "raised drive wheel: 20 lb in 43 turns of 9 ft, 8 ft swath";
        add(
                "florida-printed",
                wheel + ", by a rounded constant",
                Source.FLORIDA,
                "277",
                "lb/acre",
                Tolerance.ROUNDED_CONSTANT,
                PublishedChecks::floridaWheel);
        add(
                "florida-exact",
                wheel + ", exact",
                Source.ARITHMETIC,
                "281.40",
                "lb/acre",
                Tolerance.LAST_DIGIT,
                PublishedChecks::floridaWheel);
        add(
                "florida-gap",
                "the printed 277 lb/acre against the exact figure",
                Source.ARITHMETIC,
                "-1.56",
                "%",
                Tolerance.LAST_DIGIT,
                () -> (277 / floridaWheel() - 1) * 100);
    }

    private void units() {
        units(
                "unit-rate",
                "1 lb/mi",
                "0.281849231737",
                "kg/km",
                () -> Amounts.in(Amounts.of(1, SpreadingUnits.POUND_PER_MILE), SpreadingUnits.KILOGRAM_PER_KILOMETER));
        units(
                "unit-lane-rate",
                "1 lb/lane-mi",
                "0.281849231737",
                "kg/lane-km",
                () -> Amounts.in(
                        Amounts.of(1, SpreadingUnits.POUND_PER_LANE_MILE), SpreadingUnits.KILOGRAM_PER_LANE_KILOMETER));
        units(
                "unit-liquid-rate",
                "1 gal/mi",
                "2.352145833",
                "L/km",
                () -> Amounts.in(Amounts.of(1, SpreadingUnits.US_GALLON_PER_MILE), SpreadingUnits.LITER_PER_KILOMETER));
        units(
                "unit-prewet",
                "1 gal/ton (short ton)",
                "4.172702226",
                "L/t",
                () -> Amounts.in(
                        Amounts.of(1, SpreadingUnits.US_GALLON_PER_SHORT_TON), SpreadingUnits.LITER_PER_TONNE));
    }

    private void units(String id, String what, String stated, String unit, DoubleSupplier computed) {
        add(id, what, Source.UNITS, stated, unit, Tolerance.LAST_DIGIT, computed);
    }

    private void lanesAndWidths() {
        units(
                "dose-12-ft-metric",
                "1 g/m² on a 12-ft lane",
                "3.6576",
                "kg/lane-km",
                () -> in(
                        SpreadingUnits.KILOGRAM_PER_LANE_KILOMETER,
                        Rates.laneRateFromArealRate(gramsPerSquareMeter(1), TWELVE_FEET)));
        units("dose-12-ft", "1 g/m² on a 12-ft lane", "12.9772", "lb/lane-mi", () -> lanePounds(1, TWELVE_FEET));
        units(
                "dose-3.5-m-metric",
                "1 g/m² on a 3.5-m lane",
                "3.5",
                "kg/lane-km",
                () -> in(
                        SpreadingUnits.KILOGRAM_PER_LANE_KILOMETER,
                        Rates.laneRateFromArealRate(gramsPerSquareMeter(1), THREE_AND_A_HALF_METERS)));
        units(
                "dose-3.5-m",
                "1 g/m² on a 3.5-m lane",
                "12.4180",
                "lb/lane-mi",
                () -> lanePounds(1, THREE_AND_A_HALF_METERS));
        units("dose-20-12-ft", "20 g/m² on a 12-ft lane", "259.54", "lb/lane-mi", () -> lanePounds(20, TWELVE_FEET));
        units(
                "dose-20-3.5-m",
                "20 g/m² on a 3.5-m lane",
                "248.36",
                "lb/lane-mi",
                () -> lanePounds(20, THREE_AND_A_HALF_METERS));
        units("dose-20-11-ft", "20 g/m² on an 11-ft lane", "237.91", "lb/lane-mi", () -> lanePounds(20, ELEVEN_FEET));
        units("areal-12-ft", "100 lb/lane-mi on a 12-ft lane", "7.7059", "g/m²", () -> grams(TWELVE_FEET));
        units("areal-3.5-m", "100 lb/lane-mi on a 3.5-m lane", "8.0528", "g/m²", () -> grams(THREE_AND_A_HALF_METERS));
        units(
                "areal-3.75-m",
                "100 lb/lane-mi on a 3.75-m lane",
                "7.5160",
                "g/m²",
                () -> grams(THREE_AND_THREE_QUARTER_METERS));
        units(
                "lane-mile-acres",
                "area of a 12-ft lane-mile",
                "1.454545",
                "acre",
                () -> 100
                        / in(SpreadingUnits.POUND_PER_ACRE, Rates.arealRateFromLaneRate(HUNDRED_POUNDS, TWELVE_FEET)));
        units(
                "lane-mile-feet",
                "area of a 12-ft lane-mile",
                "63360",
                "ft²",
                () -> 100
                        / in(
                                SpreadingUnits.POUND_PER_SQUARE_FOOT,
                                Rates.arealRateFromLaneRate(HUNDRED_POUNDS, TWELVE_FEET)));
        units(
                "lane-mile-meters",
                "area of a 12-ft lane-mile",
                "5886.34",
                "m²",
                () -> 100
                        * 453.59237
                        / in(
                                SpreadingUnits.GRAM_PER_SQUARE_METER,
                                Rates.arealRateFromLaneRate(HUNDRED_POUNDS, TWELVE_FEET)));
        add(
                "two-lane-mile",
                "300 lb per two-lane mile, per lane-mile",
                Source.ARITHMETIC,
                "150",
                "lb/lane-mi",
                Tolerance.EXACT,
                () -> in(
                        SpreadingUnits.POUND_PER_LANE_MILE,
                        Rates.laneRateFromTwoLaneRate(Amounts.of(300, SpreadingUnits.POUND_PER_MILE))));
    }

    private void liquids() {
        arithmetic(
                "liquid-one-lane", "40 gal/lane-mi at 30 mph on one lane", "20", "gal/min", () -> gallonsPerMinute(1));
        arithmetic(
                "liquid-two-lanes",
                "40 gal/lane-mi at 30 mph on two lanes",
                "40",
                "gal/min",
                () -> gallonsPerMinute(2));
        arithmetic(
                "liquid-rate",
                "1 gal/min at 1 mph, gal/min × 60 ÷ mph",
                "60",
                "gal/mi",
                () -> in(SpreadingUnits.US_GALLON_PER_MILE, gallonPerMinuteAtOneMilePerHour()));
        arithmetic(
                "liquid-areal-inch",
                "1 gal/min at 1 mph over 1 in",
                "5940",
                "gal/acre",
                () -> gallonsPerAcre(inches(1)));
        arithmetic(
                "liquid-areal-foot",
                "1 gal/min at 1 mph over 1 ft",
                "495",
                "gal/acre",
                () -> gallonsPerAcre(Amounts.of(1, SpreadingUnits.FOOT)));
        units(
                "liquid-areal-lane",
                "1 gal/lane-mi on a 12-ft lane",
                "0.64308",
                "mL/m²",
                () -> in(
                        SpreadingUnits.MILLILITER_PER_SQUARE_METER,
                        LiquidRates.arealRateFromLaneRate(
                                Amounts.of(1, SpreadingUnits.US_GALLON_PER_LANE_MILE), TWELVE_FEET)));
    }

    private void arithmetic(String id, String what, String stated, String unit, DoubleSupplier computed) {
        add(id, what, Source.ARITHMETIC, stated, unit, Tolerance.EXACT, computed);
    }

    private void prewet() {
        Quantity<LaneApplicationRate> dry = Amounts.of(300, SpreadingUnits.POUND_PER_LANE_MILE);
        arithmetic(
                "prewet-liquid",
                "300 lb/lane-mi prewetted at 10 gal/ton",
                "1.5",
                "gal/lane-mi",
                () -> in(
                        SpreadingUnits.US_GALLON_PER_LANE_MILE,
                        PrewetRates.liquidLaneRateFromDryLaneRate(dry, TEN_GALLONS)));
        arithmetic(
                "prewet-discharge",
                "300 lb/lane-mi at 25 mph on one lane",
                "125",
                "lb/min",
                () -> in(
                        SpreadingUnits.POUND_PER_MINUTE,
                        Rates.dischargeFromRate(
                                Rates.rateFromLaneRate(dry, Amounts.of(1, SpreadingUnits.LANE)), milesPerHour(25))));
        arithmetic(
                "prewet-flow",
                "125 lb/min prewetted at 10 gal/ton",
                "0.625",
                "gal/min",
                () -> in(
                        SpreadingUnits.US_GALLON_PER_MINUTE,
                        PrewetRates.flowFromDischarge(poundsPerMinute(125), TEN_GALLONS)));
    }

    private void auger() {
        String what = "auger 6 in, shaft 2 in, pitch 6 in";
        geometry("auger-volume", what, "150.796", "in³/rev", () -> cubicInches(AUGER, Setting.none()));
        geometry("auger-liters", what, "2.47111", "L/rev", () -> liters(AUGER));
        geometry("auger-full", what + "; 80 lb/ft³, fill 1", "6.98132", "lb/rev", () -> augerPounds(1));
        geometry("auger-fill", what + "; 80 lb/ft³, fill 0.85", "5.93412", "lb/rev", () -> augerPounds(0.85));
        geometry(
                "auger-rate",
                "5.93412 lb/rev at 40 rev/min and 20 mph",
                "712.094",
                "lb/mi",
                () -> in(
                        SpreadingUnits.POUND_PER_MILE,
                        Rates.rateFromShaftSpeed(
                                Amounts.of(augerPounds(0.85), SpreadingUnits.POUND_PER_REVOLUTION),
                                Amounts.of(40, SpreadingUnits.REVOLUTION_PER_MINUTE),
                                milesPerHour(20))));
        Spreader metric = new Spreader(
                Conveyor.of(
                        new Auger(),
                        Map.of("screwDiameter", meters(0.15), "shaftDiameter", meters(0.05), "pitch", meters(0.15))),
                Gate.of(new NoGate(), Map.of()),
                SENSOR);
        String whatMetric = "auger 0.15 m, shaft 0.05 m, pitch 0.15 m";
        geometry("auger-metric", whatMetric, "2.35619", "L/rev", () -> liters(metric));
        geometry(
                "auger-metric-fill",
                whatMetric + "; 1200 kg/m³, fill 0.85",
                "2.40332",
                "kg/rev",
                () -> liters(metric) * 1.2 * 0.85);
    }

    private void chain() {
        String what = "chain 6 × 2.609 in, gate 24 in × 4 in";
        Setting fourInches = height(4);
        geometry(
                "chain-travel",
                "chain 6 × 2.609 in: travel per revolution",
                "15.654",
                "in",
                () -> cubicInches(CHAIN, fourInches) / (24 * 4));
        geometry(
                "chain-pitch-circle",
                "the pitch circle of that sprocket against its travel",
                "4.72",
                "%",
                () -> (Math.PI * 2.609 / Math.sin(Math.PI / 6) / (cubicInches(CHAIN, fourInches) / (24 * 4)) - 1)
                        * 100);
        geometry("chain-volume", what, "1502.784", "in³/rev", () -> cubicInches(CHAIN, fourInches));
        geometry(
                "chain-fill",
                what + "; 80 lb/ft³, fill 0.9",
                "62.616",
                "lb/rev",
                () -> cubicInches(CHAIN, fourInches) / 1728 * 80 * 0.9);
        Spreader metric = new Spreader(
                Conveyor.of(
                        new DragChain(),
                        Map.of("teeth", Amounts.of(8, SpreadingUnits.ONE), "chainPitch", meters(0.05))),
                Gate.of(new SlidingGate(), Map.of("width", meters(0.6))),
                SENSOR);
        geometry(
                "chain-metric",
                "chain travel 0.4 m, gate 0.6 m × 0.1 m; 1200 kg/m³, fill 0.9",
                "25.92",
                "kg/rev",
                () -> metric.sweptCubicMetersPerRevolution(Setting.height(meters(0.1))) * 1200 * 0.9);
    }

    private void otherConveyors() {
        Spreader belt =
                under(Conveyor.of(new Belt(), Map.of("pulleyDiameter", inches(10), "beltThickness", inches(0.5))));
        geometry(
                "belt-travel",
                "belt 0.5 in thick on a pulley of 10 in: travel per revolution, π·(10 in + 0.5 in)",
                "32.98672",
                "in",
                () -> cubicInches(belt, height(4)) / (24 * 4));
        Spreader twin = ungated(Conveyor.of(
                new TwinAuger(), Map.of("screwDiameter", inches(6), "shaftDiameter", inches(2), "pitch", inches(6))));
        geometry(
                "twin-auger",
                "two augers 6 in, shaft 2 in, pitch 6 in that don't mesh, over one",
                "2",
                "",
                () -> liters(twin) / liters(AUGER));
        Spreader roller = ungated(Conveyor.of(
                new FeedRoller(),
                Map.of(
                        "pockets", Amounts.of(12, SpreadingUnits.ONE),
                        "pocketArea", Amounts.of(8, SpreadingUnits.SQUARE_CENTIMETER),
                        "rollerLength", Amounts.of(30, SpreadingUnits.CENTIMETER))));
        geometry(
                "feed-roller",
                "feed roller, 12 pockets of 8 cm² × 30 cm; 1.2 kg/L, fill 0.9",
                "3.1104",
                "kg/rev",
                () -> liters(roller) * 1.2 * 0.9);
    }

    /** A conveyor under the chain's gate, 24 in wide. */
    private static Spreader under(Conveyor conveyor) {
        return new Spreader(conveyor, CHAIN.gate(), SENSOR);
    }

    private static Spreader ungated(Conveyor conveyor) {
        return new Spreader(conveyor, AUGER.gate(), SENSOR);
    }

    private void gates() {
        Spreader round =
                new Spreader(CHAIN.conveyor(), Gate.of(new RoundGate(), Map.of("diameter", meters(0.2))), SENSOR);
        geometry(
                "round-half",
                "round opening 0.2 m wide, open to the middle: half the circle, π·r²/2",
                "157.0796",
                "cm²",
                () -> squareCentimeters(round, 0.1));
        geometry(
                "round-whole",
                "the same, open to 0.2 m: the whole circle, π·r²",
                "314.1593",
                "cm²",
                () -> squareCentimeters(round, 0.2));
        geometry(
                "round-quarter",
                "the same, open to 0.05 m: r²·(π/3 − √3/4)",
                "61.4185",
                "cm²",
                () -> squareCentimeters(round, 0.05));
    }

    private static double squareCentimeters(Spreader spreader, double openingMeters) {
        return in(
                SpreadingUnits.SQUARE_CENTIMETER,
                Amounts.ofSi(
                        Amounts.si(Area.class, spreader.openArea(Setting.height(meters(openingMeters)))),
                        SpreadingUnits.SQUARE_CENTIMETER));
    }

    /** The line of {@code gate-slope} and the rows after it, from a curve through catches. */
    private void deadOpening() {
        DischargeCurve curve = curve(CurveModel.DEAD_OPENING, catchAt(2, 26), catchAt(4, 58));
        String what = "26 lb/rev at 2 in, 58 lb/rev at 4 in, fitted by k·g(h − h0): ";
        digits(
                "curve-slope",
                what + "k, per inch of opening",
                "16",
                "lb/rev/in",
                () -> poundsPerRevolution(curve, 3) - poundsPerRevolution(curve, 2));
        digits(
                "curve-dead",
                what + "h0",
                "0.375",
                "in",
                () -> curve.deadOpening().orElseThrow().value().getValue().doubleValue());
        digits("curve-three", what + "at 3 in", "42.0", "lb/rev", () -> poundsPerRevolution(curve, 3));
        digits("curve-one", what + "at 1 in", "10.0", "lb/rev", () -> poundsPerRevolution(curve, 1));
        DischargeCurve throughZero = curve(CurveModel.PROPORTIONAL, catchAt(4, 58));
        digits(
                "curve-zero",
                "58 lb/rev at 4 in, fitted by k·g(h): at 1 in",
                "14.5",
                "lb/rev",
                () -> poundsPerRevolution(throughZero, 1));
        digits(
                "curve-excess",
                "what that is above the 10.0 lb/rev",
                "45",
                "%",
                () -> (poundsPerRevolution(throughZero, 1) / poundsPerRevolution(curve, 1) - 1) * 100);
    }

    private static DischargeCurve curve(CurveModel model, CalibrationCatch... catches) {
        return DischargeCurve.fit(List.of(catches), model);
    }

    /** Ten revolutions. */
    private static CalibrationCatch catchAt(double openingInches, double poundsPerRevolution) {
        return Samples.catchAt(
                Samples.chainAt(openingInches), Samples.caught(10 * poundsPerRevolution), Samples.pulses(1000));
    }

    private static double poundsPerRevolution(DischargeCurve curve, double openingInches) {
        return in(
                SpreadingUnits.POUND_PER_REVOLUTION,
                curve.predict(height(openingInches)).dischargePerRevolution().value());
    }

    private void grainFlow() {
        for (String[] row : new String[][] {{"50", "0.978438"}, {"100", "6.19132"}}) {
            double meters = Double.parseDouble(row[0]) / 1000;
            add(
                    "grain-flow-" + row[0],
                    "dry grains of 3 mm, 1200 kg/m³, through a circle of " + row[0] + " mm; C 0.58, k 1.4",
                    Source.GRAIN_FLOW,
                    row[1],
                    "kg/s",
                    Tolerance.LAST_DIGIT,
                    () -> in(
                            SpreadingUnits.KILOGRAM_PER_SECOND,
                            GrainFlow.USUAL.through(
                                    Amounts.of(Math.PI / 4 * meters * meters, SpreadingUnits.SQUARE_METER),
                                    Amounts.of(1200, SpreadingUnits.KILOGRAM_PER_CUBIC_METER),
                                    Amounts.of(3, SpreadingUnits.MILLIMETER))));
        }
    }

    private void geometry(String id, String what, String stated, String unit, DoubleSupplier computed) {
        add(id, what, Source.GEOMETRY, stated, unit, Tolerance.LAST_DIGIT, computed);
    }

    private void estimators() {
        double[] x = {5, 10, 20};
        double[] y = {31, 60.5, 122};
        String what = "(5, 10, 20; 31, 60.5, 122): ";
        digits(
                "ratio-of-sums",
                what + "ratio of sums",
                "6.100000",
                "",
                () -> RatioEstimator.RATIO_OF_SUMS.estimate(y, x).ratio());
        digits(
                "mean-of-ratios",
                what + "mean of ratios",
                "6.116667",
                "",
                () -> RatioEstimator.MEAN_OF_RATIOS.estimate(y, x).ratio());
        StraightLine line = StraightLine.fit(x, y);
        digits("line-slope", what + "slope of the line", "6.078571", "", line::slope);
        digits("line-intercept", what + "intercept of the line", "0.25", "", line::intercept);
        StraightLine gate = StraightLine.fit(new double[] {2, 4}, new double[] {26, 58});
        digits("gate-slope", "26 lb/rev at 2 in, 58 lb/rev at 4 in: slope", "16", "lb/rev/in", gate::slope);
        digits("gate-dead", "the same: dead opening", "0.375", "in", () -> -gate.intercept() / gate.slope());
        digits("gate-three", "the same: at 3 in", "42.0", "lb/rev", () -> gate.intercept() + 3 * gate.slope());
        digits("gate-one", "the same: at 1 in", "10.0", "lb/rev", () -> gate.intercept() + gate.slope());
        geometry(
                "gate-proportional",
                "58 lb/rev at 4 in, taken as proportional to the opening: at 1 in",
                "14.5",
                "lb/rev",
                () -> 58 * cubicInches(CHAIN, height(1)) / cubicInches(CHAIN, height(4)));
    }

    private void digits(String id, String what, String stated, String unit, DoubleSupplier computed) {
        add(id, what, Source.ARITHMETIC, stated, unit, Tolerance.LAST_DIGIT, computed);
    }

    private void lines() {
        double[] temperatures = {21.521, 22.012, 22.512, 23.003, 23.507, 23.999, 24.513, 25.002, 25.503, 26.010, 26.511
        };
        double[] corrections = {-0.171, -0.169, -0.166, -0.159, -0.164, -0.165, -0.156, -0.157, -0.159, -0.161, -0.160};
        double[] above20 = Arrays.stream(temperatures).map(t -> t - 20).toArray();
        StraightLine gum = StraightLine.fit(above20, corrections);
        gum("gum-intercept", "thermometer line: intercept at 20 °C", "-0.1712", gum::intercept);
        gum(
                "gum-intercept-u",
                "its standard uncertainty",
                "0.0029",
                () -> gum.interceptUncertainty().orElseThrow());
        gum("gum-slope", "thermometer line: slope", "0.00218", gum::slope);
        gum(
                "gum-slope-u",
                "its standard uncertainty",
                "0.00067",
                () -> gum.slopeUncertainty().orElseThrow());
        gum("gum-30", "thermometer line at 30 °C", "-0.1494", () -> gum.intercept() + 10 * gum.slope());
        StraightLine norris = StraightLine.fit(Strd.column("norris", "x"), Strd.column("norris", "y"));
        strd("norris-intercept", "Norris: intercept", "-0.262323073774029", norris::intercept);
        strd(
                "norris-intercept-u",
                "its standard deviation",
                "0.232818234301152",
                () -> norris.interceptUncertainty().orElseThrow());
        strd("norris-slope", "Norris: slope", "1.00211681802045", norris::slope);
        strd(
                "norris-slope-u",
                "its standard deviation",
                "0.000429796848199937",
                () -> norris.slopeUncertainty().orElseThrow());
    }

    private void gum(String id, String what, String stated, DoubleSupplier computed) {
        add(id, what, Source.GUM, stated, "", Tolerance.LAST_DIGIT, computed);
    }

    private void strd(String id, String what, String stated, DoubleSupplier computed) {
        add(id, what, Source.STRD, stated, "", Tolerance.EXACT, computed);
    }

    private static <Q extends Quantity<Q>> double in(Unit<Q> unit, Quantity<Q> quantity) {
        return Amounts.in(quantity, unit);
    }

    private static Quantity<DischargeRate> poundsPerMinute(double pounds) {
        return Amounts.of(pounds, SpreadingUnits.POUND_PER_MINUTE);
    }

    private static Quantity<Speed> milesPerHour(double miles) {
        return Amounts.of(miles, SpreadingUnits.MILE_PER_HOUR);
    }

    private static Quantity<Length> meters(double meters) {
        return Amounts.of(meters, SpreadingUnits.METER);
    }

    private static Quantity<ArealApplicationRate> gramsPerSquareMeter(double grams) {
        return Amounts.of(grams, SpreadingUnits.GRAM_PER_SQUARE_METER);
    }

    private static double floridaWheel() {
        return in(
                SpreadingUnits.POUND_PER_ACRE,
                Rates.arealRateFromRate(
                        Amounts.of(20.0 / (43 * 9), SpreadingUnits.POUND_PER_FOOT),
                        Amounts.of(8, SpreadingUnits.FOOT)));
    }

    private static double lanePounds(double gramsPerSquareMeter, Quantity<LaneWidth> width) {
        return in(
                SpreadingUnits.POUND_PER_LANE_MILE,
                Rates.laneRateFromArealRate(gramsPerSquareMeter(gramsPerSquareMeter), width));
    }

    private static double grams(Quantity<LaneWidth> width) {
        return in(SpreadingUnits.GRAM_PER_SQUARE_METER, Rates.arealRateFromLaneRate(HUNDRED_POUNDS, width));
    }

    private static double gallonsPerMinute(int lanes) {
        Quantity<LiquidApplicationRate> rate = LiquidRates.rateFromLaneRate(
                Amounts.of(40, SpreadingUnits.US_GALLON_PER_LANE_MILE), Amounts.of(lanes, SpreadingUnits.LANE));
        return in(SpreadingUnits.US_GALLON_PER_MINUTE, LiquidRates.flowFromRate(rate, milesPerHour(30)));
    }

    private static Quantity<LiquidApplicationRate> gallonPerMinuteAtOneMilePerHour() {
        return LiquidRates.rateFromFlow(Amounts.of(1, SpreadingUnits.US_GALLON_PER_MINUTE), milesPerHour(1));
    }

    private static double gallonsPerAcre(Quantity<Length> width) {
        return in(
                SpreadingUnits.US_GALLON_PER_ACRE,
                LiquidRates.arealRateFromRate(gallonPerMinuteAtOneMilePerHour(), width));
    }

    private static double cubicInches(Spreader spreader, Setting setting) {
        return in(
                SpreadingUnits.CUBIC_INCH_PER_REVOLUTION,
                Amounts.ofSi(
                        spreader.sweptCubicMetersPerRevolution(setting), SpreadingUnits.CUBIC_INCH_PER_REVOLUTION));
    }

    private static double liters(Spreader spreader) {
        return spreader.sweptCubicMetersPerRevolution(Setting.none()) * 1000;
    }

    private static double augerPounds(double fill) {
        Quantity<DischargePerRevolution> discharge = Amounts.ofSi(
                fill
                        * AUGER.sweptCubicMetersPerRevolution(Setting.none())
                        * Amounts.si(BulkDensity.class, Samples.SALT.looseBulkDensity()),
                SpreadingUnits.POUND_PER_REVOLUTION);
        return discharge.getValue().doubleValue();
    }
}
