package org.gritwright.core.statistics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The fit against computations that share nothing with it but the model. */
class CurveFitOracleTest {
    private static final double[] X = {4, 4, 7, 11, 11, 18};
    private static final double[] WEIGHTS = {1, 2, 1.5, 3, 0.5, 2};

    private static double[] noisy(CurveFitShapes shape, double shift, long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        return Arrays.stream(X)
                .map(x -> 16 * shape.applyAsDouble(x - shift) * (1 + 0.03 * random.nextGaussian()))
                .toArray();
    }

    private static CurveFit fit(CurveFitShapes shape, double[] y) {
        return CurveFit.shifted(shape, 0, CurveFitShapes.HIGHEST, X, y, WEIGHTS);
    }

    /** A symmetric 2 × 2 matrix and its inverse. */
    private record Symmetric(double first, double mixed, double second) {
        Symmetric inverse() {
            double determinant = first * second - mixed * mixed;
            return new Symmetric(second / determinant, -mixed / determinant, first / determinant);
        }
    }

    @ParameterizedTest
    @CsvSource({"0.375, 1", "-2.5, 2", "3.5, 3", "0, 4", "-9, 5"})
    void forAStraightShapeItIsTheReweightedStraightLine(double shift, long seed) {
        double[] y = noisy(CurveFitShapes.LINEAR, shift, seed);
        double mean = Arrays.stream(WEIGHTS).sum() / WEIGHTS.length;
        double a = 0;
        double b = 1;
        Symmetric normal = new Symmetric(1, 0, 1);
        // y = a + b·x by normal equations whose weights w/ŷ² are renewed until they stand.
        for (int round = 0; round < 300; round++) {
            double s0 = 0;
            double s1 = 0;
            double s2 = 0;
            double t0 = 0;
            double t1 = 0;
            for (int i = 0; i < X.length; i++) {
                double fitted = round == 0 ? y[i] : a + b * X[i];
                double weight = WEIGHTS[i] / mean / (fitted * fitted);
                s0 += weight;
                s1 += weight * X[i];
                s2 += weight * X[i] * X[i];
                t0 += weight * y[i];
                t1 += weight * X[i] * y[i];
            }
            normal = new Symmetric(s0, s1, s2);
            Symmetric inverse = normal.inverse();
            a = inverse.first * t0 + inverse.mixed * t1;
            b = inverse.mixed * t0 + inverse.second * t1;
        }
        double squares = 0;
        for (int i = 0; i < X.length; i++) {
            double residual = y[i] / (a + b * X[i]) - 1;
            squares += WEIGHTS[i] / mean * residual * residual;
        }
        double variance = squares / (X.length - 2);
        Symmetric covariance = normal.inverse();
        // x₀ = −a/b, so that its variance is that of (−1/b, a/b²)·(a, b).
        double byA = -1 / b;
        double byB = a / (b * b);
        double shiftVariance = variance
                * (byA * byA * covariance.first + 2 * byA * byB * covariance.mixed + byB * byB * covariance.second);
        double predictionVariance = variance * (covariance.first + 2 * 9 * covariance.mixed + 81 * covariance.second);

        CurveFit fit = fit(CurveFitShapes.LINEAR, y);
        assertThat(fit.scale()).isCloseTo(b, within(1e-9 * b));
        assertThat(fit.shift()).isCloseTo(-a / b, within(1e-9));
        assertThat(fit.relativeDeviation().orElseThrow()).isCloseTo(Math.sqrt(variance), within(1e-11));
        assertThat(fit.scaleUncertainty().orElseThrow())
                .isCloseTo(Math.sqrt(variance * covariance.second), within(1e-8));
        assertThat(fit.shiftUncertainty().orElseThrow()).isCloseTo(Math.sqrt(shiftVariance), within(1e-8));
        assertThat(fit.at(9)).isCloseTo(a + b * 9, within(1e-8));
        assertThat(fit.uncertaintyAt(9).orElseThrow()).isCloseTo(Math.sqrt(predictionVariance), within(1e-8));
    }

    @ParameterizedTest
    @CsvSource({
        "LINEAR, 0.375, 11",
        "QUADRATIC, 0.375, 12",
        "QUADRATIC, -2.5, 13",
        "QUADRATIC, 3, 14",
        "SEGMENT, 0.375, 15",
        "SEGMENT, -2.5, 16",
        "SEGMENT, 3, 17"
    })
    void forAnyShapeItIsWhereScoringWithDerivativesByHandEnds(CurveFitShapes shape, double shift, long seed) {
        double[] y = noisy(shape, shift, seed);
        double mean = Arrays.stream(WEIGHTS).sum() / WEIGHTS.length;
        double logScale = Math.log(16);
        double at = shift;
        double squares = 0;
        Symmetric information = new Symmetric(1, 0, 1);
        for (int round = 0; round < 300; round++) {
            double s0 = 0;
            double s1 = 0;
            double s2 = 0;
            double t0 = 0;
            double t1 = 0;
            squares = 0;
            for (int i = 0; i < X.length; i++) {
                double weight = WEIGHTS[i] / mean;
                double value = shape.applyAsDouble(X[i] - at);
                double derivative = -shape.slope(X[i] - at) / value;
                double residual = y[i] / (Math.exp(logScale) * value) - 1;
                s0 += weight;
                s1 += weight * derivative;
                s2 += weight * derivative * derivative;
                t0 += weight * residual;
                t1 += weight * residual * derivative;
                squares += weight * residual * residual;
            }
            information = new Symmetric(s0, s1, s2);
            Symmetric inverse = information.inverse();
            logScale += inverse.first * t0 + inverse.mixed * t1;
            at += inverse.mixed * t0 + inverse.second * t1;
        }
        double variance = squares / (X.length - 2);
        Symmetric covariance = information.inverse();
        double derivative = -shape.slope(9 - at) / shape.applyAsDouble(9 - at);
        double predictionVariance = variance
                * (covariance.first + 2 * derivative * covariance.mixed + derivative * derivative * covariance.second);
        double predicted = Math.exp(logScale) * shape.applyAsDouble(9 - at);

        CurveFit fit = fit(shape, y);
        assertThat(fit.scale()).isCloseTo(Math.exp(logScale), within(1e-7));
        assertThat(fit.shift()).isCloseTo(at, within(1e-8));
        assertThat(fit.relativeDeviation().orElseThrow()).isCloseTo(Math.sqrt(variance), within(1e-10));
        assertThat(fit.scaleUncertainty().orElseThrow() / fit.scale())
                .isCloseTo(Math.sqrt(variance * covariance.first), within(1e-8));
        assertThat(fit.shiftUncertainty().orElseThrow())
                .isCloseTo(Math.sqrt(variance * covariance.second), within(1e-8));
        assertThat(fit.at(9)).isCloseTo(predicted, within(1e-7 * predicted));
        assertThat(fit.uncertaintyAt(9).orElseThrow() / predicted)
                .isCloseTo(Math.sqrt(predictionVariance), within(1e-8));
    }

    @Test
    void forAYThatHardlyChangesItIsTheOrdinaryStraightLine() {
        // The relative scatter is then the same everywhere, to one part in 500.
        double[] x = {1, 2, 3, 4};
        double[] y = {1000, 1001, 1001, 1002};
        StraightLine line = StraightLine.fit(x, y);
        CurveFit fit = CurveFit.shifted(t -> t, 0, 10_000, x, y, new double[] {1, 1, 1, 1});

        assertThat(fit.scale()).isCloseTo(line.slope(), within(1e-3 * line.slope()));
        assertThat(-fit.shift() * fit.scale()).isCloseTo(line.intercept(), within(1e-5 * line.intercept()));
        assertThat(fit.scaleUncertainty().orElseThrow())
                .isCloseTo(
                        line.slopeUncertainty().orElseThrow(),
                        within(2e-3 * line.slopeUncertainty().orElseThrow()));
        assertThat(fit.uncertaintyAt(0).orElseThrow())
                .isCloseTo(
                        line.interceptUncertainty().orElseThrow(),
                        within(2e-3 * line.interceptUncertainty().orElseThrow()));
    }
}
