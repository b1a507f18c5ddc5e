package org.gritwright.core.roadspeed;

import javax.measure.Quantity;
import javax.measure.quantity.Length;
import org.gritwright.units.check.Require;
import org.gritwright.units.quantity.PulseCount;

/**
 * One run over a measured course. Immutable, thread-safe, a value.
 *
 * @param course the measured length, greater than zero
 * @param pulses the road-speed pulses counted over it, a whole number greater than zero
 */
public record RoadSpeedRun(Quantity<Length> course, Quantity<PulseCount> pulses) {
    /**
     * Checks the values.
     *
     * @throws org.gritwright.units.InvalidInputException if one is out of its range
     */
    public RoadSpeedRun {
        Require.given(RoadSpeedRun.class, course, pulses);
        Require.positive("length of the course", Length.class, course);
        Require.wholeNumber("road-speed pulses", PulseCount.class, pulses);
        Require.positive("road-speed pulses", PulseCount.class, pulses);
    }
}
