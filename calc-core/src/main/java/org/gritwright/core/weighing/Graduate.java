package org.gritwright.core.weighing;

import java.util.Optional;
import java.util.OptionalDouble;
import javax.measure.Quantity;
import javax.measure.quantity.Volume;
import org.gritwright.core.uncertainty.Distribution;
import org.gritwright.units.Amounts;
import org.gritwright.units.check.Require;

/**
 * A container with marks, in which a caught liquid is read: a graduated cylinder, pitcher or test measure. Immutable,
 * thread-safe, a value.
 *
 * @param id its identity, for example a number painted on it
 * @param capacity the volume at its highest mark, not below the division
 * @param division the volume between two marks that are told apart, greater than zero
 * @param tolerance how far off a volume read from it may be by how the marks were made, as its class or its maker says, 0 or
 *     more and below the capacity; none if nobody knows
 */
public record Graduate(
        String id, Quantity<Volume> capacity, Quantity<Volume> division, Optional<Quantity<Volume>> tolerance) {
    /**
     * How far off a volume is assumed to be at most where nobody knows the container's tolerance: 2 % of it, as a ratio
     * (common practice, no source; pails with molded marks may be worse).
     */
    public static final double COMMON_TOLERANCE = 0.02;

    /**
     * Checks the values.
     *
     * @throws org.gritwright.units.InvalidInputException if a value is out of its range
     */
    public Graduate {
        Require.given(Graduate.class, id, capacity, division, tolerance);
        Require.text("container id", id);
        Require.positive("division of container " + id, Volume.class, division);
        Require.atLeast("capacity of container " + id, Volume.class, capacity, division);
        tolerance.ifPresent(one -> {
            Require.notNegative("tolerance of container " + id, Volume.class, one);
            Require.that(
                    Amounts.si(Volume.class, one) < Amounts.si(Volume.class, capacity),
                    "tolerance of container " + id,
                    "below its capacity, " + Amounts.format(capacity),
                    one);
        });
    }

    /**
     * A container whose tolerance nobody knows.
     *
     * @param id its identity
     * @param capacity the volume at its highest mark
     * @param division the volume between two marks
     * @return the container
     */
    public static Graduate of(String id, Quantity<Volume> capacity, Quantity<Volume> division) {
        return new Graduate(id, capacity, division, Optional.empty());
    }

    /**
     * The same container with a known tolerance.
     *
     * @param known how far off a volume read from it may be
     * @return the container
     */
    public Graduate within(Quantity<Volume> known) {
        return new Graduate(id, capacity, division, Optional.of(known));
    }

    /**
     * The standard uncertainty of one reading: division ÷ √12 (JCGM 100:2008, the GUM, F.2.2.1).
     *
     * @return cubic meters
     */
    public double roundingCubicMeters() {
        return Distribution.RECTANGULAR.standardUncertainty(Amounts.si(Volume.class, division) / 2);
    }

    /**
     * How far off the sum of fills may be in relation to it: a wrong mark is wrong each time.
     *
     * @param cubicMeters the sum, greater than 0
     * @param fills how many
     * @return a ratio; none if nobody knows the tolerance
     */
    public OptionalDouble relativeLimit(double cubicMeters, int fills) {
        return tolerance.isPresent()
                ? OptionalDouble.of(fills * Amounts.si(Volume.class, tolerance.get()) / cubicMeters)
                : OptionalDouble.empty();
    }
}
