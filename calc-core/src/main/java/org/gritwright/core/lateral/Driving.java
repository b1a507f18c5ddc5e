package org.gritwright.core.lateral;

/** How the second of two passes lies beside the first. */
public enum Driving {
    /** In the same direction, as round and round: a right side lies beside a left side, whichever side the pass is on. */
    SAME_DIRECTION,
    /** Back in the other direction, left of the first pass: left side beside left side, as on a road with traffic on the right. */
    RETURN_ON_LEFT,
    /** Back in the other direction, right of the first pass: right side beside right side. */
    RETURN_ON_RIGHT;

    /** Where the second pass's center line lies from the first one's. */
    double side(double spacing) {
        return this == RETURN_ON_LEFT ? -spacing : spacing;
    }

    Profile second(Profile first, double spacing) {
        return (this == SAME_DIRECTION ? first : first.mirrored()).shifted(side(spacing));
    }
}
