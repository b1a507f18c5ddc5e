package org.gritwright.core.range;

import java.io.Serializable;
import org.gritwright.units.check.Require;

/**
 * A working range and where it comes from, to be compared with one that is measured. Immutable, thread-safe, a value.
 *
 * @param range the range
 * @param source where it comes from; measured is one that was measured before
 */
public record StatedRange(WorkingRange range, RangeSource source) implements Serializable {
    /** Checks that nothing is missing. */
    public StatedRange {
        Require.given(StatedRange.class, range, source);
    }
}
