package org.gritwright.core.weighing;

import java.time.LocalDate;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Mass;
import org.gritwright.units.check.Require;

/**
 * A check of a scale with a test weight, of the day it was made. Immutable, thread-safe, a value.
 *
 * @param on the day
 * @param testWeight the known mass, greater than zero
 * @param reading what the scale showed, 0 or more
 */
public record ScaleCheck(LocalDate on, Quantity<Mass> testWeight, Quantity<Mass> reading) {
    /**
     * Checks the values.
     *
     * @throws org.gritwright.units.InvalidInputException if a value is out of its range
     */
    public ScaleCheck {
        Objects.requireNonNull(on, "on");
        Require.positive("test weight", Mass.class, testWeight);
        Require.notNegative("reading of the test weight", Mass.class, reading);
    }
}
