package org.gritwright.core.observation;

import java.time.OffsetDateTime;
import java.util.Optional;
import java.util.OptionalDouble;
import org.gritwright.core.metering.ShaftCount;
import org.gritwright.core.weighing.CaughtMass;
import org.gritwright.units.check.Require;

/**
 * One catch as it was made: when, by whom, at which calibration point, what was caught, what was counted, and under which
 * conditions. A calibration catch and a verification catch are observations with a purpose. Immutable, thread-safe, a value.
 *
 * @param at when
 * @param by who was at the controls; none if nobody says
 * @param point the calibration point
 * @param caught what was caught
 * @param counted what was counted meanwhile; none if nothing was
 * @param conditions what else was written down
 */
public record Observation(
        OffsetDateTime at,
        Optional<String> by,
        CalibrationPoint point,
        CaughtMass caught,
        Optional<ShaftCount> counted,
        Conditions conditions) {

    /**
     * Checks that the count goes with the drive.
     *
     * @throws org.gritwright.units.InvalidInputException if pulses were counted and the drive has no sensor, or a control
     *     setting isn't one of the drive's
     */
    public Observation {
        Require.given(Observation.class, at, by, point, caught, counted, conditions);
        counted.ifPresent(count -> count.revolutions(point.metering().feedback()));
    }

    /**
     * A catch for which nothing was counted and nothing else was written down; add what was with {@link #counted(ShaftCount)},
     * {@link #by(String)} and {@link #under}.
     *
     * @param point the calibration point
     * @param at when
     * @param caught what was caught
     * @return the observation
     */
    public static Observation of(CalibrationPoint point, OffsetDateTime at, CaughtMass caught) {
        return new Observation(at, Optional.empty(), point, caught, Optional.empty(), Conditions.NONE);
    }

    /**
     * The same catch with what was counted.
     *
     * @param count pulses or revolutions
     * @return the observation
     * @throws org.gritwright.units.InvalidInputException if the count doesn't go with the drive
     */
    public Observation counted(ShaftCount count) {
        return new Observation(at, by, point, caught, Optional.of(count), conditions);
    }

    /**
     * The same catch with who made it.
     *
     * @param person who was at the controls
     * @return the observation
     */
    public Observation by(String person) {
        return new Observation(at, Optional.of(person), point, caught, counted, conditions);
    }

    /**
     * The same catch with its conditions.
     *
     * @param noted what else was written down
     * @return the observation
     */
    public Observation under(Conditions noted) {
        return new Observation(at, by, point, caught, counted, noted);
    }

    /**
     * The revolutions of the sensed or watched shaft.
     *
     * @return revolutions, greater than zero; none if nothing was counted
     */
    public OptionalDouble revolutions() {
        return counted.isPresent()
                ? OptionalDouble.of(counted.get().revolutions(point.metering().feedback()))
                : OptionalDouble.empty();
    }

    /**
     * How uncertain the count is.
     *
     * @return standard uncertainty in revolutions; none if nothing was counted or nobody knows
     */
    public OptionalDouble uncertaintyRevolutions() {
        return counted.isPresent()
                ? counted.get().uncertaintyRevolutions(point.metering().feedback())
                : OptionalDouble.empty();
    }
}
