package org.gritwright.core.lateral;

import javax.measure.Quantity;
import javax.measure.quantity.Length;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.check.Require;

/**
 * A part of the road's width, such as a lane. Positions are distances from the truck's center line, negative to the left of a
 * driver who looks ahead. Immutable, thread-safe, a value.
 *
 * @param left where it begins
 * @param right where it ends, right of the beginning
 */
public record RoadStrip(Quantity<Length> left, Quantity<Length> right) {
    /**
     * Checks the edges.
     *
     * @throws InvalidInputException if one is not finite, or they are not in order
     */
    public RoadStrip {
        Require.given(RoadStrip.class, left, right);
        if (!(Amounts.si(Length.class, left) < Amounts.si(Length.class, right))) {
            throw new InvalidInputException(
                    "right edge", "right of the left edge, " + Amounts.format(left), Amounts.format(right));
        }
    }

    /**
     * A lane in whose middle the truck drives.
     *
     * @param width the width of the lane, greater than zero
     * @return the strip from −width/2 to +width/2
     * @throws InvalidInputException if the width is not greater than zero
     */
    public static RoadStrip lane(Quantity<Length> width) {
        double half =
                Require.positive("lane width", Length.class, width).getValue().doubleValue() / 2;
        return new RoadStrip(Amounts.of(-half, width.getUnit()), Amounts.of(half, width.getUnit()));
    }

    /**
     * The distance between the edges.
     *
     * @return the width, in the unit of the left edge
     */
    public Quantity<Length> width() {
        return Amounts.ofSi(rightMeters() - leftMeters(), left.getUnit());
    }

    double leftMeters() {
        return Amounts.si(Length.class, left);
    }

    double rightMeters() {
        return Amounts.si(Length.class, right);
    }

    /**
     * The strip as text.
     *
     * @return for example "-6 ft to 6 ft"
     */
    @Override
    public String toString() {
        return Amounts.format(left) + " to " + Amounts.format(right);
    }
}
