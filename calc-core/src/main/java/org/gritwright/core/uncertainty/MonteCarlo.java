package org.gritwright.core.uncertainty;

import java.io.Serializable;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.function.ToDoubleFunction;
import java.util.random.RandomGenerator;
import org.gritwright.core.statistics.Sample;
import org.gritwright.units.check.Require;

/**
 * The distribution of a model's results over many computations with errors drawn at random: a check of a budget where the
 * model isn't linear or the sum isn't normal (JCGM 101:2008, GUM Supplement 1).
 *
 * <p>Numbers are in the unit in which the model computes. An input from repeats is drawn from Student's t about its value
 * (6.4.9), whose standard deviation is larger than the standard uncertainty; so with few degrees of freedom the standard
 * deviation here is larger than a budget's. Compare intervals instead. Immutable, thread-safe, a value.
 */
public final class MonteCarlo implements Serializable {
    private static final long serialVersionUID = 1L;

    private static final int FEWEST_TRIALS = 1_000;

    private final double[] sorted;
    private final Sample sample;

    private MonteCarlo(double[] sorted) {
        this.sorted = sorted;
        this.sample = Sample.of(sorted);
    }

    /**
     * An input of the model. Immutable, thread-safe, a value.
     *
     * @param value its value
     * @param standardUncertainty its standard uncertainty, 0 or more
     * @param distribution the shape of its error
     * @param degreesOfFreedom greater than 0; infinite where the uncertainty is taken as exactly known
     */
    public record Input(double value, double standardUncertainty, Distribution distribution, double degreesOfFreedom)
            implements Serializable {
        /**
         * Checks the values.
         *
         * @throws org.gritwright.units.InvalidInputException if a number is out of its range
         */
        public Input {
            Require.finite("value of an input", value);
            Objects.requireNonNull(distribution, "distribution");
            Require.notNegative("standard uncertainty of an input", standardUncertainty);
            Require.that(degreesOfFreedom > 0, "degrees of freedom of an input", "greater than 0", degreesOfFreedom);
        }

        private double draw(RandomGenerator random) {
            return value + standardUncertainty * distribution.draw(degreesOfFreedom, random);
        }
    }

    /**
     * Computes the model with random errors of its inputs, independent of each other. An error that several numbers of
     * the model have in common has to be one input.
     *
     * @param inputs the inputs
     * @param model takes the inputs' numbers in their order and returns a finite result
     * @param trials how many, 1 000 or more; 10 000 or more for an interval of 95 %
     * @param random the source of randomness; the same seed gives the same results
     * @return the distribution of the results
     * @throws org.gritwright.units.InvalidInputException if there are too few trials, or the model returns a number that is not finite
     */
    public static MonteCarlo propagate(
            List<Input> inputs, ToDoubleFunction<double[]> model, int trials, RandomGenerator random) {
        Objects.requireNonNull(inputs, "inputs");
        Objects.requireNonNull(model, "model");
        Objects.requireNonNull(random, "random");
        Require.that(trials >= FEWEST_TRIALS, "trials", FEWEST_TRIALS + " or more", trials);
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

    @Override
    public boolean equals(Object other) {
        return other instanceof MonteCarlo that && Arrays.equals(sorted, that.sorted);
    }

    @Override
    public int hashCode() {
        return Arrays.hashCode(sorted);
    }

    /**
     * The distribution as text.
     *
     * @return for example "10000 results, mean 60.0, standard deviation 0.5"
     */
    @Override
    public String toString() {
        return sorted.length + " results, mean " + mean() + ", standard deviation " + standardDeviation();
    }

    /**
     * The mean of the results.
     *
     * @return the estimate
     */
    public double mean() {
        return sample.mean();
    }

    /**
     * The standard deviation of the results.
     *
     * @return the standard uncertainty
     */
    public double standardDeviation() {
        return sample.deviation().orElseThrow();
    }

    /**
     * A quantile: the result below which a stated part of all results lies.
     *
     * @param probability greater than 0 and below 1
     * @return the quantile
     * @throws org.gritwright.units.InvalidInputException if the probability is out of its range
     */
    public double quantile(double probability) {
        double place = Require.probability("probability", probability) * (sorted.length - 1);
        // Below the last place even for the greatest double below 1, so that there is always one above.
        int below = (int) place;
        return sorted[below] + (place - below) * (sorted[below + 1] - sorted[below]);
    }

    /**
     * The interval that contains a stated part of all results, with as many below it as above (7.7.2).
     *
     * @param coverage greater than 0 and below 1, for example 0.95
     * @return the interval
     * @throws org.gritwright.units.InvalidInputException if the coverage is out of its range
     */
    public Interval interval(double coverage) {
        Require.probability("coverage", coverage);
        return new Interval(quantile((1 - coverage) / 2), quantile((1 + coverage) / 2));
    }

    /**
     * An interval of numbers. Immutable, thread-safe, a value.
     *
     * @param lower the lower end
     * @param upper the upper end
     */
    public record Interval(double lower, double upper) implements Serializable {
        /**
         * Checks the ends.
         *
         * @throws org.gritwright.units.InvalidInputException if the lower end is above the upper, or one is not a number
         */
        public Interval {
            Require.that(lower <= upper, "interval", "from a lower to an upper end", () -> lower + " to " + upper);
        }
    }
}
