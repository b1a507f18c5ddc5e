package org.gritwright.core.telemetry;

import java.io.Serializable;

/**
 * An error that grew: error × share of the way. What was indicated is divided by 1 + that, summed over the way: indicated ×
 * ln(1 + e·s)/e from its beginning to the share s.
 *
 * @param onset what it grew with
 * @param error the error at the end of the way
 * @param from where the way begins: milliseconds since 1970 for time, else what was turned or left the hopper before
 * @param length how long the way is, in the same unit, greater than 0
 */
record Drift(Onset.Gradually onset, double error, double from, double length) implements Serializable {
    /** How much of the way lies before a place: none before it begins, all behind its end. */
    private double share(double place) {
        return Math.min(Math.max((place - from) / length, 0), 1);
    }

    /** The part of what was indicated that was true, from the beginning of the way to a place on it or behind it. */
    double trueUpTo(double place) {
        double behind = Math.max(place - from - length, 0);
        return length * Math.log1p(error * share(place)) / error + behind / (1 + error);
    }

    /** What a count stands for at a time, as part of what it would without error. */
    double trueAt(double millis) {
        return 1 / (1 + error * share(millis));
    }

    /** How much of the error is there, in parts of {@link RowSums#PARTS}. */
    long grown(double place) {
        return Math.round(RowSums.PARTS * share(place));
    }
}
