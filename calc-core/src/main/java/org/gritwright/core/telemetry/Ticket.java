package org.gritwright.core.telemetry;

import java.util.List;
import javax.measure.Quantity;
import javax.measure.quantity.Mass;
import org.gritwright.units.check.Require;

/**
 * What a ticket says was loaded: weighed over a scale, or by the loader. Immutable, thread-safe, a value.
 *
 * @param loaded the mass that went into the hopper, greater than 0
 * @param standardUncertainty of this weighing alone: reading, empty truck, what was spilled; 0 or more
 * @param errors what it shares with other tickets and perhaps with the calibration, such as the scale's span, relative to the mass; each id once
 */
public record Ticket(Quantity<Mass> loaded, Quantity<Mass> standardUncertainty, List<SharedError> errors) {
    /**
     * Checks the values and copies the list.
     *
     * @throws org.gritwright.units.InvalidInputException if the mass isn't greater than 0, the uncertainty negative, or an error's id
     *     there twice
     */
    public Ticket {
        Require.given(Ticket.class, loaded, standardUncertainty, errors);
        Require.positive("mass loaded", Mass.class, loaded);
        Require.notNegative("standard uncertainty of the mass loaded", Mass.class, standardUncertainty);
        errors = SharedError.eachOnce(errors);
    }
}
