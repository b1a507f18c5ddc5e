package org.gritwright.examples.fleetmemory;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;
import javax.measure.Quantity;
import javax.measure.Unit;
import javax.measure.quantity.Mass;
import org.gritwright.units.Amounts;
import org.gritwright.units.UnitSymbol;

/**
 * How masses of a page are printed: whole numbers of one step.
 *
 * @param step a power of ten, in the unit
 */
record Rounding(Unit<Mass> unit, BigDecimal step) {
    /** More decimals nobody weighs a truckload to. */
    private static final int MOST_DECIMALS = 3;

    /** More digits nobody reads. */
    private static final int MOST_DIGITS = 7;

    /** Decimals beyond these come from converting units. */
    private static final int EXACT = 6;

    private static final double ROUNDING = 1e-6;

    /**
     * As fine as the masses were written down, so that they are printed as they are.
     *
     * @param written the masses
     * @param largest the largest mass of the page
     */
    static Rounding of(Unit<Mass> unit, List<Quantity<Mass>> written, Quantity<Mass> largest) {
        int finest = written.stream()
                .mapToInt(mass -> BigDecimal.valueOf(Amounts.in(mass, unit))
                        .setScale(EXACT, RoundingMode.HALF_EVEN)
                        .stripTrailingZeros()
                        .scale())
                .max()
                .orElse(0);
        BigDecimal whole = BigDecimal.valueOf(Amounts.in(largest, unit)).setScale(0, RoundingMode.UP);
        int decimals = Math.min(Math.min(finest, MOST_DECIMALS), MOST_DIGITS - whole.precision());
        return new Rounding(unit, BigDecimal.ONE.scaleByPowerOfTen(-Math.max(0, decimals)));
    }

    /** In steps; what is a whole number of them but for converting units is one. */
    double steps(Quantity<Mass> mass) {
        double steps = Amounts.in(mass, unit) / step.doubleValue();
        return Math.abs(steps - Math.rint(steps)) < ROUNDING ? Math.rint(steps) : steps;
    }

    String text(long steps) {
        return number(steps) + " " + symbol();
    }

    /** How far off a mass may be, never as if it weren't. */
    String half(double steps) {
        return steps > 0 && Math.round(steps) == 0 ? "below " + text(1) : "± " + text(Math.round(steps));
    }

    /** With the sign of what is more. */
    String signed(long steps) {
        return (steps > 0 ? "+" : "") + text(steps);
    }

    String number(long steps) {
        return step.multiply(BigDecimal.valueOf(steps)).toPlainString().replace('-', '−');
    }

    String symbol() {
        return UnitSymbol.of(unit).symbol();
    }
}
