package org.gritwright.core.envelope;

/** What a controller does when it is asked for less than the slowest steady shaft speed. Which of the two is the maker's choice. */
public enum BelowRange {
    /** The shaft goes on at its slowest steady speed: more is put down than was asked for. */
    KEEPS_SLOWEST,
    /** The shaft stands still until more is asked for: nothing is put down. */
    STOPS
}
