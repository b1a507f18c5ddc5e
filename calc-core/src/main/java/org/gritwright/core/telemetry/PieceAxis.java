package org.gritwright.core.telemetry;

import java.io.Serializable;
import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Length;
import javax.measure.quantity.Time;
import org.gritwright.units.Amounts;
import org.gritwright.units.check.Require;

/**
 * Where rows are cut into pieces: along the way, or in time. A row that spans a border is split in proportion. Immutable, thread-safe,
 * serializable, a value.
 */
public final class PieceAxis implements Serializable {
    private static final long serialVersionUID = 1L;

    /** The piece of whatever lies outside all spans. */
    public static final long OUTSIDE = -1;

    /** No borders: rows name their pieces. */
    static final PieceAxis IDS = new PieceAxis(false, 0, 0, new long[0]);

    private static final double MILLIMETERS = 1000;

    /** Ends of longer pieces, in millimeters, and then of longer times would be beyond what a long holds. */
    static final long LONGEST_LENGTH = 1_000_000_000_000L;

    private static final long LONGEST_TIME = 1_000_000_000_000_000L;

    private final boolean isTime;

    /** Equal pieces; 0 where there are spans. */
    private final long step;

    private final long origin;

    /** The beginning and end of each span, one after the other. */
    private final long[] borders;

    private PieceAxis(boolean isTime, long step, long origin, long[] borders) {
        this.isTime = isTime;
        this.step = step;
        this.origin = origin;
        this.borders = borders;
    }

    /**
     * Pieces of equal length, from where the truck's rows begin.
     *
     * @param length how long, 1 mm to 1 000 000 km; what is left of a millimeter is dropped
     * @return the axis; its pieces are numbered from 0
     * @throws org.gritwright.units.InvalidInputException if it is shorter or longer
     */
    public static PieceAxis everyLength(Quantity<Length> length) {
        Objects.requireNonNull(length, "length");
        long millimeters = (long) (Amounts.si(Length.class, length) * MILLIMETERS + 1e-6);
        Require.that(
                millimeters >= 1 && millimeters <= LONGEST_LENGTH, "length of a piece", "1 mm to 1000000 km", length);
        return new PieceAxis(false, millimeters, 0, new long[0]);
    }

    /**
     * Pieces of equal time.
     *
     * @param origin where piece 0 begins
     * @param time how long, 1 ms to 30 000 years; days are as long as each other here, see {@link #spans} for those on which clocks change; what is left of a millisecond is dropped
     * @return the axis; pieces before the origin have negative numbers
     * @throws org.gritwright.units.InvalidInputException if it is shorter or longer
     */
    public static PieceAxis everyTime(Instant origin, Quantity<Time> time) {
        Objects.requireNonNull(origin, "origin");
        Objects.requireNonNull(time, "time");
        long millis = (long) (Times.millis(time) + 1e-6);
        Require.that(millis >= 1 && millis <= LONGEST_TIME, "time of a piece", "1 ms to 30 000 years", time);
        return new PieceAxis(true, millis, Times.millis("origin", origin), new long[0]);
    }

    /**
     * A span of time, such as a storm.
     *
     * @param from when it begins
     * @param until when it ends, later
     */
    public record Span(Instant from, Instant until) {
        /**
         * Checks the order.
         *
         * @throws org.gritwright.units.InvalidInputException if it ends no later than it begins
         */
        public Span {
            Require.given(Span.class, from, until);
            Instant begin = from;
            Require.that(
                    Times.millis("start of a span", from) < Times.millis("end of a span", until),
                    "end of a span",
                    "later than its start, " + begin,
                    until);
        }
    }

    /**
     * Spans of time.
     *
     * @param spans the spans in their order, none beginning before the one before it ends
     * @return the axis; its pieces are numbered from 0 as the spans are, and {@link #OUTSIDE} is what lies in none
     * @throws org.gritwright.units.InvalidInputException if they overlap or aren't in order
     */
    public static PieceAxis spans(List<Span> spans) {
        Objects.requireNonNull(spans, "spans");
        long[] borders = new long[2 * spans.size()];
        for (int i = 0; i < spans.size(); i++) {
            Span span = Objects.requireNonNull(spans.get(i), "span");
            borders[2 * i] = Times.millis("start of a span", span.from());
            borders[2 * i + 1] = Times.millis("end of a span", span.until());
            int before = 2 * i - 1;
            Require.that(
                    i == 0 || borders[before] <= borders[2 * i],
                    "start of a span",
                    "no earlier than the end of the one before",
                    span.from());
        }
        return new PieceAxis(true, 0, 0, borders);
    }

    @Override
    public boolean equals(Object other) {
        return this == other
                || (other instanceof PieceAxis that
                        && isTime == that.isTime
                        && step == that.step
                        && origin == that.origin
                        && Arrays.equals(borders, that.borders));
    }

    @Override
    public int hashCode() {
        return Objects.hash(isTime, step, origin, Arrays.hashCode(borders));
    }

    @Override
    public String toString() {
        if (step == 0) {
            return isTime ? borders.length / 2 + " spans of time" : "by ids";
        }
        return "every " + step + (isTime ? " ms from " + Instant.ofEpochMilli(origin) : " mm");
    }

    boolean isTime() {
        return isTime;
    }

    /** The piece in which a place is; a border belongs to the later one. */
    long pieceAt(long place) {
        if (step > 0) {
            return Math.floorDiv(place - origin, step);
        }
        int after = after(place);
        return after % 2 == 1 ? after / 2 : OUTSIDE;
    }

    /** Where the piece ends in which a place is. */
    long endOf(long place) {
        if (step > 0) {
            return origin + (Math.floorDiv(place - origin, step) + 1) * step;
        }
        int after = after(place);
        return after == borders.length ? Long.MAX_VALUE : borders[after];
    }

    /** How many borders lie at or before a place. */
    private int after(long place) {
        int found = Arrays.binarySearch(borders, place);
        if (found < 0) {
            return -found - 1;
        }
        while (found + 1 < borders.length && borders[found + 1] == place) {
            found++;
        }
        return found + 1;
    }
}
