package org.gritwright.core.control;

/** A chart's law, one observation after another. */
interface Stepper {
    /**
     * Takes the next observation.
     *
     * @param mean its mean
     * @return the chance that there was no signal up to it and including it
     */
    double advance(double mean);

    /** Whether the chart's limits are from here on what they are for ever. */
    default boolean isSettled() {
        return true;
    }
}
