package org.gritwright.core.control;

import java.io.Serializable;
import org.gritwright.units.check.Require;

/**
 * What happens to the mean of the observations from the chart's first one on: nothing, a step, or a linear drift, in
 * standard deviations. The i-th observation has the mean first + (i − 1)·step. Immutable, thread-safe, a value.
 *
 * <p>Published run lengths under a drift follow two conventions, which differ by one observation: the first observation
 * has no drift yet (F. F. Gan, 1991 and 1992), or already one step of it.
 *
 * @param first mean of the first observation
 * @param step what each observation adds to it, 0 unless it drifts
 */
public record Change(double first, double step) implements Serializable {
    /**
     * Checks the values.
     *
     * @throws org.gritwright.units.InvalidInputException if one is not finite
     */
    public Change {
        Require.finite("mean of the first observation", first);
        Require.finite("drift per observation", step);
    }

    /**
     * No change: the process is in control.
     *
     * @return a mean of 0
     */
    public static Change none() {
        return new Change(0, 0);
    }

    /**
     * A step before the first observation, after which the mean stays.
     *
     * @param shift the mean in standard deviations
     * @return the step
     */
    public static Change step(double shift) {
        return new Change(shift, 0);
    }

    /**
     * A linear drift that begins with the first observation: that one has none yet.
     *
     * @param step what each observation after it adds to the mean, in standard deviations
     * @return the drift
     */
    public static Change drift(double step) {
        return new Change(0, step);
    }

    /**
     * A linear drift that began one observation earlier: the first one has one step of it.
     *
     * @param step what each observation adds to the mean, in standard deviations
     * @return the drift
     */
    public static Change driftFromFirst(double step) {
        return new Change(step, step);
    }

    /**
     * The mean of an observation.
     *
     * @param number its number, from 1
     * @return first + (number − 1)·step
     * @throws org.gritwright.units.InvalidInputException if the number is less than 1
     */
    public double mean(long number) {
        Require.that(number >= 1, "number of the observation", "1 or more", number);
        return first + (number - 1) * step;
    }

    boolean isSteady() {
        return step == 0;
    }
}
