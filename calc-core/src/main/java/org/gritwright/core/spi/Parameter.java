package org.gritwright.core.spi;

import java.util.Objects;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Length;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.check.Require;
import org.jspecify.annotations.Nullable;

/**
 * One typed parameter of a conveyor or gate type: enough to build a form from or to check a file with. The units of its
 * limits are those that a form should offer first.
 *
 * <p>Immutable, thread-safe.
 *
 * @param <Q> the kind of quantity
 */
public final class Parameter<Q extends Quantity<Q>> {
    private final String name;
    private final Class<Q> kind;
    private final Quantity<Q> lowest;
    private final Quantity<Q> highest;
    private final boolean whole;
    private final @Nullable Quantity<Q> standard;
    private final int fewest;
    private final int most;

    private Parameter(
            String name,
            Class<Q> kind,
            Quantity<Q> lowest,
            Quantity<Q> highest,
            boolean whole,
            @Nullable Quantity<Q> standard,
            int fewest,
            int most) {
        this.name = Require.text("parameter name", name);
        this.kind = Objects.requireNonNull(kind, "kind");
        this.lowest = lowest;
        this.highest = Require.atLeast("highest " + name, kind, highest, lowest);
        this.whole = whole;
        this.standard = standard;
        this.fewest = fewest;
        this.most = most;
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
        return new Parameter<>(name, kind, lowest, highest, false, null, 1, 1);
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
                null,
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
        Require.that(!isList(), "default of " + name, "left out for a list", standard);
        return new Parameter<>(name, kind, lowest, highest, whole, check(standard), fewest, most);
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
                fewest >= 1 && most >= 2 && fewest <= most,
                "number of values of " + name,
                "from 1 or more to 2 or more",
                () -> fewest + " to " + most);
        return new Parameter<>(name, kind, lowest, highest, whole, null, fewest, most);
    }

    /**
     * The name in documents.
     *
     * @return the name
     */
    public String name() {
        return name;
    }

    /**
     * The kind of quantity.
     *
     * @return the kind
     */
    public Class<Q> kind() {
        return kind;
    }

    /**
     * The lowest accepted value.
     *
     * @return the lower limit, itself accepted
     */
    public Quantity<Q> lowest() {
        return lowest;
    }

    /**
     * The highest accepted value.
     *
     * @return the upper limit, itself accepted
     */
    public Quantity<Q> highest() {
        return highest;
    }

    /**
     * Whether only whole numbers are accepted.
     *
     * @return true for counts such as teeth
     */
    public boolean isWhole() {
        return whole;
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
     * The smallest accepted number of values.
     *
     * @return 1 unless it is a list
     */
    public int fewest() {
        return fewest;
    }

    /**
     * The largest accepted number of values.
     *
     * @return 1 unless it is a list
     */
    public int most() {
        return most;
    }

    /**
     * The value where none is given.
     *
     * @return the default, if there is one
     */
    public Optional<Quantity<Q>> standard() {
        return Optional.ofNullable(standard);
    }

    /**
     * Checks a value against kind, limits and wholeness.
     *
     * @param value the value
     * @return the value
     * @throws org.gritwright.units.InvalidInputException if it isn't accepted
     */
    public Quantity<Q> check(Quantity<Q> value) {
        if (whole) {
            Require.wholeNumber(name, kind, value);
        }
        return Require.within(name, kind, value, lowest, highest);
    }
}
