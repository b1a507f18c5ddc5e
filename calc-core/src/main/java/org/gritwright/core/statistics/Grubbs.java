package org.gritwright.core.statistics;

import org.gritwright.units.InvalidInputException;
import org.gritwright.units.check.Require;

/**
 * Grubbs' test for one outlying value among n of a normal distribution: G = the greatest distance from the mean ÷ s.
 *
 * <p>G is held against (n − 1)/√n · √(t²/(n − 2 + t²)) with Student's t of n − 2 degrees of freedom at the significance ÷ n,
 * two-sided ÷ 2n (NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.5.17.1, after F. E. Grubbs, 1969). No G is greater
 * than (n − 1)/√n. For n = 3 this is 2/√3 = 1.1547, hardly above the critical values: the test is then nearly powerless, and
 * rejects only where two of the three all but agree.
 *
 * <p>Readings are rounded, and rounded readings agree more often than normal ones: two of three equal catches on a coarse
 * scale would make the third outlying. So the standard deviation that rounding alone gives may be stated; its square is
 * added to s². This makes the test more cautious than published (derived, no source).
 *
 * @param index which value is the farthest from the mean, from 0; the first of several
 * @param statistic G; 0 if the values don't differ by more than the rounding of doubles
 * @param size how many values, n, 3 or more
 */
public record Grubbs(int index, double statistic, int size) {
    private static final int FEWEST = 3;

    /** Far below what can be measured; what equal values differ by once they were divided. */
    private static final double ROUNDING = 1e-14;

    /**
     * Checks the values.
     *
     * @throws InvalidInputException if there are fewer than three values, the index is none of them, or the statistic is
     *     not a number from 0
     */
    public Grubbs {
        requireSize(size);
        Require.finite("Grubbs' statistic", statistic);
        if (!(index >= 0 && index < size && statistic >= 0)) {
            throw new InvalidInputException(
                    "Grubbs' test", "of a value among " + size + ", 0 or more", "value " + index + ", " + statistic);
        }
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
        requireSize(values.length);
        if (!(Require.finite("rounding", rounding) >= 0)) {
            throw new InvalidInputException("rounding", "0 or more", String.valueOf(rounding));
        }
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
     * Whether the value is outlying, by the two-sided test: it might as well have been too low as too high.
     *
     * @param significance how often a sample without an outlying value may be suspected, greater than 0 and below 1, for
     *     example 0.05
     * @return true if G is above the critical value
     * @throws InvalidInputException if the significance is out of its range
     */
    public boolean isOutlying(double significance) {
        return statistic > twoSidedCritical(size, significance);
    }

    /**
     * The critical value for a side that was fixed beforehand: is the highest too high?
     *
     * @param size how many values, 3 or more
     * @param significance greater than 0 and below 1, for example 0.05
     * @return the G that is exceeded with this chance at most
     * @throws InvalidInputException if a number is out of its range
     */
    public static double oneSidedCritical(int size, double significance) {
        return critical(size, significance, 1);
    }

    /**
     * The critical value for a value on either side.
     *
     * @param size how many values, 3 or more
     * @param significance greater than 0 and below 1, for example 0.05
     * @return the G that is exceeded with this chance at most
     * @throws InvalidInputException if a number is out of its range
     */
    public static double twoSidedCritical(int size, double significance) {
        return critical(size, significance, 2);
    }

    private static double critical(int size, double significance, int sides) {
        requireSize(size);
        if (!(significance > 0 && significance < 1)) {
            throw new InvalidInputException("significance", "greater than 0 and below 1", String.valueOf(significance));
        }
        double t = Student.of(size - 2).factorExceededWith(significance / (sides * size));
        // In this form, t² can't overflow for a significance near 0.
        return (size - 1) / Math.sqrt(size) / Math.sqrt(1 + (size - 2) / t / t);
    }
}
