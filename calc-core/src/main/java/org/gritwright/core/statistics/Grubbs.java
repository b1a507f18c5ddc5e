package org.gritwright.core.statistics;

import java.io.Serializable;
import java.util.Objects;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.check.Require;

/**
 * Grubbs' test for one outlying value among n of a normal distribution: G = the largest distance from the mean ÷ s. Immutable,
 * thread-safe, a value.
 *
 * <p>G is compared with (n − 1)/√n · √(t²/(n − 2 + t²)) with Student's t of n − 2 degrees of freedom at the significance ÷ n,
 * or ÷ 2n for the two-sided test (NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.5.17.1, after F. E. Grubbs, 1969). G can't exceed
 * (n − 1)/√n. For n = 3 this is 2/√3 = 1.1547, barely above the critical values: the test then has almost no power, and
 * rejects a value only if the two others all but agree.
 *
 * <p>Readings are rounded, and rounded readings agree more often than normal ones: on a coarse scale, two equal catches would
 * make the third an outlier. So the standard deviation due to rounding alone may be stated; its square is added to s². This
 * makes the test more cautious than the published one (derived, no source).
 *
 * @param index which value is farthest from the mean, counted from 0; the first of several
 * @param statistic G; 0 if the values don't differ by more than the rounding of doubles
 * @param size how many values, n, 3 or more
 */
public record Grubbs(int index, double statistic, int size) implements Serializable {
    private static final int FEWEST = 3;

    /** Far below what can be measured: by how much equal values may differ after a division. */
    private static final double ROUNDING = 1e-14;

    /**
     * Checks the values.
     *
     * @throws InvalidInputException if there are fewer than three values, the index is not one of theirs, or the statistic
     *     is negative or not finite
     */
    public Grubbs {
        requireSize(size);
        Require.finite("Grubbs' statistic", statistic);
        Require.that(
                index >= 0 && index < size && statistic >= 0,
                "Grubbs' test",
                "of one of " + size + " values, with a statistic of 0 or more",
                () -> "value " + index + ", statistic " + statistic);
    }

    private static void requireSize(int size) {
        if (size < FEWEST) {
            throw new InvalidInputException("values for Grubbs' test", FEWEST + " or more", String.valueOf(size));
        }
    }

    /**
     * The test as published.
     *
     * @param values finite numbers, three or more
     * @return the value that is farthest from the mean, and how far
     * @throws InvalidInputException if there are fewer than three, or one is not finite
     */
    public static Grubbs of(double... values) {
        return of(values, 0);
    }

    /**
     * The test for values that were rounded.
     *
     * @param values finite numbers, three or more
     * @param rounding the standard deviation that the rounding of the readings alone gives a value, 0 or more
     * @return the value that is farthest from the mean, and how far
     * @throws InvalidInputException if there are fewer than three, a number is not finite, or the rounding is negative
     */
    public static Grubbs of(double[] values, double rounding) {
        requireSize(Objects.requireNonNull(values, "values").length);
        Require.notNegative("rounding", rounding);
        Sample sample = Sample.of(values);
        int farthest = 0;
        double size = 0;
        for (int i = 0; i < values.length; i++) {
            size = Math.max(size, Math.abs(values[i]));
            if (Math.abs(values[i] - sample.mean()) > Math.abs(values[farthest] - sample.mean())) {
                farthest = i;
            }
        }
        double distance = Math.abs(values[farthest] - sample.mean());
        boolean equal = distance <= ROUNDING * size;
        double deviation = Math.hypot(sample.deviation().orElseThrow(), rounding);
        return new Grubbs(farthest, equal ? 0 : distance / deviation, values.length);
    }

    /**
     * Whether the value is an outlier by the two-sided test, for a value that could have been too low as well as too high.
     *
     * @param significance the accepted probability of a false alarm on a sample without an outlier, greater than 0 and
     *     below 1, for example 0.05
     * @return true if G is above the critical value
     * @throws InvalidInputException if the significance is out of its range
     */
    public boolean isOutlying(double significance) {
        return statistic > twoSidedCritical(size, significance);
    }

    /**
     * The critical value where the side was chosen beforehand: is the highest value too high?
     *
     * @param size how many values, 3 or more
     * @param significance greater than 0 and below 1, for example 0.05
     * @return the G that is exceeded with this probability at most
     * @throws InvalidInputException if a number is out of its range
     */
    public static double oneSidedCritical(int size, double significance) {
        return critical(size, significance, 1);
    }

    /**
     * The critical value where the outlier may be on either side.
     *
     * @param size how many values, 3 or more
     * @param significance greater than 0 and below 1, for example 0.05
     * @return the G that is exceeded with this probability at most
     * @throws InvalidInputException if a number is out of its range
     */
    public static double twoSidedCritical(int size, double significance) {
        return critical(size, significance, 2);
    }

    private static double critical(int size, double significance, int sides) {
        requireSize(size);
        Require.that(significance > 0 && significance < 1, "significance", "greater than 0 and below 1", significance);
        double t = Student.of(size - 2).factorExceededWith(significance / (sides * size));
        // In this form, t² can't overflow for a significance near 0.
        return (size - 1) / Math.sqrt(size) / Math.sqrt(1 + (size - 2) / t / t);
    }
}
