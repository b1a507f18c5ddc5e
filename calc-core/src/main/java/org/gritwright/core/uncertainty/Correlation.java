package org.gritwright.core.uncertainty;

import java.io.Serializable;
import org.gritwright.units.check.Require;

/**
 * How closely the errors of two components of a budget go together. Immutable, thread-safe, a value.
 *
 * @param first the key of one component
 * @param second the key of another
 * @param coefficient −1 to 1
 */
public record Correlation(ComponentKey first, ComponentKey second, double coefficient) implements Serializable {
    /**
     * Checks the values.
     *
     * @throws org.gritwright.units.InvalidInputException if both are the same, or the coefficient is out of its range
     */
    public Correlation {
        Require.given(Correlation.class, first, second);
        Require.that(
                !first.equals(second), "correlated components", "two different ones", () -> first + " with itself");
        Require.that(
                coefficient >= -1 && coefficient <= 1,
                "correlation of " + first + " and " + second,
                "-1 to 1",
                coefficient);
    }

    /**
     * The correlation of two components whose keys are their names.
     *
     * @param first the name of one component
     * @param second the name of another
     * @param coefficient −1 to 1
     * @throws org.gritwright.units.InvalidInputException if a name is blank, both are the same, or the coefficient is out of its range
     */
    public Correlation(String first, String second, double coefficient) {
        this(ComponentKey.of(first), ComponentKey.of(second), coefficient);
    }

    /**
     * The correlation as text.
     *
     * @return for example "V with I -0.36"
     */
    @Override
    public String toString() {
        return first + " with " + second + " " + coefficient;
    }
}
