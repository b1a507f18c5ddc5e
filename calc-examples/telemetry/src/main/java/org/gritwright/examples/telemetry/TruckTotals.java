package org.gritwright.examples.telemetry;

import java.io.Serializable;
import org.gritwright.core.telemetry.RateShares;
import org.gritwright.core.telemetry.RowSums;

/**
 * One truck's season in a few numbers.
 *
 * @param rows all of them
 * @param badRows those that can't be counted, by the shaft or by the road; a row may be there twice
 * @param shares over how much of the way with spreading on the rate was within the band
 */
record TruckTotals(String truck, long rows, long badRows, int trips, RowSums sums, RateShares shares, Way way)
        implements Serializable {
    private static final long serialVersionUID = 1L;

    /** Millimeters with spreading on, with spreading off, and of which nobody knows what was laid. */
    record Way(long spreading, long off, long unknown) implements Serializable {
        private static final long serialVersionUID = 1L;

        Way plus(Way other) {
            return new Way(spreading + other.spreading, off + other.off, unknown + other.unknown);
        }
    }
}
