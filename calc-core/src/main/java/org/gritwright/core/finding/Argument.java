package org.gritwright.core.finding;

import java.io.Serializable;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.stream.Collectors;
import javax.measure.Quantity;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.Rounded;
import org.gritwright.units.check.Require;

/**
 * One thing that a finding speaks of, as data: a number, a date, a name, a term, or a small record of those. An embedder
 * that writes its own sentences needs nothing else.
 *
 * <p>The kinds are a closed set of plain values, so that a finding is compared, stored and sent without knowing what
 * raised it. Which names and kinds a finding has is declared by its {@link FindingCode}. Immutable, thread-safe, a value.
 */
public sealed interface Argument extends Serializable
        permits Argument.Amount,
                Argument.Date,
                Argument.Moment,
                Argument.Name,
                Term,
                Argument.Unknown,
                Slip,
                Argument.Refusal,
                Argument.Several,
                Argument.Prose {

    /** What an argument can be; a list has the kind of its items. */
    enum Kind {
        /** A quantity. */
        NUMBER(Amount.class),
        /** A day. */
        DATE(Date.class),
        /** A time of day on a day. */
        TIME(Moment.class),
        /** What people call something. */
        NAME(Name.class),
        /** One word of a fixed choice. */
        TERM(Term.class),
        /** Something that makes a result uncertain and isn't known. */
        UNKNOWN(Unknown.class),
        /** A slip of input that would explain a result. */
        SLIP(Slip.class),
        /** A refused value. */
        REFUSAL(Refusal.class);

        private final Class<? extends Argument> type;

        Kind(Class<? extends Argument> type) {
            this.type = type;
        }

        boolean isKindOf(Argument argument) {
            return type.isInstance(argument);
        }

        /**
         * Whether records of format version 1 hold prose in the place of such arguments.
         *
         * @return true for those that are more than one plain value
         */
        public boolean wasProse() {
            return this == UNKNOWN || this == SLIP || this == REFUSAL;
        }
    }

    /**
     * In English, as it stands in a sentence.
     *
     * @return the words; numbers are rounded to four significant digits
     */
    String words();

    /**
     * A number with its unit.
     *
     * @param quantity the number
     * @return the argument
     * @throws InvalidInputException if it is not finite
     */
    static Argument number(Quantity<?> quantity) {
        return new Amount(quantity);
    }

    /**
     * A day.
     *
     * @param day the day
     * @return the argument
     */
    static Argument date(LocalDate day) {
        return new Date(day);
    }

    /**
     * A time of day on a day.
     *
     * @param at the time, with its offset
     * @return the argument
     */
    static Argument time(OffsetDateTime at) {
        return new Moment(at);
    }

    /**
     * A name that people gave, as that of a scale.
     *
     * @param name the name
     * @return the argument
     * @throws InvalidInputException if it is blank
     */
    static Argument name(String name) {
        return new Name(name);
    }

    /**
     * Several arguments of one kind.
     *
     * @param items the arguments, possibly none
     * @return the argument
     */
    static Argument several(List<? extends Argument> items) {
        return new Several(List.copyOf(Objects.requireNonNull(items, "items")));
    }

    /**
     * Why an input was refused.
     *
     * @param refusal the exception
     * @return the argument
     */
    static Argument refusal(InvalidInputException refusal) {
        return new Refusal(refusal.field(), refusal.accepted(), refusal.value());
    }

    /**
     * A number with its unit, exact.
     *
     * @param quantity the number
     */
    record Amount(Quantity<?> quantity) implements Argument {
        private static final int DIGITS = 4;

        /**
         * Checks the number.
         *
         * @throws InvalidInputException if it is not finite
         */
        public Amount {
            Objects.requireNonNull(quantity, "quantity");
            Require.finite("number of a finding", quantity.getValue().doubleValue());
            quantity = asRead(quantity);
        }

        /** What a product of quantities holds has more digits than are written, and would not equal what is read again. */
        private static <Q extends Quantity<Q>> Quantity<Q> asRead(Quantity<Q> quantity) {
            return Amounts.of(quantity.getValue().doubleValue(), quantity.getUnit());
        }

        @Override
        public String words() {
            return Rounded.text(quantity, DIGITS);
        }

        /**
         * The number, exact.
         *
         * @return for example "49.123456 lb"
         */
        @Override
        public String toString() {
            return Amounts.format(quantity);
        }
    }

    /**
     * A day.
     *
     * @param day the day
     */
    record Date(LocalDate day) implements Argument {
        /** Checks that it is given. */
        public Date {
            Objects.requireNonNull(day, "day");
        }

        @Override
        public String words() {
            return day.toString();
        }
    }

    /**
     * A time of day on a day.
     *
     * @param at the time, with its offset
     */
    record Moment(OffsetDateTime at) implements Argument {
        private static final DateTimeFormatter WORDS = DateTimeFormatter.ofPattern("uuuu-MM-dd HH:mm", Locale.ROOT);

        /** Checks that it is given. */
        public Moment {
            Objects.requireNonNull(at, "at");
        }

        /** As on the clock where it was read. */
        @Override
        public String words() {
            return WORDS.format(at);
        }
    }

    /**
     * A name that people gave; it is never translated.
     *
     * @param name the name
     */
    record Name(String name) implements Argument {
        /**
         * Checks the name.
         *
         * @throws InvalidInputException if it is blank
         */
        public Name {
            Require.text("name in a finding", name);
        }

        @Override
        public String words() {
            return name;
        }
    }

    /**
     * Something that makes a result uncertain and isn't known, so that no budget can hold it.
     *
     * @param what what isn't known
     * @param of the name of the scale whose accuracy it is; otherwise empty
     */
    record Unknown(Term what, String of) implements Argument {
        /**
         * Checks that an unknown that concerns something names it, and that no other does.
         *
         * @throws InvalidInputException otherwise
         */
        public Unknown {
            Require.given(Unknown.class, what, of);
            boolean named = !of.isBlank();
            if (named != what.words().contains(Term.SUBJECT)) {
                throw new InvalidInputException(
                        "subject of " + what.id(), named ? "left out" : "given", named ? of : "nothing");
            }
        }

        /**
         * Something unknown that concerns nothing in particular.
         *
         * @param what what isn't known
         * @return the argument
         * @throws InvalidInputException if it concerns something that has to be named
         */
        public static Unknown of(Term what) {
            return new Unknown(what, "");
        }

        /**
         * The accuracy of a scale.
         *
         * @param scale the scale's name
         * @return the argument
         * @throws InvalidInputException if the name is blank
         */
        public static Unknown accuracyOfScale(String scale) {
            return new Unknown(Term.SCALE_ACCURACY, scale);
        }

        /**
         * The tolerance of a graduated container.
         *
         * @param container the container's name
         * @return the argument
         * @throws InvalidInputException if the name is blank
         */
        public static Unknown toleranceOfContainer(String container) {
            return new Unknown(Term.CONTAINER_TOLERANCE, container);
        }

        @Override
        public String words() {
            return what.words().replace(Term.SUBJECT, of);
        }
    }

    /**
     * A value that can't be used, as an {@link InvalidInputException} says it.
     *
     * @param field what the value is
     * @param accepted what would be accepted
     * @param value the value with its unit
     */
    record Refusal(String field, String accepted, String value) implements Argument {
        /**
         * Checks the texts.
         *
         * @throws InvalidInputException if one is blank
         */
        public Refusal {
            Require.text("field of a refusal", field);
            Require.text("accepted of a refusal", accepted);
            Require.text("value of a refusal", value);
        }

        @Override
        public String words() {
            return new InvalidInputException(field, accepted, value).getMessage();
        }
    }

    /**
     * A list of arguments of one kind.
     *
     * @param items the arguments, possibly none
     */
    record Several(List<Argument> items) implements Argument {
        /** Copies the list. */
        public Several {
            Require.given(Several.class, items);
            items = List.copyOf(items);
        }

        @Override
        public String words() {
            // The values of a slip have commas between them.
            boolean slips = items.stream().anyMatch(Slip.class::isInstance);
            return items.isEmpty()
                    ? "none"
                    : items.stream().map(Argument::words).collect(Collectors.joining(slips ? "; " : ", "));
        }
    }

    /**
     * English text from a record of format version 1, where there are arguments today. No new finding has it.
     *
     * @param text the English
     */
    record Prose(String text) implements Argument {
        /**
         * Checks the text.
         *
         * @throws InvalidInputException if it is blank
         */
        public Prose {
            Require.text("text of a finding", text);
        }

        @Override
        public String words() {
            return text;
        }
    }
}
