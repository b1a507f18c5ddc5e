package org.gritwright.units;

import java.util.List;
import java.util.Map;

/** Writes our symbols in another system's notation, so that its converter can be asked about the same units. */
final class OracleUnits {

    /** A pair of units that the other system knows too. */
    record Pair(UnitPairs.Pair ours, String from, String to) {}

    private OracleUnits() {}

    /**
     * All pairs of different units that another system has names for.
     *
     * @param names its names by our symbols, for what stands before and after a slash
     * @param slash what it writes for our slash
     */
    static List<Pair> known(Map<String, String> names, String slash) {
        return UnitPairs.ofDifferentUnits().stream()
                .map(pair -> new Pair(
                        pair,
                        translate(pair.from().symbol(), names, slash),
                        translate(pair.to().symbol(), names, slash)))
                .filter(pair -> pair.from() != null && pair.to() != null)
                .toList();
    }

    private static String translate(String symbol, Map<String, String> names, String slash) {
        String[] parts = symbol.split("/", 2);
        String above = names.get(parts[0]);
        String below = parts.length == 1 ? "" : names.get(parts[1]);
        return above == null || below == null ? null : below.isEmpty() ? above : above + slash + below;
    }
}
