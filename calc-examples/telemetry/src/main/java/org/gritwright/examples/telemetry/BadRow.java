package org.gritwright.examples.telemetry;

import java.io.Serializable;

/**
 * A row that can't be counted.
 *
 * @param millis when, as the row says, in milliseconds since 1970-01-01T00:00Z
 * @param counter which counter it is about
 * @param reading what that counter said
 * @param why in words
 */
record BadRow(long millis, Counted counter, long reading, String why) implements Serializable {
    private static final long serialVersionUID = 1L;

    /** What a counter counts. */
    enum Counted {
        SHAFT,
        ROAD
    }
}
