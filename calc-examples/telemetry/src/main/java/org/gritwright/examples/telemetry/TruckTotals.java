package org.gritwright.examples.telemetry;

import java.io.Serializable;
import java.util.SortedMap;
import org.gritwright.core.telemetry.RateShares;
import org.gritwright.core.telemetry.RowSums;

/**
 * One truck's season in a few numbers.
 *
 * @param rows all of them
 * @param reasons how many rows can't be counted, by the shaft, the road or the liquid, and why; a row may be there more than once
 * @param shares over how much of the way with spreading on the rate was within the band
 * @param liquid what wetted it
 * @param nowhere milligrams laid where no road is named
 */
record TruckTotals(
        String truck,
        long rows,
        SortedMap<String, Long> reasons,
        int trips,
        RowSums sums,
        RateShares shares,
        Way way,
        Liquid liquid,
        long nowhere)
        implements OfTruck, Serializable {
    private static final long serialVersionUID = 1L;

    long badRows() {
        return reasons.values().stream().mapToLong(Long::longValue).sum();
    }
}
