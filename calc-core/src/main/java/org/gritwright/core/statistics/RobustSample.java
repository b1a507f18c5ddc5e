package org.gritwright.core.statistics;

import java.util.Arrays;
import java.util.Objects;
import org.gritwright.units.check.Require;

/**
 * The middle of numbers and their spread, neither of which a few wrong ones can move: the median, and the median absolute
 * deviation from it (MAD), which is 0.6745 of the standard deviation of a normal distribution (NIST/SEMATECH e-Handbook of
 * Statistical Methods, 1.3.5.6 and 1.3.5.17; from memory). Immutable, thread-safe, a value.
 *
 * @param median the median
 * @param deviation the median absolute deviation, 0 or more
 */
public record RobustSample(double median, double deviation) {
    private static final double NORMAL = 0.6745;

    /** Modified Z-scores beyond it are outliers (B. Iglewicz and D. C. Hoaglin, 1993; second-hand). */
    private static final double OUTLIER = 3.5;

    /**
     * Checks the values.
     *
     * @throws org.gritwright.units.InvalidInputException if one is not finite or the deviation is negative
     */
    public RobustSample {
        Require.finite("median", median);
        Require.notNegative("median absolute deviation", deviation);
    }

    /**
     * Median and deviation.
     *
     * @param values finite numbers, one or more
     * @return the sample
     * @throws org.gritwright.units.InvalidInputException if there is no number, or one is not finite
     */
    public static RobustSample of(double... values) {
        Require.that(Objects.requireNonNull(values, "values").length > 0, "sample", "one number or more", "none");
        double middle = median(values);
        return new RobustSample(
                middle,
                median(Arrays.stream(values)
                        .map(value -> Math.abs(value - middle))
                        .toArray()));
    }

    private static double median(double[] values) {
        double[] sorted = Arrays.stream(values)
                .map(value -> Require.finite("number of a sample", value))
                .sorted()
                .toArray();
        int half = sorted.length / 2;
        return sorted.length % 2 == 1 ? sorted[half] : (sorted[half - 1] + sorted[half]) / 2;
    }

    /**
     * Whether a number is an outlier among the others: its modified Z-score, 0.6745·|x − median| ÷ MAD, is beyond 3.5.
     *
     * @param value a number
     * @param leastDeviation the standard deviation that the numbers have at least, however alike they happen to be; 0 or more
     * @return true if it is
     */
    public boolean isOutlier(double value, double leastDeviation) {
        return Math.abs(value - median) > OUTLIER * Math.max(leastDeviation, deviation / NORMAL);
    }
}
