package org.gritwright.core.fleet.assessment;

import java.util.Optional;
import org.gritwright.core.observation.CalibrationPoint;
import org.gritwright.units.check.Require;

/**
 * One thing to do on a truck. Immutable, thread-safe, a value.
 *
 * @param step what
 * @param point for which calibration point; none where it is a matter of the truck
 */
public record ToDo(NextStep step, Optional<CalibrationPoint> point) {
    /** Checks that both are given. */
    public ToDo {
        Require.given(ToDo.class, step, point);
    }

    static ToDo ofTruck(NextStep step) {
        return new ToDo(step, Optional.empty());
    }

    /**
     * Step and point in words.
     *
     * @return for example "Make a verification catch: road salt at 3 in"
     */
    @Override
    public String toString() {
        return step.words() + point.map(where -> ": " + where).orElse("");
    }
}
