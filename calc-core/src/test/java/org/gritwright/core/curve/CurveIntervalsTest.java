package org.gritwright.core.curve;

import static org.assertj.core.api.Assertions.assertThat;
import static org.gritwright.core.Samples.CHAIN;
import static org.gritwright.core.Samples.SALT;
import static org.gritwright.core.Samples.height;
import static org.gritwright.core.curve.DischargeCurveSamples.byCurve;
import static org.gritwright.core.curve.DischargeCurveSamples.roundGate;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import javax.measure.Quantity;
import org.gritwright.core.calibration.CalibrationCatch;
import org.gritwright.core.metering.Spreader;
import org.gritwright.core.observation.CalibrationPoint;
import org.gritwright.core.uncertainty.Measured;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Whether the 95 % interval of a prediction between the caught openings holds the truth for trucks of all kinds together:
 * sliding and round gates, dead openings of 0 and 0.3 in, scatter of 0.5, 1 and 2 %, the model named or chosen by test. The
 * common error of the scale's span, which would widen every interval, is left out.
 */
class CurveIntervalsTest {
    private static final int TRUCKS = 50;
    private static final List<List<Double>> OPENINGS = List.of(
            List.of(2.0, 6.0), List.of(2.0, 4.0, 6.0), List.of(2.0, 3.0, 4.5, 6.0), List.of(2.0, 3.0, 4.0, 5.0, 6.0));
    private static final double[] BETWEEN = {2, 3.4, 5.2, 6};

    private record Kind(Spreader spreader, double dead, double scatter, boolean named) {
        double truth(double inches) {
            return 2000 * spreader.sweptByOpening().applyAsDouble((inches - dead) * 0.0254);
        }

        DischargeCurve curve(List<Double> openings, int catches, long seed) {
            SplittableRandom random = new SplittableRandom(seed);
            List<CalibrationCatch> made = new ArrayList<>();
            for (double inches : openings) {
                for (int i = 0; i < catches; i++) {
                    made.add(DischargeCurveSamples.at(
                            CalibrationPoint.of(SALT, spreader, height(inches)),
                            truth(inches) * (1 + scatter * random.nextGaussian())));
                }
            }
            return named
                    ? DischargeCurve.fit(made, dead == 0 ? CurveModel.PROPORTIONAL : CurveModel.DEAD_OPENING)
                    : DischargeCurve.chosenByTest(made, CurveModel.DEAD_OPENING);
        }
    }

    private static List<Kind> kinds() {
        List<Kind> kinds = new ArrayList<>();
        for (Spreader spreader : List.of(CHAIN, roundGate(10))) {
            for (double dead : new double[] {0, 0.3}) {
                for (double scatter : new double[] {0.005, 0.01, 0.02}) {
                    kinds.add(new Kind(spreader, dead, scatter, true));
                    kinds.add(new Kind(spreader, dead, scatter, false));
                }
            }
        }
        return kinds;
    }

    @ParameterizedTest(name = "{0} openings, {1} catches at each")
    @CsvSource({"2, 1", "2, 2", "2, 3", "3, 1", "3, 2", "3, 3", "4, 1", "4, 2", "4, 3", "5, 1", "5, 2", "5, 3"})
    void betweenTheCaughtOpeningsIntervalsHoldTheTruth(int openings, int catches) {
        List<Kind> kinds = kinds();
        List<boolean[]> held = IntStream.range(0, kinds.size() * TRUCKS)
                .parallel()
                .mapToObj(i -> held(kinds.get(i % kinds.size()), OPENINGS.get(openings - 2), catches, i))
                // Two catches at two openings leave a dead opening no degree of freedom, and so no interval.
                .filter(one -> one.length > 0)
                .toList();
        assertThat(held).hasSizeGreaterThanOrEqualTo(6 * TRUCKS);
        for (int i = 0; i < BETWEEN.length; i++) {
            int at = i;
            assertThat(held.stream().filter(one -> one[at]).count() / (double) held.size())
                    .as("at %s in", BETWEEN[at])
                    .isGreaterThanOrEqualTo(0.93);
        }
    }

    private static boolean[] held(Kind kind, List<Double> openings, int catches, int seed) {
        DischargeCurve curve = kind.curve(openings, catches, seed);
        boolean[] held = new boolean[BETWEEN.length];
        for (int i = 0; i < held.length; i++) {
            Measured<?> predicted = byCurve(curve.predict(height(BETWEEN[i])));
            Optional<? extends Quantity<?>> half = predicted.expandedUncertainty(0.95);
            if (half.isEmpty()) {
                return new boolean[0];
            }
            held[i] = holds(predicted, half.get(), kind.truth(BETWEEN[i]));
        }
        return held;
    }

    private static boolean holds(Measured<?> predicted, Quantity<?> half, double truth) {
        return Math.abs(predicted.value().getValue().doubleValue() - truth)
                <= half.getValue().doubleValue();
    }
}
