package org.gritwright.core.calibration;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.gritwright.core.Samples.AUGER_POINT;
import static org.gritwright.core.Samples.DAY;
import static org.gritwright.core.Samples.SCALE;
import static org.gritwright.core.Samples.augerCatch;
import static org.gritwright.core.Samples.augerPoint;
import static org.gritwright.core.Samples.catchAt;
import static org.gritwright.core.Samples.caught;
import static org.gritwright.core.Samples.codes;
import static org.gritwright.core.Samples.only;
import static org.gritwright.core.Samples.pounds;
import static org.gritwright.core.Samples.pulses;
import static org.gritwright.core.Samples.revolutionsByEye;
import static org.gritwright.units.SpreadingUnits.PERCENT;
import static org.gritwright.units.SpreadingUnits.POUND_PER_REVOLUTION;

import java.util.List;
import java.util.Optional;
import java.util.stream.DoubleStream;
import org.assertj.core.data.Offset;
import org.gritwright.core.finding.FindingCode;
import org.gritwright.core.metering.NoSensor;
import org.gritwright.core.metering.ShaftCount;
import org.gritwright.core.observation.CalibrationPoint;
import org.gritwright.core.observation.CatchAllowances;
import org.gritwright.core.observation.CatchLimits;
import org.gritwright.core.observation.Conditions;
import org.gritwright.core.observation.Moisture;
import org.gritwright.core.observation.Repeatability;
import org.gritwright.core.statistics.RatioEstimator;
import org.gritwright.core.uncertainty.Budget;
import org.gritwright.core.uncertainty.Component;
import org.gritwright.core.uncertainty.Component.Evaluation;
import org.gritwright.core.uncertainty.Distribution;
import org.gritwright.core.weighing.CaughtMass;
import org.gritwright.core.weighing.Scale;
import org.gritwright.core.weighing.ScaleAccuracy;
import org.gritwright.core.weighing.ScaleCheck;
import org.gritwright.core.weighing.Weighing;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.quantity.DischargePerRevolution;
import org.hipparchus.distribution.continuous.TDistribution;
import org.junit.jupiter.api.Test;

/** By hand: the scale reads half pounds and is right to 0.1 %, the sensor has 100 pulses a revolution. */
class CalibrationBudgetTest {
    private static final Offset<Double> EXACT = within(1e-12);

    /** Gross and tare, each rounded to half a pound. */
    private static final double TWO_READINGS = Math.sqrt(2) * 0.5 / Math.sqrt(12);

    /** A pulse of 100, within one either way. */
    private static final double COUNT = 0.01 / Math.sqrt(6);

    private static final double SPAN = 0.001 / Math.sqrt(3);

    private static final CatchAllowances TWO_PERCENT_SCATTER = new CatchAllowances(
            Amounts.of(0, PERCENT),
            Amounts.of(0, PERCENT),
            Optional.empty(),
            Optional.of(Repeatability.assumed(Amounts.of(2, PERCENT))));

    private static final CatchAllowances TWO_PERCENT_OF_FIVE = new CatchAllowances(
            Amounts.of(0, PERCENT),
            Amounts.of(0, PERCENT),
            Optional.empty(),
            Optional.of(new Repeatability(Amounts.of(2, PERCENT), 4)));

    /** What nobody stated: 1 % with 2 degrees of freedom. */
    private static final double ASSUMED = 0.01;

    private static final double ASSUMED_DEGREES = 2;

    /** Two variances with their degrees of freedom together; the root of it. */
    private static double pooled(double known, double knownDegrees, double shown, double shownDegrees) {
        return Math.sqrt((knownDegrees * known + shownDegrees * shown) / (knownDegrees + shownDegrees));
    }

    private static double squares(double... numbers) {
        return DoubleStream.of(numbers).map(number -> number * number).sum();
    }

    /** For 95 %, by another library. */
    private static double student(double degreesOfFreedom) {
        return new TDistribution(degreesOfFreedom).inverseCumulativeProbability(0.975);
    }

    private static Calibration of(
            RatioEstimator estimator, CatchAllowances allowances, List<CalibrationCatch> catches) {
        return Calibration.from(catches, estimator, CatchLimits.COMMON.withAllowances(allowances));
    }

    private static Calibration bySums(CatchAllowances allowances, CalibrationCatch... catches) {
        return of(RatioEstimator.RATIO_OF_SUMS, allowances, List.of(catches));
    }

    private static double contribution(Component<DischargePerRevolution> component) {
        return Amounts.in(component.contribution(), POUND_PER_REVOLUTION);
    }

    private static Component<DischargePerRevolution> row(Calibration calibration, String name) {
        return calibration.budget().components().stream()
                .filter(c -> c.name().equals(name))
                .findFirst()
                .orElseThrow(() -> new AssertionError(name + " of\n" + calibration.budget()));
    }

    private static List<String> names(Calibration calibration) {
        return calibration.budget().components().stream().map(Component::name).toList();
    }

    private static double value(Calibration calibration) {
        return Amounts.in(calibration.dischargePerRevolution().value(), POUND_PER_REVOLUTION);
    }

    private static CalibrationCatch on(Scale scale, double pounds, double pulses) {
        return catchAt(
                AUGER_POINT,
                CaughtMass.of(scale, DAY, new Weighing("tarp", pounds(pounds + 5), pounds(5))),
                pulses(pulses));
    }

    @Test
    void oneCatchHasRoundingCountAssumedScatterAndSpan() {
        Calibration calibration = bySums(TWO_PERCENT_SCATTER, augerCatch(118.5, 2000));
        double ratio = 118.5 / 20;

        assertThat(names(calibration))
                .containsExactly(
                        "rounding of the scale",
                        "count of revolutions",
                        "scatter of catches, from experience",
                        "span of scale S-1");
        assertThat(contribution(row(calibration, "rounding of the scale"))).isCloseTo(TWO_READINGS / 20, EXACT);
        assertThat(row(calibration, "rounding of the scale").distribution()).isEqualTo(Distribution.TRIANGULAR);
        assertThat(row(calibration, "rounding of the scale")
                        .standardUncertainty()
                        .getValue()
                        .doubleValue())
                .isCloseTo(0.5 / Math.sqrt(12), EXACT);
        assertThat(contribution(row(calibration, "count of revolutions"))).isCloseTo(ratio * COUNT / 20, EXACT);
        assertThat(row(calibration, "count of revolutions").distribution()).isEqualTo(Distribution.TRIANGULAR);
        assertThat(contribution(row(calibration, "scatter of catches, from experience")))
                .isCloseTo(0.02 * ratio, EXACT);
        assertThat(contribution(row(calibration, "span of scale S-1"))).isCloseTo(SPAN * ratio, EXACT);
        assertThat(row(calibration, "span of scale S-1").distribution()).isEqualTo(Distribution.RECTANGULAR);
        assertThat(calibration.budget().components())
                .allMatch(c -> c.evaluation() == Evaluation.TYPE_B && Double.isInfinite(c.degreesOfFreedom()));
        assertThat(codes(calibration.findings())).doesNotContain(FindingCode.UNCERTAINTY_INCOMPLETE);
    }

    @Test
    void twoCatchesHaveTheirRoundingsAndCountsInSquares() {
        Calibration calibration = bySums(
                TWO_PERCENT_SCATTER,
                catchAt(AUGER_POINT, caught(118.5), revolutionsByEye(20)),
                catchAt(AUGER_POINT, caught(180), revolutionsByEye(30)));
        double ratio = 298.5 / 50;

        assertThat(contribution(row(calibration, "rounding of the scale")))
                .isCloseTo(TWO_READINGS * Math.sqrt(2) / 50, EXACT);
        assertThat(row(calibration, "rounding of the scale").distribution()).isEqualTo(Distribution.NORMAL);
        assertThat(contribution(row(calibration, "count of revolutions")))
                .isCloseTo(ratio * 0.1 * Math.sqrt(2) / 50, EXACT);
        assertThat(contribution(row(calibration, "scatter of catches, from experience")))
                .isCloseTo(0.02 * Math.hypot(118.5, 180) / 50, EXACT);
        assertThat(contribution(row(calibration, "span of scale S-1"))).isCloseTo(SPAN * ratio, EXACT);
    }

    /** 118.5, 121 and 116 lb: a deviation of 2.5 lb, of which the rounding of scale and count is a part. */
    @Test
    void threeCatchesHaveTheirScatterBesideRoundingAndCount() {
        Calibration calibration =
                bySums(TWO_PERCENT_OF_FIVE, augerCatch(118.5, 2000), augerCatch(121, 2000), augerCatch(116, 2000));
        double rounded = squares(TWO_READINGS * Math.sqrt(3) / 60, 118.5 / 20 * COUNT * Math.sqrt(3) / 60);
        double shown = squares(2.5 / 20) / 3 - rounded;
        double stated = squares(0.02 / 60) * squares(118.5, 121, 116);

        assertThat(names(calibration))
                .containsExactly(
                        "rounding of the scale", "count of revolutions", "scatter of the catches", "span of scale S-1");
        assertThat(contribution(row(calibration, "rounding of the scale")))
                .isCloseTo(TWO_READINGS * Math.sqrt(3) / 60, EXACT);
        assertThat(contribution(row(calibration, "count of revolutions")))
                .isCloseTo(118.5 / 20 * COUNT * Math.sqrt(3) / 60, EXACT);
        Component<DischargePerRevolution> scatter = row(calibration, "scatter of the catches");
        assertThat(contribution(scatter)).isCloseTo(pooled(stated, 4, shown, 2), EXACT);
        assertThat(scatter.evaluation()).isEqualTo(Evaluation.TYPE_A);
        assertThat(scatter.degreesOfFreedom()).isEqualTo(6);
    }

    @Test
    void aScatterThatIsSimplyStatedStandsWhereThreeCatchesDontRefuteIt() {
        Calibration calibration =
                bySums(TWO_PERCENT_SCATTER, augerCatch(118.5, 2000), augerCatch(121, 2000), augerCatch(116, 2000));

        assertThat(names(calibration))
                .containsExactly(
                        "rounding of the scale",
                        "count of revolutions",
                        "scatter of catches, from experience",
                        "span of scale S-1");
        assertThat(contribution(row(calibration, "scatter of catches, from experience")))
                .isCloseTo(0.02 / 60 * Math.sqrt(squares(118.5, 121, 116)), EXACT);
        assertThat(row(calibration, "scatter of catches, from experience").degreesOfFreedom())
                .isInfinite();
    }

    /** A deviation of 8.5 of 118.5 lb is 7.2 %: twice the square of 7.2 ÷ 2 is 25.7, beyond 5.99 of chi-squared. */
    @Test
    void threeCatchesThatRefuteWhatIsStatedHoldAlone() {
        Calibration calibration =
                bySums(TWO_PERCENT_SCATTER, augerCatch(118.5, 2000), augerCatch(127, 2000), augerCatch(110, 2000));
        double rounded = squares(TWO_READINGS * Math.sqrt(3) / 60, 118.5 / 20 * COUNT * Math.sqrt(3) / 60);

        assertThat(contribution(row(calibration, "scatter of the catches")))
                .isCloseTo(Math.sqrt(squares(8.5 / 20) / 3 - rounded), EXACT);
        assertThat(row(calibration, "scatter of the catches").degreesOfFreedom())
                .isEqualTo(2);
    }

    @Test
    void catchesAlikeAreNeverMoreCertainThanRoundingAndCount() {
        Calibration calibration =
                bySums(CatchAllowances.NONE, augerCatch(118.5, 2000), augerCatch(118.5, 2000), augerCatch(118.5, 2000));

        assertThat(contribution(row(calibration, "rounding of the scale")))
                .isCloseTo(TWO_READINGS * Math.sqrt(3) / 60, EXACT);
        assertThat(contribution(row(calibration, "count of revolutions")))
                .isCloseTo(118.5 / 20 * COUNT * Math.sqrt(3) / 60, EXACT);
        for (String name : List.of("rounding of the scale", "count of revolutions")) {
            assertThat(row(calibration, name).degreesOfFreedom()).isInfinite();
            assertThat(row(calibration, name).evaluation()).isEqualTo(Evaluation.TYPE_B);
        }
        // Nothing of two degrees of freedom, and what is assumed with two others.
        assertThat(contribution(row(calibration, "scatter of the catches")))
                .isCloseTo(ASSUMED * 118.5 / 20 / Math.sqrt(3) / Math.sqrt(2), EXACT);
        assertThat(row(calibration, "scatter of the catches").degreesOfFreedom())
                .isEqualTo(4);
    }

    /** A third catch like the two before doesn't make the answer worse, whether the scatter is stated or not. */
    @Test
    void anotherCatchLikeTheOthersMakesTheAnswerNoWorse() {
        for (CatchAllowances allowances : List.of(CatchAllowances.NONE, TWO_PERCENT_OF_FIVE, TWO_PERCENT_SCATTER)) {
            List<CalibrationCatch> three =
                    List.of(augerCatch(117.5, 2000), augerCatch(119.5, 2000), augerCatch(118.5, 2000));
            double before = Double.POSITIVE_INFINITY;
            for (int n = 1; n <= 3; n++) {
                double now = Amounts.in(
                        of(RatioEstimator.RATIO_OF_SUMS, allowances, three.subList(0, n))
                                .budget()
                                .result()
                                .expandedUncertainty(0.95)
                                .orElseThrow(),
                        POUND_PER_REVOLUTION);
                assertThat(now).as("%d catches, %s", n, allowances).isLessThan(before);
                before = now;
            }
        }
    }

    @Test
    void theMeanOfRatiosWeighsShortCatchesMore() {
        List<CalibrationCatch> alike = List.of(augerCatch(60, 1000), augerCatch(120, 2000), augerCatch(180, 3000));
        Calibration calibration = of(RatioEstimator.MEAN_OF_RATIOS, CatchAllowances.NONE, alike);
        double perReading = Math.sqrt(1 / 100.0 + 1 / 400.0 + 1 / 900.0) / 3;

        assertThat(contribution(row(calibration, "rounding of the scale"))).isCloseTo(perReading * TWO_READINGS, EXACT);
        assertThat(contribution(row(calibration, "count of revolutions"))).isCloseTo(perReading * 6 * COUNT, EXACT);
        Calibration scattered = of(
                RatioEstimator.MEAN_OF_RATIOS,
                CatchAllowances.NONE,
                List.of(augerCatch(59, 1000), augerCatch(120, 2000), augerCatch(183, 3000)));
        // 5.9, 6 and 6.1 lb/rev.
        double shown = 0.1 * 0.1 / 3 - squares(perReading * TWO_READINGS, perReading * 6 * COUNT);
        double assumed = squares(ASSUMED / 3) * squares(5.9, 6, 6.1);
        assertThat(contribution(row(scattered, "scatter of the catches")))
                .isCloseTo(pooled(assumed, ASSUMED_DEGREES, shown, 2), EXACT);
        assertThat(row(scattered, "scatter of the catches").degreesOfFreedom()).isEqualTo(4);
    }

    @Test
    void theRatioOfSumsOfUnequalCatchesIsTheSamplersFormula() {
        Calibration calibration =
                bySums(CatchAllowances.NONE, augerCatch(59, 1000), augerCatch(120, 2000), augerCatch(183, 3000));
        // R = 362/60; residuals 59 − 10 R, 120 − 20 R, 183 − 30 R; u² = 3/2 · Σ ÷ 60².
        double squares = Math.pow(59 - 3620 / 60.0, 2) + Math.pow(120 - 7240 / 60.0, 2) + 4;

        double rounded = 3 * squares(TWO_READINGS, 362 / 60.0 * COUNT);
        double assumed = squares(ASSUMED) * squares(59, 120, 183);
        assertThat(contribution(row(calibration, "scatter of the catches")))
                .isCloseTo(pooled(assumed, ASSUMED_DEGREES, 1.5 * squares - rounded, 2) / 60, EXACT);
    }

    @Test
    void aLinesFloorIsThatOfItsSlope() {
        Calibration calibration = of(
                RatioEstimator.LINE_WITH_INTERCEPT,
                CatchAllowances.NONE,
                List.of(augerCatch(57, 1000), augerCatch(117, 2000), augerCatch(177, 3000)));

        // Revolutions 10, 20, 30: Sxx = 200.
        assertThat(contribution(row(calibration, "rounding of the scale")))
                .isCloseTo(TWO_READINGS / Math.sqrt(200), EXACT);
        assertThat(contribution(row(calibration, "count of revolutions"))).isCloseTo(6 * COUNT / Math.sqrt(200), EXACT);
        // The slope rises by ±10/200 lb/rev for a pound of the outer two, which lie on the line with one degree of
        // freedom.
        assertThat(contribution(row(calibration, "scatter of the catches")))
                .isCloseTo(ASSUMED * Math.hypot(57, 177) * 10 / 200 * Math.sqrt(2 / 3.0), EXACT);
        assertThat(row(calibration, "scatter of the catches").degreesOfFreedom())
                .isEqualTo(3);
        assertThat(contribution(row(calibration, "span of scale S-1"))).isCloseTo(SPAN * 6, EXACT);
    }

    @Test
    void spillageMovesTheValueAndMakesItUncertain() {
        CatchAllowances spilling =
                new CatchAllowances(Amounts.of(2, PERCENT), Amounts.of(1, PERCENT), Optional.empty(), Optional.empty());
        Calibration calibration = bySums(spilling, augerCatch(118.5, 2000));
        double ratio = 118.5 / 20 / 0.99;

        assertThat(value(calibration)).isCloseTo(ratio, EXACT);
        assertThat(contribution(row(calibration, "spillage"))).isCloseTo(ratio * 0.01 / Math.sqrt(3) / 0.99, EXACT);
        assertThat(contribution(row(calibration, "start-up transient"))).isCloseTo(ratio * 0.01 / Math.sqrt(3), EXACT);
        assertThat(contribution(row(calibration, "rounding of the scale"))).isCloseTo(TWO_READINGS / 20 / 0.99, EXACT);
    }

    @Test
    void repeatsDoNotShrinkWhatTheyHaveInCommon() {
        CatchAllowances common = new CatchAllowances(
                Amounts.of(2, PERCENT),
                Amounts.of(1, PERCENT),
                Optional.of(new Moisture(Amounts.of(5, PERCENT), Amounts.of(1, PERCENT), Moisture.Basis.WET_MASS)),
                Optional.empty());
        Calibration one = bySums(common, augerCatch(120, 2000));
        Calibration four = bySums(
                common, augerCatch(119, 2000), augerCatch(121, 2000), augerCatch(119.5, 2000), augerCatch(120.5, 2000));

        for (String name : List.of("span of scale S-1", "spillage", "start-up transient", "moisture")) {
            assertThat(contribution(row(four, name))).as(name).isCloseTo(contribution(row(one, name)), EXACT);
        }
        assertThat(contribution(row(one, "moisture"))).isCloseTo(6 / 0.99 * 0.01 / 0.95 / Math.sqrt(3), EXACT);
    }

    @Test
    void theMoistureOfACatchReplacesTheOneAllowedFor() {
        Moisture allowed = new Moisture(Amounts.of(5, PERCENT), Amounts.of(1, PERCENT), Moisture.Basis.WET_MASS);
        CatchAllowances common = new CatchAllowances(
                Amounts.of(0, PERCENT), Amounts.of(0, PERCENT), Optional.of(allowed), Optional.empty());

        Calibration calibration = bySums(common, wet(90, 20, Moisture.Basis.WET_MASS), augerCatch(30, 500));
        Calibration dryBasis = bySums(common, wet(90, 25, Moisture.Basis.DRY_MASS), augerCatch(30, 500));

        // Three quarters of the mass at 20 % of the wet mass, which is 25 % of the dry mass; one quarter at 5 %.
        double relative = 0.75 * 0.01 / 0.80 + 0.25 * 0.01 / 0.95;
        assertThat(contribution(row(calibration, "moisture"))).isCloseTo(6 * relative / Math.sqrt(3), EXACT);
        assertThat(contribution(row(dryBasis, "moisture"))).isCloseTo(6 * relative / Math.sqrt(3), EXACT);
    }

    private static CalibrationCatch wet(double pounds, double moisture, Moisture.Basis basis) {
        return CalibrationCatch.of(augerCatch(pounds, 100 * pounds / 6)
                .observation()
                .under(Conditions.NONE.withMoisture(Amounts.of(moisture, PERCENT), basis)));
    }

    @Test
    void eachScaleHasASpanOfItsOwn() {
        Scale other = Scale.of("S-2", pounds(500), pounds(0.5))
                .withAccuracy(new ScaleAccuracy.Stated(Amounts.of(0.4, PERCENT)));
        Calibration calibration =
                bySums(CatchAllowances.NONE, on(SCALE, 120, 2000), on(other, 60, 1000), on(SCALE, 118, 2000));

        // 238 lb of 298 lb on the one, 60 lb on the other, of 298 lb in 50 revolutions.
        assertThat(contribution(row(calibration, "span of scale S-1"))).isCloseTo(SPAN * 238 / 50, EXACT);
        assertThat(contribution(row(calibration, "span of scale S-2")))
                .isCloseTo(0.004 / Math.sqrt(3) * 60 / 50, EXACT);
    }

    /** Of 57, 117 and 177 lb on a line; a pound more of the first moves its start by 1/3 + 20 · 10/200 lb. */
    @Test
    void aLinesStartIsNoSurerThanReadingsAndCounts() {
        Calibration calibration = of(
                RatioEstimator.LINE_WITH_INTERCEPT,
                new CatchAllowances(Amounts.of(2, PERCENT), Amounts.of(0, PERCENT), Optional.empty(), Optional.empty()),
                List.of(augerCatch(57, 1000), augerCatch(117, 2000), augerCatch(177, 3000)));
        double ofEach = Math.sqrt(squares(4 / 3.0, 1 / 3.0, -2 / 3.0));

        assertThat(Amounts.in(
                        calibration
                                .massPerStart()
                                .orElseThrow()
                                .standardUncertainty()
                                .orElseThrow(),
                        SpreadingUnits.POUND))
                .isCloseTo(ofEach * Math.hypot(TWO_READINGS, 6 * COUNT) / 0.99, within(1e-9));
    }

    @Test
    void aShortCatchOnAScaleOfItsOwnTiltsTheLine() {
        Scale other = Scale.of("S-2", pounds(500), pounds(0.5))
                .withAccuracy(new ScaleAccuracy.Stated(Amounts.of(0.4, PERCENT)));
        Calibration calibration = of(
                RatioEstimator.LINE_WITH_INTERCEPT,
                CatchAllowances.NONE,
                List.of(on(other, 57, 1000), on(SCALE, 117, 2000), on(SCALE, 177, 3000)));

        // The slope falls by 10/200 lb/rev for each pound of the first.
        assertThat(contribution(row(calibration, "span of scale S-2")))
                .isCloseTo(0.004 / Math.sqrt(3) * 57 * 10 / 200, EXACT);
        assertThat(contribution(row(calibration, "span of scale S-1"))).isCloseTo(SPAN * 177 * 10 / 200, EXACT);
    }

    @Test
    void aTestWeightNearTheLoadBoundsTheSpan() {
        Scale tested = Scale.of("S-2", pounds(500), pounds(0.5)).checked(new ScaleCheck(DAY, pounds(100), pounds(100)));
        Calibration calibration = bySums(CatchAllowances.NONE, on(tested, 120, 2000));

        assertThat(contribution(row(calibration, "span of scale S-2"))).isCloseTo(0.0025 / Math.sqrt(3) * 6, EXACT);
    }

    @Test
    void whatNobodyKnowsIsAssumedAndNamed() {
        Scale unknown = Scale.of("S-3", pounds(500), pounds(0.5));
        Calibration calibration = bySums(CatchAllowances.NONE, on(unknown, 120, 2000));

        assertThat(names(calibration))
                .containsExactly(
                        "rounding of the scale",
                        "count of revolutions",
                        "scatter of catches, assumed",
                        "span of scale S-3");
        assertThat(contribution(row(calibration, "scatter of catches, assumed")))
                .isCloseTo(ASSUMED * 6, EXACT);
        assertThat(row(calibration, "scatter of catches, assumed").degreesOfFreedom())
                .isEqualTo(ASSUMED_DEGREES);
        assertThat(contribution(row(calibration, "span of scale S-3"))).isCloseTo(0.01 / Math.sqrt(3) * 6, EXACT);
        assertThat(only(FindingCode.UNCERTAINTY_ASSUMED, calibration.findings()).sentence())
                .isEqualTo("The uncertainty shown takes a usual value for the scatter of the catches, the accuracy of"
                        + " scale S-3, which was not recorded (common practice, no source).");
        assertThat(codes(calibration.findings())).doesNotContain(FindingCode.UNCERTAINTY_INCOMPLETE);
    }

    @Test
    void aCountOfUnknownUncertaintyIsNamedEvenAmongThree() {
        CalibrationPoint watched = augerPoint(NoSensor.onDriveShaft());
        ShaftCount speedTimesTime = new ShaftCount.SpeedTimesTime(
                Amounts.of(60, SpreadingUnits.REVOLUTION_PER_MINUTE), Amounts.of(20, SpreadingUnits.SECOND));
        List<CalibrationCatch> catches = List.of(
                catchAt(watched, caught(118.5), speedTimesTime),
                catchAt(watched, caught(119), speedTimesTime),
                catchAt(watched, caught(118), speedTimesTime));
        Calibration calibration = Calibration.from(catches);

        assertThat(only(FindingCode.UNCERTAINTY_INCOMPLETE, calibration.findings())
                        .sentence())
                .isEqualTo("The uncertainty shown omits the uncertainty of the count, which was not recorded; the true"
                        + " uncertainty is larger.");
        assertThat(names(calibration))
                .containsExactly("rounding of the scale", "scatter of the catches", "span of scale S-1");
    }

    @Test
    void aWrongZeroOfTheScaleIsInNothing() {
        Calibration right = bySums(CatchAllowances.NONE, on(SCALE, 120, 2000));
        CalibrationCatch shifted = catchAt(
                AUGER_POINT, CaughtMass.of(SCALE, DAY, new Weighing("tarp", pounds(128), pounds(8))), pulses(2000));

        assertThat(bySums(CatchAllowances.NONE, shifted).budget().result())
                .isEqualTo(right.budget().result());
    }

    @Test
    void theResultIsThatOfTheBudget() {
        Calibration calibration =
                bySums(CatchAllowances.NONE, augerCatch(118.5, 2000), augerCatch(119, 2000), augerCatch(118, 2000));
        Budget<DischargePerRevolution> budget = calibration.budget();

        assertThat(calibration.dischargePerRevolution()).isEqualTo(budget.result());
        double u = Math.hypot(random(118.5), SPAN * 118.5 / 20);
        assertThat(Amounts.in(budget.result().standardUncertainty().orElseThrow(), POUND_PER_REVOLUTION))
                .isCloseTo(u, EXACT);
        assertThat(budget.result().degreesOfFreedom().orElseThrow())
                .isCloseTo(4 * Math.pow(u / scatter(118.5), 4), within(1e-9));
        assertThat(calibration.relativeScatter()).hasValueCloseTo(0.5 / 118.5, within(1e-12));
        assertThat(calibration.scatterDegreesOfFreedom()).isEqualTo(2);
    }

    /** By three catches of 20 revolutions and so many pounds, half a pound more, and half a pound less. */
    private static double scatter(double pounds) {
        double assumed = squares(ASSUMED / 60) * squares(pounds, pounds + 0.5, pounds - 0.5);
        return pooled(assumed, ASSUMED_DEGREES, squares(0.5 / 20) / 3 - rounded(pounds), 2);
    }

    private static double rounded(double pounds) {
        return 3 * squares(TWO_READINGS / 60, pounds / 20 * COUNT / 60);
    }

    /** All of it but the span. */
    private static double random(double pounds) {
        return Math.sqrt(squares(scatter(pounds)) + rounded(pounds));
    }

    @Test
    void comparedOnTheSameScaleItsSpanIsLeftOut() {
        Calibration first =
                bySums(CatchAllowances.NONE, on(SCALE, 118.5, 2000), on(SCALE, 119, 2000), on(SCALE, 118, 2000));
        Calibration second =
                bySums(CatchAllowances.NONE, on(SCALE, 120, 2000), on(SCALE, 120.5, 2000), on(SCALE, 119.5, 2000));
        double expanded = Math.hypot(expanded(118.5), expanded(120));

        assertThat(second.comparedWith(first).value()).isCloseTo(1.5 / 20 / expanded, within(1e-9));
        assertThat(first.comparedWith(second).value())
                .isCloseTo(-second.comparedWith(first).value(), EXACT);
    }

    private static double expanded(double pounds) {
        return student(4 * Math.pow(random(pounds) / scatter(pounds), 4)) * random(pounds);
    }

    @Test
    void comparedOnTwoScalesBothSpansCount() {
        Scale other = Scale.of("S-2", pounds(500), pounds(0.5))
                .withAccuracy(new ScaleAccuracy.Stated(Amounts.of(0.4, PERCENT)));
        Calibration first =
                bySums(CatchAllowances.NONE, on(SCALE, 118.5, 2000), on(SCALE, 119, 2000), on(SCALE, 118, 2000));
        Calibration second =
                bySums(CatchAllowances.NONE, on(other, 120, 2000), on(other, 120.5, 2000), on(other, 119.5, 2000));
        double u1 = Amounts.in(first.budget().result().expandedUncertainty(0.95).orElseThrow(), POUND_PER_REVOLUTION);
        double u2 =
                Amounts.in(second.budget().result().expandedUncertainty(0.95).orElseThrow(), POUND_PER_REVOLUTION);

        assertThat(second.comparedWith(first).value()).isCloseTo(1.5 / 20 / Math.hypot(u1, u2), within(1e-9));
    }

    /** A span wrong by 8 % in both calibrations moves their difference as it moves all else but the rounding. */
    @Test
    void aWrongSpanCancelsInAComparisonOnOneScale() {
        Scale fine = Scale.of("S-1", pounds(500), pounds(0.0001));
        Calibration first = bySums(CatchAllowances.NONE, on(fine, 100, 2000), on(fine, 101, 2000), on(fine, 99, 2000));
        Calibration second =
                bySums(CatchAllowances.NONE, on(fine, 102, 2000), on(fine, 103, 2000), on(fine, 101, 2000));
        Calibration wrongFirst =
                bySums(CatchAllowances.NONE, on(fine, 108, 2000), on(fine, 109.08, 2000), on(fine, 106.92, 2000));
        Calibration wrongSecond =
                bySums(CatchAllowances.NONE, on(fine, 110.16, 2000), on(fine, 111.24, 2000), on(fine, 109.08, 2000));

        assertThat(wrongSecond.comparedWith(wrongFirst).value())
                .isCloseTo(second.comparedWith(first).value(), within(1e-9));
    }
}
