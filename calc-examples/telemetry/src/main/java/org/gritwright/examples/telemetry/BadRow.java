package org.gritwright.examples.telemetry;

import java.io.Serializable;
import java.util.Locale;
import org.gritwright.core.telemetry.RowStatus;

/**
 * A row that can't be counted, or rows that laid something nobody knows on which road.
 *
 * @param millis when, as the row says, in milliseconds since 1970-01-01T00:00Z; of several rows the first
 * @param about what it is about
 * @param reading what that counter said, or {@link #NO_READING}
 * @param why in words
 */
record BadRow(long millis, About about, long reading, String why) implements Serializable {
    private static final long serialVersionUID = 1L;

    /** No counter has it. */
    static final long NO_READING = Long.MIN_VALUE;

    /** A counter, or the road's name. */
    enum About {
        SHAFT,
        ROAD,
        LIQUID,
        /** Its rows are counted: what they laid is known, and not where. */
        ROAD_ID;

        String words() {
            return name().toLowerCase(Locale.ROOT).replace('_', ' ');
        }
    }

    static BadRow of(long millis, About about, long reading, RowStatus status) {
        boolean isMissing = status == RowStatus.IMPOSSIBLE_READING && reading == NO_READING;
        return new BadRow(millis, about, reading, isMissing ? "no reading" : status.words());
    }

    /** What it is about, and why. */
    String reason() {
        return about.words() + ": " + why;
    }

    boolean isUncounted() {
        return about != About.ROAD_ID;
    }
}
