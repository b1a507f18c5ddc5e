package org.gritwright.core.metering;

import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Length;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.UnitSymbol;
import org.gritwright.units.check.Require;

/**
 * A gate opening as people read it off the truck: a measured height, which is a length, or the setting of a painted
 * mark, which is a bare number. These helpers keep the two apart.
 */
public final class OpeningReading {
    private static final double BILLION = 1e9;

    private OpeningReading() {}

    /**
     * Checks that a reading is one of the two and not negative.
     *
     * @param reading a length or a bare number
     * @return the reading
     * @throws InvalidInputException if it is negative or of another kind
     */
    public static Quantity<?> check(Quantity<?> reading) {
        return isLength(reading)
                ? Require.notNegative("gate opening", Length.class, length(reading))
                : Require.notNegative("gate opening", Dimensionless.class, setting(reading));
    }

    /**
     * Whether a reading is a measured height.
     *
     * @param reading a length or a bare number
     * @return true for a length
     */
    public static boolean isLength(Quantity<?> reading) {
        boolean isLength = UnitSymbol.of(reading.getUnit()).kind().equals(Length.class);
        // "3 %" is no mark that anybody painted, but a slip that would pass for 0.03.
        if (!isLength && !reading.getUnit().equals(SpreadingUnits.ONE)) {
            throw new InvalidInputException(
                    "gate opening", "a length, or a bare number for a setting", Amounts.format(reading));
        }
        return isLength;
    }

    /**
     * The reading as a number.
     *
     * @param reading a length or a bare number
     * @return metres, or the setting
     * @throws InvalidInputException if it is of another kind
     */
    public static double si(Quantity<?> reading) {
        return isLength(reading)
                ? Amounts.si(Length.class, length(reading))
                : Amounts.si(Dimensionless.class, setting(reading));
    }

    /**
     * A number as a reading in the unit of another: the way back from {@link #si}.
     *
     * @param si metres, or a setting
     * @param like a reading of the same kind
     * @return the reading
     */
    public static Quantity<?> ofSi(double si, Quantity<?> like) {
        return isLength(like)
                ? Amounts.ofSi(si, length(like).getUnit())
                : Amounts.ofSi(si, setting(like).getUnit());
    }

    /**
     * Where a gate stands, as a key: 2 in and 50.8 mm are one position.
     *
     * @param isLength whether it was measured or is a setting
     * @param billionths nanometres, or billionths of a setting
     */
    public record Position(boolean isLength, long billionths) {}

    /**
     * The position of a reading.
     *
     * @param reading a length or a bare number
     * @return its position, equal for equal readings in any unit
     * @throws InvalidInputException if it is of another kind
     */
    public static Position position(Quantity<?> reading) {
        return new Position(isLength(reading), Math.round(si(reading) * BILLION));
    }

    /**
     * Whether two readings are the same position.
     *
     * @param one a reading; none for a spreader without a gate to set
     * @param other another
     * @return true if both are none or both are one position
     */
    public static boolean areSame(Optional<Quantity<?>> one, Optional<Quantity<?>> other) {
        return one.map(OpeningReading::position).equals(other.map(OpeningReading::position));
    }

    @SuppressWarnings("unchecked") // the kind was asked before
    private static Quantity<Length> length(Quantity<?> reading) {
        return (Quantity<Length>) reading;
    }

    @SuppressWarnings("unchecked") // the kind was asked before, or is proven by what follows
    private static Quantity<Dimensionless> setting(Quantity<?> reading) {
        return (Quantity<Dimensionless>) reading;
    }
}
