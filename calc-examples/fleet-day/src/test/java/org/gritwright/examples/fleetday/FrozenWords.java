package org.gritwright.examples.fleetday;

import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.Pattern;

/** What the first version of the documents says in prose, as names and amounts that no change of a sentence moves. */
final class FrozenWords {
    private static final Map<String, String> COMPONENTS = Map.of(
            "rounding of the scale", "scale rounding",
            "count of revolutions", "count",
            "resolution of scale and count", "resolution",
            "coarser scale and count", "coarser resolution",
            "scatter of the catches", "scatter",
            "scatter of catches, from experience", "scatter from experience",
            "start-up transient", "transient");
    private static final String SPAN = "span of scale ";

    private static final Map<String, String> UNKNOWN = Map.of(
            "the uncertainty of the count", "count",
            "the uncertainty of the run time", "run time",
            "how sure the count is", "count",
            "how sure the run time is", "run time");
    private static final String ACCURACY = "the accuracy of scale ";

    private static final Pattern SLIP = Pattern.compile(".*\\(([^()]*)\\)");
    private static final Pattern NUMBER_AND_WORD = Pattern.compile("\\d+(?:\\.\\d+)? [^\\s:,;]+");

    private FrozenWords() {}

    /** A component of a budget by our own name. */
    static String component(String name) {
        return name.startsWith(SPAN) ? name : known(COMPONENTS, name);
    }

    /** The words behind a finding, as one fact or more. */
    static Map<String, String> argument(String name, String value) {
        return switch (name) {
            case "unknown" ->
                Map.of(name, value.startsWith(ACCURACY) ? value.replace(ACCURACY, "scale ") : known(UNKNOWN, value));
            case "slips" -> slips(value);
            default -> Map.of(name, value);
        };
    }

    /** For each slip of the pen that would explain a number, what was meant. */
    private static Map<String, String> slips(String text) {
        Map<String, String> slips = new TreeMap<>();
        for (String slip : text.split("; ", -1)) {
            var amount = SLIP.matcher(slip);
            slips.put("slip " + (slips.size() + 1), amount.matches() ? amount.group(1) : slip);
        }
        return slips;
    }

    /** The quantities that a refusal names. */
    static List<String> amounts(String refusal) {
        return NUMBER_AND_WORD
                .matcher(refusal)
                .results()
                .map(found -> found.group())
                .filter(text -> FactTable.quantity(text).isPresent())
                .toList();
    }

    private static String known(Map<String, String> names, String text) {
        String name = names.get(text);
        if (name == null) {
            throw new IllegalArgumentException("not known: " + text);
        }
        return name;
    }
}
