package org.gritwright.core.fleet.day;

import java.util.Optional;
import java.util.stream.Stream;
import javax.measure.Quantity;
import javax.measure.quantity.Time;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.check.Require;

/**
 * How long each step takes with a weighing method, by the user's own watch; zero must be stated, except for what is done once
 * a day. Immutable, thread-safe, a value.
 *
 * @param setUp setting up at a truck, once, with all safety steps
 * @param perCatch for each catch of a calibration, beside the run itself and the containers
 * @param perContainer for each container that is filled: carrying, weighing, emptying
 * @param perVerification for each verification catch, beside the run itself and the containers
 * @param cleanUp cleaning up at a truck, once
 * @param dailySetUp setting up the yard, once a day for each crew: cones, scale, test weights, tarps; none if that is part of
 *     setting up at each truck
 * @param dailyCleanUp cleaning up the yard, once a day for each crew
 */
public record StepTimes(
        Quantity<Time> setUp,
        Quantity<Time> perCatch,
        Quantity<Time> perContainer,
        Quantity<Time> perVerification,
        Quantity<Time> cleanUp,
        Optional<Quantity<Time>> dailySetUp,
        Optional<Quantity<Time>> dailyCleanUp) {
    /**
     * Checks the values.
     *
     * @throws org.gritwright.units.InvalidInputException if one is negative
     */
    public StepTimes {
        Require.given(
                StepTimes.class, setUp, perCatch, perContainer, perVerification, cleanUp, dailySetUp, dailyCleanUp);
        Require.notNegative("time to set up", Time.class, setUp);
        Require.notNegative("time per catch", Time.class, perCatch);
        Require.notNegative("time per container", Time.class, perContainer);
        Require.notNegative("time per verification catch", Time.class, perVerification);
        Require.notNegative("time to clean up", Time.class, cleanUp);
        dailySetUp.ifPresent(time -> Require.notNegative("time to set up the yard", Time.class, time));
        dailyCleanUp.ifPresent(time -> Require.notNegative("time to clean up the yard", Time.class, time));
    }

    /**
     * Times of a yard in which nothing is done once a day.
     *
     * @param setUp as of the record
     * @param perCatch as of the record
     * @param perContainer as of the record
     * @param perVerification as of the record
     * @param cleanUp as of the record
     * @throws org.gritwright.units.InvalidInputException if one is negative
     */
    public StepTimes(
            Quantity<Time> setUp,
            Quantity<Time> perCatch,
            Quantity<Time> perContainer,
            Quantity<Time> perVerification,
            Quantity<Time> cleanUp) {
        this(setUp, perCatch, perContainer, perVerification, cleanUp, Optional.empty(), Optional.empty());
    }

    /**
     * What each crew does once a day.
     *
     * @return the time in minutes, 0 or more
     */
    public Quantity<Time> daily() {
        double seconds = Stream.concat(dailySetUp.stream(), dailyCleanUp.stream())
                .mapToDouble(time -> Amounts.si(Time.class, time))
                .sum();
        return Amounts.ofSi(seconds, SpreadingUnits.MINUTE);
    }
}
