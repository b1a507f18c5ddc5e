package org.gritwright.core.solution;

import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Mass;
import javax.measure.quantity.Temperature;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.check.Comparison;
import org.gritwright.units.check.Require;

/**
 * How much of two solutions of one salt makes a third between them (the Pearson square). The square is for masses: worked in
 * volumes, 23.3 % down to 20 % would take 0.165 gal of water per gallon, where it takes 0.194. Immutable, thread-safe, a value.
 *
 * @param first one solution
 * @param second another of the same salt and another strength; may be water
 * @param target the share that is wanted, between the two or one of them
 */
public record BrineSquare(Solution first, Solution second, Measured<Dimensionless> target) {
    /**
     * Checks the shares.
     *
     * @throws InvalidInputException if the salts differ, the shares are the same, or the target is outside the two
     */
    public BrineSquare {
        Require.given(BrineSquare.class, first, second, target);
        Require.that(
                first.salt() == second.salt(),
                "salt of the second solution",
                first.salt().words(),
                second.salt().words());
        double one = first.ratio();
        double other = second.ratio();
        Require.that(
                one != other,
                Solution.field(first.salt()) + " in the second solution",
                "another than in the first",
                () -> Amounts.format(second.share().value()));
        double between = ratio(target);
        if (Comparison.isAbove(Math.min(one, other), between) || Comparison.isAbove(between, Math.max(one, other))) {
            throw new InvalidInputException(
                    "share that is wanted",
                    "between those of the two solutions, "
                            + Amounts.format(first.share().value()) + " and "
                            + Amounts.format(second.share().value()),
                    Amounts.format(target.value()));
        }
    }

    private static double ratio(Measured<Dimensionless> share) {
        return Amounts.si(Dimensionless.class, share.value());
    }

    private double firstPart() {
        return (ratio(target) - second.ratio()) / (first.ratio() - second.ratio());
    }

    /**
     * The part of the first solution.
     *
     * @return its mass ÷ the mass of both, in percent; as uncertain as the three shares, which are independent
     */
    public Measured<Dimensionless> partOfFirst() {
        double difference = first.ratio() - second.ratio();
        double part = firstPart();
        return new Contributions<>(SpreadingUnits.PERCENT)
                .add("share of the first", Dimensionless.class, first.share(), -part / difference)
                .add("share of the second", Dimensionless.class, second.share(), (part - 1) / difference)
                .add("share that is wanted", Dimensionless.class, target, 1 / difference)
                .of(part);
    }

    /**
     * How much of the first goes into a mixture.
     *
     * @param mixture the mass of both, greater than zero
     * @return the mass of the first; the rest is the second
     * @throws InvalidInputException if the mass is not greater than zero
     */
    public Quantity<Mass> massOfFirst(Quantity<Mass> mixture) {
        Require.positive("mass of the mixture", Mass.class, mixture);
        return Amounts.of(firstPart() * mixture.getValue().doubleValue(), mixture.getUnit());
    }

    /**
     * How much of the second goes to the first, by volume.
     *
     * @param temperature of both
     * @return volume of the second ÷ volume of the first, in percent
     * @throws InvalidInputException if a density isn't known, or nothing of the first is needed
     */
    public Quantity<Dimensionless> volumeOfSecondPerFirst(Quantity<Temperature> temperature) {
        double part = firstPart();
        Require.that(part > 0, "part of the first solution", "greater than 0", part);
        double ofFirst = first.kilogramsPerCubicMeter(first.celsius(temperature));
        double ofSecond = second.kilogramsPerCubicMeter(second.celsius(temperature));
        return Amounts.ofSi((1 - part) / part * ofFirst / ofSecond, SpreadingUnits.PERCENT);
    }
}
