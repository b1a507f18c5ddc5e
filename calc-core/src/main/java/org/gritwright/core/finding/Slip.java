package org.gritwright.core.finding;

import java.util.List;
import java.util.Objects;
import java.util.stream.Collectors;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.check.Require;

/**
 * A single slip of input that would explain a result: what was written down wrongly, how, and what it would be instead.
 * Immutable, thread-safe, a value.
 *
 * @param part what was written down, for example {@link Term#GATE_SETTING}
 * @param mistake how it would be wrong
 * @param factor by how much it would be too large or too small, greater than 1; 1 where a digit is wrong
 * @param values what it would be instead, one or more; several where more than one digit could be the wrong one
 */
public record Slip(Term part, Mistake mistake, Quantity<Dimensionless> factor, List<Quantity<?>> values)
        implements Argument {
    /** No factor. */
    private static final Quantity<Dimensionless> NONE = Amounts.of(1, SpreadingUnits.ONE);

    /** How a number can be written down wrongly. */
    public enum Mistake {
        /** Too small by a factor, as by a decimal point or by another unit. */
        TOO_SMALL("{part} × {factor} ({values})"),
        /** Too large by a factor. */
        TOO_LARGE("{part} ÷ {factor} ({values})"),
        /** With a digit that doesn't belong there. */
        DIGIT_TOO_MANY("a digit too many in the {part} ({values})"),
        /** Without one of its digits. */
        DIGIT_DROPPED("a dropped digit in the {part} ({values})");

        private final String template;

        Mistake(String template) {
            this.template = template;
        }

        /**
         * The English with {@code {part}}, {@code {factor}} and {@code {values}} where those of the slip go.
         *
         * @return the template
         */
        public String template() {
            return template;
        }

        private boolean hasFactor() {
            return this == TOO_SMALL || this == TOO_LARGE;
        }
    }

    /**
     * Checks the factor and copies the list.
     *
     * @throws InvalidInputException if the factor doesn't go with the mistake or there is no value
     */
    public Slip {
        Require.given(Slip.class, part, mistake, factor, values);
        double times = Amounts.si(Dimensionless.class, factor);
        if (mistake.hasFactor() ? !(times > 1) : times != 1) {
            throw new InvalidInputException(
                    "factor of a slip", mistake.hasFactor() ? "greater than 1" : "1", Amounts.format(factor));
        }
        values = List.copyOf(values);
        Require.that(!values.isEmpty(), "values of a slip", "one or more", "none");
        values.forEach(
                value -> Require.finite("value of a slip", value.getValue().doubleValue()));
    }

    /**
     * A number that would be wrong by a factor.
     *
     * @param part what was written down
     * @param mistake whether it would be too small or too large
     * @param factor by how much, greater than 1
     * @param value what it would be instead
     * @return the slip
     * @throws InvalidInputException if the factor isn't greater than 1 or the mistake has none
     */
    public static Slip byFactor(Term part, Mistake mistake, double factor, Quantity<?> value) {
        return new Slip(
                part, mistake, Amounts.of(factor, SpreadingUnits.ONE), List.of(Objects.requireNonNull(value, "value")));
    }

    /**
     * A number in which a digit would be wrong.
     *
     * @param part what was written down
     * @param mistake whether it would be too many or dropped
     * @param values what it would be instead
     * @return the slip
     * @throws InvalidInputException if there is no value or the mistake is one by a factor
     */
    public static Slip ofDigit(Term part, Mistake mistake, List<Quantity<?>> values) {
        return new Slip(part, mistake, NONE, values);
    }

    @Override
    public String words() {
        // Rounded, numbers with different digits could look alike.
        String instead = values.stream()
                .map(value -> mistake.hasFactor() ? Argument.number(value).words() : Amounts.format(value))
                .collect(Collectors.joining(" or "));
        return mistake.template
                .replace("{part}", part.words())
                .replace("{factor}", Argument.number(factor).words())
                .replace("{values}", instead);
    }

    /**
     * The same as in a sentence.
     *
     * @return for example "gate setting ÷ 10 (2 in)"
     */
    @Override
    public String toString() {
        return words();
    }
}
