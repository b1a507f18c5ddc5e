package org.gritwright.core.blend;

import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Mass;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.check.Comparison;
import org.gritwright.units.check.Require;
import org.gritwright.units.quantity.BulkDensity;

/**
 * Two components and a share between theirs (the Pearson square): how much of each makes a wanted share, or made a measured one.
 * The part of the first is (target − second) ÷ (first − second). All shares are on one basis, dry chemical ÷ mass as it lies, and
 * the parts are by mass as it lies: a square worked in volumes is wrong. Immutable, thread-safe, a value.
 *
 * @param first the first component's share, 0 to 100 %
 * @param second the second component's share, 0 to 100 %, another than the first's
 * @param target the share of the mix, between the two or one of them
 */
public record MixingSquare(
        Measured<Dimensionless> first, Measured<Dimensionless> second, Measured<Dimensionless> target) {
    /**
     * Checks the values.
     *
     * @throws InvalidInputException if a share is not 0 to 100 %, both components have one share, or the target is outside the two
     */
    public MixingSquare {
        Require.given(MixingSquare.class, first, second, target);
        share("share of the first component", first);
        share("share of the second component", second);
        share("share of the mix", target);
        double one = ratio(first);
        double other = ratio(second);
        if (one == other) {
            throw new InvalidInputException(
                    "share of the second component",
                    "another than the first's, " + Amounts.format(first.value()),
                    Amounts.format(second.value()));
        }
        double between = ratio(target);
        if (Comparison.isAbove(Math.min(one, other), between) || Comparison.isAbove(between, Math.max(one, other))) {
            throw new InvalidInputException(
                    "share of the mix",
                    "between those of its components, " + Amounts.format(first.value()) + " and "
                            + Amounts.format(second.value()),
                    Amounts.format(target.value()));
        }
    }

    private static void share(String field, Measured<Dimensionless> share) {
        Require.within(
                field,
                Dimensionless.class,
                share.value(),
                Amounts.of(0, SpreadingUnits.PERCENT),
                Amounts.of(100, SpreadingUnits.PERCENT));
    }

    private static double ratio(Measured<Dimensionless> share) {
        return Amounts.si(Dimensionless.class, share.value());
    }

    private double firstPart() {
        return (ratio(target) - ratio(second)) / (ratio(first) - ratio(second));
    }

    /**
     * The part of the first component.
     *
     * @return its mass ÷ the mass of the mix, as they lie, in percent; its uncertainty is that of the three shares, which are
     *     independent, and is absent if one of them is
     */
    public Measured<Dimensionless> partOfFirst() {
        double difference = ratio(first) - ratio(second);
        double part = firstPart();
        Contributions budget = new Contributions();
        budget.add("share of the first component", Dimensionless.class, first, -part / difference);
        budget.add("share of the second component", Dimensionless.class, second, (part - 1) / difference);
        budget.add("share of the mix", Dimensionless.class, target, 1 / difference);
        return budget.of(part);
    }

    /**
     * How much of the first component goes into a mix.
     *
     * @param mix the mass of the mix as it lies, greater than zero
     * @return the mass of the first; the rest is the second
     * @throws InvalidInputException if the mass is not greater than zero
     */
    public Quantity<Mass> massOfFirst(Quantity<Mass> mix) {
        Require.positive("mass of the mix", Mass.class, mix);
        return Amounts.of(firstPart() * mix.getValue().doubleValue(), mix.getUnit());
    }

    /**
     * The same in loose volumes, as a loader measures them.
     *
     * @param densityOfFirst the first component's loose bulk density as it lies, greater than zero
     * @param densityOfSecond the second's, greater than zero
     * @return the first's part of the sum of both loose volumes, in percent; the heap that they make together is smaller
     * @throws InvalidInputException if a density is not greater than zero
     */
    public Quantity<Dimensionless> looseVolumeOfFirst(
            Quantity<BulkDensity> densityOfFirst, Quantity<BulkDensity> densityOfSecond) {
        double one = firstPart()
                / Amounts.si(
                        BulkDensity.class,
                        Require.positive("loose bulk density of the first", BulkDensity.class, densityOfFirst));
        double other = (1 - firstPart())
                / Amounts.si(
                        BulkDensity.class,
                        Require.positive("loose bulk density of the second", BulkDensity.class, densityOfSecond));
        return Contributions.percent(one / (one + other));
    }
}
