package org.gritwright.core.statistics;

import java.io.Serializable;
import java.util.Objects;
import java.util.OptionalDouble;
import org.apache.commons.statistics.distribution.ChiSquaredDistribution;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.check.Require;
import org.gritwright.units.check.SerialForm;

/**
 * Mean and sample standard deviation of numbers. Immutable, thread-safe, a value.
 *
 * <p>Computed in two passes: s² = (Σ d² − (Σ d)²/n) ÷ (n − 1) with the deviations d from the mean, not as the
 * difference of two large sums; the second term removes the effect of the mean's rounding (T. F. Chan, G. H. Golub and
 * R. J. LeVeque, Algorithms for computing the sample variance, The American Statistician 37 (3), 1983, 242–247; abstract
 * checked, formula from memory).
 *
 * @param size how many numbers, 1 or more
 * @param mean their mean
 * @param deviation their sample standard deviation, n − 1 in the denominator; absent, not zero, for one number
 */
public record Sample(int size, double mean, OptionalDouble deviation) implements Serializable {
    /**
     * Checks the values.
     *
     * @throws InvalidInputException if there is no number, mean or deviation is not finite, the deviation is negative, or
     *     it is missing for two numbers or more or present for one
     */
    public Sample {
        Require.finite("mean", mean);
        Objects.requireNonNull(deviation, "deviation");
        deviation.ifPresent(s -> Require.finite("sample deviation", s));
        if (size < 1 || deviation.isPresent() != size > 1 || !(deviation.orElse(0) >= 0)) {
            throw new InvalidInputException(
                    "sample",
                    "one number without a deviation, or more with a deviation of 0 or more",
                    size + " numbers, deviation " + Optionals.text(deviation));
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
        int n = Objects.requireNonNull(values, "values").length;
        Require.that(n != 0, "sample", "one number or more", "none");
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

    private Object writeReplace() {
        return SerialForm.of(this);
    }

    /**
     * The sample as text.
     *
     * @return for example "3 numbers, mean 6.1, deviation 0.05"
     */
    @Override
    public String toString() {
        return size == 1
                ? "1 number, " + mean
                : size + " numbers, mean " + mean + ", deviation " + deviation.orElseThrow();
    }

    /**
     * How much larger than the true deviation a sample deviation may come out: √(χ² ÷ ν), with the upper quantile of χ²
     * (NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.5.8).
     *
     * @param degreesOfFreedom ν, 1 or more
     * @param risk the chance that it comes out still larger, greater than 0 and below 1
     * @return a factor
     * @throws InvalidInputException if a value is out of its range
     */
    public static double deviationFactor(int degreesOfFreedom, double risk) {
        Require.that(degreesOfFreedom >= 1, "degrees of freedom", "1 or more", degreesOfFreedom);
        Require.probability("risk", risk);
        double quantile = ChiSquaredDistribution.of(degreesOfFreedom).inverseSurvivalProbability(risk);
        return Math.sqrt(quantile / degreesOfFreedom);
    }
}
