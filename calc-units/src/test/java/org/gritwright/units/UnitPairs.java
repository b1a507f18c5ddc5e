package org.gritwright.units;

import java.util.ArrayList;
import java.util.List;
import javax.measure.Quantity;
import javax.measure.Unit;

/** Every conversion of the symbol table, for tests that must hold for all of them. */
final class UnitPairs {

    /** Two units of one kind and the conversion from the first to the second. */
    record Pair(UnitSymbol<?> from, UnitSymbol<?> to, Conversion conversion) {
        @Override
        public String toString() {
            return conversion.toString();
        }
    }

    /** All ordered pairs of units of one kind that differ by a factor only, each unit with itself included. */
    static final List<Pair> ALL = all();

    private UnitPairs() {}

    /** All pairs of two different units. */
    static List<Pair> ofDifferentUnits() {
        return ALL.stream().filter(pair -> !pair.from().equals(pair.to())).toList();
    }

    private static List<Pair> all() {
        List<Pair> pairs = new ArrayList<>();
        for (UnitSymbol<?> from : UnitSymbol.all()) {
            for (UnitSymbol<?> to : UnitSymbol.all()) {
                if (from.kind().equals(to.kind()) && hasFactor(from) && hasFactor(to)) {
                    pairs.add(new Pair(from, to, conversion(from, to)));
                }
            }
        }
        return List.copyOf(pairs);
    }

    static boolean hasFactor(UnitSymbol<?> row) {
        return SymbolTable.entryOf(row.unit()).factors() != null;
    }

    @SuppressWarnings("unchecked") // the caller compared the kinds
    private static <Q extends Quantity<Q>> Conversion conversion(UnitSymbol<Q> from, UnitSymbol<?> to) {
        return Conversion.between(from.unit(), (Unit<Q>) to.unit());
    }

    /** The conversion between two units given by symbol. */
    static Conversion between(String from, String to) {
        return ALL.stream()
                .filter(pair ->
                        pair.from().symbol().equals(from) && pair.to().symbol().equals(to))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException(from + " to " + to))
                .conversion();
    }
}
