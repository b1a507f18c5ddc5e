package org.gritwright.core.telemetry;

import java.io.Serializable;
import java.time.Instant;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Speed;
import javax.measure.quantity.Time;
import org.gritwright.units.Amounts;
import org.gritwright.units.check.Require;
import org.gritwright.units.quantity.PulsesPerDistance;

/**
 * How far a truck went in each row, in whole millimeters: by a counter of road-speed pulses, with the same rules as for the shaft's
 * counter, or by its speed. Immutable, thread-safe, serializable.
 */
public abstract sealed class Travel implements Serializable permits CountedTravel, SpeedTravel {
    private static final long serialVersionUID = 1L;

    /** What a row holds of which nobody knows how far the truck went. */
    public static final long UNKNOWN = -1;

    static final double MILLIMETERS = 1000;

    /** Two ways of knowing. */
    Travel() {}

    /**
     * Distances by a counter of pulses.
     *
     * @param counter the counter
     * @param perDistance the road-speed value: pulses per distance, greater than 0
     * @param from the earliest time that a row can have
     * @param until the latest
     * @return what evaluates it
     * @throws org.gritwright.units.InvalidInputException if the value isn't greater than 0, or the times are in the wrong order
     */
    public static Travel counted(
            Counter counter, Quantity<PulsesPerDistance> perDistance, Instant from, Instant until) {
        Objects.requireNonNull(counter, "counter");
        double perCount = MILLIMETERS
                / Amounts.si(
                        PulsesPerDistance.class,
                        Require.positive("road-speed value", PulsesPerDistance.class, perDistance));
        return new CountedTravel(counter, perCount, Times.earliest(from, until), Times.latest(from, until));
    }

    /**
     * Distances by speeds: between two rows the mean of theirs. A counter of pulses knows better what happened in between; this is as good as
     * speeds that rise and fall evenly from row to row.
     *
     * <p>With speeds v, a row holds round(d) − round(d before), where d adds up (v + v before) ÷ 2 × the time between: whole
     * millimeters telescope as milligrams do, as long as one state goes on.
     *
     * @param step what 1 in the column of speeds stands for, greater than 0; for example 1 mm/s
     * @param fastest the truck's highest speed; what is above it is no speed
     * @param longestGap how far apart two rows may be for what the truck went between them to be known, greater than 0
     * @param from the earliest time that a row can have
     * @param until the latest
     * @return what evaluates it
     * @throws org.gritwright.units.InvalidInputException if one isn't greater than 0, the highest speed is below a step, or the times are in the
     *     wrong order
     */
    public static Travel bySpeed(
            Quantity<Speed> step, Quantity<Speed> fastest, Quantity<Time> longestGap, Instant from, Instant until) {
        double perStep = Amounts.si(Speed.class, Require.positive("step of speeds", Speed.class, step));
        double most = Amounts.si(Speed.class, Require.positive("fastest speed", Speed.class, fastest)) / perStep;
        Require.that(most >= 1, "fastest speed", "a step, " + step + ", or more", fastest);
        double gap = Times.millis(Require.positive("longest gap", Time.class, longestGap));
        return new SpeedTravel(perStep, most, gap, Times.earliest(from, until), Times.latest(from, until));
    }

    /**
     * Where a truck's rows begin.
     *
     * @return a state without a reading
     */
    public abstract RowState start();

    /**
     * Evaluates rows.
     *
     * @param times milliseconds since 1970-01-01T00:00Z
     * @param readings readings of the counter, or speeds in steps
     * @param from the first row
     * @param to the one after the last
     * @param state where the truck's rows have got to; afterwards where they have got to then
     * @param millimeters gets how far it went in each row, at the row's place, or {@link #UNKNOWN}
     * @param statuses gets the {@link RowStatus#code()} that each row has by this counter or speed, at the row's place
     * @throws org.gritwright.units.InvalidInputException if a column is shorter than another
     * @throws IndexOutOfBoundsException if there are no such rows
     */
    public abstract void evaluate(
            long[] times, long[] readings, int from, int to, RowState state, long[] millimeters, byte[] statuses);
}
