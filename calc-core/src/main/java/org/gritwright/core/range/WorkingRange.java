package org.gritwright.core.range;

import java.io.Serializable;
import javax.measure.Quantity;
import org.gritwright.units.Amounts;
import org.gritwright.units.check.Comparison;
import org.gritwright.units.check.Require;
import org.gritwright.units.quantity.RotationalSpeed;

/**
 * The steady speeds that a drive can hold. Immutable, thread-safe, a value.
 *
 * @param lowest the lowest steady speed of the sensed or watched shaft, 0 or more
 * @param highest the highest, greater than zero and not below the lowest
 */
public record WorkingRange(Quantity<RotationalSpeed> lowest, Quantity<RotationalSpeed> highest)
        implements Serializable {
    /**
     * Checks the values.
     *
     * @throws org.gritwright.units.InvalidInputException if one is out of its range
     */
    public WorkingRange {
        Require.notNegative("lowest steady shaft speed", RotationalSpeed.class, lowest);
        Require.positive("highest steady shaft speed", RotationalSpeed.class, highest);
        Require.atLeast("highest steady shaft speed", RotationalSpeed.class, highest, lowest);
    }

    /**
     * Whether the drive can hold a speed.
     *
     * @param shaftSpeed the speed
     * @return true within the range, limits included
     */
    public boolean contains(Quantity<RotationalSpeed> shaftSpeed) {
        double speed = Amounts.si(RotationalSpeed.class, shaftSpeed);
        return !Comparison.isAbove(Amounts.si(RotationalSpeed.class, lowest), speed)
                && !Comparison.isAbove(speed, Amounts.si(RotationalSpeed.class, highest));
    }
}
