package org.gritwright.units.check;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.function.Supplier;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.RefusalCode;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.UnitSymbol;
import org.jspecify.annotations.Nullable;

/**
 * Checks that return what they checked, so that a constructor is one line a field.
 *
 * <p>Every check also proves the kind of the quantity, which raw types could have got past the compiler, and is worded
 * so that a NaN fails it.
 */
public final class Require {

    private Require() {}

    /**
     * Checks that all components of a record are there.
     *
     * @param type the record
     * @param components its components in their order, without those of a primitive type
     * @throws NullPointerException that names the first one that is null
     */
    public static void given(Class<? extends Record> type, @Nullable Object... components) {
        int missing = Arrays.asList(components).indexOf(null);
        if (missing >= 0) {
            throw new NullPointerException(Arrays.stream(type.getRecordComponents())
                    .filter(component -> !component.getType().isPrimitive())
                    .toList()
                    .get(missing)
                    .getName());
        }
    }

    /**
     * Checks that a quantity is of the kind and greater than zero.
     *
     * @param <Q> the kind of quantity
     * @param field the field's name in the trade's words
     * @param kind the kind of quantity
     * @param quantity the value
     * @return the value
     * @throws InvalidInputException if it is not
     */
    public static <Q extends Quantity<Q>> Quantity<Q> positive(String field, Class<Q> kind, Quantity<Q> quantity) {
        if (!(si(field, kind, quantity) > 0)) {
            throw refusal(RefusalCode.NOT_POSITIVE, field, "greater than 0", quantity);
        }
        return quantity;
    }

    /**
     * Checks that a quantity is of the kind and not below zero.
     *
     * @param <Q> the kind of quantity
     * @param field the field's name in the trade's words
     * @param kind the kind of quantity
     * @param quantity the value
     * @return the value
     * @throws InvalidInputException if it is not
     */
    public static <Q extends Quantity<Q>> Quantity<Q> notNegative(String field, Class<Q> kind, Quantity<Q> quantity) {
        if (!(si(field, kind, quantity) >= 0)) {
            throw refusal(RefusalCode.NEGATIVE, field, "0 or more", quantity);
        }
        return quantity;
    }

    /**
     * Checks that a quantity is of the kind and not below another, such as a highest value above its lowest.
     *
     * @param <Q> the kind of quantity
     * @param field the field's name in the trade's words
     * @param kind the kind of quantity
     * @param quantity the value
     * @param lowest the lowest accepted value
     * @return the value
     * @throws InvalidInputException if it is not
     */
    public static <Q extends Quantity<Q>> Quantity<Q> atLeast(
            String field, Class<Q> kind, Quantity<Q> quantity, Quantity<Q> lowest) {
        if (Comparison.isAbove(si(field, kind, lowest), si(field, kind, quantity))) {
            throw refusal(RefusalCode.TOO_LOW, field, "at least " + Amounts.format(lowest), quantity, lowest);
        }
        return quantity;
    }

    /**
     * Checks that a quantity is of the kind and within limits, the limits included.
     *
     * @param <Q> the kind of quantity
     * @param field the field's name in the trade's words
     * @param kind the kind of quantity
     * @param quantity the value
     * @param lowest the lowest accepted value
     * @param highest the highest accepted value
     * @return the value
     * @throws InvalidInputException if it is not
     */
    public static <Q extends Quantity<Q>> Quantity<Q> within(
            String field, Class<Q> kind, Quantity<Q> quantity, Quantity<Q> lowest, Quantity<Q> highest) {
        double si = si(field, kind, quantity);
        if (Comparison.isAbove(si(field, kind, lowest), si) || Comparison.isAbove(si, si(field, kind, highest))) {
            throw refusal(
                    RefusalCode.OUT_OF_RANGE,
                    field,
                    "within " + Amounts.format(lowest) + " to " + Amounts.format(highest),
                    quantity,
                    lowest,
                    highest);
        }
        return quantity;
    }

    /**
     * Checks that a quantity is a whole number and not below zero, as counts of pulses are.
     *
     * @param <Q> the kind of quantity
     * @param field the field's name in the trade's words
     * @param kind the kind of quantity
     * @param quantity the value
     * @return the value
     * @throws InvalidInputException if it is not
     */
    public static <Q extends Quantity<Q>> Quantity<Q> wholeNumber(String field, Class<Q> kind, Quantity<Q> quantity) {
        double si = si(field, kind, quantity);
        if (!(si >= 0 && si == Math.rint(si))) {
            RefusalCode code = si < 0 ? RefusalCode.NEGATIVE : RefusalCode.NOT_WHOLE;
            throw refusal(code, field, "a whole number, 0 or more", quantity);
        }
        return quantity;
    }

    /**
     * Checks that a quantity's number is finite, as only a foreign implementation's may not be.
     *
     * @param <Q> the kind of quantity
     * @param field the field's name in the trade's words
     * @param quantity the value
     * @return the value
     * @throws InvalidInputException if it is not
     */
    public static <Q extends Quantity<Q>> Quantity<Q> finite(String field, Quantity<Q> quantity) {
        finite(field, quantity.getValue().doubleValue());
        return quantity;
    }

    /**
     * Checks that a number is finite.
     *
     * @param field the field's name in the trade's words
     * @param number the number
     * @return the number
     * @throws InvalidInputException if it is not
     */
    public static double finite(String field, double number) {
        if (!Double.isFinite(number)) {
            throw new InvalidInputException(RefusalCode.NOT_FINITE, field, "finite", String.valueOf(number));
        }
        return number;
    }

    /**
     * Checks that a number is finite and greater than zero.
     *
     * @param field the field's name in the trade's words
     * @param number the number
     * @return the number
     * @throws InvalidInputException if it is not
     */
    public static double positive(String field, double number) {
        if (!(finite(field, number) > 0)) {
            throw new InvalidInputException(RefusalCode.NOT_POSITIVE, field, "greater than 0", String.valueOf(number));
        }
        return number;
    }

    /**
     * Checks that a number is finite and not below zero.
     *
     * @param field the field's name in the trade's words
     * @param number the number
     * @return the number
     * @throws InvalidInputException if it is not
     */
    public static double notNegative(String field, double number) {
        if (!(finite(field, number) >= 0)) {
            throw new InvalidInputException(RefusalCode.NEGATIVE, field, "0 or more", String.valueOf(number));
        }
        return number;
    }

    /**
     * Checks that a number is a probability that leaves something open.
     *
     * @param field the field's name in the trade's words
     * @param probability the number
     * @return the number
     * @throws InvalidInputException if it is not greater than 0 and below 1
     */
    public static double probability(String field, double probability) {
        if (!(probability > 0 && probability < 1)) {
            throw new InvalidInputException(
                    RefusalCode.OUT_OF_RANGE,
                    field,
                    "greater than 0 and below 1",
                    String.valueOf(probability),
                    "0",
                    "1");
        }
        return probability;
    }

    /**
     * Checks that a ratio is not below zero and is below 100 %.
     *
     * @param field the field's name in the trade's words
     * @param ratio the ratio
     * @return the ratio
     * @throws InvalidInputException if it is not
     */
    public static Quantity<Dimensionless> share(String field, Quantity<Dimensionless> ratio) {
        notNegative(field, Dimensionless.class, ratio);
        return belowOne(field, ratio);
    }

    /**
     * Checks that a ratio is greater than zero and below 100 %.
     *
     * @param field the field's name in the trade's words
     * @param ratio the ratio
     * @return the ratio
     * @throws InvalidInputException if it is not
     */
    public static Quantity<Dimensionless> fraction(String field, Quantity<Dimensionless> ratio) {
        positive(field, Dimensionless.class, ratio);
        return belowOne(field, ratio);
    }

    /**
     * Checks that a text holds more than blanks.
     *
     * @param field the field's name in the trade's words
     * @param text the text
     * @return the text
     * @throws InvalidInputException if it is blank
     */
    public static String text(String field, String text) {
        Objects.requireNonNull(text, field);
        if (text.isBlank()) {
            throw new InvalidInputException(RefusalCode.MISSING, field, "a text that is not blank", "\"" + text + "\"");
        }
        return text;
    }

    /**
     * Copies what somebody else lists, and stops where it is too much: such a list may be endless, whatever size it states.
     *
     * @param <T> the type of an item
     * @param most how many are accepted
     * @param field the field's name in the trade's words
     * @param items what is listed, gaps included
     * @return a copy
     * @throws InvalidInputException if there are more
     */
    public static <T extends @Nullable Object> List<T> noMoreThan(int most, String field, Iterable<? extends T> items) {
        List<T> copy = new ArrayList<>();
        for (T item : Objects.requireNonNull(items, field)) {
            that(copy.size() < most, field, "at most " + most, "more");
            copy.add(item);
        }
        return copy;
    }

    /**
     * Checks what has no check of its own.
     *
     * @param isSo whether the value is accepted
     * @param field the field's name in the trade's words
     * @param accepted what is accepted
     * @param value the value; a quantity is shown with its unit
     * @throws InvalidInputException if it is not so
     */
    public static void that(boolean isSo, String field, String accepted, Object value) {
        that(isSo, field, accepted, () -> value);
    }

    /**
     * Checks what has no check of its own, where the value takes work to show.
     *
     * @param isSo whether the value is accepted
     * @param field the field's name in the trade's words
     * @param accepted what is accepted
     * @param value gives the value when it is refused; a quantity is shown with its unit
     * @throws InvalidInputException if it is not so
     */
    public static void that(boolean isSo, String field, String accepted, Supplier<?> value) {
        if (!isSo) {
            Object refused = value.get();
            String shown = refused instanceof Quantity<?> quantity ? Amounts.format(quantity) : String.valueOf(refused);
            throw new InvalidInputException(field, accepted, shown);
        }
    }

    /**
     * Does something whose refusal shall say what it was about: "gate" before "width must be ...".
     *
     * @param <T> the type of the result
     * @param what what it is about, in the trade's words
     * @param reading what is done
     * @return its result
     * @throws InvalidInputException if it is refused, with the same rule and value
     */
    public static <T> T naming(String what, Supplier<T> reading) {
        try {
            return reading.get();
        } catch (InvalidInputException e) {
            throw e.withField(what + ": " + e.field());
        }
    }

    private static <Q extends Quantity<Q>> double si(String field, Class<Q> kind, Quantity<Q> quantity) {
        Objects.requireNonNull(quantity, field);
        try {
            return Amounts.si(kind, quantity);
        } catch (InvalidInputException e) {
            throw new InvalidInputException(
                    e.code(),
                    field,
                    "a finite " + UnitSymbol.kindName(kind),
                    text(quantity, e),
                    e.arguments().toArray(String[]::new));
        }
    }

    /** As it was entered, of whatever kind it is; what has no such text is described by the refusal. */
    private static String text(Quantity<?> quantity, InvalidInputException refusal) {
        try {
            return Amounts.format(quantity);
        } catch (InvalidInputException e) {
            return refusal.value();
        }
    }

    private static Quantity<Dimensionless> belowOne(String field, Quantity<Dimensionless> ratio) {
        if (!(si(field, Dimensionless.class, ratio) < 1)) {
            throw refusal(RefusalCode.TOO_HIGH, field, "below 100 %", ratio, Amounts.of(100, SpreadingUnits.PERCENT));
        }
        return ratio;
    }

    private static InvalidInputException refusal(
            RefusalCode code, String field, String accepted, Quantity<?> quantity, Quantity<?>... limits) {
        String[] arguments = Arrays.stream(limits).map(Amounts::format).toArray(String[]::new);
        return new InvalidInputException(code, field, accepted, Amounts.format(quantity), arguments);
    }
}
