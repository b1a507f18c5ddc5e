package org.gritwright.core.telemetry;

import java.io.Serializable;
import java.time.Instant;
import java.util.List;
import java.util.Objects;
import javax.measure.Quantity;
import org.gritwright.units.Amounts;
import org.gritwright.units.check.Require;
import org.gritwright.units.quantity.PulsesPerDistance;

/**
 * How far a truck went in each row, in whole millimeters, by a counter of road-speed pulses: with the same rules as for the shaft's
 * counter. Immutable, thread-safe, serializable.
 */
public final class Travel implements Serializable {
    private static final long serialVersionUID = 1L;

    /** What a row holds of which nobody knows how far the truck went. */
    public static final long UNKNOWN = -1;

    private static final double MILLIMETERS = 1000;

    private final RowEvaluator counted;

    private Travel(RowEvaluator counted) {
        this.counted = counted;
    }

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
        Objects.requireNonNull(from, "from");
        Objects.requireNonNull(until, "until");
        double perCount = MILLIMETERS
                / Amounts.si(
                        PulsesPerDistance.class,
                        Require.positive("road-speed value", PulsesPerDistance.class, perDistance));
        long earliest = Times.millis("earliest time", from);
        long latest = Times.millis("latest time", until);
        Require.that(earliest < latest, "latest time", "later than the earliest, " + from, until);
        return new Travel(new RowEvaluator(
                List.of("road"),
                false,
                earliest,
                latest,
                counter,
                new HeldArrays[][] {{HeldArrays.always(perCount)}},
                new Share[] {new Share("road", new String[0], new double[0], "")}));
    }

    /**
     * Where a truck's rows begin.
     *
     * @return a state without a reading
     */
    public RowState start() {
        return counted.start();
    }

    /**
     * Evaluates rows.
     *
     * @param times milliseconds since 1970-01-01T00:00Z
     * @param readings readings of the counter
     * @param from the first row
     * @param to the one after the last
     * @param state where the truck's rows have got to; afterwards where they have got to then
     * @param millimeters gets how far it went in each row, at the row's place, or {@link #UNKNOWN}
     * @param statuses gets the {@link RowStatus#code()} that each row has by this counter, at the row's place
     * @throws org.gritwright.units.InvalidInputException if a column is shorter than another
     * @throws IndexOutOfBoundsException if there are no such rows
     */
    public void evaluate(
            long[] times, long[] readings, int from, int to, RowState state, long[] millimeters, byte[] statuses) {
        counted.evaluate(Rows.of(times, readings), from, to, state, counted.sums(), millimeters, statuses);
        for (int i = from; i < to; i++) {
            if (!RowStatus.of(statuses[i]).isCounted()) {
                millimeters[i] = UNKNOWN;
            }
        }
    }
}
