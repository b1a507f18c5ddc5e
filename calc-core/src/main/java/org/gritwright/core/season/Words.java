package org.gritwright.core.season;

import java.math.BigDecimal;
import java.math.RoundingMode;
import javax.measure.Quantity;
import javax.measure.Unit;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Mass;
import org.gritwright.core.balance.Estimate;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.units.Amounts;
import org.gritwright.units.Rounded;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.UnitSymbol;

/** Numbers with their units, and in sentences. */
final class Words {
    private static final double COVERAGE = 0.95;
    /** An uncertainty that starts with a lower digit has two of them. */
    private static final double ONE_DIGIT_FROM = 3;

    private Words() {}

    static Measured<Mass> mass(Estimate kilograms, Unit<Mass> unit) {
        return Measured.of(
                Amounts.ofSi(kilograms.value(), unit),
                Amounts.ofSi(kilograms.standardUncertainty(), unit),
                Double.POSITIVE_INFINITY);
    }

    static Measured<Dimensionless> percent(double ratio, double uncertainty) {
        return Measured.of(
                Amounts.ofSi(ratio, SpreadingUnits.PERCENT),
                Amounts.ofSi(uncertainty, SpreadingUnits.PERCENT),
                Double.POSITIVE_INFINITY);
    }

    static boolean isNegative(Measured<?> measured) {
        return measured.value().getValue().doubleValue() < 0;
    }

    /** Without a sign, rounded as finely as it is known: "7.2 ± 1.9 % (95 %)". */
    static <Q extends Quantity<Q>> String plusMinus(Measured<Q> measured) {
        double expanded = expanded(measured);
        int place = place(expanded);
        return rounded(Math.abs(measured.value().getValue().doubleValue()), place) + " ± " + rounded(expanded, place)
                + " " + UnitSymbol.of(measured.value().getUnit()).symbol() + " (95 %)";
    }

    /** With its sign, rounded as finely as it is known, where nothing but its value is told: "−0.2 %". */
    static String signedPercent(Measured<Dimensionless> measured) {
        double value = inPercent(measured.value());
        double expanded =
                measured.expandedUncertainty(COVERAGE).map(Words::inPercent).orElse(0.0);
        if (!(expanded > 0)) {
            return Rounded.text(measured.value().to(SpreadingUnits.PERCENT), 2);
        }
        String size = rounded(Math.abs(value), place(expanded));
        boolean isNothing = new BigDecimal(size).signum() == 0;
        return (value < 0 && !isNothing ? "-" : "") + (isNothing ? "0" : size) + " %";
    }

    private static double inPercent(Quantity<Dimensionless> ratio) {
        return ratio.to(SpreadingUnits.PERCENT).getValue().doubleValue();
    }

    private static <Q extends Quantity<Q>> double expanded(Measured<Q> measured) {
        return measured.expandedUncertainty(COVERAGE)
                .map(u -> u.getValue().doubleValue())
                .orElse(0.0);
    }

    private static int place(double expanded) {
        return expanded > 0 ? (int) Math.floor(Math.log10(expanded / ONE_DIGIT_FROM)) : 0;
    }

    private static String rounded(double number, int place) {
        BigDecimal rounded = BigDecimal.valueOf(number).setScale(-place, RoundingMode.HALF_EVEN);
        return rounded.setScale(Math.max(0, -place), RoundingMode.UNNECESSARY).toPlainString();
    }
}
