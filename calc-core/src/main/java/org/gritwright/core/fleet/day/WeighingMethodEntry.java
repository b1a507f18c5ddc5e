package org.gritwright.core.fleet.day;

import java.util.Optional;
import org.gritwright.core.planning.Containers;
import org.gritwright.units.check.Require;

/**
 * A weighing method, as it was written down: which scale, what the material falls into, how long it takes. Immutable,
 * thread-safe, a value.
 *
 * @param name its name in the yard
 * @param scale the id of the scale
 * @param containers what may be filled in one catch
 * @param density of a liquid that is weighed; none for grains
 * @param times how long each step takes
 */
public record WeighingMethodEntry(
        String name, String scale, Containers containers, Optional<DensityEntry> density, StepTimes times)
        implements MethodEntry {
    /**
     * Checks the values.
     *
     * @throws org.gritwright.units.InvalidInputException if the name is blank
     */
    public WeighingMethodEntry {
        Require.given(WeighingMethodEntry.class, name, scale, containers, density, times);
        Require.text("name of a weighing method", name);
    }

    /**
     * A method for grains.
     *
     * @param name as of the record
     * @param scale as of the record
     * @param containers as of the record
     * @param times as of the record
     * @throws org.gritwright.units.InvalidInputException if the name is blank
     */
    public WeighingMethodEntry(String name, String scale, Containers containers, StepTimes times) {
        this(name, scale, containers, Optional.empty(), times);
    }

    @Override
    public boolean isForLiquids() {
        return density.isPresent();
    }

    @Override
    public int mostContainers() {
        return containers.howMany();
    }
}
