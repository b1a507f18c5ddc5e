package org.gritwright.units;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import javax.measure.Quantity;
import javax.measure.Unit;
import javax.measure.UnitConverter;
import org.jspecify.annotations.Nullable;

/** Look-ups over the symbol rows, made once; immutable afterwards. */
final class SymbolTable {

    /**
     * A row and the way to its system unit.
     *
     * @param factors the exact factor; {@code null} for a scale with an offset, such as °C
     * @param converter the reference implementation's, which knows offsets
     */
    record Entry<Q extends Quantity<Q>>(
            UnitSymbol<Q> row, @Nullable FactorPair factors, UnitConverter converter) {}

    static final List<UnitSymbol<?>> ROWS = SymbolRows.all();

    private static final List<Entry<?>> ENTRIES =
            ROWS.stream().<Entry<?>>map(SymbolTable::entry).toList();
    private static final Map<Class<?>, List<Entry<?>>> BY_KIND;
    private static final Map<String, Entry<?>> BY_SPELLING;
    private static final Map<Unit<?>, Entry<?>> BY_IDENTITY;

    static {
        @SuppressWarnings("IdentityHashMapUsage") // by identity is what is meant; it leaves this block unmodifiable
        Map<Unit<?>, Entry<?>> byIdentity = new IdentityHashMap<>();
        Map<Class<?>, List<Entry<?>>> byKind = new HashMap<>();
        Map<String, Entry<?>> bySpelling = new HashMap<>();
        for (Entry<?> entry : ENTRIES) {
            UnitSymbol<?> row = entry.row();
            byIdentity.put(row.unit(), entry);
            byKind.computeIfAbsent(row.kind(), kind -> new ArrayList<>()).add(entry);
            putOnce(bySpelling, row.symbol(), entry);
            row.spellings().forEach(spelling -> putOnce(bySpelling, spelling, entry));
        }
        byKind.replaceAll((kind, entries) -> List.copyOf(entries));
        BY_KIND = Map.copyOf(byKind);
        BY_SPELLING = Map.copyOf(bySpelling);
        BY_IDENTITY = Collections.unmodifiableMap(byIdentity);
    }

    private SymbolTable() {}

    private static <Q extends Quantity<Q>> Entry<Q> entry(UnitSymbol<Q> row) {
        Unit<Q> unit = row.unit();
        return new Entry<>(row, FactorPair.toSystemUnit(unit).orElse(null), unit.getConverterTo(unit.getSystemUnit()));
    }

    private static void putOnce(Map<String, Entry<?>> bySpelling, String spelling, Entry<?> entry) {
        if (bySpelling.put(spelling, entry) != null) {
            throw new IllegalStateException("twice in the symbol table: \"" + spelling + "\"");
        }
    }

    /**
     * The entry of a unit, or {@code null}. The units of this library are found by identity, equal ones made elsewhere
     * by comparison. No map goes by the units' own hash codes: Indriya hashes a product in the order of its factors' printed symbols, which
     * any code in the JVM may relabel.
     */
    private static @Nullable Entry<?> find(Unit<?> unit) {
        Entry<?> own = BY_IDENTITY.get(unit);
        if (own != null) {
            return own;
        }
        for (Entry<?> entry : ENTRIES) {
            if (entry.row().unit().equals(unit)) {
                return entry;
            }
        }
        return null;
    }

    @SuppressWarnings("unchecked") // a unit's row was made with the unit's own type
    static <Q extends Quantity<Q>> Entry<Q> entryOf(Unit<Q> unit) {
        Entry<?> entry = find(unit);
        if (entry == null) {
            throw new InvalidInputException(
                    RefusalCode.UNKNOWN_UNIT, "unit", "one of the symbol table", describe(unit));
        }
        return (Entry<Q>) entry;
    }

    @SuppressWarnings("unchecked") // the kind was compared
    static <Q extends Quantity<Q>> Entry<Q> entryOf(Class<Q> kind, Unit<Q> unit) {
        Entry<?> entry = entryOf(unit);
        if (!entry.row().kind().equals(kind)) {
            throw wrongKind(kind, entry.row());
        }
        return (Entry<Q>) entry;
    }

    static <Q extends Quantity<Q>> List<UnitSymbol<Q>> rowsOf(Class<Q> kind) {
        return entriesOf(kind).stream().map(Entry::row).toList();
    }

    static <Q extends Quantity<Q>> Unit<Q> tradeUnit(Class<Q> kind, TradeSystem system) {
        List<UnitSymbol<Q>> rows = rowsOf(kind);
        for (TradeSystem wanted : List.of(system, TradeSystem.ANY)) {
            for (UnitSymbol<Q> row : rows) {
                if (row.system() == wanted) {
                    return row.unit();
                }
            }
        }
        return rows.get(0).unit();
    }

    @SuppressWarnings("unchecked") // lists are filed under their own kind
    private static <Q extends Quantity<Q>> List<Entry<Q>> entriesOf(Class<Q> kind) {
        List<?> entries = BY_KIND.get(kind);
        if (entries == null) {
            throw unknownKind(kind);
        }
        return (List<Entry<Q>>) entries;
    }

    /** The row with this spelling, or {@code null}. */
    static @Nullable Entry<?> bySpelling(String spelling) {
        return BY_SPELLING.get(spelling);
    }

    static void checkKind(Class<?> kind) {
        if (!BY_KIND.containsKey(kind)) {
            throw unknownKind(kind);
        }
    }

    private static InvalidInputException unknownKind(Class<?> kind) {
        return new InvalidInputException(
                RefusalCode.UNKNOWN_NAME, "kind of quantity", "one of the symbol table", kind.getName());
    }

    private static InvalidInputException wrongKind(Class<?> wanted, UnitSymbol<?> row) {
        return new InvalidInputException(
                RefusalCode.WRONG_KIND,
                "unit",
                "one of " + UnitSymbol.kindName(wanted),
                "\"" + row.label() + "\" is one of " + UnitSymbol.kindName(row.kind()),
                UnitSymbol.kindName(wanted));
    }

    /** A unit's symbol where it has one; never JSR 385's own text, which can't be read back. */
    static String describe(Unit<?> unit) {
        Entry<?> entry = find(unit);
        if (entry != null) {
            return "\"" + entry.row().label() + "\"";
        }
        return ROWS.stream()
                .filter(row -> row.unit().getDimension().equals(unit.getDimension()))
                .findFirst()
                .map(row -> "another unit with the dimension of " + UnitSymbol.kindName(row.kind()))
                .orElse("a unit of a dimension that no kind has");
    }
}
