package org.gritwright.core.season;

import java.io.Serializable;
import javax.measure.Quantity;
import javax.measure.quantity.Mass;
import org.gritwright.units.check.Require;

/**
 * Loads of a truck that were weighed on one scale or by one loader, beside what the truck indicated of the very same loads. One load, or the total of
 * many. Immutable, thread-safe, a value.
 *
 * @param weighed their mass, greater than 0, with its uncertainty; the scale's error is the {@link StatedMass#common common} one, so that all
 *     weighings of that scale share it
 * @param indicated what the truck indicated of them, greater than 0
 */
public record WeighedLoads(StatedMass weighed, Quantity<Mass> indicated) implements Serializable {
    private static final long serialVersionUID = 1L;

    /**
     * Checks the values.
     *
     * @throws org.gritwright.units.InvalidInputException if a mass or the uncertainty isn't greater than 0
     */
    public WeighedLoads {
        Require.given(WeighedLoads.class, weighed, indicated);
        Require.positive("mass of weighed loads", Mass.class, weighed.mass());
        Require.positive("standard uncertainty of weighed loads", Mass.class, weighed.standardUncertainty());
        Require.positive("indicated mass of weighed loads", Mass.class, indicated);
    }
}
