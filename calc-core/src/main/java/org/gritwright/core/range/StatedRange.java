package org.gritwright.core.range;

import java.io.Serializable;
import javax.measure.Quantity;
import org.gritwright.units.Amounts;
import org.gritwright.units.check.Require;
import org.gritwright.units.quantity.RotationalSpeed;

/**
 * A working range and where it comes from, to be compared with one that is measured. Immutable, thread-safe, a value.
 *
 * @param range the range
 * @param source where it comes from; measured is one that was measured before
 */
public record StatedRange(WorkingRange range, RangeSource source) implements Serializable {
    /** By how much of itself a speed that was judged by eye may be off: common practice, no source. */
    private static final double BY_EYE = 0.1;

    /** By how much any other may be: common practice, no source. */
    private static final double STATED = 0.05;

    /** Checks that nothing is missing. */
    public StatedRange {
        Require.given(StatedRange.class, range, source);
    }

    /**
     * The lowest steady speed, as well as it is known.
     *
     * @return the speed, which may be off by 10 % where it was judged by eye and by 5 % otherwise
     */
    public RangeEnd lowest() {
        return end(range.lowest());
    }

    /**
     * The highest steady speed, as well as it is known.
     *
     * @return the speed, which may be off by 10 % where it was judged by eye and by 5 % otherwise
     */
    public RangeEnd highest() {
        return end(range.highest());
    }

    private RangeEnd end(Quantity<RotationalSpeed> speed) {
        double part = source == RangeSource.BY_EYE ? BY_EYE : STATED;
        return new RangeEnd(
                speed, Amounts.ofSi(part * Amounts.si(RotationalSpeed.class, speed), speed.getUnit()), true);
    }
}
