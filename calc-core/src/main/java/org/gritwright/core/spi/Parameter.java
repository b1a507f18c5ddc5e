package org.gritwright.core.spi;

import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Length;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.check.Require;

/**
 * One typed parameter of a type: enough to build a form from or to check a file with. The units of its
 * limits are those that a form should offer first.
 *
 * @param <Q> the kind of quantity
 * @param name its name as in documents, for example "chainPitch"
 * @param kind its kind of quantity
 * @param lowest the lowest accepted value
 * @param highest the highest accepted value, not below the lowest
 * @param isWhole whether only whole numbers are accepted, as for counts such as teeth
 * @param standard the value where none is given, itself accepted; none for a list
 * @param fewest the smallest accepted number of values; 1 unless it is a list
 * @param most the largest accepted number of values; 1 unless it is a list
 */
public record Parameter<Q extends Quantity<Q>>(
        String name,
        Class<Q> kind,
        Quantity<Q> lowest,
        Quantity<Q> highest,
        boolean isWhole,
        Optional<Quantity<Q>> standard,
        int fewest,
        int most) {
    /**
     * Checks the limits and the default.
     *
     * @throws org.gritwright.units.InvalidInputException if limits or numbers are the wrong way round or of another kind, or the
     *     default is not an accepted value or that of a list
     */
    public Parameter {
        Require.given(Parameter.class, name, kind, lowest, highest, standard);
        Require.text("parameter name", name);
        Require.atLeast("highest " + name, kind, highest, lowest);
        Require.that(
                fewest >= 1 && fewest <= most,
                "number of values of " + name,
                "from 1 or more to 2 or more",
                () -> fewest + " to " + most);
        Require.that(most == 1 || standard.isEmpty(), "default of " + name, "left out for a list", standard::get);
        standard.ifPresent(value -> check(name, kind, isWhole, value, lowest, highest));
    }

    /**
     * A parameter without default.
     *
     * @param <Q> the kind of quantity
     * @param name its name as in documents, for example "chainPitch"
     * @param kind its kind of quantity
     * @param lowest the lowest accepted value
     * @param highest the highest accepted value, not below the lowest
     * @return the parameter
     * @throws org.gritwright.units.InvalidInputException if the limits are the wrong way round or of another kind
     */
    public static <Q extends Quantity<Q>> Parameter<Q> of(
            String name, Class<Q> kind, Quantity<Q> lowest, Quantity<Q> highest) {
        return new Parameter<>(name, kind, lowest, highest, false, Optional.empty(), 1, 1);
    }

    /**
     * A length.
     *
     * @param name its name as in documents
     * @param lowest the lowest accepted value
     * @param highest the highest accepted value
     * @return the parameter
     * @throws org.gritwright.units.InvalidInputException if the limits are the wrong way round
     */
    public static Parameter<Length> length(String name, Quantity<Length> lowest, Quantity<Length> highest) {
        return of(name, Length.class, lowest, highest);
    }

    /**
     * A whole number, such as a number of teeth.
     *
     * @param name its name as in documents
     * @param lowest the lowest accepted number
     * @param highest the highest accepted number
     * @return the parameter
     * @throws org.gritwright.units.InvalidInputException if the limits are the wrong way round
     */
    public static Parameter<Dimensionless> wholeNumber(String name, int lowest, int highest) {
        return new Parameter<>(
                name,
                Dimensionless.class,
                Amounts.of(lowest, SpreadingUnits.ONE),
                Amounts.of(highest, SpreadingUnits.ONE),
                true,
                Optional.empty(),
                1,
                1);
    }

    /**
     * The same parameter with a default.
     *
     * @param standard the value where none is given
     * @return the parameter
     * @throws org.gritwright.units.InvalidInputException if the default is not an accepted value, or the parameter is a list
     */
    public Parameter<Q> withDefault(Quantity<Q> standard) {
        return new Parameter<>(name, kind, lowest, highest, isWhole, Optional.of(standard), fewest, most);
    }

    /**
     * A list of such values, such as a column of a measured table; without default.
     *
     * @param fewest the smallest accepted number of values, 1 or more
     * @param most the largest accepted number of values, 2 or more and not below the fewest
     * @return the parameter
     * @throws org.gritwright.units.InvalidInputException if the numbers are not in that order
     */
    public Parameter<Q> asList(int fewest, int most) {
        Require.that(
                most >= 2, "number of values of " + name, "from 1 or more to 2 or more", () -> fewest + " to " + most);
        return new Parameter<>(name, kind, lowest, highest, isWhole, Optional.empty(), fewest, most);
    }

    /**
     * Whether it is a list of values.
     *
     * @return true for a column of a table
     */
    public boolean isList() {
        return most > 1;
    }

    /**
     * Checks a value against kind, limits and wholeness.
     *
     * @param value the value
     * @return the value
     * @throws org.gritwright.units.InvalidInputException if it isn't accepted
     */
    public Quantity<Q> check(Quantity<Q> value) {
        return check(name, kind, isWhole, value, lowest, highest);
    }

    private static <Q extends Quantity<Q>> Quantity<Q> check(
            String name, Class<Q> kind, boolean isWhole, Quantity<Q> value, Quantity<Q> lowest, Quantity<Q> highest) {
        if (isWhole) {
            Require.wholeNumber(name, kind, value);
        }
        return Require.within(name, kind, value, lowest, highest);
    }
}
