package org.gritwright.units;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.Pattern;
import org.gritwright.units.check.Edits;

/**
 * What people write for a unit, or for the part of one above or below the line, and which symbols of the table it may
 * mean.
 *
 * <p>A word that is a unit means that unit and is never taken for a slip of the pen in another: "tonne" is as near to
 * "ton" as "tone" is, and 10 % heavier. Only a word that is no unit is compared letter by letter.
 */
final class UnitWords {

    /** A word in the plural, in the wrong case or with other separators is nearer than one with a wrong letter. */
    private static final int OTHER_FORM = 1;

    private static final int EDIT = 3;

    /** What the table doesn't read, since it reads few spellings, but what can mean one unit only. */
    private static final Map<String, String> MORE = Map.ofEntries(
            Map.entry("metric ton", "t"),
            Map.entry("US ton", "ton"),
            Map.entry("UK ton", "long ton"),
            Map.entry("feet", "ft"),
            Map.entry("gallon", "gal"),
            Map.entry("quart", "qt"),
            Map.entry("fluid ounce", "fl oz"),
            Map.entry("UK gal", "imp gal"),
            Map.entry("UK gallon", "imp gal"),
            Map.entry("ac", "acre"),
            Map.entry("percent", "%"));

    /** Units that the table doesn't have, though one wrong letter in a unit that it has would give them; folded. */
    private static final Set<String> FOREIGN = Set.of(
            "nmi", "kn", "kts", "knot", "pt", "pint", "st", "gr", "dr", "gi", "rd", "ch", "ozt", "lbf", "kgf", "cc",
            "hp", "hz", "pa", "hpa", "gpa", "mbar", "kbar", "psf", "ksi", "psia", "atm", "d", "day", "ukpt", "ukqt",
            "ukfloz", "imppt", "impqt", "impfloz");

    /** The table's metric units with any prefix and power: a wrong prefix is another magnitude. */
    private static final Pattern METRIC = Pattern.compile("(da|[pnµμucmdhkMGT])?(m|g|L|l|t|s)[23]?");

    private static final Map<String, String> AS_WRITTEN = asWritten();
    private static final Map<String, Set<String>> FOLDED = folded();

    private UnitWords() {}

    /** A unit's one part, or those above and below its line; "lb/lane/mi" has the parts of lb/lane-mi. */
    static List<String> parts(String spelling) {
        String[] parts = spelling.replace(" per ", "/").split("/", 2);
        return parts.length == 1
                ? List.of(spelling)
                : List.of(parts[0].strip(), parts[1].strip().replace('/', '-'));
    }

    /** The symbols that a part may mean, each with how far what was written is from what it is called. */
    static Map<String, Integer> meant(String part) {
        if (part.equals("T")) {
            // Some write the short ton this way, some the tonne.
            return distances(Set.of("ton", "t"), OTHER_FORM);
        }
        String plain = powersAsDigits(part);
        if (AS_WRITTEN.containsKey(part) || METRIC.matcher(plain).matches()) {
            String symbol = AS_WRITTEN.getOrDefault(part, AS_WRITTEN.get(plain));
            return symbol == null ? Map.of() : distances(Set.of(symbol), 0);
        }
        Set<String> known = known(fold(part));
        return known.isEmpty() && !isForeign(fold(part)) ? near(part) : distances(known, OTHER_FORM);
    }

    private static Map<String, Integer> distances(Set<String> symbols, int distance) {
        Map<String, Integer> distances = new TreeMap<>();
        symbols.forEach(symbol -> distances.put(symbol, distance));
        return distances;
    }

    private static Map<String, String> asWritten() {
        Map<String, String> words = new HashMap<>(MORE);
        for (UnitSymbol<?> row : SymbolTable.ROWS) {
            List<String> calls = new ArrayList<>(row.spellings());
            calls.add(row.symbol());
            calls.add(row.name());
            calls.add(row.name().replace("metre", "meter").replace("litre", "liter"));
            List<String> symbols = parts(row.symbol());
            for (String called : calls) {
                List<String> parts = parts(called);
                if (parts.size() != symbols.size()) {
                    // A unit in one word for a quotient, such as mph, or the other way about, such as psi.
                    words.put(called, row.symbol());
                } else {
                    for (int i = 0; i < parts.size(); i++) {
                        words.put(parts.get(i), symbols.get(i));
                    }
                }
            }
        }
        words.values().removeIf(String::isEmpty);
        return Map.copyOf(words);
    }

    private static Map<String, Set<String>> folded() {
        Map<String, Set<String>> words = new HashMap<>();
        AS_WRITTEN.forEach((word, symbol) ->
                words.computeIfAbsent(fold(word), none -> new TreeSet<>()).add(symbol));
        return Map.copyOf(words);
    }

    private static String powersAsDigits(String part) {
        return part.replace('²', '2').replace('³', '3').replace("^", "");
    }

    /** Without case and separators, and with powers as digits: "sq. ft" is ft2, "Lane mi" is lanemi. */
    private static String fold(String part) {
        return powersAsDigits(part)
                .toLowerCase(Locale.ROOT)
                .replaceAll("(?<before>^|[0-9 .-])(?:square|sq)[. ]*(?<unit>[a-z]+)", "${before}${unit}2")
                .replaceAll("(?<before>^|[0-9 .-])(?:cubic|cu)[. ]*(?<unit>[a-z]+)", "${before}${unit}3")
                .replaceAll("[ .-]", "");
    }

    /** The symbols of a folded word that is a unit, in singular or plural, or a power of one. */
    private static Set<String> known(String folded) {
        Set<String> symbols = FOLDED.get(folded);
        if (symbols != null) {
            return symbols;
        }
        int end = folded.length() - 1;
        if (folded.endsWith("2") || folded.endsWith("3")) {
            Set<String> powers = new TreeSet<>();
            for (String base : known(folded.substring(0, end))) {
                powers.addAll(FOLDED.getOrDefault(fold(base) + folded.charAt(end), Set.of()));
            }
            return powers;
        }
        if (folded.endsWith("s") && !METRIC.matcher(folded).matches()) {
            Set<String> singular = known(folded.substring(0, end));
            return singular.isEmpty() && folded.endsWith("es") ? known(folded.substring(0, end - 1)) : singular;
        }
        return Set.of();
    }

    /** Whether a folded word is a unit that the table doesn't have: a power or a multiple of one that it has, too. */
    private static boolean isForeign(String folded) {
        String base = folded.replaceAll("^[0-9]+|[23]$", "");
        String singular = folded.endsWith("s") ? folded.substring(0, folded.length() - 1) : folded;
        return FOREIGN.contains(folded)
                || FOREIGN.contains(singular)
                || METRIC.matcher(folded).matches()
                || (!base.equals(folded) && (!known(base).isEmpty() || isForeign(base)));
    }

    /** The symbols that are called something near, token by token. */
    private static Map<String, Integer> near(String part) {
        Map<String, Integer> near = new TreeMap<>();
        AS_WRITTEN.forEach((word, symbol) -> {
            int edits = edits(tokens(part), tokens(word));
            if (edits >= 0) {
                near.merge(symbol, edits * EDIT, Math::min);
            }
        });
        return near;
    }

    private static String[] tokens(String part) {
        return powersAsDigits(part).toLowerCase(Locale.ROOT).split("[ .-]+", -1);
    }

    /** How many letters differ; −1 for too many, or where a unit or a number stands for another. */
    private static int edits(String[] written, String[] word) {
        int edits = 0;
        for (int i = 0; i < written.length; i++) {
            int more = written.length == word.length ? edits(written[i], word[i]) : -1;
            if (more < 0) {
                return -1;
            }
            edits += more;
        }
        return edits;
    }

    private static int edits(String written, String word) {
        if (written.equals(word)) {
            return 0;
        }
        int longest = Math.max(written.length(), word.length());
        // Of a single letter, another one leaves nothing.
        int allowed = longest == 1 ? 0 : 1 + (longest - 1) / 5;
        boolean comparable = Math.abs(written.length() - word.length()) <= allowed
                && written.replaceAll("[^0-9]", "").equals(word.replaceAll("[^0-9]", ""))
                && known(written).isEmpty()
                && !isForeign(written);
        int edits = comparable ? Edits.between(written, word) : longest;
        return edits <= allowed ? edits : -1;
    }
}
