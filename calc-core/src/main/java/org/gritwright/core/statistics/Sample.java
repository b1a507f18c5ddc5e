package org.gritwright.core.statistics;

import java.util.OptionalDouble;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.check.Require;

/**
 * Mean and sample standard deviation of numbers.
 *
 * <p>Two passes: s² = (Σ d² − (Σ d)²/n) ÷ (n − 1) with the deviations d from the mean, not the difference of two large sums;
 * the second term takes off what the rounding of the mean does (T. F. Chan, G. H. Golub and R. J. LeVeque, Algorithms for
 * computing the sample variance, The American Statistician 37, 1983; from memory).
 *
 * @param size how many numbers, 1 or more
 * @param mean their mean
 * @param deviation their sample standard deviation, n − 1 in the denominator; absent, not zero, for one number
 */
public record Sample(int size, double mean, OptionalDouble deviation) {

    /**
     * Checks the values.
     *
     * @throws InvalidInputException if there is no number, mean or deviation is not finite, the deviation is negative, or
     *     it is not present for two numbers or more and absent for one
     */
    public Sample {
        Require.finite("mean", mean);
        deviation.ifPresent(s -> Require.finite("sample deviation", s));
        if (size < 1 || deviation.isPresent() != size > 1 || !(deviation.orElse(0) >= 0)) {
            throw new InvalidInputException(
                    "sample", "of one number, or of more with a deviation, 0 or more", size + " numbers, " + deviation);
        }
    }

    /**
     * Mean and deviation.
     *
     * @param values finite numbers, one or more
     * @return the sample
     * @throws InvalidInputException if there is no number, one is not finite, or the result would not be finite
     */
    public static Sample of(double... values) {
        int n = values.length;
        if (n == 0) {
            throw new InvalidInputException("sample", "one number or more", "none");
        }
        double sum = 0;
        for (double value : values) {
            sum += Require.finite("number of a sample", value);
        }
        double rough = sum / n;
        double rest = 0;
        double squares = 0;
        for (double value : values) {
            double difference = value - rough;
            rest += difference;
            squares += difference * difference;
        }
        double mean = rough + rest / n;
        return n == 1
                ? new Sample(n, mean, OptionalDouble.empty())
                // Rounding can't make the difference negative by more than a few units in the last place of 0.
                : new Sample(n, mean, OptionalDouble.of(Math.sqrt(Math.max(0, squares - rest * rest / n) / (n - 1))));
    }
}
