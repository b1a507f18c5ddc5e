package org.gritwright.core.telemetry;

import java.io.Serializable;
import java.time.Instant;
import org.gritwright.units.check.Require;

/**
 * How an error that was found came about since it was right for the last time. Nobody knows it from the error alone: the caller says
 * which it was, or takes the two bounds, {@link AtOnce} at the time as left (all was laid with the error) and at the time as found (nothing
 * was). Immutable, thread-safe values.
 */
public sealed interface Onset extends Serializable {
    /**
     * At once, at a known change: a repair, another material.
     *
     * @param at when; within the times as left and as found
     */
    record AtOnce(Instant at) implements Onset {
        /** Checks that it is there. */
        public AtOnce {
            Require.given(AtOnce.class, at);
        }
    }

    /** Gradually, in proportion to something since it was right for the last time: error × share of it. */
    enum Gradually implements Onset {
        /** In proportion to time. */
        WITH_TIME,
        /**
         * In proportion to what the shaft turned. Two passes: the first counts how much it turned in all, and says so in
         * {@link RowSums#turned()}.
         */
        WITH_TURNS,
        /** In proportion to what left the hopper by the uncorrected calibration. Two passes, as for turns. */
        WITH_AMOUNT
    }
}
