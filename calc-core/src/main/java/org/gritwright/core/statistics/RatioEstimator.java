package org.gritwright.core.statistics;

import java.util.Arrays;
import java.util.Objects;
import java.util.OptionalDouble;
import org.gritwright.units.check.Comparison;
import org.gritwright.units.check.Require;

/**
 * How pairs (mass and revolutions, pulses and distance) give one ratio.
 *
 * <p>The ratio of sums and the mean of ratios agree if all denominators are equal, and differ otherwise: for (5; 31),
 * (10; 60.5), (20; 122) the ratio of sums is 6.1, the mean of ratios 6.116667 and the slope of the line 6.078571. So a result
 * names its estimator.
 */
public enum RatioEstimator {
    /**
     * R = Σm ÷ ΣN: every revolution has the same weight. Its standard uncertainty is u² = n/(n − 1) · Σ(mᵢ − R·Nᵢ)² ÷ (ΣNᵢ)²
     * (the ratio estimator of survey sampling: W. G. Cochran, Sampling Techniques, 3rd ed. 1977, section 2.11, without
     * the finite-population correction; from memory).
     */
    RATIO_OF_SUMS {
        @Override
        RatioEstimate of(double[] numerators, double[] denominators) {
            double total = sum(denominators);
            double ratio = sum(numerators) / total;
            double squares = 0;
            for (int i = 0; i < numerators.length; i++) {
                double residual = numerators[i] - ratio * denominators[i];
                squares += residual * residual;
            }
            double n = numerators.length;
            double variance = n / (n - 1) * squares / (total * total);
            return withoutIntercept(ratio, Sample.of(ratios(numerators, denominators)), variance);
        }

        @Override
        public double[] sensitivities(double[] denominators) {
            double total = sum(denominators);
            return Arrays.stream(denominators).map(one -> 1 / total).toArray();
        }
    },

    /**
     * The mean of mᵢ ÷ Nᵢ: every catch has the same weight, as field handbooks average three samples (Minnesota Snow and Ice
     * Control: Field Handbook for Snowplow Operators, 2nd revision, 2012). Its standard uncertainty is s ÷ √n.
     */
    MEAN_OF_RATIOS {
        @Override
        RatioEstimate of(double[] numerators, double[] denominators) {
            Sample sample = Sample.of(ratios(numerators, denominators));
            double deviation = sample.deviation().orElse(0);
            return withoutIntercept(sample.mean(), sample, deviation * deviation / sample.size());
        }

        @Override
        public double[] sensitivities(double[] denominators) {
            double n = denominators.length;
            return Arrays.stream(denominators).map(one -> 1 / (n * one)).toArray();
        }
    },

    /**
     * The slope of the least-squares line m = a + R · N, with the same weight for every catch ({@link StraightLine}): for
     * catches of different lengths, where each start adds or loses a mass that doesn't depend on the length. The intercept a
     * is what a start adds; negative for a loss. It takes two pairs; for an uncertainty three, with n − 2 degrees of freedom.
     *
     * <p>A line of the count over the run time does the same for the drive: its intercept is what the drive loses until it is
     * up to speed, and the mass per revolution cancels. This line shows the mass that is missing per start although the shaft
     * turned and was counted.
     */
    LINE_WITH_INTERCEPT {
        @Override
        RatioEstimate of(double[] numerators, double[] denominators) {
            requireDifferentLengths(denominators);
            StraightLine line = StraightLine.fit(denominators, numerators);
            Require.that(
                    line.slope() > 0,
                    "numerators of a line",
                    "rising with the denominators",
                    () -> "slope " + line.slope());
            double squares = 0;
            double[] residuals = line.residuals();
            for (int i = 0; i < residuals.length; i++) {
                double ofRatio = residuals[i] / denominators[i];
                squares += ofRatio * ofRatio;
            }
            int degreesOfFreedom = line.degreesOfFreedom();
            return new RatioEstimate(
                    line.slope(),
                    degreesOfFreedom > 0
                            ? OptionalDouble.of(Math.sqrt(squares / degreesOfFreedom))
                            : OptionalDouble.empty(),
                    line.slopeUncertainty(),
                    residuals.length,
                    OptionalDouble.of(line.intercept()),
                    line.interceptUncertainty());
        }

        @Override
        public double[] sensitivities(double[] denominators) {
            double mean = sum(denominators) / denominators.length;
            double[] fromMean =
                    Arrays.stream(denominators).map(one -> one - mean).toArray();
            double squares = Arrays.stream(fromMean).map(one -> one * one).sum();
            return Arrays.stream(fromMean).map(one -> one / squares).toArray();
        }
    };

    /**
     * The smallest ratio of the longest run to the shortest for which a line is fitted. Below it the difference is mostly
     * noise, and the slope could be anything (common practice, no source).
     */
    public static final double LEAST_RATIO_OF_LENGTHS = 1.5;

    abstract RatioEstimate of(double[] numerators, double[] denominators);

    /**
     * Estimates the ratio.
     *
     * @param numerators finite numbers, one or more
     * @param denominators as many, each finite and greater than zero
     * @return the estimate; deviation and uncertainty are absent, not zero, without a degree of freedom
     * @throws org.gritwright.units.InvalidInputException if there is no pair, the lengths differ, a number is not finite, a denominator is
     *     not greater than zero, or the result would not be finite; for a line, also if the largest denominator is less than
     *     {@link #LEAST_RATIO_OF_LENGTHS} times the smallest, or the slope is not greater than zero
     */
    public RatioEstimate estimate(double[] numerators, double[] denominators) {
        int n = Objects.requireNonNull(numerators, "numerators").length;
        Objects.requireNonNull(denominators, "denominators");
        Require.that(
                n != 0 && denominators.length == n,
                "pairs",
                "one or more, each with a numerator and a denominator",
                () -> n + " numerators, " + denominators.length + " denominators");
        for (double numerator : numerators) {
            Require.finite("numerator", numerator);
        }
        for (double denominator : denominators) {
            Require.positive("denominator", denominator);
        }
        return of(numerators, denominators);
    }

    private static RatioEstimate withoutIntercept(double ratio, Sample sample, double variance) {
        return new RatioEstimate(
                ratio,
                sample.deviation(),
                sample.size() > 1 ? OptionalDouble.of(Math.sqrt(variance)) : OptionalDouble.empty(),
                sample.size());
    }

    private static void requireDifferentLengths(double[] denominators) {
        double least = Arrays.stream(denominators).min().orElseThrow();
        double largest = Arrays.stream(denominators).max().orElseThrow();
        Require.that(
                !Comparison.isAbove(LEAST_RATIO_OF_LENGTHS * least, largest),
                "denominators of a line",
                "two or more, the largest at least " + LEAST_RATIO_OF_LENGTHS + " times the smallest",
                () -> least + " to " + largest);
    }

    /**
     * The sensitivity of the estimate to each numerator: by how much it rises per unit of the numerator.
     *
     * @param denominators as for {@link #estimate}
     * @return one number per pair
     */
    public abstract double[] sensitivities(double[] denominators);

    private static double[] ratios(double[] numerators, double[] denominators) {
        double[] ratios = new double[numerators.length];
        for (int i = 0; i < ratios.length; i++) {
            ratios[i] = Require.finite("ratio", numerators[i] / denominators[i]);
        }
        return ratios;
    }

    private static double sum(double[] values) {
        double sum = 0;
        for (double value : values) {
            sum += value;
        }
        return sum;
    }
}
