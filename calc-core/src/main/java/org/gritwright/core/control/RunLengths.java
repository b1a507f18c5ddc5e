package org.gritwright.core.control;

import java.io.Serializable;
import java.util.Arrays;
import java.util.Objects;
import org.gritwright.units.check.Require;

/**
 * The distribution of a chart's run length. Up to some observation it is kept one by one; from there on each observation leaves the
 * same part of the charts without a signal, as the Markov chain of any chart with steady limits does in the end. Immutable,
 * thread-safe, a value.
 */
public final class RunLengths implements Serializable {
    private static final long serialVersionUID = 1L;

    private static final double ONE_HALF = 0.5;

    /** The chance that there was no signal up to observation n; 1 for n = 0. */
    private final double[] survivals;
    /** What each later observation leaves. */
    private final double ratio;

    RunLengths(double[] survivals, double ratio) {
        this.survivals = survivals;
        this.ratio = ratio;
    }

    /**
     * The average run length.
     *
     * @return 1 or more
     */
    public double average() {
        // Of a number from 1 on, the average is the sum of its survivals from 0 on. Small ones first.
        double sum = last() * ratio / (1 - ratio);
        for (int n = survivals.length - 1; n >= 0; n--) {
            sum += survivals[n];
        }
        return sum;
    }

    private double last() {
        return survivals[survivals.length - 1];
    }

    /**
     * The chance that there is no signal up to an observation.
     *
     * @param number how many observations, 0 or more
     * @return P(run length &gt; number), from 0 to 1
     * @throws org.gritwright.units.InvalidInputException if the number is negative
     */
    public double survival(long number) {
        Require.that(number >= 0, "number of observations", "0 or more", number);
        return number < survivals.length
                ? survivals[(int) number]
                : last() * Math.pow(ratio, (double) (number - (survivals.length - 1)));
    }

    /**
     * The chance of a signal at an observation or before it.
     *
     * @param number how many observations, 0 or more
     * @return P(run length ≤ number), from 0 to 1
     * @throws org.gritwright.units.InvalidInputException if the number is negative
     */
    public double signalWithin(long number) {
        return 1 - survival(number);
    }

    /**
     * A quantile.
     *
     * @param probability greater than 0 and below 1
     * @return the smallest number of observations within which there is a signal with this probability at least
     * @throws org.gritwright.units.InvalidInputException if the probability is out of its range
     */
    public long quantile(double probability) {
        double left = 1 - Require.probability("probability", probability);
        if (last() <= left) {
            int at = 1;
            while (survivals[at] > left) {
                at++;
            }
            return at;
        }
        return survivals.length - 1 + Math.max(1, (long) Math.ceil(Math.log(left / last()) / Math.log(ratio)));
    }

    /**
     * The median run length.
     *
     * @return the quantile at one half
     */
    public long median() {
        return quantile(ONE_HALF);
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof RunLengths that
                && Arrays.equals(survivals, that.survivals)
                && Double.compare(ratio, that.ratio) == 0;
    }

    @Override
    public int hashCode() {
        return Objects.hash(Arrays.hashCode(survivals), ratio);
    }

    /**
     * The distribution as text.
     *
     * @return for example "run lengths, on average 500.1, median 348"
     */
    @Override
    public String toString() {
        return "run lengths, on average " + average() + ", median " + median();
    }
}
