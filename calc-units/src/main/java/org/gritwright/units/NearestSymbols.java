package org.gritwright.units;

import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * What may have been meant by a unit that the symbol table doesn't have. A unit that was written is kept: where a part is
 * one, only symbols with that very part are near, and "kg/mi" is near to nothing. Each symbol comes with its name, which
 * says which ton or gallon it is.
 */
final class NearestSymbols {

    /** Longer than anything that a unit is called, so that a page of text costs nothing. */
    private static final int LONGEST = 60;

    private static final int SUGGESTIONS = 3;
    private static final int FAR = Integer.MAX_VALUE;

    /** Why a spelling is refused, in words and for programs. */
    record Hint(RefusalCode code, String words, List<String> arguments) {}

    private record Near(UnitSymbol<?> row, int distance) {}

    private NearestSymbols() {}

    /** What to write instead of a spelling that is no unit of a kind ({@code null}: no unit at all). */
    static Hint instead(@Nullable Class<?> kind, String spelling) {
        if (spelling.isEmpty()) {
            List<String> known = symbolsOf(kind);
            return new Hint(RefusalCode.MISSING_UNIT, "no unit; known: " + quoted(known), known);
        }
        List<UnitSymbol<?>> nearest = nearest(kind, spelling);
        String words = "";
        if (!nearest.isEmpty()) {
            words = nearest.stream()
                    .map(row -> "\"" + row.symbol() + "\" (" + row.name() + ")")
                    .collect(Collectors.joining(", ", "; nearest: ", ""));
        } else if (kind != null) {
            words = "; known: " + quoted(symbolsOf(kind));
        }
        SymbolTable.Entry<?> other = SymbolTable.bySpelling(spelling);
        if (other != null && kind != null) {
            String otherKind = UnitSymbol.kindName(other.row().kind());
            return new Hint(
                    RefusalCode.WRONG_KIND,
                    "\"" + spelling + "\" is a unit of " + otherKind + words,
                    List.of(UnitSymbol.kindName(kind)));
        }
        List<String> arguments = Stream.concat(
                        Stream.of(spelling), nearest.stream().map(UnitSymbol::symbol))
                .toList();
        return new Hint(RefusalCode.UNKNOWN_UNIT, "unknown unit" + words, arguments);
    }

    private static List<String> symbolsOf(@Nullable Class<?> kind) {
        return SymbolTable.ROWS.stream()
                .filter(row -> row.kind().equals(kind))
                .map(UnitSymbol::symbol)
                .filter(symbol -> !symbol.isEmpty())
                .toList();
    }

    private static String quoted(List<String> symbols) {
        return symbols.stream().map(symbol -> "\"" + symbol + "\"").collect(Collectors.joining(", "));
    }

    /** The symbols whose every part may have been meant by what stands in its place, nearest first. */
    private static List<UnitSymbol<?>> nearest(@Nullable Class<?> kind, String spelling) {
        if (spelling.length() > LONGEST) {
            return List.of();
        }
        List<Map<String, Integer>> meant =
                UnitWords.parts(spelling).stream().map(UnitWords::meant).toList();
        return SymbolTable.ROWS.stream()
                .filter(row -> kind == null || row.kind().equals(kind))
                .map(row -> new Near(row, distance(row, meant)))
                .filter(near -> near.distance() != FAR)
                .sorted(Comparator.comparingInt(Near::distance))
                .limit(SUGGESTIONS)
                .<UnitSymbol<?>>map(Near::row)
                .toList();
    }

    private static int distance(UnitSymbol<?> row, List<Map<String, Integer>> meant) {
        if (meant.size() == 1) {
            // A unit in one word, such as mph, may have a symbol in two parts.
            return meant.get(0).getOrDefault(row.symbol(), FAR);
        }
        List<String> symbols = UnitWords.parts(row.symbol());
        if (symbols.size() != meant.size()) {
            return FAR;
        }
        Integer above = meant.get(0).get(symbols.get(0));
        Integer below = meant.get(1).get(symbols.get(1));
        return above == null || below == null ? FAR : above + below;
    }
}
