package org.gritwright.core.control;

/** On which side of its target a chart looks for a change. */
public enum Sides {
    /** Above and below. */
    BOTH,
    /** Above only. */
    UPPER,
    /** Below only. */
    LOWER;

    /** Whether a mean that moves so for ever stays, or comes to a side that is watched. */
    boolean see(double step) {
        return this == BOTH || (this == UPPER ? step >= 0 : step <= 0);
    }

    /** A mean as a chart sees it that looks above. */
    double seen(double mean) {
        return this == LOWER ? -mean : mean;
    }
}
