package org.gritwright.examples.telemetry;

import org.jspecify.annotations.Nullable;

/**
 * A row as a truck would send it.
 *
 * @param gateInches NaN where nothing is set
 * @param roadId null where none is named
 * @param liquidPulses null where the counter isn't read, or there is none
 */
record InventedRow(
        long millis,
        long shaftPulses,
        long roadPulses,
        double gateInches,
        String slot,
        int mode,
        @Nullable String roadId,
        @Nullable Long liquidPulses) {
    /** The same with the date of a dead clock battery. */
    InventedRow withoutDate() {
        return new InventedRow(0, shaftPulses, roadPulses, gateInches, slot, mode, roadId, liquidPulses);
    }
}
