package org.gritwright.units.rate;

import java.io.Serializable;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.check.Require;
import org.gritwright.units.quantity.BulkDensity;

/**
 * A liquid chemical as it is spread: how heavy it is, and how much dry chemical is in it. Use it wherever a volume of liquid is
 * turned into a mass of dry chemical, so that density and concentration stay together.
 *
 * <p>Both belong to the liquid as it was at one temperature; a density read from a table at another temperature is another
 * density. Immutable, thread-safe, a value.
 *
 * @param density mass per volume of the liquid
 * @param concentration mass of dry chemical per mass of liquid, 0 to 100 %, for example 23.3 %
 */
public record LiquidChemical(Quantity<BulkDensity> density, Quantity<Dimensionless> concentration)
        implements Serializable {

    /**
     * Checks the parts.
     *
     * @throws InvalidInputException if the density is not greater than zero, or the concentration is out of its range
     */
    public LiquidChemical {
        Require.given(LiquidChemical.class, density, concentration);
        Derived.density(density);
        Derived.fraction("mass fraction of the dry chemical", concentration);
    }

    /** Dry chemical per volume of liquid, kg/m³. */
    double kilogramsOfChemicalPerCubicMeter() {
        return Derived.density(density) * Derived.fraction("mass fraction of the dry chemical", concentration);
    }
}
