package org.gritwright.core.curve;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.gritwright.core.Samples.DAY;
import static org.gritwright.core.Samples.butForUnknown;
import static org.gritwright.core.Samples.catchAt;
import static org.gritwright.core.Samples.caught;
import static org.gritwright.core.Samples.chainAt;
import static org.gritwright.core.Samples.codes;
import static org.gritwright.core.Samples.inches;
import static org.gritwright.core.Samples.numbers;
import static org.gritwright.core.Samples.only;
import static org.gritwright.core.Samples.pounds;
import static org.gritwright.core.Samples.pulses;
import static org.gritwright.core.curve.DischargeCurveSamples.DEAD_OPENING_EXAMPLE;
import static org.gritwright.core.curve.DischargeCurveSamples.at;
import static org.gritwright.core.curve.DischargeCurveSamples.chosen;
import static org.gritwright.core.curve.DischargeCurveSamples.deadOpening;
import static org.gritwright.core.curve.DischargeCurveSamples.fit;
import static org.gritwright.core.curve.DischargeCurveSamples.repeated;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.gritwright.core.SimulatedDay;
import org.gritwright.core.calibration.CalibrationCatch;
import org.gritwright.core.finding.Finding;
import org.gritwright.core.finding.FindingCode;
import org.gritwright.core.finding.Term;
import org.gritwright.core.observation.CatchAllowances;
import org.gritwright.core.observation.CatchLimits;
import org.gritwright.core.statistics.CurveFit;
import org.gritwright.core.statistics.RatioEstimator;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.core.weighing.CaughtMass;
import org.gritwright.core.weighing.Scale;
import org.gritwright.core.weighing.Weighing;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.junit.jupiter.api.Test;

/** Every finding of a curve, raised and just not raised. */
class DischargeCurveFindingsTest {
    @Test
    void tooFewOpeningsAreFewerThanItTakesToTestTheModel() {
        Finding one = only(
                FindingCode.TOO_FEW_OPENINGS,
                fit(CurveModel.PROPORTIONAL, at(4, 58)).findings());
        assertThat(numbers(one))
                .containsEntry("openings", Amounts.of(1, SpreadingUnits.ONE))
                .containsEntry("wanted", Amounts.of(2, SpreadingUnits.ONE));
        assertThat(one.arguments()).containsEntry("model", Term.PROPORTIONAL);
        assertThat(fit(CurveModel.PROPORTIONAL, at(4, 58), at(2, 29)).findings())
                .isEmpty();

        assertThat(codes(butForUnknown(
                        fit(CurveModel.DEAD_OPENING, DEAD_OPENING_EXAMPLE).findings())))
                .containsExactly(FindingCode.TOO_FEW_OPENINGS, FindingCode.DEAD_OPENING_FOUND);
        assertThat(codes(fit(CurveModel.DEAD_OPENING, at(2, 26), at(4, 58), at(6, 90))
                        .findings()))
                .containsExactly(FindingCode.DEAD_OPENING_FOUND);

        assertThat(butForUnknown(fit(CurveModel.TABLE, at(4, 58)).findings())).isEmpty();
    }

    /** One catch more than the curve has parameters shows a scatter; one fewer shows none. */
    @Test
    void whatIsAssumedOfTheScatterIsSaidWhereTheCurveShowsNone() {
        String unknown =
                "The uncertainty shown takes a usual value for the scatter of the catches, which was not recorded (common"
                        + " practice, no source).";
        for (DischargeCurve none : List.of(
                fit(CurveModel.PROPORTIONAL, at(4, 58)),
                fit(CurveModel.DEAD_OPENING, DEAD_OPENING_EXAMPLE),
                fit(CurveModel.TABLE, at(2, 26), at(4, 58)))) {
            assertThat(only(FindingCode.UNCERTAINTY_ASSUMED, none.findings()).sentence())
                    .isEqualTo(unknown);
        }
        for (DischargeCurve some : List.of(
                fit(CurveModel.PROPORTIONAL, at(4, 58), at(4, 58)),
                fit(CurveModel.DEAD_OPENING, at(2, 26), at(4, 58), at(4, 58)),
                fit(CurveModel.TABLE, at(2, 26), at(4, 58), at(4, 58)))) {
            assertThat(codes(some.findings())).doesNotContain(FindingCode.UNCERTAINTY_ASSUMED);
        }
        assertThat(DischargeCurve.fit(
                                List.of(at(4, 58)),
                                CurveModel.TABLE,
                                RatioEstimator.RATIO_OF_SUMS,
                                SimulatedDay.limits(0, 0.01))
                        .findings())
                .isEmpty();
    }

    @Test
    void whatIsAssumedOfTheScaleIsSaid() {
        CaughtMass onUnknown = CaughtMass.of(
                Scale.of("yard 2", pounds(5000), pounds(0.5)), DAY, new Weighing("tarp", pounds(580), pounds(0)));
        DischargeCurve curve =
                fit(CurveModel.PROPORTIONAL, catchAt(chainAt(4), onUnknown, pulses(1000)), at(4, 58.5), at(2, 29));

        assertThat(only(FindingCode.UNCERTAINTY_ASSUMED, curve.findings()).sentence())
                .contains("the accuracy of scale yard 2");
    }

    /**
     * Two openings, off by −d and d, each caught twice, at −e and e. F = 2d²/e² on 1 and 2 degrees of freedom, of which
     * 5 % lie above 18.513.
     */
    private static List<CalibrationCatch> off(double d, double e) {
        return repeated(new double[] {2, 4}, new double[] {32 * (1 - d), 64 * (1 + d)}, 1 - e, 1 + e);
    }

    @Test
    void aMisfitIsOneThatHasAChanceBelowFivePercent() {
        Finding misfit = only(
                FindingCode.MODEL_MISFIT,
                fit(CurveModel.PROPORTIONAL, off(0.0305, 0.01)).findings());
        assertThat(misfit.number("chance").getUnit()).isEqualTo(SpreadingUnits.PERCENT);
        assertThat(misfit.number("chance").getValue().doubleValue())
                .isCloseTo(100 * (1 - Math.sqrt(18.605 / 20.605)), within(1e-9));
        assertThat(misfit.arguments()).containsEntry("model", Term.PROPORTIONAL);

        assertThat(fit(CurveModel.PROPORTIONAL, off(0.0304, 0.01)).findings()).isEmpty();
    }

    @Test
    void theModelChangesWhereTheMisfitBegins() {
        assertThat(chosen(off(0.0305, 0.01)).model()).isEqualTo(CurveModel.DEAD_OPENING);
        assertThat(chosen(off(0.0304, 0.01)).model()).isEqualTo(CurveModel.PROPORTIONAL);
    }

    @Test
    void aStatedDeadOpeningCanBeAMisfitToo() {
        List<CalibrationCatch> bent = repeated(new double[] {2, 4, 6}, new double[] {26, 52, 60}, 0.99, 1.01);
        Finding misfit = only(
                FindingCode.MODEL_MISFIT, fit(CurveModel.DEAD_OPENING, bent).findings());

        assertThat(misfit.arguments()).containsEntry("model", Term.DEAD_OPENING);
        assertThat(codes(fit(CurveModel.TABLE, bent).findings())).isEmpty();
    }

    /** Three catches at one opening whose relative deviation is e. */
    private static List<CalibrationCatch> scattered(double e) {
        return List.of(at(4, 64 * (1 - e)), at(4, 64), at(4, 64 * (1 + e)), at(2, 32), at(2, 32), at(2, 32));
    }

    @Test
    void aScatterIsOneAboveTheLimit() {
        // s² = 2e²/5: 5 % at e = 7.9057 %.
        double atTheLimit = 0.05 * Math.sqrt(2.5);
        Finding scatter = only(
                FindingCode.CURVE_SCATTER,
                fit(CurveModel.PROPORTIONAL, scattered(atTheLimit * 1.0001)).findings());
        assertThat(numbers(scatter)).containsEntry("limit", CatchLimits.COMMON.greatestScatter());
        assertThat(scatter.number("scatter").getValue().doubleValue()).isCloseTo(5.0005, within(1e-9));
        assertThat(scatter.arguments()).containsEntry("model", Term.PROPORTIONAL);

        assertThat(fit(CurveModel.PROPORTIONAL, scattered(atTheLimit)).findings())
                .isEmpty();
        assertThat(codes(fit(CurveModel.DEAD_OPENING, scattered(0.1)).findings()))
                .contains(FindingCode.CURVE_SCATTER);
        assertThat(codes(fit(CurveModel.TABLE, scattered(0.1)).findings())).isEmpty();
    }

    @Test
    void theLimitOfTheScatterIsTheCallers() {
        CatchLimits strict = new CatchLimits(
                Optional.empty(),
                CatchLimits.COMMON.fewestPulses(),
                CatchLimits.COMMON.fewestRevolutions(),
                100,
                Amounts.of(1, SpreadingUnits.PERCENT),
                CatchLimits.COMMON.greatestCountUncertainty(),
                CatchAllowances.NONE);
        List<CalibrationCatch> catches = scattered(0.03);

        assertThat(fit(CurveModel.PROPORTIONAL, catches).findings()).isEmpty();
        assertThat(codes(DischargeCurve.fit(catches, CurveModel.PROPORTIONAL, RatioEstimator.RATIO_OF_SUMS, strict)
                        .findings()))
                .containsExactly(FindingCode.CURVE_SCATTER);
        assertThat(codes(DischargeCurve.chosenByTest(catches, CurveModel.TABLE, RatioEstimator.RATIO_OF_SUMS, strict)
                        .findings()))
                .containsExactly(FindingCode.CURVE_SCATTER);
    }

    @Test
    void aDeadOpeningIsFoundExactlyWhereItsIntervalLeavesOutZero() {
        int found = 0;
        int steps = 60;
        for (int i = 0; i < steps; i++) {
            double dead = (i - steps / 2) * 0.01;
            DischargeCurve curve = fit(
                    CurveModel.DEAD_OPENING,
                    repeated(
                            new double[] {2, 4, 6},
                            new double[] {16 * (2 - dead), 16 * (4 - dead), 16 * (6 - dead)},
                            0.98,
                            1.02));
            double halfWidth = curve.deadOpening()
                    .orElseThrow()
                    .expandedUncertainty(0.95)
                    .orElseThrow()
                    .getValue()
                    .doubleValue();
            boolean isFound = codes(curve.findings()).contains(FindingCode.DEAD_OPENING_FOUND);

            assertThat(isFound).as("at %s", dead).isEqualTo(Math.abs(deadOpening(curve)) > halfWidth);
            if (isFound) {
                found++;
                assertThat(numbers(only(FindingCode.DEAD_OPENING_FOUND, curve.findings())))
                        .containsEntry(
                                "deadOpening", curve.deadOpening().orElseThrow().value());
            }
        }
        assertThat(found).isBetween(10, steps - 10);
    }

    @Test
    void aDeadOpeningIsNoneOfTheOtherModelsFindings() {
        assertThat(butForUnknown(fit(CurveModel.TABLE, DEAD_OPENING_EXAMPLE).findings()))
                .isEmpty();
        assertThat(codes(fit(CurveModel.PROPORTIONAL, DEAD_OPENING_EXAMPLE).findings()))
                .containsExactly(FindingCode.CURVE_SCATTER);
    }

    @Test
    void roundingIsNoDeadOpening() {
        for (double perInch : new double[] {1, 1.1, 3.3, 7.7, 13, 13.1}) {
            assertThat(codes(butForUnknown(fit(CurveModel.DEAD_OPENING, at(2, 2 * perInch), at(4, 4 * perInch))
                            .findings())))
                    .containsExactly(FindingCode.TOO_FEW_OPENINGS);
            assertThat(fit(CurveModel.DEAD_OPENING, at(2, 2 * perInch), at(3, 3 * perInch), at(5, 5 * perInch))
                            .findings())
                    .isEmpty();
        }
    }

    @Test
    void roundingIsNoOpeningMisfit() {
        for (double perInch : new double[] {1, 1.1, 1.7, 2.3, 3.3, 7.7, 13, 13.1}) {
            List<CalibrationCatch> exact = IntStream.rangeClosed(2, 7)
                    .mapToObj(inches -> at(inches, inches * perInch))
                    .toList();
            assertThat(fit(CurveModel.PROPORTIONAL, exact).findings()).isEmpty();
            assertThat(fit(CurveModel.DEAD_OPENING, exact).findings()).isEmpty();
        }
    }

    /** Catches at 2, 3, 4, 5 and 6 in, two each, 1 % up and down; those at 4 in are off by a factor. */
    private static List<CalibrationCatch> withFourOff(double factor, int revolutionsAtFour) {
        List<CalibrationCatch> catches = new ArrayList<>();
        for (double inches : new double[] {2, 3, 4, 5, 6}) {
            int revolutions = inches == 4 ? revolutionsAtFour : 10;
            for (double up : new double[] {0.99, 1.01}) {
                double pounds = 16 * (inches - 0.375) * up * (inches == 4 ? factor : 1);
                catches.add(catchAt(chainAt(inches), caught(pounds * revolutions), pulses(100.0 * revolutions)));
            }
        }
        return catches;
    }

    /** The same judgement on bare numbers: the largest deviation over what chance allows, opening by opening. */
    private static double[] excesses(double factor, int revolutionsAtFour) {
        double[] at = {2, 3, 4, 5, 6};
        return Arrays.stream(at)
                .map(left -> {
                    double[] x = IntStream.range(0, 10)
                            .mapToDouble(i -> at[i / 2])
                            .filter(inches -> inches != left)
                            .toArray();
                    double[] y = new double[8];
                    double[] w = new double[8];
                    for (int i = 0; i < 8; i++) {
                        y[i] = 16 * (x[i] - 0.375) * (i % 2 == 0 ? 0.99 : 1.01) * (x[i] == 4 ? factor : 1);
                        w[i] = x[i] == 4 ? revolutionsAtFour : 10;
                    }
                    CurveFit others = CurveFit.shifted(h -> h, 0, 40, x, y, w);
                    double caught = 16 * (left - 0.375) * (left == 4 ? factor : 1);
                    double weight = 2
                            * (left == 4 ? revolutionsAtFour : 10)
                            / Arrays.stream(w).average().orElseThrow();
                    double own = others.relativeDeviation().orElseThrow() / Math.sqrt(weight);
                    double curve = others.uncertaintyAt(left).orElseThrow() / others.at(left);
                    // One in a hundred, shared among five openings.
                    double student = Measured.of(
                                    Amounts.of(0, SpreadingUnits.ONE),
                                    Amounts.of(1, SpreadingUnits.ONE),
                                    others.degreesOfFreedom())
                            .expandedUncertainty(1 - 0.01 / 5)
                            .orElseThrow()
                            .getValue()
                            .doubleValue();
                    return Math.abs(caught / others.at(left) - 1) / Math.sqrt(own * own + curve * curve) / student;
                })
                .toArray();
    }

    private static void assertFoundWhereItsDeviationIsTooLarge(int revolutionsAtFour) {
        int found = 0;
        int steps = 40;
        for (int i = 0; i < steps; i++) {
            double factor = 1 + (i - steps / 2) * 0.005;
            DischargeCurve curve = fit(CurveModel.DEAD_OPENING, withFourOff(factor, revolutionsAtFour));
            double[] excesses = excesses(factor, revolutionsAtFour);
            boolean isFound = codes(curve.findings()).contains(FindingCode.OPENING_MISFIT);

            assertThat(isFound)
                    .as("off by %s: %s", factor, Arrays.toString(excesses))
                    .isEqualTo(Arrays.stream(excesses).max().orElseThrow() > 1);
            if (isFound) {
                found++;
                Finding finding = only(FindingCode.OPENING_MISFIT, curve.findings());
                assertThat(numbers(finding)).containsEntry("opening", inches(4));
                assertThat(finding.number("caught").getValue().doubleValue()).isCloseTo(58 * factor, within(1e-9));
                assertThat(finding.number("predicted").getValue().doubleValue()).isCloseTo(58, within(0.05));
            }
        }
        assertThat(found).isBetween(5, steps - 5);
    }

    @Test
    void anOpeningMisfitsExactlyWhereItsDeviationFromTheOthersIsTooLarge() {
        assertFoundWhereItsDeviationIsTooLarge(10);
    }

    @Test
    void longCatchesAreHeldAgainstTheOthersMoreStrictly() {
        assertFoundWhereItsDeviationIsTooLarge(40);
        assertFoundWhereItsDeviationIsTooLarge(5);
    }

    @Test
    void aMisreadOpeningIsFoundWithEveryModel() {
        // 4.5 in read as 4.
        List<CalibrationCatch> misread =
                repeated(new double[] {2, 3, 4, 5, 6}, new double[] {32, 48, 72, 80, 96}, 0.995, 1.005);
        for (CurveModel model : CurveModel.values()) {
            assertThat(numbers(
                            only(FindingCode.OPENING_MISFIT, fit(model, misread).findings())))
                    .containsEntry("opening", inches(4));
        }
        assertThat(numbers(only(FindingCode.OPENING_MISFIT, chosen(misread).findings())))
                .containsEntry("opening", inches(4));
    }

    /** The line through two openings, with a dead opening, shows no scatter: a third has to go beside it. */
    @Test
    void amongFourOpeningsOfOneCatchEachOneCanBeTold() {
        assertThat(numbers(only(
                        FindingCode.OPENING_MISFIT,
                        fit(CurveModel.DEAD_OPENING, at(2, 32), at(4, 70), at(6, 96), at(8, 128))
                                .findings())))
                .containsEntry("opening", inches(4));
    }

    @Test
    void amongThreeOpeningsNoneCanBeToldFromTheOthers() {
        List<CalibrationCatch> misread = repeated(new double[] {2, 4, 6}, new double[] {32, 72, 96}, 0.995, 1.005);

        assertThat(codes(fit(CurveModel.DEAD_OPENING, misread).findings())).doesNotContain(FindingCode.OPENING_MISFIT);
        assertThat(codes(fit(
                                CurveModel.DEAD_OPENING,
                                repeated(new double[] {2, 4, 6, 8}, new double[] {32, 72, 96, 128}, 0.999, 1.001))
                        .findings()))
                .contains(FindingCode.OPENING_MISFIT);
    }
}
