package org.gritwright.core.control;

import java.io.Serializable;
import java.util.Objects;

/**
 * A control chart's design, and what it promises. It looks at standardized observations, which are independent and normal with a standard
 * deviation of 1, and with a mean of 0 while the process is in control. A chart is a value; running it gives a point for each
 * observation. After a signal it goes on as if there had been none.
 *
 * <p>The run length is the number of observations up to the first signal and including it. How long it is in control says how
 * rare false alarms are; after a change, how soon it is noticed.
 */
public sealed interface ControlChart extends Serializable
        permits CusumChart, EwmaChart, IndividualsChart, RunRulesChart {
    /**
     * The average run length (ARL).
     *
     * @param change what happens to the mean from the first observation on
     * @return 1 or more
     * @throws org.gritwright.units.InvalidInputException if it is beyond what can be computed, about 10¹⁰ for a mean that stays
     *     and a million observations for one that drifts
     */
    default double averageRunLength(Change change) {
        return RunLengthMethods.averageWithin(this, Objects.requireNonNull(change, "change"));
    }

    /**
     * The distribution of the run length.
     *
     * @param change what happens to the mean from the first observation on
     * @return the distribution
     * @throws org.gritwright.units.InvalidInputException if run lengths are beyond what can be computed, as for
     *     {@link #averageRunLength}
     */
    default RunLengths runLengths(Change change) {
        return RunLengthMethods.distribution(this, Objects.requireNonNull(change, "change"));
    }

    /**
     * The chart that does with observations that are all larger by a factor what this one does with these.
     *
     * @param factor greater than 0
     * @return the chart whose limits are that much farther out
     * @throws org.gritwright.units.InvalidInputException if the factor or a limit that it makes is out of its range
     */
    ControlChart scaled(double factor);
}
