package org.gritwright.units;

import java.util.Objects;

/**
 * The one exception for input that can't be used: it names the field, the value with its unit, and what is accepted.
 *
 * <p>Its message reads "gate opening must be within 0 in to 24 in: 250 in" and is fit to be shown to a user.
 */
public final class InvalidInputException extends IllegalArgumentException {
    private static final long serialVersionUID = 1L;

    private final String field;
    private final String accepted;
    private final String value;

    /**
     * Makes the exception with the message "{@code field} must be {@code accepted}: {@code value}".
     *
     * @param field what the value is, in the trade's words, for example "gate opening"
     * @param accepted what would be accepted, worded to follow "must be", for example "greater than 0 lb"
     * @param value the offending value with its unit
     */
    public InvalidInputException(String field, String accepted, String value) {
        super(field + " must be " + accepted + ": " + value);
        this.field = Objects.requireNonNull(field, "field");
        this.accepted = Objects.requireNonNull(accepted, "accepted");
        this.value = Objects.requireNonNull(value, "value");
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
