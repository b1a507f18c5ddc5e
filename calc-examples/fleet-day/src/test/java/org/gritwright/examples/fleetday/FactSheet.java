package org.gritwright.examples.fleetday;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.Collectors;
import javax.measure.Quantity;
import org.gritwright.units.Amounts;

/** Writes facts about one thing into a table. */
final class FactSheet {
    private final FactTable table;
    private final FactTable.Key about;

    private FactSheet(FactTable table, FactTable.Key about) {
        this.table = table;
        this.about = about;
    }

    static FactSheet of(FactTable table, String truck) {
        return new FactSheet(table, new FactTable.Key(truck, "", "", "", "", ""));
    }

    /** The names of the facts begin like this. */
    FactSheet part(String name) {
        return new FactSheet(
                table,
                new FactTable.Key(
                        about.truck(),
                        about.what() + name + "/",
                        about.material(),
                        about.opening(),
                        about.at(),
                        about.index()));
    }

    FactSheet of(String material, String opening) {
        return new FactSheet(
                table, new FactTable.Key(about.truck(), about.what(), material, opening, about.at(), about.index()));
    }

    FactSheet at(String time) {
        return new FactSheet(
                table,
                new FactTable.Key(about.truck(), about.what(), about.material(), about.opening(), time, about.index()));
    }

    /** One of several, from 1. */
    FactSheet number(int index) {
        return new FactSheet(
                table,
                new FactTable.Key(
                        about.truck(),
                        about.what(),
                        about.material(),
                        about.opening(),
                        about.at(),
                        String.valueOf(index)));
    }

    void put(String what, String value) {
        table.put(
                new FactTable.Key(
                        about.truck(),
                        about.what() + what,
                        about.material(),
                        about.opening(),
                        about.at(),
                        about.index()),
                value);
    }

    void put(String what, Quantity<?> value) {
        put(what, Amounts.format(value));
    }

    void put(String what, Enum<?> value) {
        put(what, word(value));
    }

    void put(String what, int value) {
        put(what, String.valueOf(value));
    }

    void put(String what, Optional<? extends Quantity<?>> value) {
        value.ifPresent(quantity -> put(what, quantity));
    }

    static String word(Enum<?> value) {
        return value.name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    /**
     * A finding.
     *
     * @param code what was noticed
     * @param arguments the numbers and words behind it, by our names
     */
    record FindingFact(String code, SortedMap<String, String> arguments) {
        static FindingFact of(String code, Map<String, String> numbers, Map<String, String> words) {
            SortedMap<String, String> arguments = new TreeMap<>(numbers);
            words.forEach((name, value) -> arguments.putAll(FrozenWords.argument(name, value)));
            return new FindingFact(code, arguments);
        }
    }

    /** In which order findings stand is layout: those of one code are numbered by what they say. */
    void putFindings(List<FindingFact> findings) {
        Map<String, List<FindingFact>> byCode =
                findings.stream().collect(Collectors.groupingBy(FindingFact::code, TreeMap::new, Collectors.toList()));
        byCode.forEach((code, alike) -> {
            List<FindingFact> sorted = alike.stream()
                    .sorted((a, b) ->
                            a.arguments().toString().compareTo(b.arguments().toString()))
                    .toList();
            put("finding/" + code, alike.size());
            for (int i = 0; i < sorted.size(); i++) {
                FactSheet one = number(i + 1).part("finding").part(code);
                sorted.get(i).arguments().forEach(one::put);
            }
        });
    }
}
