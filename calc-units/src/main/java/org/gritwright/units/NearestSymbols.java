package org.gritwright.units;

import java.util.Comparator;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** What may have been meant by a unit that the symbol table doesn't have. */
final class NearestSymbols {

    /** A letter in the wrong case is a smaller slip than another letter. */
    private static final int WRONG_CASE = 1;

    private static final int EDIT = 3;

    /** Farther away than this is not what was meant. */
    private static final int NEAR = 3 * EDIT;

    private static final int SUGGESTIONS = 3;

    private record Near(String symbol, int distance) {}

    private NearestSymbols() {}

    /** What to write instead of a spelling that is no unit of a kind ({@code null}: no unit at all). */
    static String instead(Class<?> kind, String spelling) {
        if (spelling.isEmpty()) {
            return "no unit; known: " + quoted(symbolsOf(kind));
        }
        List<String> nearest = nearest(kind, spelling);
        String hint = "";
        if (!nearest.isEmpty()) {
            hint = "; nearest: " + quoted(nearest.stream());
        } else if (kind != null) {
            hint = "; known: " + quoted(symbolsOf(kind));
        }
        SymbolTable.Entry<?> other = SymbolTable.bySpelling(spelling);
        return other == null
                ? "unknown unit" + hint
                : "\"" + spelling + "\" is a unit of "
                        + UnitSymbol.kindName(other.row().kind()) + hint;
    }

    private static Stream<String> symbolsOf(Class<?> kind) {
        return SymbolTable.ROWS.stream()
                .filter(row -> row.kind().equals(kind))
                .map(UnitSymbol::symbol)
                .filter(symbol -> !symbol.isEmpty());
    }

    private static String quoted(Stream<String> symbols) {
        return symbols.map(symbol -> "\"" + symbol + "\"").collect(Collectors.joining(", "));
    }

    private static List<String> nearest(Class<?> kind, String spelling) {
        return SymbolTable.ROWS.stream()
                .filter(row -> kind == null || row.kind().equals(kind))
                .filter(row -> !row.symbol().isEmpty())
                .map(row -> new Near(row.symbol(), distance(spelling, row)))
                .filter(near -> near.distance() <= NEAR)
                .sorted(Comparator.comparingInt(Near::distance).thenComparing(Near::symbol))
                .map(Near::symbol)
                .limit(SUGGESTIONS)
                .toList();
    }

    /** The distance to what a unit is called that is nearest: symbol, another spelling, or full name. */
    private static int distance(String spelling, UnitSymbol<?> row) {
        return Stream.concat(Stream.of(row.symbol(), row.name()), row.spellings().stream())
                .filter(called -> mayBeNear(called, spelling))
                .mapToInt(called -> distance(called, spelling))
                .min()
                .orElse(Integer.MAX_VALUE);
    }

    /** Leaves out what is too long or too short to be near, so that a page of text costs nothing. */
    private static boolean mayBeNear(String called, String spelling) {
        return Math.abs(called.length() - spelling.length()) * EDIT <= NEAR;
    }

    /** Farther than any limit when less than half is the same. */
    private static int distance(String a, String b) {
        int distance = editDistance(a, b);
        return 2 * distance > EDIT * Math.max(a.length(), b.length()) ? Integer.MAX_VALUE : distance;
    }

    /** Levenshtein distance, with a smaller cost for a letter in the wrong case. */
    private static int editDistance(String a, String b) {
        int[] previous = new int[b.length() + 1];
        for (int j = 0; j <= b.length(); j++) {
            previous[j] = j * EDIT;
        }
        for (int i = 1; i <= a.length(); i++) {
            int[] current = new int[b.length() + 1];
            current[0] = i * EDIT;
            for (int j = 1; j <= b.length(); j++) {
                int changed = previous[j - 1] + change(a.charAt(i - 1), b.charAt(j - 1));
                current[j] = Math.min(changed, Math.min(previous[j], current[j - 1]) + EDIT);
            }
            previous = current;
        }
        return previous[b.length()];
    }

    private static int change(char a, char b) {
        if (a == b) {
            return 0;
        }
        return Character.toLowerCase(a) == Character.toLowerCase(b) ? WRONG_CASE : EDIT;
    }
}
