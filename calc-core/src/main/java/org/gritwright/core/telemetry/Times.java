package org.gritwright.core.telemetry;

import java.time.Instant;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Time;
import org.gritwright.units.Amounts;
import org.gritwright.units.check.Require;

/** Instants and times as the milliseconds that rows have. */
final class Times {
    private static final double MILLIS_PER_SECOND = 1000;

    /** Some 30 000 years either way: differences of two can't overflow, and doubles hold every one. */
    private static final long MOST_SECONDS = 1_000_000_000_000L;

    private Times() {}

    static long millis(String what, Instant at) {
        Require.that(Math.abs(at.getEpochSecond()) <= MOST_SECONDS, what, "within 30 000 years of 1970", at);
        return at.toEpochMilli();
    }

    /** The earliest time that a row can have. */
    static long earliest(Instant from, Instant until) {
        Objects.requireNonNull(from, "from");
        Objects.requireNonNull(until, "until");
        long earliest = millis("earliest time", from);
        Require.that(earliest < millis("latest time", until), "latest time", "later than the earliest, " + from, until);
        return earliest;
    }

    /** The latest. */
    static long latest(Instant from, Instant until) {
        earliest(from, until);
        return millis("latest time", until);
    }

    static double millis(Quantity<Time> time) {
        return Amounts.si(Time.class, time) * MILLIS_PER_SECOND;
    }
}
