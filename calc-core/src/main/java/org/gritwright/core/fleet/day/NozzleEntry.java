package org.gritwright.core.fleet.day;

import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Time;
import javax.measure.quantity.Volume;
import org.gritwright.core.boom.NozzleFlow;
import org.gritwright.units.check.Require;

/**
 * What one nozzle of a boom gave, as it was written down. Nothing but presence is checked here. Immutable, thread-safe, a value.
 *
 * @param section the section that it is in
 * @param nozzle what people know it by, such as its number from the left
 * @param caught what was caught
 * @param division the graduate's division
 * @param time for how long
 * @param timeHalfWidth by how much that time may be off, either way
 * @param liquid what ran, such as water; none if nobody says
 */
public record NozzleEntry(
        String section,
        String nozzle,
        Quantity<Volume> caught,
        Quantity<Volume> division,
        Quantity<Time> time,
        Quantity<Time> timeHalfWidth,
        Optional<String> liquid) {
    /** Checks that nothing is null. */
    public NozzleEntry {
        Require.given(NozzleEntry.class, section, nozzle, caught, division, time, timeHalfWidth, liquid);
    }

    /**
     * A nozzle of which nobody says what ran.
     *
     * @param section the section that it is in
     * @param nozzle what people know it by
     * @param caught what was caught
     * @param division the graduate's division
     * @param time for how long
     * @param timeHalfWidth by how much that time may be off, either way
     * @return the entry
     */
    public static NozzleEntry of(
            String section,
            String nozzle,
            Quantity<Volume> caught,
            Quantity<Volume> division,
            Quantity<Time> time,
            Quantity<Time> timeHalfWidth) {
        return new NozzleEntry(section, nozzle, caught, division, time, timeHalfWidth, Optional.empty());
    }

    /**
     * The flow.
     *
     * @return with the uncertainty that division and time make
     * @throws org.gritwright.units.InvalidInputException if a value is out of its range
     */
    public NozzleFlow flow() {
        return NozzleFlow.caught(section, nozzle, caught, division, time, timeHalfWidth);
    }
}
