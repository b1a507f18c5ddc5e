package org.gritwright.core.uncertainty;

import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.function.ToDoubleFunction;
import java.util.random.RandomGenerator;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.check.Require;

/**
 * What comes out when a model is computed again and again with errors drawn at random: a check of a budget where the
 * model isn't linear or the sum isn't normal (JCGM 101:2008, GUM Supplement 1).
 *
 * <p>Numbers are in the unit in which the model computes. An input from repeats is drawn from Student's t about its
 * value (6.4.9), whose deviation is more than the standard uncertainty; so with few degrees of freedom the deviation here
 * is more than a budget's. Compare intervals. Immutable, thread-safe.
 */
public final class MonteCarlo {
    private static final int FEWEST_TRIALS = 1_000;

    private final double[] sorted;
    private final double mean;
    private final double standardDeviation;

    private MonteCarlo(double[] sorted) {
        this.sorted = sorted;
        double sum = 0;
        for (double y : sorted) {
            sum += y;
        }
        this.mean = sum / sorted.length;
        double squares = 0;
        for (double y : sorted) {
            squares += (y - mean) * (y - mean);
        }
        this.standardDeviation = Math.sqrt(squares / (sorted.length - 1));
    }

    /**
     * An input of the model. Immutable, thread-safe, a value.
     *
     * @param value its value
     * @param standardUncertainty its standard uncertainty, 0 or more
     * @param distribution the shape of its error
     * @param degreesOfFreedom greater than 0; infinite where the uncertainty is known as such
     */
    public record Input(double value, double standardUncertainty, Distribution distribution, double degreesOfFreedom) {
        /**
         * Checks the values.
         *
         * @throws InvalidInputException if a number is out of its range
         */
        public Input {
            Require.finite("value of an input", value);
            Objects.requireNonNull(distribution, "distribution");
            if (!(Require.finite("standard uncertainty of an input", standardUncertainty) >= 0)) {
                throw new InvalidInputException(
                        "standard uncertainty of an input", "0 or more", String.valueOf(standardUncertainty));
            }
            if (!(degreesOfFreedom > 0)) {
                throw new InvalidInputException(
                        "degrees of freedom of an input", "greater than 0", String.valueOf(degreesOfFreedom));
            }
        }

        private double draw(RandomGenerator random) {
            return value + standardUncertainty * distribution.draw(degreesOfFreedom, random);
        }
    }

    /**
     * Computes the model with random errors of its inputs, independent of each other. An error that several numbers of
     * the model have in common is one input.
     *
     * @param inputs the inputs
     * @param model gets the inputs' numbers in their order and gives a finite result
     * @param trials how many, 1 000 or more; 10 000 or more for an interval of 95 %
     * @param random the source of randomness; seed it to get the same again
     * @return the distribution of the results
     * @throws InvalidInputException if there are too few trials or the model gives a result that is not finite
     */
    public static MonteCarlo propagate(
            List<Input> inputs, ToDoubleFunction<double[]> model, int trials, RandomGenerator random) {
        if (trials < FEWEST_TRIALS) {
            throw new InvalidInputException("trials", FEWEST_TRIALS + " or more", String.valueOf(trials));
        }
        Input[] all = inputs.toArray(Input[]::new);
        double[] results = new double[trials];
        for (int trial = 0; trial < trials; trial++) {
            double[] numbers = new double[all.length];
            for (int i = 0; i < all.length; i++) {
                numbers[i] = all[i].draw(random);
            }
            results[trial] = Require.finite("result of the model", model.applyAsDouble(numbers));
        }
        Arrays.sort(results);
        return new MonteCarlo(results);
    }

    /**
     * The mean of the results.
     *
     * @return the estimate
     */
    public double mean() {
        return mean;
    }

    /**
     * The standard deviation of the results.
     *
     * @return the standard uncertainty
     */
    public double standardDeviation() {
        return standardDeviation;
    }

    /**
     * The result below which a part of all results lie.
     *
     * @param probability greater than 0 and below 1
     * @return the quantile
     * @throws InvalidInputException if the probability is out of its range
     */
    public double quantile(double probability) {
        double place = Require.probability("probability", probability) * (sorted.length - 1);
        int below = (int) place;
        int above = Math.min(below + 1, sorted.length - 1);
        return sorted[below] + (place - below) * (sorted[above] - sorted[below]);
    }

    /**
     * An interval that holds a part of all results, with as many below it as above (7.7.2).
     *
     * @param coverage greater than 0 and below 1, for example 0.95
     * @return the interval
     * @throws InvalidInputException if the coverage is out of its range
     */
    public Interval interval(double coverage) {
        Require.probability("coverage", coverage);
        return new Interval(quantile((1 - coverage) / 2), quantile((1 + coverage) / 2));
    }

    /**
     * From a lower to an upper number. Immutable, thread-safe, a value.
     *
     * @param lower the lower end
     * @param upper the upper end
     */
    public record Interval(double lower, double upper) {
        /**
         * Checks the ends.
         *
         * @throws InvalidInputException if the lower is above the upper, or one is not a number
         */
        public Interval {
            if (!(lower <= upper)) {
                throw new InvalidInputException("interval", "from a lower to an upper end", lower + " to " + upper);
            }
        }
    }
}
