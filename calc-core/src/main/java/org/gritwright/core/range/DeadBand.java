package org.gritwright.core.range;

import java.io.Serializable;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import org.gritwright.units.check.Require;

/**
 * The part of the commands in which nothing moves, from the lowest command on: as exactly as the command at which the shaft
 * starts or stops is known. Immutable, thread-safe, a value.
 *
 * @param atLeast the part of the span that is dead for certain, 0 or more
 * @param atMost the part that may be, not below the other
 */
public record DeadBand(Quantity<Dimensionless> atLeast, Quantity<Dimensionless> atMost) implements Serializable {
    /**
     * Checks the parts.
     *
     * @throws org.gritwright.units.InvalidInputException if one is negative, or they are upside down
     */
    public DeadBand {
        Require.notNegative("dead band", Dimensionless.class, atLeast);
        Require.atLeast("dead band", Dimensionless.class, atMost, atLeast);
    }
}
