package org.gritwright.core.solution;

import org.gritwright.core.uncertainty.Measured;
import org.gritwright.units.check.Require;
import org.gritwright.units.quantity.BulkDensity;

/**
 * Salt as it lies per volume of finished BRINE. Not to be mixed up with {@link SaltPerWater}. Immutable, thread-safe, a value.
 *
 * @param massPerBrine mass of salt ÷ volume of brine, 0 or more
 */
public record SaltPerBrine(Measured<BulkDensity> massPerBrine) {
    /**
     * Checks the value.
     *
     * @throws org.gritwright.units.InvalidInputException if it is negative
     */
    public SaltPerBrine {
        Require.given(SaltPerBrine.class, massPerBrine);
        Require.notNegative("salt per volume of brine", BulkDensity.class, massPerBrine.value());
    }
}
