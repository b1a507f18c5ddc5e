package org.gritwright.core.curve;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.gritwright.core.Samples.catchAt;
import static org.gritwright.core.Samples.caught;
import static org.gritwright.core.Samples.chainAt;
import static org.gritwright.core.Samples.codes;
import static org.gritwright.core.Samples.height;
import static org.gritwright.core.Samples.inches;
import static org.gritwright.core.Samples.only;
import static org.gritwright.core.Samples.pulses;
import static org.gritwright.core.curve.DischargeCurveSamples.DEAD_OPENING_EXAMPLE;
import static org.gritwright.core.curve.DischargeCurveSamples.at;
import static org.gritwright.core.curve.DischargeCurveSamples.byCurve;
import static org.gritwright.core.curve.DischargeCurveSamples.chosen;
import static org.gritwright.core.curve.DischargeCurveSamples.deadOpening;
import static org.gritwright.core.curve.DischargeCurveSamples.fit;
import static org.gritwright.core.curve.DischargeCurveSamples.pounds;
import static org.gritwright.core.curve.DischargeCurveSamples.repeated;
import static org.gritwright.core.curve.DischargeCurveSamples.uncertainty;

import java.util.List;
import org.gritwright.core.calibration.CalibrationCatch;
import org.gritwright.core.finding.FindingCode;
import org.gritwright.core.finding.Term;
import org.gritwright.core.observation.CatchLimits;
import org.gritwright.core.statistics.RatioEstimator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The choice of the model by test. */
class DischargeCurveModelTest {
    private static final double[] OPENINGS = {2, 4, 6};

    /** Nearly in proportion, and repeated to 1 %. */
    private static final List<CalibrationCatch> NEARLY_PROPORTIONAL =
            repeated(OPENINGS, new double[] {31.9, 64.3, 95.8}, 0.99, 1, 1.01);

    @Test
    void aDischargeInProportionToTheGeometryIsTakenAsThat() {
        DischargeCurve curve = chosen(NEARLY_PROPORTIONAL);

        assertThat(curve.model()).isEqualTo(CurveModel.PROPORTIONAL);
        assertThat(curve.test().orElseThrow().chance()).isGreaterThan(0.05);
        assertThat(curve.findings()).isEmpty();
        assertThat(pounds(curve, 3)).isEqualTo(pounds(fit(CurveModel.PROPORTIONAL, NEARLY_PROPORTIONAL), 3));
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.1, 1, 2, 3, 5, 8, 30})
    void theUncertaintyOfAChosenProportionCoversADeadOpeningToo(double inches) {
        DischargeCurve curve = chosen(NEARLY_PROPORTIONAL);
        DischargeCurve proportional = fit(CurveModel.PROPORTIONAL, NEARLY_PROPORTIONAL);
        DischargeCurve rival = fit(CurveModel.DEAD_OPENING, NEARLY_PROPORTIONAL);
        double difference = pounds(proportional, inches) - pounds(rival, inches);
        double larger = Math.max(
                uncertainty(proportional, inches).orElseThrow(),
                uncertainty(rival, inches).orElseThrow());

        assertThat(uncertainty(curve, inches).orElseThrow()).isCloseTo(Math.hypot(larger, difference), within(1e-12));
        assertThat(Math.abs(difference)).isGreaterThan(0);
        assertThat(byCurve(curve.predict(height(inches))).degreesOfFreedom())
                .isEqualTo(byCurve(rival.predict(height(inches))).degreesOfFreedom());
    }

    @Test
    void whereTheDeadOpeningLetsNothingThroughTheWholePredictionIsUncertain() {
        // The rival closes at about 0.05 in.
        List<CalibrationCatch> catches = repeated(OPENINGS, new double[] {31.3, 64, 96.2}, 0.98, 1, 1.02);
        DischargeCurve curve = chosen(catches);
        double dead = deadOpening(fit(CurveModel.DEAD_OPENING, catches));

        assertThat(curve.model()).isEqualTo(CurveModel.PROPORTIONAL);
        assertThat(dead).isGreaterThan(0.01);
        double value = pounds(curve, dead / 2);
        double own =
                uncertainty(fit(CurveModel.PROPORTIONAL, catches), dead / 2).orElseThrow();
        assertThat(uncertainty(curve, dead / 2).orElseThrow()).isCloseTo(Math.hypot(own, value), within(1e-12));
    }

    @Test
    void aStatedProportionIsNotWidened() {
        DischargeCurve stated = fit(CurveModel.PROPORTIONAL, NEARLY_PROPORTIONAL);

        // All repeats scatter alike: the relative uncertainty is the same everywhere.
        assertThat(uncertainty(stated, 1).orElseThrow() / pounds(stated, 1))
                .isCloseTo(uncertainty(stated, 6).orElseThrow() / pounds(stated, 6), within(1e-15));
    }

    @ParameterizedTest
    @EnumSource
    void theDeadOpeningOfTheExampleIsChosenOnceRepeatsShowIt(CurveModel untested) {
        List<CalibrationCatch> catches = repeated(new double[] {2, 4}, new double[] {26, 58}, 0.99, 1.01);
        DischargeCurve curve = DischargeCurve.chosenByTest(catches, untested);

        assertThat(curve.model()).isEqualTo(CurveModel.DEAD_OPENING);
        assertThat(deadOpening(curve)).isCloseTo(0.375, within(1e-9));
        assertThat(pounds(curve, 3)).isCloseTo(42, within(1e-9));
        assertThat(curve.test()).isEmpty();
    }

    @Test
    void aDeadOpeningThatPassesItsOwnTestIsChosen() {
        DischargeCurve curve = chosen(repeated(OPENINGS, new double[] {26.1, 57.8, 90.2}, 0.99, 1, 1.01));

        assertThat(curve.model()).isEqualTo(CurveModel.DEAD_OPENING);
        assertThat(curve.test().orElseThrow().misfitDegrees()).isEqualTo(1);
        assertThat(curve.test().orElseThrow().scatterDegrees()).isEqualTo(6);
        assertThat(curve.test().orElseThrow().chance()).isGreaterThan(0.05);
        assertThat(codes(curve.findings())).containsExactly(FindingCode.DEAD_OPENING_FOUND);
    }

    /** Off by 1 % where catches repeat to 0.1 %: the test refuses both shapes, but a table would be worse beyond. */
    @Test
    void aSmallMisfitIsNoReasonForATable() {
        DischargeCurve curve = chosen(repeated(OPENINGS, new double[] {26, 58 * 1.02, 90}, 0.999, 1.001));

        assertThat(curve.model()).isEqualTo(CurveModel.DEAD_OPENING);
        assertThat(curve.test().orElseThrow().chance()).isLessThan(0.01);
        assertThat(codes(curve.findings())).contains(FindingCode.MODEL_MISFIT);
        double misfit = Math.abs(58 * 1.02 / pounds(curve, 4) - 1);
        assertThat(misfit).isBetween(0.005, 0.02);
        assertThat(uncertainty(curve, 3).orElseThrow()).isGreaterThan(misfit * pounds(curve, 3));
    }

    /** Off by 5 %, refused at 5 % and not at 1 %: that may be chance. */
    @Test
    void aLargeMisfitThatMayBeChanceIsNoReasonForATable() {
        DischargeCurve curve = chosen(repeated(OPENINGS, new double[] {26, 58 * 1.1, 90}, 0.98, 1.02));

        assertThat(curve.test().orElseThrow().chance()).isBetween(0.01, 0.05);
        assertThat(curve.model()).isEqualTo(CurveModel.DEAD_OPENING);
        assertThat(codes(curve.findings())).contains(FindingCode.MODEL_MISFIT);
    }

    @Test
    void aBentDischargeBecomesATableThatSaysWhy() {
        DischargeCurve curve = chosen(repeated(OPENINGS, new double[] {26, 52, 60}, 0.99, 1.01));

        assertThat(curve.model()).isEqualTo(CurveModel.TABLE);
        assertThat(pounds(curve, 4)).isCloseTo(52, within(1e-12));
        assertThat(pounds(curve, 5)).isCloseTo(56, within(1e-12));
        assertThat(curve.test()).isEmpty();
        assertThat(only(FindingCode.MODEL_MISFIT, curve.findings()).arguments())
                .containsEntry("model", Term.DEAD_OPENING);
    }

    @Test
    void aFallingDischargeBecomesATableThatSaysWhy() {
        DischargeCurve curve = chosen(repeated(OPENINGS, new double[] {60, 58, 56}, 0.99, 1.01));

        assertThat(curve.model()).isEqualTo(CurveModel.TABLE);
        assertThat(pounds(curve, 4)).isCloseTo(58, within(1e-12));
        assertThat(only(FindingCode.MODEL_MISFIT, curve.findings()).arguments())
                .containsEntry("model", Term.PROPORTIONAL);
    }

    @ParameterizedTest
    @EnumSource
    void withoutRepeatsItIsTheCallersModel(CurveModel untested) {
        DischargeCurve curve = DischargeCurve.chosenByTest(List.of(at(2, 26), at(4, 58), at(6, 90)), untested);

        assertThat(curve.model()).isEqualTo(untested);
        assertThat(curve.test()).isEmpty();
    }

    @ParameterizedTest
    @EnumSource(names = "DEAD_OPENING", mode = EnumSource.Mode.EXCLUDE)
    void withOneOpeningItIsTheCallersModel(CurveModel untested) {
        DischargeCurve curve = DischargeCurve.chosenByTest(List.of(at(4, 58), at(4, 57), at(4, 59)), untested);

        assertThat(curve.model()).isEqualTo(untested);
        assertThat(curve.test()).isEmpty();
    }

    @Test
    void anUntestedProportionIsNotWidened() {
        List<CalibrationCatch> once = List.of(at(2, 31), at(4, 65));
        DischargeCurve untested = DischargeCurve.chosenByTest(once, CurveModel.PROPORTIONAL);

        assertThat(uncertainty(untested, 1)).isEqualTo(uncertainty(fit(CurveModel.PROPORTIONAL, once), 1));
    }

    @Test
    void theTestWeighsAsTheEstimatorDoes() {
        // One of the catches at 4 in is six times as long, and off.
        List<CalibrationCatch> catches =
                List.of(at(2, 32), at(2, 32.6), at(4, 64), catchAt(chainAt(4), caught(60 * 70), pulses(6000)));
        DischargeCurve bySums = DischargeCurve.chosenByTest(
                catches, CurveModel.TABLE, RatioEstimator.RATIO_OF_SUMS, CatchLimits.COMMON);
        DischargeCurve byRatios = DischargeCurve.chosenByTest(
                catches, CurveModel.TABLE, RatioEstimator.MEAN_OF_RATIOS, CatchLimits.COMMON);

        assertThat(pounds(bySums, 4)).isNotCloseTo(pounds(byRatios, 4), within(0.1));
        assertThat(bySums.test().orElseThrow().chance())
                .isNotCloseTo(byRatios.test().orElseThrow().chance(), within(0.01));
    }

    /** The example is never forced through zero without a word, whatever repeats it has and whatever is asked for. */
    @ParameterizedTest
    @ValueSource(doubles = {0, 0.001, 0.01, 0.02, 0.05, 0.1, 0.2})
    void theExampleIsNeverSilentlyALineThroughZero(double scatter) {
        for (CurveModel untested : CurveModel.values()) {
            for (List<CalibrationCatch> catches : List.of(
                    DEAD_OPENING_EXAMPLE,
                    repeated(new double[] {2, 4}, new double[] {26, 58}, 1 - scatter, 1 + scatter))) {
                DischargeCurve curve = DischargeCurve.chosenByTest(catches, untested);
                if (curve.model() == CurveModel.PROPORTIONAL) {
                    assertThat(codes(curve.findings())).contains(FindingCode.CURVE_SCATTER);
                    assertThat(curve.findings().stream().anyMatch(f -> f.code().doubtsData()))
                            .isTrue();
                } else if (curve.model() == CurveModel.DEAD_OPENING) {
                    assertThat(pounds(curve, 1)).isCloseTo(10, within(1e-9));
                }
                assertThat(codes(curve.predict(height(1)).findings())).containsExactly(FindingCode.GEOMETRY_ALONE);
            }
        }
    }

    @Test
    void whereATestPassesForWantOfRepeatsTheUncertaintyTellsOfTheDeadOpening() {
        // The example with repeats that scatter by 3 %: the test no longer refuses k·g(h).
        DischargeCurve curve = chosen(repeated(new double[] {2, 4}, new double[] {26, 58}, 0.97, 1.03));

        assertThat(curve.model()).isEqualTo(CurveModel.PROPORTIONAL);
        assertThat(uncertainty(curve, 1).orElseThrow()).isGreaterThan(pounds(curve, 1) - 10);
    }
}
