package org.gritwright.core.range;

/** Where a working range comes from. */
public enum RangeSource {
    /** A person set or judged it by eye, as the lowest steady speed of 1 to 2 rev/min: common practice, no source. */
    BY_EYE,
    /** The maker states it. */
    FROM_MAKER,
    /** It was measured. */
    MEASURED
}
