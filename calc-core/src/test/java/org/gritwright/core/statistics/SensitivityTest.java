package org.gritwright.core.statistics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.gritwright.core.Samples.assertRefused;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.ObjectInputStream;
import java.io.ObjectOutputStream;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import java.util.function.Function;
import java.util.stream.IntStream;
import org.assertj.core.data.Percentage;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * How a curve passes on the uncertainties of its observations, compared with curves fitted to observations that were
 * moved.
 */
class SensitivityTest {
    private static final double MOVED = 1e-5;
    private static final double[] X = {4, 7, 7, 11, 16, 16, 23};
    private static final double[] WEIGHTS = {1, 2, 3, 1.5, 1, 2.5, 4};

    private static double[] observed(CurveFitShapes shape, double shift, double scatter, long seed) {
        Random random = new Random(seed);
        return Arrays.stream(X)
                .map(x -> 3 * shape.applyAsDouble(x - shift) * (1 + scatter * random.nextGaussian()))
                .toArray();
    }

    private static CurveFit shifted(CurveFitShapes shape, double[] y) {
        return CurveFit.shifted(shape, 0, CurveFitShapes.HIGHEST, X, y, WEIGHTS);
    }

    /** How much larger the curve is where one observation is, both relative. */
    private static double byFitting(
            Function<double[], DoubleUnaryOperator> fit, double[] y, int observation, double at) {
        double[] up = y.clone();
        up[observation] *= 1 + MOVED;
        double[] down = y.clone();
        down[observation] *= 1 - MOVED;
        return (fit.apply(up).applyAsDouble(at) - fit.apply(down).applyAsDouble(at))
                / (2 * MOVED * fit.apply(y).applyAsDouble(at));
    }

    /** Of one observation alone. */
    private static double[] only(int observation, int observations) {
        double[] relative = new double[observations];
        relative[observation] = 1;
        return relative;
    }

    @ParameterizedTest
    @EnumSource
    void anObservationMovesAProportionalCurveByItsShareOfTheWeights(CurveFitShapes shape) {
        double[] y = observed(shape, 0, 0.05, 1);
        CurveFit fit = CurveFit.proportional(shape, X, y, WEIGHTS);

        for (int i = 0; i < X.length; i++) {
            double byFitting = byFitting(moved -> CurveFit.proportional(shape, X, moved, WEIGHTS)::at, y, i, 9);
            assertThat(fit.relativeUncertainty(only(i, X.length)).applyAsDouble(9))
                    .isCloseTo(byFitting, Percentage.withPercentage(1e-6));
        }
    }

    @ParameterizedTest
    @EnumSource
    void anObservationOnTheCurveMovesAShiftedCurveAsARefitDoes(CurveFitShapes shape) {
        double[] y = observed(shape, 1, 0, 1);
        CurveFit fit = shifted(shape, y);

        for (double at : new double[] {2, 4, 9, 23, 30}) {
            for (int i = 0; i < X.length; i++) {
                double byFitting = byFitting(moved -> shifted(shape, moved)::at, y, i, at);
                assertThat(fit.relativeUncertainty(only(i, X.length)).applyAsDouble(at))
                        .isCloseTo(Math.abs(byFitting), within(1e-5));
            }
        }
    }

    /** The curvature of ln g is left out, which weighs as much as the scatter. */
    @ParameterizedTest
    @EnumSource
    void scatteredObservationsMoveAShiftedCurveTogetherAboutAsRefitsDo(CurveFitShapes shape) {
        double[] y = observed(shape, 1, 0.01, 2);
        DoubleUnaryOperator together = shifted(shape, y).relativeUncertainty(WEIGHTS);

        for (double at : new double[] {4, 9, 23, 30}) {
            double squares = 0;
            for (int i = 0; i < X.length; i++) {
                double part = byFitting(moved -> shifted(shape, moved)::at, y, i, at) * WEIGHTS[i];
                squares += part * part;
            }
            assertThat(together.applyAsDouble(at)).isCloseTo(Math.sqrt(squares), Percentage.withPercentage(2));
        }
    }

    /** Rows at 7 and 11 fall and are pooled, and so are those at 16 and 23. */
    @ParameterizedTest
    @ValueSource(doubles = {4, 5.5, 7, 9, 11, 13, 16, 20, 23})
    void anObservationMovesATableByItsPartOfItsBlock(double at) {
        double[] y = {10, 21, 23, 20, 41, 44, 40};
        MonotoneTable table = MonotoneTable.fit(X, y, WEIGHTS);

        for (int i = 0; i < X.length; i++) {
            double byFitting = byFitting(moved -> MonotoneTable.fit(X, moved, WEIGHTS)::at, y, i, at);
            assertThat(table.relativeUncertainty(only(i, X.length)).applyAsDouble(at))
                    .isCloseTo(byFitting, within(1e-8));
        }
    }

    @Test
    void independentUncertaintiesAddAsSquares() {
        double[] y = observed(CurveFitShapes.QUADRATIC, 1, 0.01, 3);
        CurveFit fit = shifted(CurveFitShapes.QUADRATIC, y);
        MonotoneTable table = MonotoneTable.fit(X, y, WEIGHTS);
        double[] relative = {0.01, 0.02, 0, 0.03, 0.01, 0.005, 0.04};

        for (Function<double[], DoubleUnaryOperator> curve : List.<Function<double[], DoubleUnaryOperator>>of(
                fit::relativeUncertainty, table::relativeUncertainty)) {
            double squares = IntStream.range(0, X.length)
                    .mapToDouble(
                            i -> relative[i] * curve.apply(only(i, X.length)).applyAsDouble(9))
                    .map(part -> part * part)
                    .sum();
            assertThat(curve.apply(relative).applyAsDouble(9))
                    .isCloseTo(Math.sqrt(squares), Percentage.withPercentage(1e-9));
        }
    }

    /** As independent observations of a common relative deviation, which is how the fit takes them. */
    @Test
    void aConstantScatterGivesTheUncertaintyOfTheFit() {
        double[] equal = new double[X.length];
        Arrays.fill(equal, 1);
        double[] y = observed(CurveFitShapes.LINEAR, 1, 1e-4, 4);
        CurveFit fit = CurveFit.shifted(CurveFitShapes.LINEAR, 0, CurveFitShapes.HIGHEST, X, y, equal);
        double[] scatter = new double[X.length];
        Arrays.fill(scatter, fit.relativeDeviation().orElseThrow());

        assertThat(fit.relativeUncertainty(scatter).applyAsDouble(9) * fit.at(9))
                .isCloseTo(fit.uncertaintyAt(9).orElseThrow(), Percentage.withPercentage(0.1));
        assertThat(fit.relativeDeviation().orElseThrow() * Math.sqrt(fit.leverageAt(9)) * fit.at(9))
                .isCloseTo(fit.uncertaintyAt(9).orElseThrow(), Percentage.withPercentage(1e-10));
    }

    @Test
    void refusesUncertaintiesThatAreNotOneAnObservation() {
        double[] y = observed(CurveFitShapes.LINEAR, 0, 0, 5);
        String message = "uncertainties of observations must be one an observation, 7: 2";

        assertRefused(message, () -> shifted(CurveFitShapes.LINEAR, y).relativeUncertainty(new double[2]));
        assertRefused(message, () -> MonotoneTable.fit(X, y, WEIGHTS).relativeUncertainty(new double[2]));
    }

    @Test
    void goesToAnotherMachine() throws IOException, ClassNotFoundException {
        double[] y = observed(CurveFitShapes.LINEAR, 0.5, 0.01, 6);
        for (DoubleUnaryOperator curve : new DoubleUnaryOperator[] {
            shifted(CurveFitShapes.LINEAR, y).relativeUncertainty(WEIGHTS),
            MonotoneTable.fit(X, y, WEIGHTS).relativeUncertainty(WEIGHTS)
        }) {
            ByteArrayOutputStream bytes = new ByteArrayOutputStream();
            try (ObjectOutputStream out = new ObjectOutputStream(bytes)) {
                out.writeObject(curve);
            }
            try (ObjectInputStream in = new ObjectInputStream(new ByteArrayInputStream(bytes.toByteArray()))) {
                assertThat(((DoubleUnaryOperator) in.readObject()).applyAsDouble(9))
                        .isEqualTo(curve.applyAsDouble(9));
            }
        }
    }
}
