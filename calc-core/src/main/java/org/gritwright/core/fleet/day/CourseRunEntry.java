package org.gritwright.core.fleet.day;

import javax.measure.Quantity;
import javax.measure.quantity.Length;
import org.gritwright.units.check.Require;
import org.gritwright.units.quantity.PulseCount;

/**
 * One run over a measured course, as it was written down.
 *
 * @param course the measured length
 * @param pulses the road-speed pulses counted over it
 */
public record CourseRunEntry(Quantity<Length> course, Quantity<PulseCount> pulses) {
    /** Checks that nothing is null. */
    public CourseRunEntry {
        Require.given(CourseRunEntry.class, course, pulses);
    }
}
