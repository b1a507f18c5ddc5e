package org.gritwright.core.lateral;

import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Length;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.check.Require;
import org.gritwright.units.quantity.ApplicationRate;
import org.gritwright.units.quantity.ArealApplicationRate;

/**
 * Two passes beside each other, both with the pattern that the pans caught. On a road there are two, not a field of them; what
 * a third would add between the two center lines is not in it. Positions are from the first pass's center line. Immutable,
 * thread-safe, a value.
 *
 * @param pattern the pattern of each pass
 * @param spacing the distance between the two center lines, greater than zero
 * @param driving how the second pass lies beside the first
 */
public record Overlap(SpreadPattern pattern, Quantity<Length> spacing, Driving driving) {
    /**
     * Checks the values.
     *
     * @throws InvalidInputException if the spacing is not greater than zero
     */
    public Overlap {
        Require.given(Overlap.class, pattern, spacing, driving);
        Require.positive("spacing of the passes", Length.class, spacing);
    }

    /**
     * The part of the road between the two center lines, which both passes are to cover together.
     *
     * @return the strip
     */
    public RoadStrip between() {
        double second = driving.side(meters());
        return new RoadStrip(
                Amounts.ofSi(Math.min(0, second), spacing.getUnit()),
                Amounts.ofSi(Math.max(0, second), spacing.getUnit()));
    }

    private double meters() {
        return Amounts.si(Length.class, spacing);
    }

    /**
     * The rate of both passes together somewhere, along lines from pan to pan.
     *
     * @param position where
     * @return mass per area
     */
    public Quantity<ArealApplicationRate> rateAt(Quantity<Length> position) {
        Profile first = pattern.profile();
        double x = Amounts.si(Length.class, position);
        return rate(first.at(x) + driving.second(first, meters()).at(x));
    }

    /**
     * The lowest rate between the two center lines.
     *
     * @return mass per area, each pan standing for the road half-way to its neighbors
     */
    public Quantity<ArealApplicationRate> lowest() {
        return rate(between(meters()).rates().min().orElseThrow());
    }

    /**
     * The highest rate between the two center lines.
     *
     * @return mass per area, each pan standing for the road half-way to its neighbors
     */
    public Quantity<ArealApplicationRate> highest() {
        return rate(between(meters()).rates().max().orElseThrow());
    }

    private Quantity<ArealApplicationRate> rate(double kilogramsPerSquareMeter) {
        return Amounts.ofSi(kilogramsPerSquareMeter, pattern.arealUnit());
    }

    /**
     * What both passes lay together.
     *
     * @return mass per distance, over all that either pass reaches: twice that of one pass
     */
    public Quantity<ApplicationRate> massPerDistance() {
        return Amounts.ofSi(all(meters()).total(), pattern.rateUnit());
    }

    /**
     * The coefficient of variation between the two center lines, as {@link SpreadPattern#variation} has it.
     *
     * @return standard deviation ÷ mean, in percent
     * @throws InvalidInputException if nothing lies between the center lines
     */
    public Quantity<Dimensionless> variation() {
        double variation = between(meters()).variation();
        Require.that(
                !Double.isNaN(variation),
                "mass between the center lines",
                "greater than 0",
                () -> "none at a spacing of " + Amounts.format(spacing));
        return Amounts.ofSi(variation, SpreadingUnits.PERCENT);
    }

    private Steps all(double meters) {
        Profile first = pattern.profile();
        return first.steps().plus(driving.second(first, meters).steps());
    }

    private Steps between(double meters) {
        double second = driving.side(meters);
        return all(meters).within(Math.min(0, second), Math.max(0, second));
    }
}
