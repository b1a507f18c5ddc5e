package org.gritwright.examples.telemetry;

import java.io.Serializable;

/** Takes one truck's rows, one after the other, in their order. For one thread. */
interface RowPass<R> {
    /** Makes the pass of each truck, on a worker. */
    @FunctionalInterface
    interface Maker<R> extends Serializable {
        /**
         * Makes the pass of a truck.
         *
         * @param buffers shared with whatever is passed before and afterwards in the same thread
         */
        RowPass<R> of(TruckSetup setup, Buffers buffers);
    }

    /** The number of a road by its name. */
    int road(String name);

    /**
     * Takes the next row.
     *
     * @param gateInches NaN where nobody knows
     * @param slot as {@link TruckSetup#slot} has it
     * @param road as {@link #road} has it, or {@link TruckPass#NO_ROAD}
     * @param liquidPulses {@link BadRow#NO_READING} where there is none
     */
    void add(
            long millis,
            long shaftPulses,
            long roadPulses,
            double gateInches,
            int slot,
            int mode,
            int road,
            long liquidPulses);

    /** What they come to. */
    R finish();
}
