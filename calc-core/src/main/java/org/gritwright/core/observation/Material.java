package org.gritwright.core.observation;

import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Length;
import org.gritwright.units.check.Require;
import org.gritwright.units.quantity.BulkDensity;

/**
 * A granular material that is spread. Immutable, thread-safe, a value.
 *
 * @param name its name in the yard
 * @param looseBulkDensity mass per volume of the loose heap, voids included, greater than zero
 * @param grainDiameter the diameter of its grains while it is dry and runs freely, greater than zero; none for damp
 *     material or where nobody knows
 */
public record Material(String name, Quantity<BulkDensity> looseBulkDensity, Optional<Quantity<Length>> grainDiameter) {
    /**
     * Checks the values.
     *
     * @throws org.gritwright.units.InvalidInputException if the name is blank, or a density or diameter not greater than
     *     zero
     */
    public Material {
        Require.given(Material.class, name, looseBulkDensity, grainDiameter);
        Require.text("material", name);
        Require.positive("loose bulk density of " + name, BulkDensity.class, looseBulkDensity);
        grainDiameter.ifPresent(d -> Require.positive("grain diameter of " + name, Length.class, d));
    }

    /**
     * A material of whose grains nothing is known.
     *
     * @param name its name in the yard
     * @param looseBulkDensity its loose bulk density
     * @return the material
     */
    public static Material of(String name, Quantity<BulkDensity> looseBulkDensity) {
        return new Material(name, looseBulkDensity, Optional.empty());
    }

    /**
     * The same material, dry and running freely.
     *
     * @param diameter the diameter of its grains
     * @return the material
     */
    public Material withGrains(Quantity<Length> diameter) {
        return new Material(name, looseBulkDensity, Optional.of(diameter));
    }
}
