package org.gritwright.core.fleet.day;

import javax.measure.Quantity;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.units.check.Require;
import org.gritwright.units.quantity.BulkDensity;

/**
 * The density of a liquid that was weighed, as it was written down: by a hydrometer, or a scale and a known volume, at the
 * temperature at which it was pumped.
 *
 * @param value the density
 * @param standardUncertainty its standard uncertainty
 */
public record DensityEntry(Quantity<BulkDensity> value, Quantity<BulkDensity> standardUncertainty) {
    /** Checks that nothing is null. */
    public DensityEntry {
        Require.given(DensityEntry.class, value, standardUncertainty);
    }

    /**
     * The density.
     *
     * @return value and uncertainty
     * @throws org.gritwright.units.InvalidInputException if the uncertainty is below zero
     */
    public Measured<BulkDensity> density() {
        return Measured.of(value, standardUncertainty, Double.POSITIVE_INFINITY);
    }
}
