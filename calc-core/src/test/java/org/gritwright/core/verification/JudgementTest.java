package org.gritwright.core.verification;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.gritwright.core.Samples.DAY;
import static org.gritwright.core.Samples.SCALE;
import static org.gritwright.core.Samples.augerCatch;
import static org.gritwright.core.Samples.augerInForce;
import static org.gritwright.core.Samples.codes;
import static org.gritwright.core.Samples.goodAugerCatches;
import static org.gritwright.core.Samples.only;
import static org.gritwright.core.Samples.pounds;
import static org.gritwright.core.Samples.pulses;
import static org.gritwright.core.Samples.revolutionsByEye;
import static org.gritwright.units.SpreadingUnits.PERCENT;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Mass;
import org.assertj.core.data.Offset;
import org.gritwright.core.calibration.Calibration;
import org.gritwright.core.finding.FindingCode;
import org.gritwright.core.judgement.DecisionRule;
import org.gritwright.core.judgement.Tolerance;
import org.gritwright.core.judgement.Verdict;
import org.gritwright.core.metering.ShaftCount;
import org.gritwright.core.observation.CatchAllowances;
import org.gritwright.core.observation.CatchLimits;
import org.gritwright.core.observation.ErrorSource;
import org.gritwright.core.observation.Moisture;
import org.gritwright.core.observation.Repeatability;
import org.gritwright.core.uncertainty.Component;
import org.gritwright.core.uncertainty.Component.Evaluation;
import org.gritwright.core.uncertainty.Conformity;
import org.gritwright.core.uncertainty.Distribution;
import org.gritwright.core.weighing.CaughtMass;
import org.gritwright.core.weighing.Scale;
import org.gritwright.core.weighing.ScaleAccuracy;
import org.gritwright.core.weighing.ScaleCheck;
import org.gritwright.core.weighing.Weighing;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** By hand: 300 lb indicated by 50 revolutions, half-pound readings of a scale that is right to 0.1 %. */
class JudgementTest {
    private static final Offset<Double> EXACT = within(1e-10);
    private static final Tolerance FOUR = Tolerance.percent(4);
    private static final double TWO_READINGS = Math.sqrt(2) * 0.5 / Math.sqrt(12);
    private static final double COUNT = 0.01 / Math.sqrt(6) / 50;
    private static final double SPAN = 0.001 / Math.sqrt(3);

    private static final Calibration GOOD = Calibration.from(goodAugerCatches());

    /** The relative deviation of 118.5, 119 and 118 lb. */
    private static final double SHOWN = 0.5 / 118.5;

    /** What nobody stated: 1 % with 2 degrees of freedom. */
    private static final double ASSUMED = 0.01;

    /** The relative variance of a catch of 20 revolutions by its readings and pulses. */
    private static double rounded(double pounds) {
        return Math.pow(TWO_READINGS / pounds, 2) + Math.pow(0.01 / Math.sqrt(6) / 20, 2);
    }

    private static double rounded(double... pounds) {
        return DoubleStream.of(pounds).map(JudgementTest::rounded).average().orElseThrow();
    }

    private static VerificationLimits allowing(CatchAllowances allowances) {
        return new VerificationLimits(
                CatchLimits.COMMON.withAllowances(allowances), VerificationLimits.COMMON.greatestCorrection());
    }

    private static VerificationLimits assuming(double percentScatter) {
        return allowing(new CatchAllowances(
                Amounts.of(0, PERCENT),
                Amounts.of(0, PERCENT),
                Optional.empty(),
                Optional.of(Repeatability.assumed(Amounts.of(percentScatter, PERCENT)))));
    }

    private static Verification simple(
            VerificationCatch source, VerificationLimits limits, Calibration... calibration) {
        return source.assess(
                FOUR, DecisionRule.SIMPLE, limits, Arrays.stream(calibration).findFirst());
    }

    private static double percent(Verification verification, String name) {
        return verification.judgement().budget().components().stream()
                .filter(c -> c.name().equals(name))
                .map(c -> Amounts.in(c.contribution(), PERCENT))
                .findFirst()
                .orElseThrow(() -> new AssertionError(
                        name + " of\n" + verification.judgement().budget()));
    }

    private static List<String> names(Verification verification) {
        return verification.judgement().budget().components().stream()
                .map(Component::name)
                .toList();
    }

    private static CaughtMass caughtOn(Scale scale, double pounds) {
        return CaughtMass.of(scale, DAY, new Weighing("tarp", pounds(pounds), pounds(0)));
    }

    private static VerificationCatch on(Scale scale, double pounds) {
        return Runs.of(augerInForce(6), Runs.seconds(120), caughtOn(scale, pounds), pulses(5000));
    }

    @Test
    void withoutCalibrationTheErrorHasRoundingCountAssumedScatterAndSpan() {
        Verification verification = simple(Runs.counted(5000, 290), VerificationLimits.COMMON);
        double perCent = 100 * 300 / 290.0;

        assertThat(names(verification))
                .containsExactly(
                        "rounding of the scale",
                        "count of revolutions",
                        "scatter of catches, assumed",
                        "span of scale S-1");
        assertThat(percent(verification, "scatter of catches, assumed")).isCloseTo(perCent * ASSUMED, EXACT);
        assertThat(percent(verification, "rounding of the scale")).isCloseTo(perCent * TWO_READINGS / 290, EXACT);
        assertThat(percent(verification, "count of revolutions")).isCloseTo(perCent * COUNT, EXACT);
        assertThat(percent(verification, "span of scale S-1")).isCloseTo(perCent * SPAN, EXACT);
        assertThat(verification.judgement().budget().components())
                .extracting(Component::distribution)
                .containsExactly(
                        Distribution.TRIANGULAR,
                        Distribution.TRIANGULAR,
                        Distribution.NORMAL,
                        Distribution.RECTANGULAR);
        assertThat(verification.judgement().budget().components())
                .extracting(Component::degreesOfFreedom)
                .containsExactly(Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY, 2.0, Double.POSITIVE_INFINITY);
        assertThat(Amounts.in(verification.judgement().budget().result().value(), PERCENT))
                .isCloseTo(perCent - 100, EXACT);
        assertThat(only(FindingCode.UNCERTAINTY_ASSUMED, verification.findings())
                        .sentence())
                .isEqualTo("The uncertainty shown takes a usual value for the scatter of the catches, which was not"
                        + " recorded (common practice, no source).");
        assertThat(codes(verification.findings())).doesNotContain(FindingCode.UNCERTAINTY_INCOMPLETE);
    }

    private static void assertScatter(Verification verification, double variance, double degreesOfFreedom) {
        assertThat(names(verification))
                .containsExactly(
                        "rounding of the scale", "count of revolutions", "scatter of the catches", "span of scale S-1");
        assertThat(percent(verification, "scatter of the catches"))
                .isCloseTo(100 * 300 / 290.0 * Math.sqrt(variance), EXACT);
        assertThat(percent(verification, "rounding of the scale"))
                .isCloseTo(100 * 300 / 290.0 * TWO_READINGS / 290, EXACT);
        Component<Dimensionless> scatter =
                verification.judgement().budget().components().get(2);
        assertThat(scatter.evaluation()).isEqualTo(Evaluation.TYPE_A);
        assertThat(scatter.degreesOfFreedom()).isEqualTo(degreesOfFreedom);
    }

    @Test
    void aCalibrationLendsItsScatterWithoutItsRounding() {
        Verification verification = simple(Runs.counted(5000, 290), VerificationLimits.COMMON, GOOD);
        double shown = SHOWN * SHOWN - rounded(118.5, 119, 118);

        assertScatter(verification, (2 * ASSUMED * ASSUMED + 2 * shown) / 4, 4);
        assertThat(codes(verification.findings()))
                .doesNotContain(FindingCode.UNCERTAINTY_INCOMPLETE, FindingCode.UNCERTAINTY_ASSUMED);
    }

    @Test
    void catchesAlikeLendThatTheyScatterByNothing() {
        Calibration alike =
                Calibration.from(List.of(augerCatch(118.5, 2000), augerCatch(118.5, 2000), augerCatch(118.5, 2000)));

        assertScatter(simple(Runs.counted(5000, 290), VerificationLimits.COMMON, alike), 2 * ASSUMED * ASSUMED / 4, 4);
    }

    @Test
    void twoCatchesLendWithOneDegreeOfFreedom() {
        Calibration two = Calibration.from(goodAugerCatches().subList(0, 2));
        Verification verification = simple(Runs.counted(5000, 290), VerificationLimits.COMMON, two);
        // 118.5 and 119 lb: two ratios are a half of their difference off their mean, relative to 118.75 lb.
        double shown = 2 * Math.pow(0.25 / 118.75, 2) - rounded(118.5, 119);

        assertScatter(verification, (2 * ASSUMED * ASSUMED + shown) / 3, 3);
        assertThat(codes(verification.findings())).contains(FindingCode.UNCERTAINTY_ASSUMED);
    }

    @Test
    void aScatterThatIsSimplyStatedStandsBesideACalibrationThatDoesntRefuteIt() {
        assertThat(names(simple(Runs.counted(5000, 290), assuming(1), GOOD)))
                .containsExactly(
                        "rounding of the scale",
                        "count of revolutions",
                        "scatter of catches, from experience",
                        "span of scale S-1");
    }

    /** Of 0.2 % stated, and 0.17 % by rounding, the calibration shows 1 %: 2 ÷ (0.2² + 0.17²) is 29, beyond 5.99. */
    @Test
    void aCalibrationThatRefutesWhatIsStatedLendsItsScatterAlone() {
        Calibration scattered = Calibration.from(
                List.of(augerCatch(118.5, 2000), augerCatch(119.685, 2000), augerCatch(117.315, 2000)));

        assertScatter(
                simple(Runs.counted(5000, 290), assuming(0.2), scattered), 1e-4 - rounded(118.5, 119.685, 117.315), 2);
    }

    /**
     * A step of a pound, a pulse of 0.06 lb more or less at either end, and what the display's two digits after the point hide
     * of 6 lb/rev: 0.005 of 6, of 300 lb.
     */
    @Test
    void aDisplayedMassIsUncertainByHalfItsStepByTwoPulsesAndByWhatItsValueHides() {
        Verification verification = simple(Runs.openLoop(290).indicated(pounds(300), pounds(1)), assuming(1));

        assertThat(names(verification))
                .containsExactly(
                        "rounding of the scale",
                        "step of the displayed mass",
                        "scatter of catches, from experience",
                        "span of scale S-1");
        assertThat(percent(verification, "step of the displayed mass"))
                .isCloseTo(
                        100 / 290.0 * Math.sqrt(0.5 * 0.5 / 3 + 2 * 0.06 * 0.06 / 6 + Math.pow(0.005 / 6 * 300, 2) / 3),
                        EXACT);
        assertThat(percent(verification, "scatter of catches, from experience")).isCloseTo(300 / 290.0, EXACT);
    }

    @Test
    void aCountByEyeIsAsUncertainAsItsObserver() {
        assertThat(percent(
                        simple(Runs.counted(revolutionsByEye(50), 290), VerificationLimits.COMMON),
                        "count of revolutions"))
                .isCloseTo(100 * 300 / 290.0 * 0.1 / 50, EXACT);
    }

    @Test
    void aCountOfUnknownUncertaintyIsNamed() {
        ShaftCount count = new ShaftCount.SpeedTimesTime(
                Amounts.of(30, SpreadingUnits.REVOLUTION_PER_MINUTE), Amounts.of(100, SpreadingUnits.SECOND));
        Verification verification = simple(Runs.counted(count, 290), VerificationLimits.COMMON);

        assertThat(names(verification))
                .containsExactly("rounding of the scale", "scatter of catches, assumed", "span of scale S-1");
        assertThat(only(FindingCode.UNCERTAINTY_INCOMPLETE, verification.findings())
                        .sentence())
                .isEqualTo("The uncertainty shown omits the uncertainty of the count, which was not recorded; the true"
                        + " uncertainty is larger.");
        assertThat(codes(verification.findings())).contains(FindingCode.UNCERTAINTY_ASSUMED);
    }

    @Test
    void openLoopTheDeliveryErrorIsJudged() {
        Verification verification = simple(Runs.openLoop(270), VerificationLimits.COMMON);

        assertThat(names(verification))
                .containsExactly("rounding of the scale", "scatter of catches, assumed", "span of scale S-1");
        assertThat(percent(verification, "rounding of the scale")).isCloseTo(100 * 0.9 * TWO_READINGS / 270, EXACT);
        assertThat(Amounts.in(verification.judgement().budget().result().value(), PERCENT))
                .isCloseTo(-10, EXACT);
    }

    @Test
    void spillageMovesTheErrorAndMoistureIsLeftOut() {
        Verification verification = simple(
                Runs.counted(5000, 297),
                allowing(new CatchAllowances(
                        Amounts.of(2, PERCENT),
                        Amounts.of(1, PERCENT),
                        Optional.of(
                                new Moisture(Amounts.of(5, PERCENT), Amounts.of(1, PERCENT), Moisture.Basis.WET_MASS)),
                        Optional.empty())));

        // 297 lb caught are 300 lb discharged.
        assertThat(Amounts.in(verification.calibrationError().orElseThrow(), PERCENT))
                .isCloseTo(0, EXACT);
        assertThat(names(verification))
                .containsExactly(
                        "rounding of the scale",
                        "count of revolutions",
                        "scatter of catches, assumed",
                        "span of scale S-1",
                        "spillage",
                        "start-up transient");
        assertThat(percent(verification, "spillage")).isCloseTo(1 / Math.sqrt(3) / 0.99, EXACT);
        assertThat(percent(verification, "rounding of the scale")).isCloseTo(100 * TWO_READINGS / 297, EXACT);
    }

    /** Error and assumed scatter in percent; ±4 %, guarded with a risk of 5 %. */
    @ParameterizedTest
    @CsvSource({
        "0, 1, WITHIN_TOLERANCE, LEAVE",
        "3, 0.5, WITHIN_TOLERANCE, OPTIONAL",
        "-3, 0.5, WITHIN_TOLERANCE, OPTIONAL",
        "3, 1, UNDECIDED, CATCH_MORE",
        "2, 2, UNDECIDED, CATCH_MORE",
        "5, 1, UNDECIDED, CATCH_MORE",
        "4.6, 2.3, UNDECIDED, CATCH_MORE",
        "8, 1, OUTSIDE_TOLERANCE, CORRECT",
        "-8, 1, OUTSIDE_TOLERANCE, CORRECT",
        "1, 3, UNDECIDABLE, CATCH_MORE",
        "7, 3, UNDECIDABLE, CATCH_MORE"
    })
    void verdictAndAdviceFollowFromErrorAndUncertainty(double percent, double scatter, Verdict verdict, Advice advice) {
        Verification verification = Runs.counted(5000, 300 / (1 + percent / 100))
                .assess(FOUR, DecisionRule.guarded(5), assuming(scatter), Optional.empty());
        Judgement judgement = verification.judgement();

        assertThat(judgement.verdict()).isEqualTo(verdict);
        assertThat(judgement.advice()).isEqualTo(advice);
        assertThat(verification.verdict()).isEqualTo(verdict);
        assertThat(codes(verification.findings()).contains(FindingCode.TOLERANCE_MISSED))
                .isEqualTo(verdict == Verdict.OUTSIDE_TOLERANCE);
        assertThat(judgement.further().isPresent()).isEqualTo(advice == Advice.CATCH_MORE);
    }

    @Test
    void theJudgementKeepsWhatItIsMadeOf() {
        DecisionRule rule = DecisionRule.guarded(5);
        Verification verification = Runs.counted(5000, 300 / 1.03).assess(FOUR, rule, assuming(1), Optional.empty());
        Judgement judgement = verification.judgement();
        double random = 0.01 * 0.01 + Math.pow(TWO_READINGS * 1.03 / 300, 2) + COUNT * COUNT;
        double u = 1.03 * Math.sqrt(random + SPAN * SPAN);

        assertThat(judgement.rule()).isEqualTo(rule);
        assertThat(judgement.tolerance()).isEqualTo(FOUR);
        assertThat(Amounts.in(judgement.guardBand(), PERCENT)).isCloseTo(164.4853627 * u, within(1e-6));
        assertThat(Amounts.in(judgement.expandedUncertainty(), PERCENT)).isCloseTo(195.9963985 * u, within(1e-6));
        Conformity expected = Conformity.of(0.03, u, Double.POSITIVE_INFINITY, -0.04, 0.04);
        assertThat(judgement.conformity().within()).isCloseTo(expected.within(), within(1e-9));
        assertThat(judgement.conformity().above()).isCloseTo(expected.above(), within(1e-9));
        assertThat(judgement.conformity().below()).isCloseTo(expected.below(), within(1e-9));
        // Guard bands of n: 1.7, 1.2, 0.99 %; 1 % is there.
        assertThat(judgement.further().orElseThrow().catches()).isEqualTo(2);
        assertThat(Amounts.in(judgement.further().orElseThrow().amount().asType(Mass.class), SpreadingUnits.POUND))
                .isCloseTo(2 * 300 / 1.03, within(1e-9));
    }

    @Test
    void furtherCatchesTellMoreOfTheScatterToo() {
        Calibration scattered = Calibration.from(
                List.of(augerCatch(118.5, 2000), augerCatch(119.685, 2000), augerCatch(117.315, 2000)));
        Judgement judgement = Runs.counted(5000, 300 / 1.02)
                .assess(FOUR, DecisionRule.guarded(5), VerificationLimits.COMMON, Optional.of(scattered))
                .judgement();

        // 1 % is shown, less the rounding, and 1 % assumed, each with 2 degrees of freedom: 2.132·1.02 % leaves 1.8 %;
        // span and
        // rounding have a factor of their own. Of two, 5 degrees: 2.015·0.72 % = 1.45 %, 2 % is there.
        double scatter = (1e-4 - rounded(118.5, 119.685, 117.315) + ASSUMED * ASSUMED) / 2;
        double rest = SPAN * SPAN + Math.pow(TWO_READINGS * 1.02 / 300, 2) + COUNT * COUNT;
        assertThat(Amounts.in(judgement.guardBand(), PERCENT))
                .isCloseTo(102 * Math.hypot(2.131847 * Math.sqrt(scatter), 1.644854 * Math.sqrt(rest)), within(1e-4));
        assertThat(judgement.verdict()).isEqualTo(Verdict.UNDECIDED);
        assertThat(judgement.further().orElseThrow().catches()).isEqualTo(1);
    }

    /** Hand-made guard bands of n catches: 1.645·√((1 %)²/n + span²), against what the error leaves of 4 %. */
    @ParameterizedTest
    @ValueSource(doubles = {2.5, 2.9, 3, 3.2, 3.4, 3.6, 3.7})
    void theFewestCatchesAreAsked(double percent) {
        Judgement judgement = Runs.counted(5000, 300 / (1 + percent / 100))
                .assess(FOUR, DecisionRule.guarded(5), assuming(1), Optional.empty())
                .judgement();
        double factor = 1 + percent / 100;
        double random = 0.01 * 0.01 + Math.pow(TWO_READINGS * factor / 300, 2) + COUNT * COUNT;
        int fewest = IntStream.rangeClosed(1, 50)
                .filter(n -> percent / 100 <= 0.04 - 1.6448536 * factor * Math.sqrt(random / n + SPAN * SPAN))
                .findFirst()
                .orElseThrow();

        assertThat(judgement.further().map(Judgement.FurtherCatches::catches).orElse(0))
                .isEqualTo(fewest - 1);
    }

    @Test
    void noNumberOfCatchesTellsWhatTheScaleHides() {
        Scale poor = Scale.of("S-9", pounds(5000), pounds(0.5))
                .withAccuracy(new ScaleAccuracy.Stated(Amounts.of(5, PERCENT)));
        Judgement judgement = on(poor, 300)
                .assess(FOUR, DecisionRule.guarded(5), assuming(0.5), Optional.empty())
                .judgement();

        assertThat(judgement.verdict()).isEqualTo(Verdict.UNDECIDABLE);
        assertThat(judgement.advice()).isEqualTo(Advice.CATCH_MORE);
        assertThat(judgement.further()).isEmpty();
        assertThat(judgement.mainCause().map(Component::key)).hasValue(ErrorSource.spanOf(poor));
        assertThat(judgement.mainCause().map(Component::name)).hasValue("span of scale S-9");
    }

    @Test
    void thereIsNoMainCauseWhereTheErrorIsJustTooNearALimit() {
        // 1.645·√((1 %)²/51 + (0.058 %)²) is 0.25 %, and 0.1 % is there; the scatter outweighs the span even then.
        Judgement judgement = Runs.counted(5000, 300 / 1.039)
                .assess(FOUR, DecisionRule.guarded(5), assuming(1), Optional.empty())
                .judgement();

        assertThat(judgement.advice()).isEqualTo(Advice.CATCH_MORE);
        assertThat(judgement.further()).isEmpty();
        assertThat(judgement.mainCause()).isEmpty();
    }

    @Test
    void thereIsNoMainCauseWhereMoreCatchesCanTell() {
        Judgement judgement = Runs.counted(5000, 300 / 1.03)
                .assess(FOUR, DecisionRule.guarded(5), assuming(1), Optional.empty())
                .judgement();

        assertThat(judgement.further()).isPresent();
        assertThat(judgement.mainCause()).isEmpty();
    }

    @Test
    void simpleAcceptanceHasNoGuardBandAndTwoVerdicts() {
        Judgement judgement =
                simple(Runs.counted(5000, 300 / 1.03), assuming(3)).judgement();

        assertThat(judgement.verdict()).isEqualTo(Verdict.WITHIN_TOLERANCE);
        assertThat(judgement.advice()).isEqualTo(Advice.LEAVE);
        assertThat(Amounts.in(judgement.guardBand(), PERCENT)).isZero();
        assertThat(simple(Runs.counted(5000, 300 / 1.05), assuming(3))
                        .judgement()
                        .advice())
                .isEqualTo(Advice.CATCH_MORE);
    }

    @Test
    void oneScaleForBothIsBlindToItsSpan() {
        assertThat(only(
                                FindingCode.SAME_SCALE_BLIND,
                                simple(on(SCALE, 290), VerificationLimits.COMMON, GOOD)
                                        .findings())
                        .sentence())
                .isEqualTo("Calibration and verification were weighed on scale S-1: neither would notice a wrong span."
                        + " Check it with a test weight near the load.");
    }

    @Test
    void aTestWeightNearTheLoadAnotherScaleOrNoCalibrationIsNotBlind() {
        Scale tested = SCALE.checked(new ScaleCheck(DAY, pounds(200), pounds(200)));
        Scale testedLater = SCALE.checked(new ScaleCheck(DAY.plusDays(1), pounds(200), pounds(200)));
        Scale other = Scale.of("S-2", pounds(5000), pounds(0.5));

        assertThat(codes(
                        simple(on(tested, 290), VerificationLimits.COMMON, GOOD).findings()))
                .doesNotContain(FindingCode.SAME_SCALE_BLIND);
        assertThat(codes(simple(on(other, 290), VerificationLimits.COMMON, GOOD).findings()))
                .doesNotContain(FindingCode.SAME_SCALE_BLIND);
        assertThat(codes(simple(on(SCALE, 290), VerificationLimits.COMMON).findings()))
                .doesNotContain(FindingCode.SAME_SCALE_BLIND);
        assertThat(codes(simple(on(testedLater, 290), VerificationLimits.COMMON, GOOD)
                        .findings()))
                .contains(FindingCode.SAME_SCALE_BLIND);
    }

    @Test
    void aRunTimeStandsForACountOnlyWhereNothingWasCounted() {
        assertThat(only(
                                FindingCode.UNCERTAINTY_INCOMPLETE,
                                simple(Runs.openLoop(290), VerificationLimits.COMMON)
                                        .findings())
                        .sentence())
                .contains("the run time");
        assertThat(codes(simple(Runs.counted(5000, 290), VerificationLimits.COMMON)
                        .findings()))
                .doesNotContain(FindingCode.UNCERTAINTY_INCOMPLETE);
    }
}
