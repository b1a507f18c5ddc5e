package org.gritwright.core.observation;

import java.io.Serializable;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Length;
import org.gritwright.units.Amounts;
import org.gritwright.units.check.Require;
import org.gritwright.units.check.SerialForm;
import org.gritwright.units.quantity.BulkDensity;

/**
 * A material that is spread: grains that a conveyor moves, or a liquid that a pump does. Immutable, thread-safe, a value.
 *
 * <p>A liquid is metered by volume. What is said of its mass is volume × the density stated here, which counts as exact.
 *
 * @param name its name in the yard
 * @param form whether it is granular or a liquid
 * @param looseBulkDensity mass per volume, greater than zero: of the loose heap, voids included; of a liquid, its density
 * @param grainDiameter the diameter of its grains while it is dry and runs freely, greater than zero; none for damp
 *     material, a liquid, or where nobody knows
 * @param chemical the dry chemical in it as a part of its mass, 0 % to 100 %: the concentration of a brine, the purity of a salt, the
 *     salt in a mix; none where nobody says
 */
public record Material(
        String name,
        Form form,
        Quantity<BulkDensity> looseBulkDensity,
        Optional<Quantity<Length>> grainDiameter,
        Optional<Quantity<Dimensionless>> chemical)
        implements Serializable {
    /** What a material is to the machine that meters it. */
    public enum Form {
        /** Salt, sand, a mix: metered by a conveyor, caught by mass. */
        GRANULAR,
        /** Brine and other solutions: metered by a pump or a flow meter, caught as a volume. */
        LIQUID
    }

    /**
     * Checks the values.
     *
     * @throws org.gritwright.units.InvalidInputException if the name is blank, a density or diameter not greater than zero, a
     *     liquid has grains, or more than all of it is chemical
     */
    public Material {
        Require.given(Material.class, name, form, looseBulkDensity, grainDiameter, chemical);
        Require.text("material", name);
        Require.positive(
                (form == Form.LIQUID ? "density of " : "loose bulk density of ") + name,
                BulkDensity.class,
                looseBulkDensity);
        grainDiameter.ifPresent(d -> {
            Require.that(form == Form.GRANULAR, "grain diameter of " + name, "none, as it is a liquid", d);
            Require.positive("grain diameter of " + name, Length.class, d);
        });
        chemical.ifPresent(part -> {
            double ratio = Amounts.si(Dimensionless.class, part);
            Require.that(ratio >= 0 && ratio <= 1, "dry chemical in " + name, "within 0 % to 100 %", part);
        });
    }

    /**
     * A liquid.
     *
     * @param name its name in the yard
     * @param density mass per volume at the temperature at which it is pumped
     * @return the material
     * @throws org.gritwright.units.InvalidInputException if the name is blank or the density not greater than zero
     */
    public static Material liquid(String name, Quantity<BulkDensity> density) {
        return new Material(name, Form.LIQUID, density, Optional.empty(), Optional.empty());
    }

    /**
     * Whether it is a liquid.
     *
     * @return true for a liquid
     */
    public boolean isLiquid() {
        return form == Form.LIQUID;
    }

    /**
     * How much mass an SI unit of what counts stands for: a mass of grains, a volume of a liquid.
     *
     * @return 1 kg per kg; of a liquid, its density in kg per m³
     */
    public double kilogramsPerAmount() {
        return isLiquid() ? Amounts.si(BulkDensity.class, looseBulkDensity) : 1;
    }

    /**
     * A material of whose grains nothing is known.
     *
     * @param name its name in the yard
     * @param looseBulkDensity its loose bulk density
     * @return the material
     */
    public static Material of(String name, Quantity<BulkDensity> looseBulkDensity) {
        return new Material(name, Form.GRANULAR, looseBulkDensity, Optional.empty(), Optional.empty());
    }

    /**
     * The same material, dry and running freely.
     *
     * @param diameter the diameter of its grains
     * @return the material
     */
    public Material withGrains(Quantity<Length> diameter) {
        return new Material(name, form, looseBulkDensity, Optional.of(diameter), chemical);
    }

    /**
     * The same material with a known part of dry chemical.
     *
     * @param part the dry chemical as a part of its mass, 0 % to 100 %
     * @return the material
     */
    public Material withChemical(Quantity<Dimensionless> part) {
        return new Material(name, form, looseBulkDensity, grainDiameter, Optional.of(part));
    }

    private Object writeReplace() {
        return SerialForm.of(this);
    }
}
