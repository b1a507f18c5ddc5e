package org.gritwright.core.planning;

import javax.measure.Quantity;
import javax.measure.quantity.Mass;
import org.gritwright.units.check.Require;

/**
 * The containers that a catch may fill, all alike. Immutable, thread-safe, a value.
 *
 * @param howMany how many may be filled in one catch, 1 or more
 * @param holds the mass of material that each may be filled with, greater than zero
 * @param tare the mass of each when it is empty, 0 or more
 */
public record Containers(int howMany, Quantity<Mass> holds, Quantity<Mass> tare) {
    /**
     * Checks the values.
     *
     * @throws org.gritwright.units.InvalidInputException if one is out of its range
     */
    public Containers {
        Require.that(howMany >= 1, "containers", "one or more", howMany);
        Require.positive("what a container holds", Mass.class, holds);
        Require.notNegative("tare of a container", Mass.class, tare);
    }
}
