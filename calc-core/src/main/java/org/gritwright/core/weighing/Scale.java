package org.gritwright.core.weighing;

import java.util.List;
import java.util.stream.Stream;
import javax.measure.Quantity;
import javax.measure.quantity.Mass;
import org.gritwright.core.measurement.Require;

/**
 * A scale: who it is, how much it can carry, how finely it reads, and when it was checked. Immutable, thread-safe, a
 * value.
 *
 * @param id its identity, as on its label
 * @param capacity the largest mass it may carry, not below the division
 * @param division the step of its reading, greater than zero
 * @param checks checks with a test weight, in any order
 */
public record Scale(String id, Quantity<Mass> capacity, Quantity<Mass> division, List<ScaleCheck> checks) {
    /**
     * Checks the values and copies the list.
     *
     * @throws org.gritwright.units.InvalidInputException if a value is out of its range
     */
    public Scale {
        Require.text("scale id", id);
        Require.positive("division of scale " + id, Mass.class, division);
        Require.atLeast("capacity of scale " + id, Mass.class, capacity, division);
        checks = List.copyOf(checks);
    }

    /**
     * A scale that has not been checked.
     *
     * @param id its identity
     * @param capacity the largest mass it may carry
     * @param division the step of its reading
     * @return the scale
     */
    public static Scale of(String id, Quantity<Mass> capacity, Quantity<Mass> division) {
        return new Scale(id, capacity, division, List.of());
    }

    /**
     * The same scale with one more check.
     *
     * @param check the check
     * @return the scale
     */
    public Scale checked(ScaleCheck check) {
        return new Scale(
                id,
                capacity,
                division,
                Stream.concat(checks.stream(), Stream.of(check)).toList());
    }
}
