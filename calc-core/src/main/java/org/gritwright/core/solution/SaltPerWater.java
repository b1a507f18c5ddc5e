package org.gritwright.core.solution;

import org.gritwright.core.uncertainty.Measured;
import org.gritwright.units.check.Require;
import org.gritwright.units.quantity.BulkDensity;

/**
 * Salt as it lies per volume of WATER that is poured in before it. Not to be mixed up with {@link SaltPerBrine}: a gallon of water
 * makes more than a gallon of brine. Immutable, thread-safe, a value.
 *
 * @param massPerWater mass of salt ÷ volume of water, 0 or more
 */
public record SaltPerWater(Measured<BulkDensity> massPerWater) {
    /**
     * Checks the value.
     *
     * @throws org.gritwright.units.InvalidInputException if it is negative
     */
    public SaltPerWater {
        Require.given(SaltPerWater.class, massPerWater);
        Require.notNegative("salt per volume of water", BulkDensity.class, massPerWater.value());
    }
}
