package org.gritwright.core.finding;

import java.io.Serializable;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javax.measure.Quantity;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.check.Require;

/**
 * Something the mathematics noticed that a person should know: a stable code, the arguments behind it, and an English
 * sentence made from them.
 *
 * <p>A finding is data in a result, never an exception and never a line in a log. Immutable, thread-safe, a value.
 *
 * @param code what was noticed
 * @param arguments what it speaks of, by the names that the code declares; numbers exact and with their units
 */
public record Finding(FindingCode code, Map<String, Argument> arguments) implements Serializable {
    static final Pattern PLACE = Pattern.compile("\\{(\\w+)}");

    /**
     * Copies the map, in the order of its names.
     *
     * @throws InvalidInputException if the arguments aren't those that the code declares, each of its kind
     */
    public Finding {
        Require.given(Finding.class, code, arguments);
        arguments = Collections.unmodifiableMap(new TreeMap<>(arguments));
        if (!fill(code.slots(), arguments)) {
            throw new InvalidInputException(
                    "arguments of " + code.id(), code.slots().toString(), arguments.toString());
        }
    }

    private static boolean fill(List<Slot> slots, Map<String, Argument> arguments) {
        return arguments.size() == slots.size()
                && slots.stream()
                        .allMatch(slot -> Optional.ofNullable(arguments.get(slot.name()))
                                .filter(slot::accepts)
                                .isPresent());
    }

    /**
     * A finding that needs no arguments.
     *
     * @param code what was noticed
     * @return the finding
     * @throws InvalidInputException if the code declares arguments
     */
    public static Finding of(FindingCode code) {
        return new Finding(code, Map.of());
    }

    /**
     * A finding.
     *
     * @param code what was noticed
     * @param arguments what it speaks of
     * @return the finding
     * @throws InvalidInputException if the arguments aren't those that the code declares, each of its kind
     */
    public static Finding of(FindingCode code, Map<String, Argument> arguments) {
        return new Finding(code, arguments);
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
     * One of its numbers.
     *
     * @param name the argument's name
     * @return the number, exact
     * @throws InvalidInputException if there is no number of that name
     */
    public Quantity<?> number(String name) {
        if (arguments.get(name) instanceof Argument.Amount amount) {
            return amount.quantity();
        }
        throw new InvalidInputException("number of " + code.id(), "one of its arguments", name);
    }

    /**
     * The English sentence, numbers rounded to four significant digits.
     *
     * @return the sentence
     */
    public String sentence() {
        // In one pass: a scale that is called "{reading}" stays what it is.
        return PLACE.matcher(code.template())
                .replaceAll(place ->
                        Matcher.quoteReplacement(argument(place.group(1)).words()));
    }

    private Argument argument(String name) {
        return Objects.requireNonNull(arguments.get(name), name);
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
