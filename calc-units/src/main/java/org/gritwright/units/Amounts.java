package org.gritwright.units;

import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.Unit;
import tech.units.indriya.quantity.Quantities;

/**
 * Makes, reads, writes and measures quantities of the symbol table's kinds; meant for static import.
 *
 * <p>A quantity keeps the value and unit it was made with, and two are equal when both are. All methods are pure and
 * thread-safe and know no locale.
 *
 * <p>JSR 385's quantities know no negative zero: −0.0 becomes 0 when a quantity is made of it. {@link Conversion} works
 * on plain doubles and keeps it.
 */
public final class Amounts {
    static {
        ReferenceImplementation.prepare();
    }

    private Amounts() {}

    /**
     * Makes the reference implementation of JSR 385 usable from here on, whatever the threads' context class loaders.
     *
     * <p>This library does so by itself on its first use. Call it, once and early, if units of the reference implementation
     * are used (or quantities deserialized) before anything of this library, on threads whose context class loader may not
     * see that implementation: there it would fail for good. Calling it again does no harm. Number systems and service
     * providers that the application has set stay set.
     */
    public static void prepare() {
        ReferenceImplementation.prepare();
    }

    /**
     * A quantity from a number and a unit.
     *
     * @param <Q> the kind of quantity
     * @param value a finite number
     * @param unit its unit
     * @return the quantity
     * @throws InvalidInputException if the number is not finite
     */
    public static <Q extends Quantity<Q>> Quantity<Q> of(double value, Unit<Q> unit) {
        Objects.requireNonNull(unit, "unit");
        if (!Double.isFinite(value)) {
            throw new InvalidInputException(
                    RefusalCode.NOT_FINITE, "value", "finite", value + " in " + SymbolTable.describe(unit));
        }
        return Quantities.getQuantity(value, unit);
    }

    /**
     * Reads a quantity of a given kind: a number by JSON's grammar, one space or none, and a unit of the symbol table.
     *
     * @param <Q> the kind of quantity
     * @param kind the kind of quantity that is wanted
     * @param text for example "260 lb/mi"
     * @return the quantity, with value and unit as written
     * @throws InvalidInputException for anything else; it quotes the text, says where reading stopped, and names the
     *     nearest symbols
     */
    public static <Q extends Quantity<Q>> Quantity<Q> parse(Class<Q> kind, String text) {
        Objects.requireNonNull(kind, "kind");
        Objects.requireNonNull(text, "text");
        AmountReader.Reading reading = AmountReader.read(kind, text);
        @SuppressWarnings("unchecked") // the reader compared the kind
        UnitSymbol<Q> row = (UnitSymbol<Q>) reading.row();
        return of(reading.number(), row.unit());
    }

    /**
     * Reads a quantity of whatever kind its unit has.
     *
     * @param text for example "260 lb/mi"
     * @return the quantity, with value and unit as written
     * @throws InvalidInputException if the text is not a number and a unit of the symbol table
     */
    public static Quantity<?> parseAny(String text) {
        Objects.requireNonNull(text, "text");
        AmountReader.Reading reading = AmountReader.readAny(text);
        return anyOf(reading.number(), reading.row());
    }

    private static <Q extends Quantity<Q>> Quantity<Q> anyOf(double value, UnitSymbol<Q> row) {
        return of(value, row.unit());
    }

    /**
     * Writes a quantity so that {@link #parse} reads back the same value and unit: the shortest decimal number that
     * gives the same double, a space, and the symbol.
     *
     * @param quantity a quantity in a unit of the symbol table
     * @return for example "260 lb/mi"
     * @throws InvalidInputException if the unit has no symbol or the value is not finite
     */
    public static String format(Quantity<?> quantity) {
        Objects.requireNonNull(quantity, "quantity");
        String symbol = UnitSymbol.of(quantity.getUnit()).symbol();
        String number = DecimalText.print(finite(quantity));
        return symbol.isEmpty() ? number : number + " " + symbol;
    }

    /**
     * The number of a quantity in a unit.
     *
     * @param <Q> the kind of quantity
     * @param quantity a quantity
     * @param unit the wanted unit
     * @return the value, converted as by {@link Conversion}
     * @throws InvalidInputException as for {@link Conversion}
     */
    public static <Q extends Quantity<Q>> double in(Quantity<Q> quantity, Unit<Q> unit) {
        Objects.requireNonNull(quantity, "quantity");
        Objects.requireNonNull(unit, "unit");
        double value = finite(quantity);
        return quantity.getUnit().equals(unit)
                ? value
                : Conversion.between(quantity.getUnit(), unit).convert(value);
    }

    /**
     * The number of a quantity in SI units (with revolutions, pulses and lanes as base units), after a check that the
     * quantity really is of the kind. Raw types and JSR 385's {@code asType} can't get past it.
     *
     * @param <Q> the kind of quantity
     * @param kind the kind that is wanted
     * @param quantity a quantity
     * @return the value in the kind's SI unit
     * @throws InvalidInputException if the quantity is of another kind, in a unit without symbol, not finite, or too
     *     large in SI
     */
    public static <Q extends Quantity<Q>> double si(Class<Q> kind, Quantity<Q> quantity) {
        Objects.requireNonNull(kind, "kind");
        Objects.requireNonNull(quantity, "quantity");
        SymbolTable.Entry<Q> entry = SymbolTable.entryOf(kind, quantity.getUnit());
        double value = finite(quantity);
        if (entry.factors() == null) {
            // A difference of temperatures has no offset.
            return quantity.getScale() == Quantity.Scale.RELATIVE
                    ? quantity.toSystemUnit().getValue().doubleValue()
                    : entry.converter().convert(quantity.getValue()).doubleValue();
        }
        double result = entry.factors().intoSystem().times(value);
        if (!Double.isFinite(result)) {
            throw new InvalidInputException(
                    RefusalCode.NOT_FINITE, UnitSymbol.kindName(kind), "finite in SI units", format(quantity));
        }
        return result;
    }

    /**
     * A quantity from a number in SI units, given in another unit of the same kind.
     *
     * @param <Q> the kind of quantity
     * @param siValue the value in the kind's SI unit
     * @param unit the unit of the result; differs from SI by a factor only
     * @return the quantity in that unit
     * @throws InvalidInputException if the unit has no symbol or an offset, or the result is not finite
     */
    public static <Q extends Quantity<Q>> Quantity<Q> ofSi(double siValue, Unit<Q> unit) {
        Objects.requireNonNull(unit, "unit");
        SymbolTable.Entry<Q> entry = SymbolTable.entryOf(unit);
        if (entry.factors() == null) {
            throw new InvalidInputException(
                    RefusalCode.WRONG_UNIT, "unit", "one without an offset", SymbolTable.describe(unit));
        }
        return of(entry.factors().outOfSystem().times(siValue), unit);
    }

    private static double finite(Quantity<?> quantity) {
        double value = quantity.getValue().doubleValue();
        if (!Double.isFinite(value)) {
            throw new InvalidInputException(
                    RefusalCode.NOT_FINITE,
                    "value",
                    "finite",
                    value + " in " + SymbolTable.describe(quantity.getUnit()));
        }
        return value;
    }
}
