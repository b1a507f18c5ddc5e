package org.gritwright.units;

import java.util.List;
import java.util.Locale;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.Unit;
import org.gritwright.units.check.Require;

/**
 * One row of the symbol table: a unit of one kind of quantity, with its symbol, accepted spellings and name.
 *
 * <p>Printing and parsing both read this table and nothing else. Immutable, thread-safe, a value.
 *
 * @param <Q> the kind of quantity
 * @param kind the kind of quantity
 * @param unit the unit
 * @param system the customary system the unit belongs to
 * @param symbol the symbol that is printed; empty for the bare number one; unique over the whole table
 * @param name the full English name
 * @param spellings the other spellings that are read, never printed
 */
public record UnitSymbol<Q extends Quantity<Q>>(
        Class<Q> kind, Unit<Q> unit, TradeSystem system, String symbol, String name, List<String> spellings) {

    /** Checks that nothing is null, and copies the spellings. */
    public UnitSymbol {
        Require.given(UnitSymbol.class, kind, unit, system, symbol, name, spellings);
        spellings = List.copyOf(spellings);
    }

    /**
     * The whole table, kind by kind; within a kind and a trade system the trade's usual unit comes first.
     *
     * @return all rows, in a fixed order
     */
    public static List<UnitSymbol<?>> all() {
        return SymbolTable.ROWS;
    }

    /**
     * The rows of one kind.
     *
     * @param <Q> the kind of quantity
     * @param kind the kind of quantity
     * @return its rows, in table order
     * @throws InvalidInputException if the table has no such kind
     */
    public static <Q extends Quantity<Q>> List<UnitSymbol<Q>> ofKind(Class<Q> kind) {
        Objects.requireNonNull(kind, "kind");
        return SymbolTable.rowsOf(kind);
    }

    /**
     * The row of a unit.
     *
     * @param <Q> the kind of quantity
     * @param unit a unit
     * @return its row
     * @throws InvalidInputException if the unit has no symbol here
     */
    public static <Q extends Quantity<Q>> UnitSymbol<Q> of(Unit<Q> unit) {
        Objects.requireNonNull(unit, "unit");
        return SymbolTable.entryOf(unit).row();
    }

    /**
     * The trade's usual unit for a kind in a customary system, for example lb/mi for application rates in the US.
     *
     * @param <Q> the kind of quantity
     * @param kind the kind of quantity
     * @param system the wanted system
     * @return the first unit of that system; else the first that every system shares; else the kind's first
     */
    public static <Q extends Quantity<Q>> Unit<Q> tradeUnit(Class<Q> kind, TradeSystem system) {
        Objects.requireNonNull(kind, "kind");
        Objects.requireNonNull(system, "system");
        return SymbolTable.tradeUnit(kind, system);
    }

    /**
     * The trade's usual unit for a kind in the customary system of a quantity, for example lb/rev beside a mass in lb.
     *
     * @param <Q> the kind of quantity
     * @param kind the wanted kind of quantity
     * @param like a quantity of any kind
     * @return the first unit of its system; else the first that every system shares; else the kind's first
     * @throws InvalidInputException if the quantity's unit has no symbol here
     */
    public static <Q extends Quantity<Q>> Unit<Q> tradeUnit(Class<Q> kind, Quantity<?> like) {
        Objects.requireNonNull(like, "like");
        return tradeUnit(kind, of(like.getUnit()).system());
    }

    /** What messages call the unit: its symbol, and "one" for the bare number. */
    String label() {
        return symbol.isEmpty() ? name : symbol;
    }

    /**
     * Names the unit as the table does, never as JSR 385 prints it.
     *
     * @return for example "lb/mi (pound per mile)"
     */
    @Override
    public String toString() {
        return symbol.isEmpty() ? name : symbol + " (" + name + ")";
    }

    /**
     * A kind's name in words, for messages: "lane application rate".
     *
     * @param kind the kind of quantity
     * @return its name in lower case
     */
    public static String kindName(Class<?> kind) {
        Objects.requireNonNull(kind, "kind");
        String words = kind.getSimpleName().replaceAll("(?<=.)(?=[A-Z])", " ").toLowerCase(Locale.ROOT);
        // JSR 385 calls the kind "Dimensionless"; the trade says ratio.
        return words.equals("dimensionless") ? "ratio" : words;
    }
}
