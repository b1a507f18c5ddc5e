package org.gritwright.units;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.Objects;
import javax.measure.Quantity;
import org.gritwright.units.check.Require;

/** Rounding for people and for displays: in decimals, never in binary. */
public final class Rounded {

    private Rounded() {}

    /**
     * A quantity as text with a number of significant digits, trailing zeros left out, for sentences and tables. Digits
     * before the point are never rounded away: a person may have to enter them.
     *
     * @param quantity the quantity
     * @param significantDigits 1 or more
     * @return for example "27.24 lb/rev"
     * @throws InvalidInputException if there are no digits, or the quantity is not finite or in a unit without symbol
     */
    public static String text(Quantity<?> quantity, int significantDigits) {
        Objects.requireNonNull(quantity, "quantity");
        if (significantDigits < 1) {
            throw new InvalidInputException(
                    RefusalCode.TOO_LOW, "significant digits", "1 or more", String.valueOf(significantDigits), "1");
        }
        BigDecimal exact = decimal(quantity);
        int digits = Math.max(significantDigits, exact.precision() - exact.scale());
        BigDecimal rounded = exact.round(new MathContext(digits, RoundingMode.HALF_EVEN));
        String number =
                rounded.signum() == 0 ? "0" : rounded.stripTrailingZeros().toPlainString();
        String symbol = UnitSymbol.of(quantity.getUnit()).symbol();
        return symbol.isEmpty() ? number : number + " " + symbol;
    }

    /**
     * The multiple of a resolution that is nearest to a quantity, both as decimal numbers in one unit: 27.23954 lb/rev
     * on a display that shows hundredths is 27.24 lb/rev exactly. A half is rounded away from zero, as displays do.
     *
     * @param <Q> the kind of quantity
     * @param quantity the quantity
     * @param resolution the resolution, greater than zero, in the quantity's own unit
     * @return the nearest multiple, in the same unit
     * @throws InvalidInputException if the units differ, the resolution is not greater than zero, or a number is not
     *     finite
     */
    public static <Q extends Quantity<Q>> Quantity<Q> toResolution(Quantity<Q> quantity, Quantity<Q> resolution) {
        Objects.requireNonNull(quantity, "quantity");
        Objects.requireNonNull(resolution, "resolution");
        boolean inOneUnit = quantity.getUnit().equals(resolution.getUnit());
        if (!inOneUnit || !(decimal(resolution).signum() > 0)) {
            throw new InvalidInputException(
                    inOneUnit ? RefusalCode.NOT_POSITIVE : RefusalCode.WRONG_UNIT,
                    "display resolution",
                    "greater than 0 and in the unit of " + Amounts.format(quantity),
                    Amounts.format(resolution));
        }
        BigDecimal step = decimal(resolution);
        BigDecimal steps = decimal(quantity).divide(step, 0, RoundingMode.HALF_UP);
        return Amounts.of(steps.multiply(step).doubleValue(), quantity.getUnit());
    }

    private static BigDecimal decimal(Quantity<?> quantity) {
        return BigDecimal.valueOf(Require.finite("value", quantity.getValue().doubleValue()));
    }
}
