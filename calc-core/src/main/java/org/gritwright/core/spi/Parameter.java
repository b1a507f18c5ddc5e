package org.gritwright.core.spi;

import java.util.Objects;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Length;
import org.gritwright.core.measurement.Require;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.SpreadingUnits;

/**
 * One typed parameter of a conveyor or gate type: enough to build a form from or to check a file with.
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
    private final Quantity<Q> standard;

    private Parameter(
            String name, Class<Q> kind, Quantity<Q> lowest, Quantity<Q> highest, boolean whole, Quantity<Q> standard) {
        this.name = Require.text("parameter name", name);
        this.kind = Objects.requireNonNull(kind, "kind");
        this.lowest = lowest;
        this.highest = Require.atLeast("highest " + name, kind, highest, lowest);
        this.whole = whole;
        this.standard = standard;
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
     * @throws InvalidInputException if the limits are the wrong way round or of another kind
     */
    public static <Q extends Quantity<Q>> Parameter<Q> of(
            String name, Class<Q> kind, Quantity<Q> lowest, Quantity<Q> highest) {
        return new Parameter<>(name, kind, lowest, highest, false, null);
    }

    /**
     * A length.
     *
     * @param name its name as in documents
     * @param lowest the lowest accepted value
     * @param highest the highest accepted value
     * @return the parameter
     * @throws InvalidInputException if the limits are the wrong way round
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
     * @throws InvalidInputException if the limits are the wrong way round
     */
    public static Parameter<Dimensionless> wholeNumber(String name, int lowest, int highest) {
        return new Parameter<>(
                name,
                Dimensionless.class,
                Amounts.of(lowest, SpreadingUnits.ONE),
                Amounts.of(highest, SpreadingUnits.ONE),
                true,
                null);
    }

    /**
     * The same parameter with a default.
     *
     * @param standard the value where none is given
     * @return the parameter
     * @throws InvalidInputException if the default is not an accepted value
     */
    public Parameter<Q> withDefault(Quantity<Q> standard) {
        return new Parameter<>(name, kind, lowest, highest, whole, check(standard));
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
     * @throws InvalidInputException if it isn't accepted
     */
    public Quantity<Q> check(Quantity<Q> value) {
        if (whole) {
            Require.wholeNumber(name, kind, value);
        }
        return Require.within(name, kind, value, lowest, highest);
    }
}
