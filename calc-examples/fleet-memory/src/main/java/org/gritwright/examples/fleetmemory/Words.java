package org.gritwright.examples.fleetmemory;

import java.time.LocalDate;
import java.util.Locale;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.units.Amounts;

/** Small matters of English. */
final class Words {
    private static final double COVERAGE = 0.95;

    /** What rounds to nothing is said to be less than something. */
    private static final double LEAST = 0.0005;

    private static final Pattern HYPHEN = Pattern.compile("(?<![^ (])-(?=[0-9])");

    /** As documents have it; not within a longer word, or in quotes, which show what somebody typed. */
    private static final Pattern TIME =
            Pattern.compile("(?<![\\p{L}\\p{N}\"“/:.-])([0-9]{4}-[0-9]{2}-[0-9]{2})T([0-9]{2}:[0-9]{2}(?::[0-9]{2})?)"
                    + "(?:\\.[0-9]+)?(?:Z|([+-])([0-9]{2}):([0-9]{2}))(?![\\p{L}\\p{N}])");

    private Words() {}

    /** Times for people, where documents have those of ISO 8601: "2025-10-14 13:24 (UTC−6)" for "2025-10-14T13:24-06:00". */
    static String times(String text) {
        return TIME.matcher(text)
                .replaceAll(time -> time.group(1) + " " + time.group(2) + " (UTC" + offset(time) + ")");
    }

    private static String offset(MatchResult time) {
        String sign = time.group(3);
        if (sign == null) {
            return "";
        }
        String minutes = time.group(5).equals("00") ? "" : ":" + time.group(5);
        String hours = String.valueOf(Integer.parseInt(time.group(4)));
        return hours.equals("0") && minutes.isEmpty() ? "" : (sign.equals("-") ? "−" : "+") + hours + minutes;
    }

    /** For example "1 truck", "16 trucks". */
    static String count(long number, String noun) {
        return number + " " + noun + (number == 1 ? "" : "s");
    }

    /** The same of nouns that don't end in s. */
    static String count(long number, String noun, String nouns) {
        return number + " " + (number == 1 ? noun : nouns);
    }

    /** By when something is to be done, for a person who may not look at the calendar: "by 2026-02-12", "overdue since 2026-02-02". */
    static String due(LocalDate by, LocalDate on) {
        return (by.isBefore(on) ? "overdue since " : "by ") + by;
    }

    /** With a capital letter in front. */
    static String capital(String words) {
        return words.substring(0, 1).toUpperCase(Locale.ROOT) + words.substring(1);
    }

    /** Sentences of the library write -3 %, tables −3 %: on one page both have the minus sign. */
    static String minus(String sentence) {
        return HYPHEN.matcher(sentence).replaceAll("−");
    }

    /** For example "−1.2 %". */
    static String percent(double ratio) {
        String tenths = String.format(Locale.ROOT, "%.1f", 100 * ratio);
        return (tenths.equals("-0.0") ? "0.0" : tenths.replace('-', '−')) + " %";
    }

    /** The same with the sign of what is more, for example "+1.2 %". */
    static String signed(double ratio) {
        String text = percent(ratio);
        return text.startsWith("−") || text.equals("0.0 %") ? text : "+" + text;
    }

    /** An error that can be anything counts as all of the mass. */
    static String expected(Quantity<Dimensionless> error) {
        double ratio = Amounts.si(Dimensionless.class, error);
        return ratio < 1 ? percent(ratio) : "unknown, counted as 100 %";
    }

    /** With the interval that holds it with 95 %, if it is known, for example "0.4 % ± 1.1 %". */
    static String error(Measured<Dimensionless> error) {
        String value = percent(Amounts.si(Dimensionless.class, error.value()));
        return error.expandedUncertainty(COVERAGE)
                .map(expanded -> Amounts.si(Dimensionless.class, expanded))
                .map(half -> value + " ± " + (half > 0 && half < LEAST ? "less than 0.1 %" : percent(half)))
                .orElse(value);
    }
}
