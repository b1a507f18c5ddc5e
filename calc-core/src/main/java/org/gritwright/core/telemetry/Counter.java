package org.gritwright.core.telemetry;

import java.io.Serializable;
import java.util.Objects;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Speed;
import javax.measure.quantity.Time;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.check.Require;
import org.gritwright.units.check.SerialForm;
import org.gritwright.units.quantity.FlowRate;
import org.gritwright.units.quantity.PulseCount;
import org.gritwright.units.quantity.PulsesPerDistance;
import org.gritwright.units.quantity.PulsesPerRevolution;
import org.gritwright.units.quantity.PulsesPerVolume;
import org.gritwright.units.quantity.RotationalSpeed;

/**
 * A counter of pulses as telemetry reads it: how fast it can count, where it rolls over, and how rows of it are trusted. Immutable,
 * thread-safe, a value.
 *
 * <p>A reading that is lower than the one before means one of two things. Where it is known at which count the counter rolls
 * over (a width of 16 bits: 65536 pulse), it has, if the shaft could turn so far in the time; in the other case, and where it doesn't roll over, the
 * controller restarted. If the rows lie so far apart that a restart and what was turned since fit between them, both explain it,
 * and nobody can say how much was turned. That is how RFC 2578 (section 7.1.6) sees a counter: its value alone says nothing, and a discontinuity must be told from
 * rolling over.
 *
 * @param fastest pulses in a second at most: of a shaft its highest speed, of a distance counter the truck's
 * @param rollsOverAt the count at which it starts again at 0; none if it never does
 * @param longestGap how far apart two rows may be for what turned between them to be counted
 * @param shortestRestart a controller can't restart in less
 * @param clockStep the step in which rows give their time: two rows may be so much farther apart than they say
 */
public record Counter(
        double fastest,
        Optional<Quantity<PulseCount>> rollsOverAt,
        Quantity<Time> longestGap,
        Quantity<Time> shortestRestart,
        Quantity<Time> clockStep)
        implements Serializable {
    /** Where nobody says: longer, and nobody knows how it ran meanwhile (common practice, no source). */
    private static final double LONGEST_GAP_SECONDS = 300;

    /** Where nobody says: no controller is back sooner (common practice, no source). */
    private static final double SHORTEST_RESTART_SECONDS = 10;

    /** Where nobody says: rows give whole seconds (common practice, no source). */
    private static final double CLOCK_STEP_SECONDS = 1;

    /** A counter that rolls over sooner couldn't be read in rows. */
    private static final double FEWEST = 2;

    /** Above it a double doesn't hold every whole number. */
    private static final double MOST = 9.007199254740992e15;

    /**
     * Checks the values.
     *
     * @throws org.gritwright.units.InvalidInputException if the fastest isn't greater than 0, the count isn't whole or below 2, or a
     *     time is negative, or the longest gap or the clock's step 0
     */
    public Counter {
        Require.given(Counter.class, rollsOverAt, longestGap, shortestRestart, clockStep);
        Require.positive("fastest count", fastest);
        rollsOverAt.ifPresent(at -> Require.within(
                "count at which the counter rolls over",
                PulseCount.class,
                Require.wholeNumber("count at which the counter rolls over", PulseCount.class, at),
                Amounts.of(FEWEST, SpreadingUnits.PULSE),
                Amounts.of(MOST, SpreadingUnits.PULSE)));
        Require.positive("longest gap", Time.class, longestGap);
        Require.notNegative("shortest restart", Time.class, shortestRestart);
        Require.positive("clock step", Time.class, clockStep);
    }

    private static Counter of(double fastest) {
        return new Counter(
                fastest,
                Optional.empty(),
                seconds(LONGEST_GAP_SECONDS),
                seconds(SHORTEST_RESTART_SECONDS),
                seconds(CLOCK_STEP_SECONDS));
    }

    private static Quantity<Time> seconds(double number) {
        return Amounts.of(number, SpreadingUnits.SECOND);
    }

    /**
     * A counter of a shaft's pulses that never rolls over, with rows of whole seconds, gaps of up to 5 min, and a controller that
     * takes 10 s to restart.
     *
     * @param pulses pulses per revolution of the sensed shaft, greater than 0
     * @param fastest its highest speed, greater than 0; take rather more than less
     * @return the counter
     * @throws org.gritwright.units.InvalidInputException if one isn't greater than 0
     */
    public static Counter ofShaft(Quantity<PulsesPerRevolution> pulses, Quantity<RotationalSpeed> fastest) {
        Objects.requireNonNull(pulses, "pulses");
        Objects.requireNonNull(fastest, "fastest");
        return of(Amounts.si(
                        PulsesPerRevolution.class,
                        Require.positive("pulses per revolution", PulsesPerRevolution.class, pulses))
                * Amounts.si(
                        RotationalSpeed.class,
                        Require.positive("fastest shaft speed", RotationalSpeed.class, fastest)));
    }

    /**
     * A counter of a flow meter's pulses, with the same defaults.
     *
     * @param pulses pulses per volume, greater than 0
     * @param fastest the highest flow, greater than 0
     * @return the counter
     * @throws org.gritwright.units.InvalidInputException if one isn't greater than 0
     */
    public static Counter ofFlow(Quantity<PulsesPerVolume> pulses, Quantity<FlowRate> fastest) {
        Objects.requireNonNull(pulses, "pulses");
        Objects.requireNonNull(fastest, "fastest");
        return of(
                Amounts.si(PulsesPerVolume.class, Require.positive("pulses per volume", PulsesPerVolume.class, pulses))
                        * Amounts.si(FlowRate.class, Require.positive("fastest flow", FlowRate.class, fastest)));
    }

    /**
     * A counter of road-speed pulses, with the same defaults.
     *
     * @param pulses pulses per distance, greater than 0
     * @param fastest the truck's highest speed, greater than 0
     * @return the counter
     * @throws org.gritwright.units.InvalidInputException if one isn't greater than 0
     */
    public static Counter ofDistance(Quantity<PulsesPerDistance> pulses, Quantity<Speed> fastest) {
        Objects.requireNonNull(pulses, "pulses");
        Objects.requireNonNull(fastest, "fastest");
        return of(Amounts.si(
                        PulsesPerDistance.class,
                        Require.positive("pulses per distance", PulsesPerDistance.class, pulses))
                * Amounts.si(Speed.class, Require.positive("fastest speed", Speed.class, fastest)));
    }

    /**
     * The same, rolling over.
     *
     * @param count the count at which it starts again at 0, for example 65536 pulse of a counter of 16 bits
     * @return the counter
     * @throws org.gritwright.units.InvalidInputException if it isn't a whole number from 2
     */
    public Counter rollingOverAt(Quantity<PulseCount> count) {
        return new Counter(fastest, Optional.of(count), longestGap, shortestRestart, clockStep);
    }

    /**
     * The same with another longest gap.
     *
     * @param time how far apart two rows may be, greater than 0
     * @return the counter
     * @throws org.gritwright.units.InvalidInputException if it isn't greater than 0
     */
    public Counter withGapsUpTo(Quantity<Time> time) {
        return new Counter(fastest, rollsOverAt, time, shortestRestart, clockStep);
    }

    /**
     * The same with another shortest restart.
     *
     * @param time a controller can't restart in less; 0 or more
     * @return the counter
     * @throws org.gritwright.units.InvalidInputException if it is negative
     */
    public Counter restartingInNoLessThan(Quantity<Time> time) {
        return new Counter(fastest, rollsOverAt, longestGap, time, clockStep);
    }

    /**
     * The same with rows of another step of time.
     *
     * @param step the step in which rows give their time, greater than 0
     * @return the counter
     * @throws org.gritwright.units.InvalidInputException if it isn't greater than 0
     */
    public Counter withClockStep(Quantity<Time> step) {
        return new Counter(fastest, rollsOverAt, longestGap, shortestRestart, step);
    }

    /**
     * The shortest time in which it could roll over and be back where it was: rows farther apart can't be counted.
     *
     * @return the count at which it rolls over ÷ the fastest; none if it never does
     */
    public Optional<Quantity<Time>> shortestWrap() {
        return rollsOverAt.map(count -> seconds(Amounts.si(PulseCount.class, count) / fastest));
    }

    private Object writeReplace() {
        return SerialForm.of(this);
    }
}
