package org.gritwright.core.finding;

import java.time.OffsetDateTime;
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
 * @param values what it would be instead; several where more than one digit could be the wrong one, none where the mistake
 *     says it
 * @param of the container or the parameter that it concerns; blank for none
 * @param catches the times of the catches that it concerns; none where it concerns the truck
 */
public record Slip(
        Term part,
        Mistake mistake,
        Quantity<Dimensionless> factor,
        List<Quantity<?>> values,
        String of,
        List<OffsetDateTime> catches)
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
        DIGIT_DROPPED("a dropped digit in the {part} ({values})"),
        /** With two neighboring digits exchanged. */
        DIGITS_SWAPPED("two digits in the {part} swapped ({values})"),
        /** Read in kilograms and written down in pounds. */
        KILOGRAMS_AS_POUNDS("{part} read in kilograms and written in pounds"),
        /** Read in liters and written down in US gallons. */
        LITERS_AS_GALLONS("{part} read in liters and written in gallons"),
        /** Read in US gallons and written down in liters. */
        GALLONS_AS_LITERS("{part} read in gallons and written in liters"),
        /** Read in imperial gallons and written down in US gallons. */
        IMPERIAL_AS_US_GALLONS("{part} read in imperial gallons and written in US gallons"),
        /** No slip: air in the line where the rest of the liquid should have been. */
        AIR_IN_LINE("air in the line instead of a part of the {part}"),
        /** Not written down at all, or as what has no effect. */
        FORGOTTEN("{part} forgotten ({values})"),
        /** With one turn of the shaft more than belongs to the catch. */
        TURN_TOO_MANY("one turn too many in the {part}"),
        /** Counted on from the catch before. */
        NOT_RESET("counter not reset: the {part} holds that of the catch before ({values})"),
        /** The seconds of the run time in its place. */
        RUN_TIME_INSTEAD("the run time written as the {part}"),
        /** Another value than the one that is listed for the truck. */
        NOT_AS_LISTED("{part} not as listed ({values})"),
        /** Written down for one truck, and that one's for this. */
        SWAPPED_WITH_TRUCK("{part} swapped with that of truck {of}"),
        /** Made with another material, or at another gate opening, than was written down. */
        MADE_ELSEWHERE("{part} made with another material or at another gate opening");

        private final String template;
        private final boolean hasValues;

        Mistake(String template) {
            this.template = template;
            this.hasValues = template.contains("{values}");
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
        Require.given(Slip.class, part, mistake, factor, values, of, catches);
        double times = Amounts.si(Dimensionless.class, factor);
        if (mistake.hasFactor() ? !(times > 1) : times != 1) {
            throw new InvalidInputException(
                    "factor of a slip", mistake.hasFactor() ? "greater than 1" : "1", Amounts.format(factor));
        }
        values = List.copyOf(values);
        catches = List.copyOf(catches);
        Require.that(values.isEmpty() != mistake.hasValues, "values of a slip", "one or more", "none");
        for (Quantity<?> value : values) {
            Require.finite("value of a slip", value.getValue().doubleValue());
        }
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
                part,
                mistake,
                Amounts.of(factor, SpreadingUnits.ONE),
                List.of(Objects.requireNonNull(value, "value")),
                "",
                List.of());
    }

    /**
     * A slip that is not one by a factor.
     *
     * @param part what was written down
     * @param mistake how it would be wrong
     * @param values what it would be instead
     * @return the slip
     * @throws InvalidInputException if values are missing that the mistake needs, or the mistake is one by a factor
     */
    public static Slip of(Term part, Mistake mistake, List<Quantity<?>> values) {
        return new Slip(part, mistake, NONE, values, "", List.of());
    }

    /**
     * The same slip of one thing among several.
     *
     * @param name the container or the parameter
     * @return the slip
     */
    public Slip of(String name) {
        return new Slip(part, mistake, factor, values, name, catches);
    }

    /**
     * The same slip in catches.
     *
     * @param times their times
     * @return the slip
     */
    public Slip in(List<OffsetDateTime> times) {
        return new Slip(part, mistake, factor, values, of, times);
    }

    @Override
    public String words() {
        // Rounded, numbers with different digits could look alike.
        String instead = values.stream()
                .map(value -> mistake.hasFactor() ? Argument.number(value).words() : Amounts.format(value))
                .collect(Collectors.joining(" or "));
        return mistake.template
                        .replace("{part}", part.words())
                        .replace(Term.SUBJECT, of)
                        .replace("{factor}", Argument.number(factor).words())
                        .replace("{values}", instead)
                + inCatches();
    }

    private String inCatches() {
        return switch (catches.size()) {
            case 0 -> "";
            case 1 -> ", catch of " + Argument.time(catches.get(0)).words();
            default -> ", in " + catches.size() + " catches";
        };
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
