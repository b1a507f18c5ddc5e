package org.gritwright.core.verification;

import javax.measure.Quantity;
import javax.measure.quantity.Mass;
import org.gritwright.units.check.Require;

/**
 * The mass that a display showed at the end of a run. Immutable, thread-safe, a value.
 *
 * @param shown the mass shown, greater than zero
 * @param resolution the step in which the display shows mass, greater than zero
 */
public record IndicatedMass(Quantity<Mass> shown, Quantity<Mass> resolution) {
    /**
     * Checks the values.
     *
     * @throws org.gritwright.units.InvalidInputException if one is not greater than zero
     */
    public IndicatedMass {
        Require.positive("indicated mass", Mass.class, shown);
        Require.positive("resolution of the indicated mass", Mass.class, resolution);
    }
}
