package org.gritwright.core.fleet.day;

import java.time.LocalDate;
import java.util.Optional;
import javax.measure.Quantity;
import org.gritwright.core.range.RangeSource;
import org.gritwright.core.range.StatedRange;
import org.gritwright.core.range.WorkingRange;
import org.gritwright.units.check.Require;
import org.gritwright.units.quantity.RotationalSpeed;

/**
 * The steady shaft speeds that somebody says a drive holds, as they were written down. Nothing but presence is checked here.
 * Immutable, thread-safe, a value.
 *
 * @param lowest the lowest steady speed of the sensed or watched shaft
 * @param highest the highest
 * @param source where they come from; measured is what was measured on another day
 * @param on the day they are of, if it is known
 */
public record StatedRangeEntry(
        Quantity<RotationalSpeed> lowest,
        Quantity<RotationalSpeed> highest,
        RangeSource source,
        Optional<LocalDate> on) {
    /** Checks that nothing is null. */
    public StatedRangeEntry {
        Require.given(StatedRangeEntry.class, lowest, highest, source, on);
    }

    /**
     * The range to compute with.
     *
     * @return the range
     * @throws org.gritwright.units.InvalidInputException if it is upside down, or a speed is out of its range
     */
    public StatedRange range() {
        return new StatedRange(new WorkingRange(lowest, highest), source);
    }
}
