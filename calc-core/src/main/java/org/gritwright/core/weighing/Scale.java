package org.gritwright.core.weighing;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import javax.measure.Quantity;
import javax.measure.quantity.Mass;
import org.gritwright.core.uncertainty.Distribution;
import org.gritwright.units.Amounts;
import org.gritwright.units.check.Comparison;
import org.gritwright.units.check.Require;

/**
 * A scale: which one it is, how much it can carry, how finely it reads, and when it was checked. Immutable,
 * thread-safe, a value.
 *
 * @param id its identity, as on its label
 * @param capacity the largest mass it may carry, not below the division
 * @param division the step of its reading, greater than zero
 * @param accuracy how far off its reading may be beyond that; none if nobody knows
 * @param checks checks with a test weight, in any order
 */
public record Scale(
        String id,
        Quantity<Mass> capacity,
        Quantity<Mass> division,
        Optional<ScaleAccuracy> accuracy,
        List<ScaleCheck> checks) {
    /**
     * A test weight says something of loads from half to twice its mass (common practice, no source).
     */
    private static final double NEAR = 2;

    /**
     * Checks the values and copies the list.
     *
     * @throws org.gritwright.units.InvalidInputException if a value is out of its range, or the capacity beyond the table
     *     of the scale's class
     */
    public Scale {
        Require.given(Scale.class, id, capacity, division, accuracy, checks);
        Require.text("scale id", id);
        Require.positive("division of scale " + id, Mass.class, division);
        Require.atLeast("capacity of scale " + id, Mass.class, capacity, division);
        accuracy.ifPresent(a -> a.limitKilograms(capacity, division));
        checks = List.copyOf(checks);
    }

    /**
     * A scale of unknown accuracy that has not been checked.
     *
     * @param id its identity
     * @param capacity the largest mass it may carry
     * @param division the step of its reading
     * @return the scale
     */
    public static Scale of(String id, Quantity<Mass> capacity, Quantity<Mass> division) {
        return new Scale(id, capacity, division, Optional.empty(), List.of());
    }

    /**
     * The same scale with a known accuracy.
     *
     * @param known how far off its reading may be
     * @return the scale
     * @throws org.gritwright.units.InvalidInputException if the capacity is beyond the table of the scale's class
     */
    public Scale withAccuracy(ScaleAccuracy known) {
        return new Scale(id, capacity, division, Optional.of(known), checks);
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
                accuracy,
                Stream.concat(checks.stream(), Stream.of(check)).toList());
    }

    /**
     * The standard uncertainty of the rounding of one reading: division ÷ √12 (JCGM 100:2008, the GUM, F.2.2.1).
     *
     * @return kilograms
     */
    public double roundingKilograms() {
        return Distribution.RECTANGULAR.standardUncertainty(Amounts.si(Mass.class, division) / 2);
    }

    /**
     * Whether a check of that day was made with a test weight near a load, from half to twice of it.
     *
     * @param load the load
     * @param on the day
     * @return true if there was one
     */
    public boolean isTestedNear(Quantity<Mass> load, LocalDate on) {
        return checksNear(load, on).findAny().isPresent();
    }

    private Stream<ScaleCheck> checksNear(Quantity<Mass> load, LocalDate on) {
        double kilograms = Amounts.si(Mass.class, load);
        return checks.stream().filter(check -> check.on().equals(on)).filter(check -> {
            double ratio = Amounts.si(Mass.class, check.testWeight()) / kilograms;
            return !Comparison.isAbove(ratio, NEAR) && !Comparison.isAbove(1 / NEAR, ratio);
        });
    }

    /**
     * How far off the span is assumed to be at most where nobody knows the scale's accuracy: 1 % of the load, as a ratio
     * (common practice, no source).
     */
    public static final double COMMON_SPAN_LIMIT = 0.01;

    /**
     * How far off the span may be at a load: the relative limit of an error that all weighings near that load have in
     * common.
     *
     * <p>A class's limit is taken at the load. An error in strict proportion to it would be bounded more closely by the limit
     * at heavier loads; but a scale may be off otherwise than in proportion too, and this holds that as well.
     *
     * <p>A test weight near the load bounds it to what the reading missed and half a division of it. Of several bounds,
     * the stated accuracy among them, the closest holds, unless another test weight shows that the scale isn't as
     * accurate.
     *
     * @param load the load, greater than 0
     * @param on the day of weighing
     * @return a ratio; none if neither accuracy nor a test of that day is known
     */
    public OptionalDouble relativeSpanLimit(Quantity<Mass> load, LocalDate on) {
        double stated = accuracy.map(a -> a.limitKilograms(load, division) / Amounts.si(Mass.class, load))
                .orElse(Double.POSITIVE_INFINITY);
        List<ScaleCheck> near = checksNear(load, on).toList();
        double closest = near.stream().mapToDouble(this::tested).reduce(stated, Math::min);
        double limit = near.stream()
                .filter(check -> missed(check) > closest)
                .mapToDouble(this::tested)
                .reduce(closest, Math::max);
        return Double.isInfinite(limit) ? OptionalDouble.empty() : OptionalDouble.of(limit);
    }

    /**
     * A reading may miss its test weight by a division (common practice, no source), or by what the scale's accuracy allows;
     * where nobody knows it, by what is taken for it.
     */
    double acceptedMissKilograms(Quantity<Mass> testWeight) {
        double step = Amounts.si(Mass.class, division);
        double allowed = accuracy.map(a -> a.limitKilograms(testWeight, division))
                .orElse(COMMON_SPAN_LIMIT * Amounts.si(Mass.class, testWeight));
        return Math.max(step, allowed + step / 2);
    }

    private static double missed(ScaleCheck check) {
        double testWeight = Amounts.si(Mass.class, check.testWeight());
        return Math.abs(Amounts.si(Mass.class, check.reading()) - testWeight) / testWeight;
    }

    private double tested(ScaleCheck check) {
        return missed(check) + Amounts.si(Mass.class, division) / 2 / Amounts.si(Mass.class, check.testWeight());
    }
}
