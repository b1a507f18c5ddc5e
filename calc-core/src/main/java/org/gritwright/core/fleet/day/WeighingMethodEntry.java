package org.gritwright.core.fleet.day;

import org.gritwright.core.planning.Containers;
import org.gritwright.units.check.Require;

/**
 * A weighing method, as it was written down: which scale, what the material falls into, how long it takes. Immutable,
 * thread-safe, a value.
 *
 * @param name its name in the yard
 * @param scale the id of the scale
 * @param containers what may be filled in one catch
 * @param times how long each step takes
 */
public record WeighingMethodEntry(String name, String scale, Containers containers, StepTimes times) {
    /**
     * Checks the values.
     *
     * @throws org.gritwright.units.InvalidInputException if the name is blank
     */
    public WeighingMethodEntry {
        Require.given(WeighingMethodEntry.class, name, scale, containers, times);
        Require.text("name of a weighing method", name);
    }
}
