package org.gritwright.core.fleet.day;

import java.time.LocalDate;
import java.util.List;
import javax.measure.Quantity;
import org.gritwright.units.check.Require;
import org.gritwright.units.quantity.PulsesPerDistance;

/**
 * A check of the road speed as it was written down.
 *
 * @param on the day of the runs
 * @param inForce the road-speed value that the display held
 * @param runs the runs, three or more
 */
public record RoadSpeedEntry(LocalDate on, Quantity<PulsesPerDistance> inForce, List<CourseRunEntry> runs) {

    /** Copies the list. */
    public RoadSpeedEntry {
        Require.given(RoadSpeedEntry.class, on, inForce, runs);
        runs = List.copyOf(runs);
    }
}
