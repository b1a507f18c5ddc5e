package org.gritwright.core.solution;

import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Temperature;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.units.Amounts;
import org.gritwright.units.check.Require;

/**
 * What a hydrometer reads: the density of a liquid ÷ that of water at a reference temperature, which stands on the hydrometer and is
 * never guessed: the same brine of 23.3 % reads 1.178 against water at 60 °F and 1.177 against water at 39 °F. Immutable,
 * thread-safe, a value.
 *
 * @param reading the reading, greater than zero
 * @param reference the temperature of the water, for which the hydrometer was made, 0 °C to 40 °C
 */
public record SpecificGravity(Measured<Dimensionless> reading, Quantity<Temperature> reference) {
    /**
     * Checks the values.
     *
     * @throws org.gritwright.units.InvalidInputException if the reading is not greater than zero, or the temperature outside
     */
    public SpecificGravity {
        Require.given(SpecificGravity.class, reading, reference);
        Require.positive("specific gravity", Dimensionless.class, reading.value());
        Celsius.within("reference temperature", reference, Water.COLDEST, Water.WARMEST);
    }

    double water() {
        return Water.kilogramsPerCubicMeter(Celsius.of("reference temperature", reference));
    }

    double ratio() {
        return Amounts.si(Dimensionless.class, reading.value());
    }
}
