package org.gritwright.core.chart;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import javax.measure.Quantity;
import javax.measure.Unit;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.units.Amounts;
import org.gritwright.units.UnitSymbol;
import org.gritwright.units.check.Comparison;
import org.gritwright.units.check.Require;

/**
 * A number of a chart: exactly, and as it is printed. There is one rule of rounding, and each number is rounded by it once.
 *
 * <ul>
 *   <li>The step is the largest of 1, 2 or 5 × 10<sup>k</sup> that isn't above the standard uncertainty (by more than doubles lose:
 *       the uncertainty is taken to 13 digits). What rounding adds to the uncertainty is at most √(1 + 1/12) − 1, 4.1 %.
 *   <li>Where no uncertainty is known, or it is 0, the step is that of the third significant digit.
 *   <li>The number is taken as the decimal it is written as, and goes to the nearest multiple of the step; a half goes to the
 *       even multiple.
 * </ul>
 *
 * <p>Immutable, thread-safe, a value.
 *
 * @param <Q> the kind of quantity
 * @param exact the number before rounding, with its uncertainty where that is known
 */
public record CellValue<Q extends Quantity<Q>>(Measured<Q> exact) {
    private static final int DIGITS = 3;

    /** 1 % of 100 may come out as 0.9999999999999999, and is 1 for people. */
    private static final MathContext WHAT_DOUBLES_KEEP = new MathContext(13);

    /** Checks that nothing is null. */
    public CellValue {
        Require.given(CellValue.class, exact);
    }

    /**
     * What the printed number is a multiple of.
     *
     * @return 1, 2 or 5 times a power of ten, in the unit of the number
     */
    public BigDecimal step() {
        BigDecimal uncertainty = exact.standardUncertainty()
                .map(CellValue::decimalOf)
                .orElse(BigDecimal.ZERO)
                .round(WHAT_DOUBLES_KEEP);
        if (uncertainty.signum() > 0) {
            int power = power(uncertainty);
            BigDecimal lead = uncertainty.movePointLeft(power);
            int first = lead.intValue();
            return BigDecimal.valueOf(first >= 5 ? 5 : Math.min(first, 2), -power);
        }
        // Of 0 any step will do.
        BigDecimal number = decimalOf(exact.value());
        return number.signum() == 0 ? BigDecimal.ONE : BigDecimal.valueOf(1, DIGITS - 1 - power(number));
    }

    /** Of the first digit. */
    private static int power(BigDecimal number) {
        return number.precision() - number.scale() - 1;
    }

    private static BigDecimal decimalOf(Quantity<?> quantity) {
        return BigDecimal.valueOf(quantity.getValue().doubleValue());
    }

    /**
     * The rounded number.
     *
     * @return the multiple of the step, exactly
     */
    public BigDecimal decimal() {
        BigDecimal step = step();
        return decimalOf(exact.value()).divide(step, 0, RoundingMode.HALF_EVEN).multiply(step);
    }

    /**
     * The rounded number with its unit.
     *
     * @return in the unit of the exact one
     */
    public Quantity<Q> rounded() {
        return quantity(decimal());
    }

    /**
     * The same number in another unit, where it is rounded by the same rule.
     *
     * @param unit the unit
     * @return the number; its uncertainty goes with it
     * @throws org.gritwright.units.InvalidInputException if the unit is of another kind
     */
    public CellValue<Q> in(Unit<Q> unit) {
        Quantity<Q> value = converted(exact.value(), unit);
        return new CellValue<>(exact.standardUncertainty()
                .map(u -> Measured.of(
                        value, converted(u, unit), exact.degreesOfFreedom().orElseThrow()))
                .orElseGet(() -> Measured.once(value)));
    }

    private static <Q extends Quantity<Q>> Quantity<Q> converted(Quantity<Q> quantity, Unit<Q> unit) {
        return Amounts.of(Amounts.in(quantity, unit), unit);
    }

    private Quantity<Q> quantity(BigDecimal number) {
        return Amounts.of(number.doubleValue(), exact.value().getUnit());
    }

    /** Rounded so that it isn't above the exact number, by more than doubles lose. */
    Quantity<Q> down() {
        return inward(-1);
    }

    /** Rounded so that it isn't below the exact number, by more than doubles lose. */
    Quantity<Q> up() {
        return inward(1);
    }

    private Quantity<Q> inward(int sign) {
        BigDecimal nearest = decimal();
        double number = exact.value().getValue().doubleValue();
        boolean isInside = !Comparison.isAbove(sign * (number - nearest.doubleValue()), 0, number);
        return quantity(isInside ? nearest : nearest.add(step().multiply(BigDecimal.valueOf(sign))));
    }

    /**
     * The rounded number as a table shows it, with as many decimals as the step has.
     *
     * @return for example "630" or "12.50"
     */
    public String number() {
        BigDecimal decimal = decimal();
        return decimal.setScale(Math.max(0, decimal.scale())).toPlainString();
    }

    /**
     * The rounded number with its unit.
     *
     * @return for example "630 lb/mi"
     */
    @Override
    public String toString() {
        String symbol = UnitSymbol.of(exact.value().getUnit()).symbol();
        return symbol.isEmpty() ? number() : number() + " " + symbol;
    }
}
