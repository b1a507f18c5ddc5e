package org.gritwright.core.measurement;

import java.util.OptionalDouble;
import org.gritwright.units.InvalidInputException;

/**
 * How pairs (mass and revolutions, pulses and distance) become one ratio.
 *
 * <p>The two agree when all denominators are equal and differ otherwise; for (5; 31), (10; 60.5), (20; 122) the ratio
 * of sums is 6.1 and the mean of ratios 6.116667, so a result names its estimator.
 */
public enum RatioEstimator {
    /**
     * R = Σm ÷ ΣN: every revolution counts alike. Its standard uncertainty is u² = n/(n − 1) · Σ(mᵢ − R·Nᵢ)² ÷ (ΣNᵢ)²
     * (the ratio estimator of survey sampling: W. G. Cochran, Sampling Techniques, 3rd ed. 1977, section 2.11, without
     * the finite-population correction; from memory).
     */
    RATIO_OF_SUMS {
        @Override
        double ratio(double[] numerators, double[] denominators) {
            return sum(numerators) / sum(denominators);
        }

        @Override
        double variance(double[] numerators, double[] denominators, double ratio, double sampleDeviation) {
            int n = numerators.length;
            double squares = 0;
            for (int i = 0; i < n; i++) {
                double residual = numerators[i] - ratio * denominators[i];
                squares += residual * residual;
            }
            double total = sum(denominators);
            return n / (n - 1.0) * squares / (total * total);
        }
    },

    /**
     * The mean of mᵢ ÷ Nᵢ: every catch counts alike, as field handbooks average three samples (Minnesota Snow and Ice
     * Control: Field Handbook for Snowplow Operators, 2nd revision, 2012). Its standard uncertainty is s ÷ √n.
     */
    MEAN_OF_RATIOS {
        @Override
        double ratio(double[] numerators, double[] denominators) {
            return sum(ratios(numerators, denominators)) / numerators.length;
        }

        @Override
        double variance(double[] numerators, double[] denominators, double ratio, double sampleDeviation) {
            return sampleDeviation * sampleDeviation / numerators.length;
        }
    };

    abstract double ratio(double[] numerators, double[] denominators);

    abstract double variance(double[] numerators, double[] denominators, double ratio, double sampleDeviation);

    /**
     * Estimates the ratio.
     *
     * @param numerators finite numbers, one or more
     * @param denominators as many, each finite and greater than zero
     * @return the estimate; deviation and uncertainty are absent, not zero, for one pair
     * @throws InvalidInputException if there is no pair, the lengths differ, a number is not finite, a denominator is
     *     not greater than zero, or the result would not be finite
     */
    public RatioEstimate estimate(double[] numerators, double[] denominators) {
        int n = numerators.length;
        if (n == 0 || denominators.length != n) {
            throw new InvalidInputException(
                    "pairs", "one or more, whole", n + " numerators, " + denominators.length + " denominators");
        }
        for (double numerator : numerators) {
            Require.finite("numerator", numerator);
        }
        for (double denominator : denominators) {
            if (!(Require.finite("denominator", denominator) > 0)) {
                throw new InvalidInputException("denominator", "greater than 0", String.valueOf(denominator));
            }
        }
        double ratio = ratio(numerators, denominators);
        if (n == 1) {
            return new RatioEstimate(ratio, OptionalDouble.empty(), OptionalDouble.empty(), n);
        }
        double deviation = sampleDeviation(ratios(numerators, denominators));
        double uncertainty = Math.sqrt(variance(numerators, denominators, ratio, deviation));
        return new RatioEstimate(ratio, OptionalDouble.of(deviation), OptionalDouble.of(uncertainty), n);
    }

    private static double[] ratios(double[] numerators, double[] denominators) {
        double[] ratios = new double[numerators.length];
        for (int i = 0; i < ratios.length; i++) {
            ratios[i] = numerators[i] / denominators[i];
        }
        return ratios;
    }

    /** Two passes: the sum of squares about the mean, not the difference of two large sums. */
    private static double sampleDeviation(double[] values) {
        double mean = sum(values) / values.length;
        double squares = 0;
        for (double value : values) {
            squares += (value - mean) * (value - mean);
        }
        return Math.sqrt(squares / (values.length - 1));
    }

    private static double sum(double[] values) {
        double sum = 0;
        for (double value : values) {
            sum += value;
        }
        return sum;
    }
}
