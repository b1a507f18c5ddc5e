package org.gritwright.core.fleet.day;

import javax.measure.Quantity;
import javax.measure.quantity.Mass;
import org.gritwright.units.check.Require;

/**
 * One container as it was written down.
 *
 * @param container the container's name
 * @param gross the mass with what was caught
 * @param tare the mass of the empty container; zero must be stated
 */
public record WeighingEntry(String container, Quantity<Mass> gross, Quantity<Mass> tare) {
    /** Checks that nothing is null. */
    public WeighingEntry {
        Require.given(WeighingEntry.class, container, gross, tare);
    }
}
