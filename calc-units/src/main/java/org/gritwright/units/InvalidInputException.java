package org.gritwright.units;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * The one exception for input that can't be used: it names the field, the value with its unit, and what is accepted.
 *
 * <p>Its message reads "gate opening must be within 0 in to 24 in: 250 in" and is fit to be shown to a user. For other
 * languages and for programs there are its {@link #code} and {@link #arguments}. Serializable.
 */
public final class InvalidInputException extends IllegalArgumentException {
    private static final long serialVersionUID = 2L;

    private final RefusalCode code;
    private final String field;
    private final String accepted;
    private final String value;
    private final @Nullable String words;

    @SuppressWarnings("serial") // List.copyOf makes serializable lists
    private final List<String> arguments;

    /**
     * Makes the exception with the message "{@code field} must be {@code accepted}: {@code value}" and the code
     * {@link RefusalCode#NOT_ACCEPTED}.
     *
     * @param field what the value is, in the trade's words, for example "gate opening"
     * @param accepted what would be accepted, worded to follow "must be", for example "greater than 0 lb"
     * @param value the offending value with its unit
     */
    public InvalidInputException(String field, String accepted, String value) {
        this(RefusalCode.NOT_ACCEPTED, field, accepted, value);
    }

    /**
     * Makes the exception with the message "{@code field} must be {@code accepted}: {@code value}".
     *
     * @param code why it is refused
     * @param field what the value is, in the trade's words, for example "gate opening"
     * @param accepted what would be accepted, worded to follow "must be", for example "within 0 in to 24 in"
     * @param value the offending value with its unit
     * @param arguments what the rule names, as the code says, for example "0 in" and "24 in"
     */
    public InvalidInputException(RefusalCode code, String field, String accepted, String value, String... arguments) {
        this(code, field, accepted, value, List.of(Objects.requireNonNull(arguments, "arguments")), null);
    }

    private InvalidInputException(
            RefusalCode code,
            String field,
            String accepted,
            String value,
            List<String> arguments,
            @Nullable String words) {
        super(words == null ? field + " must be " + accepted + ": " + value : words);
        this.words = words;
        this.code = Objects.requireNonNull(code, "code");
        this.field = Objects.requireNonNull(field, "field");
        this.accepted = Objects.requireNonNull(accepted, "accepted");
        this.value = Objects.requireNonNull(value, "value");
        this.arguments = arguments;
    }

    /**
     * The same refusal of what the caller knows by another name, without words of its own.
     *
     * @param field what the value is, in the trade's words
     * @return an exception with that field; rule, value, code, arguments and cause are kept
     */
    public InvalidInputException withField(String field) {
        return withCause(new InvalidInputException(code, field, accepted, value, arguments, null));
    }

    /**
     * The same refusal with a message of its own, where what may have been meant is easier said than a rule.
     *
     * @param words the message, a sentence that names the value
     * @return an exception with that message; field, rule, value, code, arguments and cause are kept
     */
    public InvalidInputException withWords(String words) {
        return withCause(new InvalidInputException(
                code, field, accepted, value, arguments, Objects.requireNonNull(words, "words")));
    }

    private InvalidInputException withCause(InvalidInputException same) {
        if (getCause() != null) {
            same.initCause(getCause());
        }
        return same;
    }

    /**
     * The refusal in words.
     *
     * @return "{@code field} must be {@code accepted}: {@code value}", or the words that it was given
     */
    @Override
    public String getMessage() {
        return Objects.requireNonNull(super.getMessage(), "message");
    }

    /**
     * The message that says it better than the rule.
     *
     * @return the words that were given; none if the message is made of field, rule and value
     */
    public Optional<String> words() {
        return Optional.ofNullable(words);
    }

    /**
     * Why the input was refused.
     *
     * @return the stable code
     */
    public RefusalCode code() {
        return code;
    }

    /**
     * What the rule names: limits, names, a position, as {@link RefusalCode} says.
     *
     * @return the arguments, unmodifiable
     */
    public List<String> arguments() {
        return arguments;
    }

    /**
     * What the value is.
     *
     * @return the field's name in the trade's words
     */
    public String field() {
        return field;
    }

    /**
     * What would have been accepted.
     *
     * @return the rule, worded to follow "must be"
     */
    public String accepted() {
        return accepted;
    }

    /**
     * The offending value.
     *
     * @return the value with its unit, as text
     */
    public String value() {
        return value;
    }
}
