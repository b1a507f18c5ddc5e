package org.gritwright.core.spi;

import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Length;
import org.gritwright.core.measurement.Require;

/**
 * An adjustable gate opening: how far it can be set and what cross-section it leaves. Immutable, thread-safe.
 *
 * @param lowest the smallest opening that can be set
 * @param highest the largest opening that can be set, not below the lowest
 * @param area the cross-section as a function of the opening
 */
public record GateOpening(Quantity<Length> lowest, Quantity<Length> highest, OpenArea area) {
    /**
     * Checks the limits.
     *
     * @throws org.gritwright.units.InvalidInputException if the lowest opening is negative or above the highest
     */
    public GateOpening {
        Require.notNegative("lowest gate opening", Length.class, lowest);
        Require.atLeast("highest gate opening", Length.class, highest, lowest);
        Objects.requireNonNull(area, "area");
    }
}
