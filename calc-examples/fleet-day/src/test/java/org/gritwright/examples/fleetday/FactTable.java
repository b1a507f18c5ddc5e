package org.gritwright.examples.fleetday;

import java.io.IOException;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import javax.measure.Quantity;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVPrinter;
import org.apache.commons.csv.CSVRecord;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.UnitSymbol;

/**
 * What a day shows, as a flat table of named facts that knows no layout: no document, no class, no column. Quantities
 * compare by their size, in whatever units of their kind they stand; anything else compares as text.
 */
final class FactTable {
    private static final CSVFormat FORMAT = CSVFormat.DEFAULT
            .builder()
            .setRecordSeparator('\n')
            .setHeader("truck", "what", "material", "opening", "at", "index", "value")
            .setSkipHeaderRecord(true)
            .get();

    /** Relative; absolute for a zero. */
    private static final double ACCURACY = 1e-12;

    /**
     * Which fact it is; what doesn't apply is empty.
     *
     * @param truck the truck's id
     * @param what a name of our own, which stays when fields, classes and columns get other names
     * @param material the material it is for
     * @param opening the gate opening it is for, as its first catch spells it
     * @param at when its catch was made
     * @param index which of several, from 1
     */
    record Key(String truck, String what, String material, String opening, String at, String index)
            implements Comparable<Key> {

        private List<String> cells() {
            return List.of(truck, what, material, opening, at, index);
        }

        @Override
        public int compareTo(Key other) {
            for (int i = 0; i < cells().size(); i++) {
                int order = cells().get(i).compareTo(other.cells().get(i));
                if (order != 0) {
                    return order;
                }
            }
            return 0;
        }

        @Override
        public String toString() {
            return String.join(
                    ", ", cells().stream().filter(cell -> !cell.isEmpty()).toList());
        }
    }

    private final Map<Key, String> values = new TreeMap<>();

    static FactTable parse(String csv) throws IOException {
        FactTable table = new FactTable();
        try (CSVParser rows = CSVParser.parse(csv, FORMAT)) {
            for (CSVRecord row : rows) {
                table.put(
                        new Key(
                                row.get("truck"),
                                row.get("what"),
                                row.get("material"),
                                row.get("opening"),
                                row.get("at"),
                                row.get("index")),
                        row.get("value"));
            }
        }
        return table;
    }

    String text() throws IOException {
        StringBuilder text = new StringBuilder();
        try (CSVPrinter printer =
                new CSVPrinter(text, FORMAT.builder().setSkipHeaderRecord(false).get())) {
            for (Map.Entry<Key, String> fact : values.entrySet()) {
                List<String> cells = new ArrayList<>(fact.getKey().cells());
                cells.add(fact.getValue());
                printer.printRecord(cells);
            }
        }
        return text.toString();
    }

    void put(Key key, String value) {
        String before = values.put(key, value);
        if (before != null) {
            throw new IllegalStateException("two facts have one name: " + key + ": " + before + " and " + value);
        }
    }

    Map<Key, String> values() {
        return Collections.unmodifiableMap(values);
    }

    /** The same after changes: a fact with another value or a new one, or none for an empty value. */
    FactTable changedBy(FactTable changes) {
        FactTable table = new FactTable();
        table.values.putAll(values);
        changes.values.forEach((key, value) -> {
            if (value.isEmpty()) {
                table.values.remove(key);
            } else {
                table.values.put(key, value);
            }
        });
        return table;
    }

    /** One line for each fact of this table that the other lacks or tells otherwise, and for each that only it has. */
    List<String> differencesTo(FactTable other) {
        List<String> lines = new ArrayList<>();
        values.forEach((key, expected) -> {
            String actual = other.values.get(key);
            if (actual == null) {
                lines.add("missing: " + key + ": " + expected);
            } else if (!areSame(expected, actual)) {
                lines.add("different: " + key + ": expected " + expected + ", is " + actual);
            }
        });
        other.values.forEach((key, actual) -> {
            if (!values.containsKey(key)) {
                lines.add("additional: " + key + ": " + actual);
            }
        });
        return lines;
    }

    private static boolean areSame(String expected, String actual) {
        if (expected.equals(actual)) {
            return true;
        }
        Optional<Quantity<?>> wanted = quantity(expected);
        Optional<Quantity<?>> found = quantity(actual);
        return wanted.isPresent() && found.isPresent() && areSame(wanted.get(), found.get());
    }

    private static <Q extends Quantity<Q>> boolean areSame(Quantity<?> expected, Quantity<?> actual) {
        @SuppressWarnings("unchecked") // as it says of itself
        Class<Q> kind = (Class<Q>) UnitSymbol.of(expected.getUnit()).kind();
        if (!UnitSymbol.of(actual.getUnit()).kind().equals(kind)) {
            return false;
        }
        double wanted = si(kind, expected);
        double found = si(kind, actual);
        return Math.abs(found - wanted) <= ACCURACY * (wanted == 0 ? 1 : Math.abs(wanted));
    }

    @SuppressWarnings("unchecked") // the caller has compared the kinds
    private static <Q extends Quantity<Q>> double si(Class<Q> kind, Quantity<?> quantity) {
        return Amounts.si(kind, (Quantity<Q>) quantity);
    }

    /** Nothing for what isn't a quantity: a name, a date, a word. */
    static Optional<Quantity<?>> quantity(String text) {
        try {
            return Optional.of(Amounts.parseAny(text));
        } catch (InvalidInputException e) {
            return Optional.empty();
        }
    }
}
