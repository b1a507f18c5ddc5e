package org.gritwright.core.fleet.day;

import javax.measure.Quantity;
import javax.measure.quantity.Time;
import org.gritwright.units.check.Require;

/**
 * How long each step takes with a weighing method, by the user's own watch; zero must be stated. Immutable,
 * thread-safe, a value.
 *
 * @param setUp setting up at a truck, once, with all safety steps
 * @param perCatch for each catch of a calibration, beside the run itself and the containers
 * @param perContainer for each container that is filled: carrying, weighing, emptying
 * @param perVerification for each verification catch, beside the run itself and the containers
 * @param cleanUp cleaning up at a truck, once
 */
public record StepTimes(
        Quantity<Time> setUp,
        Quantity<Time> perCatch,
        Quantity<Time> perContainer,
        Quantity<Time> perVerification,
        Quantity<Time> cleanUp) {
    /**
     * Checks the values.
     *
     * @throws org.gritwright.units.InvalidInputException if one is negative
     */
    public StepTimes {
        Require.notNegative("time to set up", Time.class, setUp);
        Require.notNegative("time per catch", Time.class, perCatch);
        Require.notNegative("time per container", Time.class, perContainer);
        Require.notNegative("time per verification catch", Time.class, perVerification);
        Require.notNegative("time to clean up", Time.class, cleanUp);
    }
}
