package org.gritwright.core.balance;

import java.io.Serializable;
import java.util.Collections;
import java.util.Map;
import java.util.TreeMap;
import org.gritwright.units.check.Require;

/**
 * What has to add up: the sum of coefficient times quantity is a constant. Immutable, thread-safe, a value.
 *
 * @param name what it is called; each has a name of its own
 * @param terms the coefficient of each quantity, by the quantity's name
 * @param constant what they add up to
 */
public record Balance(String name, Map<String, Double> terms, double constant) implements Serializable {
    private static final long serialVersionUID = 1L;

    /**
     * Checks the values and copies the map.
     *
     * @throws org.gritwright.units.InvalidInputException if a name is blank or a number isn't finite
     */
    public Balance {
        Require.given(Balance.class, name, terms);
        Require.text("name of a balance", name);
        Require.finite("constant of " + name, constant);
        TreeMap<String, Double> copy = new TreeMap<>(terms);
        copy.forEach((quantity, coefficient) -> {
            Require.text("name of a quantity in " + name, quantity);
            Require.finite("coefficient of " + quantity + " in " + name, coefficient);
        });
        terms = Collections.unmodifiableMap(copy);
    }

    /**
     * What has to add up to zero: what goes in with a plus, what comes out with a minus.
     *
     * @param name what it is called
     * @param terms the coefficient of each quantity, by the quantity's name
     * @return the balance
     * @throws org.gritwright.units.InvalidInputException if a name is blank or a number isn't finite
     */
    public static Balance of(String name, Map<String, Double> terms) {
        return new Balance(name, terms, 0);
    }
}
