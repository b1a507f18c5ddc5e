package org.gritwright.core.finding;

import java.util.Collections;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import javax.measure.Quantity;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.Rounded;

/**
 * Something the mathematics noticed that a person should know: a stable code, the numbers and words behind it, and an
 * English sentence made from them.
 *
 * <p>A finding is data in a result, never an exception and never a line in a log. Immutable, thread-safe, a value.
 *
 * @param code what was noticed
 * @param numbers the numbers behind it, by the names that the code's template uses, exact and with their units
 * @param words the words behind it, by name
 */
public record Finding(FindingCode code, Map<String, Quantity<?>> numbers, Map<String, String> words) {
    private static final int DIGITS_IN_SENTENCE = 4;

    private static final Pattern PLACE = Pattern.compile("\\{(\\w+)}");

    /**
     * Copies both maps, in the order of their names.
     *
     * @throws InvalidInputException if the template names a number or word that isn't given
     */
    public Finding {
        Objects.requireNonNull(code, "code");
        numbers = Collections.unmodifiableMap(new TreeMap<>(numbers));
        words = Collections.unmodifiableMap(new TreeMap<>(words));
        Set<String> given = new TreeSet<>(numbers.keySet());
        given.addAll(words.keySet());
        Set<String> needed = PLACE.matcher(code.template())
                .results()
                .map(place -> place.group(1))
                .collect(Collectors.toSet());
        if (!given.containsAll(needed)) {
            throw new InvalidInputException(
                    "numbers and words of " + code.id(), "all of " + new TreeSet<>(needed), given.toString());
        }
    }

    /**
     * A finding without numbers or words.
     *
     * @param code what was noticed
     * @return the finding
     */
    public static Finding of(FindingCode code) {
        return new Finding(code, Map.of(), Map.of());
    }

    /**
     * A finding with numbers.
     *
     * @param code what was noticed
     * @param numbers the numbers behind it
     * @return the finding
     */
    public static Finding of(FindingCode code, Map<String, Quantity<?>> numbers) {
        return new Finding(code, numbers, Map.of());
    }

    /**
     * How much it matters.
     *
     * @return the code's severity
     */
    public Severity severity() {
        return code.severity();
    }

    /**
     * The English sentence, numbers rounded to four significant digits.
     *
     * @return the sentence
     */
    public String sentence() {
        // In one pass: a scale that is called "{reading}" stays what it is.
        return PLACE.matcher(code.template()).replaceAll(place -> Matcher.quoteReplacement(text(place.group(1))));
    }

    private String text(String name) {
        Quantity<?> number = numbers.get(name);
        return number == null ? words.get(name) : Rounded.text(number, DIGITS_IN_SENTENCE);
    }

    /**
     * Code and sentence, for logs and debuggers.
     *
     * @return for example "single-catch: One catch only: ..."
     */
    @Override
    public String toString() {
        return code.id() + ": " + sentence();
    }
}
