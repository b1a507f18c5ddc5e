package org.gritwright.core.range;

import java.io.Serializable;
import java.math.BigDecimal;
import java.util.Arrays;
import java.util.Objects;
import java.util.stream.Collectors;
import javax.measure.Quantity;
import javax.measure.Unit;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.check.Require;

/**
 * What a valve is told: a percentage, a current through its coil, or a bare number such as a control setting.
 *
 * <p>It keeps the number and the unit it was read in. Commands in different units can't be compared: 40 on a dial says
 * nothing about 40 %. Immutable, thread-safe, a value.
 *
 * @param in what it is read in
 * @param number the number, finite
 */
public record Command(In in, double number) implements Serializable {
    static final String FIELD = "command";

    /** What commands are read in. */
    public enum In {
        /** Percent. */
        PERCENT(SpreadingUnits.PERCENT, "a percentage"),
        /** Milliamperes. */
        MILLIAMPERE(SpreadingUnits.MILLIAMPERE, "a current in mA"),
        /** Bare numbers. */
        NUMBER(SpreadingUnits.ONE, "a bare number");

        @SuppressWarnings("ImmutableEnumChecker") // units are immutable
        private final Unit<?> unit;

        private final String noun;

        In(Unit<?> unit, String noun) {
            this.unit = unit;
            this.noun = noun;
        }

        /**
         * What such a command is.
         *
         * @return for example "a percentage"
         */
        String noun() {
            return noun;
        }

        Quantity<?> quantity(double number) {
            return Amounts.of(number, unit);
        }
    }

    /**
     * Checks the number.
     *
     * @throws InvalidInputException if it is not finite
     */
    public Command {
        Require.given(Command.class, in);
        Require.finite(FIELD, number);
        // −0 is 0, as in a quantity.
        number += 0.0;
    }

    /**
     * A percentage.
     *
     * @param percentage for example 40 for 40 %
     * @return the command
     * @throws InvalidInputException if it is not finite
     */
    public static Command percent(double percentage) {
        return new Command(In.PERCENT, percentage);
    }

    /**
     * A current.
     *
     * @param milliamperes the current
     * @return the command
     * @throws InvalidInputException if it is not finite
     */
    public static Command milliamperes(double milliamperes) {
        return new Command(In.MILLIAMPERE, milliamperes);
    }

    /**
     * A bare number, such as a control setting.
     *
     * @param number the number
     * @return the command
     * @throws InvalidInputException if it is not finite
     */
    public static Command number(double number) {
        return new Command(In.NUMBER, number);
    }

    /**
     * A command from a quantity, as it was entered.
     *
     * @param entered in percent, in milliamperes, or without a unit
     * @return the command
     * @throws InvalidInputException if it is in another unit, or not finite
     */
    public static Command of(Quantity<?> entered) {
        Objects.requireNonNull(entered, "entered");
        for (In in : In.values()) {
            if (in.unit.equals(entered.getUnit())) {
                return new Command(in, entered.getValue().doubleValue());
            }
        }
        throw new InvalidInputException(
                FIELD,
                Arrays.stream(In.values()).map(In::noun).collect(Collectors.joining(" or ")),
                Amounts.format(entered));
    }

    /**
     * As a quantity.
     *
     * @return for example 40 %
     */
    public Quantity<?> quantity() {
        return in.quantity(number);
    }

    /** The decimal that is written, so that steps of 0.1 add up. */
    BigDecimal exact() {
        return BigDecimal.valueOf(number);
    }

    /**
     * As it is written.
     *
     * @return for example "40 %", "12.5 mA" or "7"
     */
    @Override
    public String toString() {
        return Amounts.format(quantity());
    }
}
