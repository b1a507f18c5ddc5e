package org.gritwright.examples.fleetmemory;

import java.util.Comparator;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.gritwright.units.UnitSymbol;

/**
 * What a line's end must not break: a date, a truck's id, a number with its unit. The style sheet keeps it together, so that its text stays as it
 * is typed, with common blanks and hyphens, and whoever searches for it or copies it gets it.
 */
final class Wholes {
    /** A longer id doesn't fit beside others on a small screen: it has to break. */
    private static final String NO_LONGER = "(?![\\p{L}\\p{N}/-]{17})";

    private static final String START = "(?<![\\p{L}\\p{N}./&#-])";
    private static final String END = "(?![\\p{L}\\p{N}/])";
    private static final String NUMBER = "[−+±-]?[0-9]+(?:[.,][0-9]+)*";

    /** As those of tables and the library are: "7.1 %", "± 4 %", "7.3 ± 0.7 %". */
    private static final String QUANTITY = "(?:" + NUMBER + " )?(?:± )?" + NUMBER + " (?:" + units() + ")" + END;

    private static final String DAY_AND_TIME =
            "[0-9]{4}-[0-9]{2}-[0-9]{2} [0-9]{2}:[0-9]{2}(?::[0-9]{2})?(?: \\(UTC(?:[+−][0-9:]+)?\\))?";

    /** Words with a digit that hyphens or slashes join: dates, ids of trucks and tickets, names of seasons. */
    private static final String NAME =
            NO_LONGER + "(?=[\\p{L}/-]*[0-9])[\\p{L}\\p{N}]+(?:[-/][\\p{L}\\p{N}]+)+" + "(?![\\p{L}\\p{N}/-])";

    private static final Pattern WHOLE =
            Pattern.compile(START + "(?:" + QUANTITY + "|" + DAY_AND_TIME + "|" + NAME + ")");

    /** A picture, a tag, or words between tags. */
    private static final Pattern PIECE = Pattern.compile("(?s)<svg\\b.*?</svg>|<[^>]*>|[^<]+");

    private Wholes() {}

    private static String units() {
        return UnitSymbol.all().stream()
                .map(UnitSymbol::symbol)
                .filter(symbol -> !symbol.isEmpty())
                .sorted(Comparator.comparing(String::length).reversed().thenComparing(Comparator.naturalOrder()))
                .map(Pattern::quote)
                .collect(Collectors.joining("|"));
    }

    /** A page of which each value was escaped, with a mark around all that is to stay together. */
    static String kept(String page) {
        int body = page.indexOf("<body>");
        return page.substring(0, body)
                + PIECE.matcher(page.substring(body))
                        .replaceAll(piece -> Matcher.quoteReplacement(
                                piece.group().startsWith("<") ? piece.group() : marked(piece.group())));
    }

    /** How many letters of a text can't be told apart by a line's end: what stays together, or its longest word. */
    static int longest(String text) {
        String joined =
                WHOLE.matcher(text).replaceAll(whole -> "x".repeat(whole.group().length()));
        return Stream.of(joined.split("\\s+")).mapToInt(String::length).max().orElse(0);
    }

    private static String marked(String words) {
        return WHOLE.matcher(words).replaceAll("<span class=\"whole\">$0</span>");
    }
}
