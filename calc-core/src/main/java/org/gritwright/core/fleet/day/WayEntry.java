package org.gritwright.core.fleet.day;

import java.util.Objects;
import org.gritwright.core.planning.Containers;
import org.gritwright.units.check.Require;

/**
 * A way of catching and weighing, as it was written down: which scale, what material falls into, how long it takes.
 * Immutable, thread-safe, a value.
 *
 * @param name its name in the yard
 * @param scale the id of the scale
 * @param containers what may be filled in one catch
 * @param times how long each step takes
 */
public record WayEntry(String name, String scale, Containers containers, StepTimes times) {
    /**
     * Checks the values.
     *
     * @throws org.gritwright.units.InvalidInputException if the name is blank
     */
    public WayEntry {
        Require.text("name of a way of weighing", name);
        Objects.requireNonNull(scale, "scale");
        Objects.requireNonNull(containers, "containers");
        Objects.requireNonNull(times, "times");
    }
}
