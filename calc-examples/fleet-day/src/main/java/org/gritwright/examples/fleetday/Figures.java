package org.gritwright.examples.fleetday;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.Map;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.Unit;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Temperature;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.core.verification.Judgement;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.TradeSystem;
import org.gritwright.units.UnitSymbol;

/** Numbers for people, in both unit systems. */
final class Figures {
    /** Significant digits of what is computed: finer than any scale or counter in the yard. */
    static final int DIGITS = 4;

    /** Of every expanded uncertainty that is shown. */
    static final double COVERAGE = 0.95;

    /** Lengths have several usual units: a gate opening in inches is given in millimeters, not in meters. */
    private static final Map<Unit<?>, Unit<?>> PARTNERS = Map.of(
            SpreadingUnits.INCH, SpreadingUnits.MILLIMETER,
            SpreadingUnits.MILLIMETER, SpreadingUnits.INCH,
            SpreadingUnits.CENTIMETER, SpreadingUnits.INCH,
            SpreadingUnits.FOOT, SpreadingUnits.METER,
            SpreadingUnits.METER, SpreadingUnits.FOOT,
            SpreadingUnits.MILE, SpreadingUnits.KILOMETER,
            SpreadingUnits.KILOMETER, SpreadingUnits.MILE);

    private Figures() {}

    /** A computed quantity with some significant digits, trailing zeros kept, for example "5.240 lb/rev". */
    static String text(Quantity<?> quantity, int digits) {
        String symbol = UnitSymbol.of(quantity.getUnit()).symbol();
        return rounded(quantity.getValue().doubleValue(), digits) + (symbol.isEmpty() ? "" : " " + symbol);
    }

    private static String rounded(double number, int digits) {
        BigDecimal exact = BigDecimal.valueOf(number);
        if (exact.signum() == 0) {
            return "0";
        }
        BigDecimal rounded = exact.round(new MathContext(digits, RoundingMode.HALF_EVEN));
        int powerOfFirstDigit = rounded.precision() - rounded.scale() - 1;
        return rounded.setScale(Math.max(0, digits - 1 - powerOfFirstDigit)).toPlainString();
    }

    /** The same in the other unit system; nothing for a unit that all systems share. */
    @SuppressWarnings("unchecked") // a unit's partner is of its own kind
    static <Q extends Quantity<Q>> Optional<String> otherSystem(Quantity<?> quantity, int digits) {
        Quantity<Q> own = (Quantity<Q>) quantity;
        UnitSymbol<Q> row = UnitSymbol.of(own.getUnit());
        if (row.system() == TradeSystem.ANY) {
            return Optional.empty();
        }
        TradeSystem other = row.system() == TradeSystem.METRIC ? TradeSystem.US : TradeSystem.METRIC;
        Unit<Q> partner = (Unit<Q>)
                Optional.<Unit<?>>ofNullable(PARTNERS.get(row.unit())).orElse(UnitSymbol.tradeUnit(row.kind(), other));
        return Optional.of(text(Amounts.of(Amounts.in(own, partner), partner), digits));
    }

    /** A part and a whole in one unit, for example "251.0 of 260 lb/mi"; in two units each keeps its own. */
    static String of(String part, String whole) {
        String unit = part.substring(part.indexOf(' ') + 1);
        return (whole.endsWith(" " + unit) ? part.substring(0, part.indexOf(' ')) : part) + " of " + whole;
    }

    /** As it was written down, with the other unit system in brackets, for example "2 in (50.8 mm)". */
    static String both(Quantity<?> quantity) {
        return Amounts.format(quantity)
                + otherSystem(quantity, 3).map(other -> " (" + other + ")").orElse("");
    }

    /** A half-width beside a number of the same unit, for example "± 0.10". */
    static String within(Quantity<?> half) {
        return "± " + rounded(half.getValue().doubleValue(), 2);
    }

    /** A measured value with its expanded uncertainty, for example "5.675 lb/rev ± 0.077". */
    static String measured(Measured<?> measured) {
        return text(measured.value(), DIGITS)
                + measured.expandedUncertainty(COVERAGE)
                        .map(half -> " " + within(half))
                        .orElse("");
    }

    /** A temperature to a tenth, for example "−17.8 °C". */
    static String degrees(Quantity<Temperature> temperature) {
        BigDecimal tenths =
                BigDecimal.valueOf(temperature.getValue().doubleValue()).setScale(1, RoundingMode.HALF_EVEN);
        return tenths.toPlainString().replace('-', '−') + " "
                + UnitSymbol.of(temperature.getUnit()).symbol();
    }

    /** An error with its sign and two decimals, for example "+1.08 %", with a hyphen for minus. */
    static String error(Quantity<Dimensionless> error) {
        BigDecimal percent =
                BigDecimal.valueOf(Amounts.in(error, SpreadingUnits.PERCENT)).setScale(2, RoundingMode.HALF_EVEN);
        return (percent.signum() > 0 ? "+" : "") + percent.toPlainString() + " %";
    }

    /** The same with a minus sign, as it is printed. */
    static String errorForPrint(Quantity<Dimensionless> error) {
        return error(error).replace('-', '−');
    }

    /** An error with its expanded uncertainty, for example "+1.08 ± 0.94 %", with a hyphen for minus. */
    static String errorWithin(Judgement judgement) {
        BigDecimal half = BigDecimal.valueOf(Amounts.in(judgement.expandedUncertainty(), SpreadingUnits.PERCENT))
                .round(new MathContext(2, RoundingMode.HALF_EVEN));
        int decimals = Math.max(0, Math.min(2, half.scale()));
        BigDecimal error = BigDecimal.valueOf(
                        Amounts.in(judgement.budget().result().value(), SpreadingUnits.PERCENT))
                .setScale(decimals, RoundingMode.HALF_EVEN);
        return (error.signum() > 0 ? "+" : "") + error.toPlainString() + " ± "
                + half.setScale(decimals, RoundingMode.HALF_EVEN).toPlainString() + " %";
    }

    /** A chance in percent, with "below 0.1 %" for what nobody needs digits of. */
    static String chance(double chance) {
        double percent = 100 * chance;
        if (percent > 99.9) {
            return "above 99.9 %";
        }
        return percent < 0.1 ? "below 0.1 %" : rounded(percent, percent > 99 ? 3 : 2) + " %";
    }

    /** How likely the true error is within the tolerance, for example "chance to be within: 94 %". */
    static String chanceWithin(Judgement judgement) {
        return "chance to be within: " + chance(judgement.conformity().within());
    }

    /** A number without its unit, with at most six significant digits, for a table whose header names the unit. */
    static <Q extends Quantity<Q>> String number(Quantity<Q> quantity, Unit<Q> unit) {
        BigDecimal number = new BigDecimal(rounded(Amounts.in(quantity, unit), 6));
        return number.stripTrailingZeros().toPlainString();
    }

    /** A quantity whose kind is known only now. */
    static <Q extends Quantity<Q>> Quantity<Q> asKind(Class<Q> kind, Quantity<?> quantity) {
        if (!UnitSymbol.of(quantity.getUnit()).kind().equals(kind)) {
            throw new InvalidInputException("quantity", "a " + UnitSymbol.kindName(kind), Amounts.format(quantity));
        }
        @SuppressWarnings("unchecked") // just compared
        Quantity<Q> same = (Quantity<Q>) quantity;
        return same;
    }
}
