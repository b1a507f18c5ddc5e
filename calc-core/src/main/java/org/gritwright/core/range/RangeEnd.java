package org.gritwright.core.range;

import java.io.Serializable;
import javax.measure.Quantity;
import org.gritwright.units.Amounts;
import org.gritwright.units.check.Require;
import org.gritwright.units.quantity.RotationalSpeed;

/**
 * The lowest or highest speed of a working range, as well as it is known. Immutable, thread-safe, a value.
 *
 * @param speed the speed
 * @param allowance how far it may be off, either way: of a measured one the expanded uncertainty (95 %) and the resolution of the
 *     reading
 * @param proven whether nothing beyond it was left to try; what is beyond one that isn't proven nobody knows
 */
public record RangeEnd(Quantity<RotationalSpeed> speed, Quantity<RotationalSpeed> allowance, boolean proven)
        implements Serializable {
    /**
     * Checks the values.
     *
     * @throws org.gritwright.units.InvalidInputException if one is negative
     */
    public RangeEnd {
        Require.given(RangeEnd.class, speed, allowance);
        Require.notNegative("steady shaft speed", RotationalSpeed.class, speed);
        Require.notNegative("allowance of a steady shaft speed", RotationalSpeed.class, allowance);
    }

    /**
     * Whether another speed differs from it by more than it may be off.
     *
     * @param other a speed
     * @return true if it is farther away than the allowance
     */
    public boolean differsFrom(Quantity<RotationalSpeed> other) {
        return Math.abs(Amounts.si(RotationalSpeed.class, other) - Amounts.si(RotationalSpeed.class, speed))
                > Amounts.si(RotationalSpeed.class, allowance);
    }
}
