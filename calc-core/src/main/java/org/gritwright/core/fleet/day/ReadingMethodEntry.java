package org.gritwright.core.fleet.day;

import javax.measure.Quantity;
import javax.measure.quantity.Volume;
import org.gritwright.units.check.Require;

/**
 * A method to read a caught liquid, as it was written down: in which container with marks, and how long it takes. Immutable,
 * thread-safe, a value.
 *
 * @param name its name in the yard
 * @param container the id of the container with marks
 * @param fills how many times it may be filled in one catch, 1 or more; more than once from a tub
 * @param holds the volume to which it may be filled
 * @param times how long each step takes; a fill counts as a container
 */
public record ReadingMethodEntry(String name, String container, int fills, Quantity<Volume> holds, StepTimes times)
        implements MethodEntry {
    /**
     * Checks the values.
     *
     * @throws org.gritwright.units.InvalidInputException if the name is blank, there is no fill, or nothing may be filled in
     */
    public ReadingMethodEntry {
        Require.given(ReadingMethodEntry.class, name, container, holds, times);
        Require.text("name of a reading method", name);
        Require.that(fills >= 1, "fills of reading method " + name, "1 or more", fills);
        Require.positive("what reading method " + name + " may fill in", Volume.class, holds);
    }

    @Override
    public boolean isForLiquids() {
        return true;
    }

    @Override
    public int mostContainers() {
        return fills;
    }
}
