package org.gritwright.core.range;

import java.io.Serializable;
import javax.measure.Quantity;
import org.gritwright.units.check.Require;
import org.gritwright.units.quantity.RotationalSpeed;

/**
 * The gain of a valve between two measured commands next to each other. Immutable, thread-safe, a value.
 *
 * @param commands from the one to the other
 * @param perUnit by how much the shaft speed rises for one unit of command: for 1 %, 1 mA or a number higher by 1
 * @param perStep by how much it rises for one step of the command, which is as finely as the speed can be set there
 */
public record Stretch(CommandInterval commands, Quantity<RotationalSpeed> perUnit, Quantity<RotationalSpeed> perStep)
        implements Serializable {
    /**
     * Checks the values.
     *
     * @throws org.gritwright.units.InvalidInputException if a speed is negative
     */
    public Stretch {
        Require.given(Stretch.class, commands, perUnit, perStep);
        Require.notNegative("gain", RotationalSpeed.class, perUnit);
        Require.notNegative("speed of a step", RotationalSpeed.class, perStep);
    }
}
