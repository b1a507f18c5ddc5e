package org.gritwright.core.balance;

import java.io.Serializable;
import java.util.Collections;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.TreeMap;
import org.gritwright.units.check.Require;

/**
 * A quantity of a network: measured, known exactly, or not measured at all. Immutable, thread-safe, a value.
 *
 * @param name what it is called; each has a name of its own
 * @param value what was measured, or is known; absent where nothing was measured
 * @param standardUncertainty of this measurement alone, without what it shares with others; 0 where it is exact or wasn't measured
 * @param shared errors that several measurements share: for each error's name, by how much one standard deviation of it changes
 *     this measured value
 */
public record Variable(String name, OptionalDouble value, double standardUncertainty, Map<String, Double> shared)
        implements Serializable {
    private static final long serialVersionUID = 1L;

    /**
     * Checks the values and copies the map.
     *
     * @throws org.gritwright.units.InvalidInputException if a name is blank, a number isn't finite, the uncertainty is negative, or what
     *     wasn't measured has one
     */
    public Variable {
        Require.given(Variable.class, name, value, shared);
        Require.text("name of a quantity", name);
        value.ifPresent(number -> Require.finite(name, number));
        Require.notNegative("standard uncertainty of " + name, standardUncertainty);
        TreeMap<String, Double> copy = new TreeMap<>(shared);
        copy.forEach((error, effect) -> {
            Require.text("name of an error of " + name, error);
            Require.finite("effect of " + error + " on " + name, effect);
        });
        shared = Collections.unmodifiableMap(copy);
        boolean plain = standardUncertainty == 0;
        Require.that(
                value.isPresent() || plain,
                "standard uncertainty of " + name + ", which isn't measured",
                "0",
                standardUncertainty);
        Require.that(
                shared.isEmpty() || !plain,
                "standard uncertainty of " + name + ", which shares errors",
                "greater than 0",
                standardUncertainty);
    }

    /**
     * A measured quantity.
     *
     * @param name what it is called
     * @param value the measured value
     * @param standardUncertainty greater than 0
     * @return the quantity
     * @throws org.gritwright.units.InvalidInputException if a value isn't accepted
     */
    public static Variable measured(String name, double value, double standardUncertainty) {
        Require.positive("standard uncertainty of " + name, standardUncertainty);
        return new Variable(name, OptionalDouble.of(value), standardUncertainty, Map.of());
    }

    /**
     * A quantity that is known exactly.
     *
     * @param name what it is called
     * @param value the value
     * @return the quantity
     * @throws org.gritwright.units.InvalidInputException if a value isn't accepted
     */
    public static Variable exact(String name, double value) {
        return new Variable(name, OptionalDouble.of(value), 0, Map.of());
    }

    /**
     * A quantity that wasn't measured.
     *
     * @param name what it is called
     * @return the quantity
     * @throws org.gritwright.units.InvalidInputException if the name is blank
     */
    public static Variable unmeasured(String name) {
        return new Variable(name, OptionalDouble.empty(), 0, Map.of());
    }

    /**
     * The same measurement, with an error that others share: that of a scale, a density, an observer.
     *
     * @param error the error's name
     * @param effect by how much one standard deviation of the error changes this measured value; may be negative
     * @return the changed copy
     * @throws org.gritwright.units.InvalidInputException if this isn't a measurement, or a value isn't accepted
     */
    public Variable sharing(String error, double effect) {
        Map<String, Double> more = new TreeMap<>(shared);
        more.merge(error, effect, Double::sum);
        return new Variable(name, value, standardUncertainty, more);
    }

    /**
     * Whether it was measured, with an uncertainty.
     *
     * @return true for a measurement
     */
    public boolean isMeasured() {
        return standardUncertainty > 0;
    }
}
