package org.gritwright.core.lateral;

import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Area;
import javax.measure.quantity.Length;
import javax.measure.quantity.Mass;
import org.gritwright.core.weighing.Scale;
import org.gritwright.core.weighing.Weighing;
import org.gritwright.units.Amounts;
import org.gritwright.units.check.Require;

/**
 * One pan, or a marked cell of the pavement that is swept, and what it caught. Immutable, thread-safe, a value.
 *
 * @param position where its middle lies, from the truck's center line, negative to the left of a driver who looks ahead
 * @param width its size across the road, greater than zero
 * @param length its size along the road, greater than zero
 * @param caught what it caught, in all passes together, 0 or more
 * @param rounding the standard uncertainty of that mass from the scale's rounding, 0 or more; none where nobody knows
 */
public record Pan(
        Quantity<Length> position,
        Quantity<Length> width,
        Quantity<Length> length,
        Quantity<Mass> caught,
        Optional<Quantity<Mass>> rounding) {
    /** Gross and tare are each rounded. */
    private static final double READINGS = 2;

    /**
     * Checks the values.
     *
     * @throws org.gritwright.units.InvalidInputException if one is out of its range
     */
    public Pan {
        Require.given(Pan.class, position, width, length, caught, rounding);
        String where = " of the pan at " + Amounts.format(position);
        Amounts.si(Length.class, position);
        Require.positive("width" + where, Length.class, width);
        Require.positive("length" + where, Length.class, length);
        Require.notNegative("mass" + where, Mass.class, caught);
        rounding.ifPresent(u -> Require.notNegative("uncertainty of the mass" + where, Mass.class, u));
    }

    /**
     * A pan whose catch is stated without an uncertainty.
     *
     * @param position where its middle lies, negative to the left
     * @param width its size across the road
     * @param length its size along the road
     * @param caught what it caught
     * @return the pan
     * @throws org.gritwright.units.InvalidInputException as for the full form
     */
    public static Pan of(
            Quantity<Length> position, Quantity<Length> width, Quantity<Length> length, Quantity<Mass> caught) {
        return new Pan(position, width, length, caught, Optional.empty());
    }

    /**
     * A pan that was weighed full and empty.
     *
     * @param position where its middle lies, negative to the left
     * @param width its size across the road
     * @param length its size along the road
     * @param scale the scale, for the rounding of its two readings: division ÷ √12 × √2
     * @param weighing gross and tare
     * @return the pan
     * @throws org.gritwright.units.InvalidInputException as for the full form
     */
    public static Pan weighed(
            Quantity<Length> position,
            Quantity<Length> width,
            Quantity<Length> length,
            Scale scale,
            Weighing weighing) {
        Quantity<Mass> net = weighing.net();
        double kilograms = scale.roundingKilograms() * Math.sqrt(READINGS);
        return new Pan(position, width, length, net, Optional.of(Amounts.ofSi(kilograms, net.getUnit())));
    }

    /**
     * A pan of which the area is known, such as a round one.
     *
     * @param position where its middle lies, negative to the left
     * @param width its size across the road where it is widest
     * @param area the area of its opening
     * @param caught what it caught
     * @return the pan, as one of this width whose length makes the area
     * @throws org.gritwright.units.InvalidInputException as for the full form, or if the area is not greater than zero
     */
    public static Pan ofArea(
            Quantity<Length> position, Quantity<Length> width, Quantity<Area> area, Quantity<Mass> caught) {
        double squareMeters = Amounts.si(Area.class, Require.positive("area of a pan", Area.class, area));
        double meters = Amounts.si(Length.class, Require.positive("width of a pan", Length.class, width));
        return of(position, width, Amounts.ofSi(squareMeters / meters, width.getUnit()), caught);
    }

    double meters() {
        return Amounts.si(Length.class, position);
    }

    double halfWidth() {
        return Amounts.si(Length.class, width) / 2;
    }

    double squareMeters() {
        return Amounts.si(Length.class, width) * Amounts.si(Length.class, length);
    }

    double kilograms() {
        return Amounts.si(Mass.class, caught);
    }
}
