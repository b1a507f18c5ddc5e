package org.gritwright.core.calibration;

import javax.measure.Quantity;
import org.gritwright.core.measurement.Require;
import org.gritwright.units.quantity.BulkDensity;

/**
 * A granular material that is spread. Immutable, thread-safe, a value.
 *
 * @param name its name in the yard
 * @param looseBulkDensity mass per volume of the loose heap, voids included, greater than zero
 */
public record Material(String name, Quantity<BulkDensity> looseBulkDensity) {
    /**
     * Checks the values.
     *
     * @throws org.gritwright.units.InvalidInputException if the name is blank or the density not greater than zero
     */
    public Material {
        Require.text("material", name);
        Require.positive("loose bulk density of " + name, BulkDensity.class, looseBulkDensity);
    }

    /**
     * A material.
     *
     * @param name its name in the yard
     * @param looseBulkDensity its loose bulk density
     * @return the material
     */
    public static Material of(String name, Quantity<BulkDensity> looseBulkDensity) {
        return new Material(name, looseBulkDensity);
    }
}
