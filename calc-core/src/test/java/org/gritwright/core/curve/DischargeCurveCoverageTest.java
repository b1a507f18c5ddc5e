package org.gritwright.core.curve;

import static org.assertj.core.api.Assertions.assertThat;
import static org.gritwright.core.Samples.codes;
import static org.gritwright.core.Samples.height;
import static org.gritwright.core.Samples.inches;
import static org.gritwright.core.curve.DischargeCurveSamples.SIXTEEN_PER_INCH;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.SplittableRandom;
import java.util.function.Predicate;
import java.util.stream.IntStream;
import org.gritwright.core.Page;
import org.gritwright.core.calibration.CalibrationCatch;
import org.gritwright.core.finding.FindingCode;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.units.InvalidInputException;
import org.junit.jupiter.api.Test;

/**
 * What a curve's 95 % intervals hold and how often its findings are false alarms, on made-up catches with normal relative
 * scatter: 2000 runs per scenario with seeds 0 to 1999. {@code CurveFitCoverageTest} has the many scenarios in which the
 * model is given.
 */
class DischargeCurveCoverageTest {
    private static final int RUNS = 2000;
    private static final double COVERAGE = 0.95;

    /** In inches; the second is between, the others beyond the caught openings. */
    private static final List<Double> PREDICTED = List.of(1.0, 3.0, 8.0);

    /** A truth of 16 lb/rev per inch beyond a dead opening, caught three times at each opening. */
    private record Scenario(double dead, List<Double> openings, double scatter) {

        List<CalibrationCatch> catches(int seed) {
            SplittableRandom random = new SplittableRandom(seed);
            List<CalibrationCatch> catches = new ArrayList<>();
            for (int i = 0; i < n(); i++) {
                double inches = openings.get(i % openings.size());
                catches.add(DischargeCurveSamples.at(inches, truth(inches) * (1 + scatter * random.nextGaussian())));
            }
            return catches;
        }

        int n() {
            return 3 * openings.size();
        }

        double truth(double inches) {
            return 16 * (inches - dead);
        }

        List<DischargeCurve> chosen() {
            return IntStream.range(0, RUNS)
                    .parallel()
                    .mapToObj(seed -> DischargeCurve.chosenByTest(catches(seed), CurveModel.DEAD_OPENING))
                    .toList();
        }

        List<DischargeCurve> stated(CurveModel model) {
            return IntStream.range(0, RUNS)
                    .parallel()
                    .mapToObj(seed -> DischargeCurve.fit(catches(seed), model))
                    .toList();
        }
    }

    private static <T> double share(List<T> of, Predicate<T> predicate) {
        return of.stream().filter(predicate).count() / (double) of.size();
    }

    /** Four standard deviations of a share. */
    private static double band(double share) {
        return 4 * Math.sqrt(share * (1 - share) / RUNS);
    }

    private static boolean holds(Measured<?> measured, double truth) {
        return measured.expandedUncertainty(COVERAGE).stream()
                .anyMatch(half -> Math.abs(measured.value().getValue().doubleValue() - truth)
                        <= half.getValue().doubleValue());
    }

    private static boolean holdsDensity(DischargeCurve curve) {
        return curve.effectiveBulkDensity()
                .filter(k -> holds(k, SIXTEEN_PER_INCH))
                .isPresent();
    }

    /** An opening that the curve refuses is not held. */
    private static boolean holdsPrediction(DischargeCurve curve, Scenario scenario, double inches) {
        try {
            return holds(DischargeCurveSamples.byCurve(curve.predict(height(inches))), scenario.truth(inches));
        } catch (InvalidInputException e) {
            return false;
        }
    }

    @Test
    void aStatedModelsIntervalsHoldTheTruthAsOftenAsTheySay() {
        Scenario proportional = new Scenario(0, List.of(2.0, 6.0), 0.02);
        Scenario dead = new Scenario(0.375, List.of(2.0, 4.0, 6.0), 0.02);
        List<DischargeCurve> proportions = proportional.stated(CurveModel.PROPORTIONAL);
        List<DischargeCurve> deads = dead.stated(CurveModel.DEAD_OPENING);

        assertThat(share(proportions, DischargeCurveCoverageTest::holdsDensity)).isBetween(0.93, 0.97);
        assertThat(share(deads, DischargeCurveCoverageTest::holdsDensity)).isBetween(0.93, 0.97);
        assertThat(share(deads, curve -> holds(curve.deadOpening().orElseThrow(), 0.375)))
                .isBetween(0.93, 0.97);
        for (double inches : PREDICTED) {
            assertThat(share(proportions, curve -> holdsPrediction(curve, proportional, inches)))
                    .isBetween(0.93, 0.97);
            assertThat(share(deads, curve -> holdsPrediction(curve, dead, inches)))
                    .isBetween(0.93, 0.97);
        }
    }

    @Test
    void theCoverageOfAModelChosenByTestIsComputed() throws IOException {
        List<Scenario> scenarios = new ArrayList<>();
        for (double dead : new double[] {0, 0.1, 0.375}) {
            scenarios.add(new Scenario(dead, List.of(2.0, 4.0, 6.0), 0.02));
            scenarios.add(new Scenario(dead, List.of(2.0, 4.0, 6.0), 0.04));
            scenarios.add(new Scenario(dead, List.of(2.0, 6.0), 0.02));
        }
        StringBuilder table = new StringBuilder("""
            True curve: 16 lb/rev per inch of gate opening beyond a dead opening h0; three catches at each opening, n in
            all, with normal relative scatter s. The columns show how often each model was chosen, then the coverage of
            three predictions (1 in and 8 in are geometry alone, for which a table has no interval), of k, both where no
            table was chosen, and of h0 where the model with a dead opening was.

            | h0, in | openings, in | n | s | k·g(h) | k·g(h − h0) | table | at 1 in | at 3 in | at 8 in | k | h0 |
            |---|---|---|---|---|---|---|---|---|---|---|---|
            """);
        for (Scenario scenario : scenarios) {
            List<DischargeCurve> curves = scenario.chosen();
            assertThat(curves).hasSize(RUNS);
            List<DischargeCurve> dead = curves.stream()
                    .filter(curve -> curve.model() == CurveModel.DEAD_OPENING)
                    .toList();
            List<DischargeCurve> fitted = curves.stream()
                    .filter(curve -> curve.model() != CurveModel.TABLE)
                    .toList();
            double proportion = share(curves, curve -> curve.model() == CurveModel.PROPORTIONAL);
            List<Double> shares = new ArrayList<>(
                    List.of(proportion, dead.size() / (double) RUNS, 1 - fitted.size() / (double) RUNS));
            for (double inches : PREDICTED) {
                shares.add(share(inches == 3 ? curves : fitted, curve -> holdsPrediction(curve, scenario, inches)));
            }
            shares.add(share(fitted, DischargeCurveCoverageTest::holdsDensity));
            shares.add(share(dead, curve -> holds(curve.deadOpening().orElseThrow(), scenario.dead)));
            table.append(String.format(
                    Locale.ROOT,
                    "| %s | %s | %d | %.0f %%",
                    scenario.dead,
                    scenario.openings,
                    scenario.n(),
                    scenario.scatter * 100));
            shares.forEach(share -> table.append(String.format(Locale.ROOT, " | %.2f %%", share * 100)));
            table.append(" |\n");
        }
        Page.CURVES.assertHolds("curve coverage", table.toString());
    }

    @Test
    void findingsAreFalseAlarmsAsOftenAsTheirLevelSays() {
        Scenario scenario = new Scenario(0, List.of(2.0, 3.0, 4.0, 6.0), 0.02);
        List<List<FindingCode>> found = scenario.stated(CurveModel.DEAD_OPENING).stream()
                .map(curve -> codes(curve.findings()))
                .toList();

        assertThat(share(found, codes -> codes.contains(FindingCode.MODEL_MISFIT)))
                .isBetween(0.05 - band(0.05), 0.05 + band(0.05));
        assertThat(share(found, codes -> codes.contains(FindingCode.DEAD_OPENING_FOUND)))
                .isBetween(0.05 - band(0.05), 0.05 + band(0.05));
        // Shared among the openings by Bonferroni, whose sum is an upper bound.
        assertThat(share(found, codes -> codes.contains(FindingCode.OPENING_MISFIT)))
                .isBetween(0.001, 0.01 + band(0.01));
        assertThat(share(found, codes -> codes.contains(FindingCode.CURVE_SCATTER)))
                .isZero();
    }
}
