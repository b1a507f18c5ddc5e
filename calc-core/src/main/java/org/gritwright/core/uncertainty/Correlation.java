package org.gritwright.core.uncertainty;

import org.gritwright.units.InvalidInputException;
import org.gritwright.units.check.Require;

/**
 * How far the errors of two inputs go together. Immutable, thread-safe, a value.
 *
 * @param first the name of one component
 * @param second the name of another
 * @param coefficient −1 to 1
 */
public record Correlation(String first, String second, double coefficient) {
    /**
     * Checks the values.
     *
     * @throws InvalidInputException if both are the same, or the coefficient is out of its range
     */
    public Correlation {
        Require.text("correlated component", first);
        Require.text("correlated component", second);
        if (first.equals(second)) {
            throw new InvalidInputException("correlated components", "two different ones", first + " with itself");
        }
        if (!(coefficient >= -1 && coefficient <= 1)) {
            throw new InvalidInputException(
                    "correlation of " + first + " and " + second, "-1 to 1", String.valueOf(coefficient));
        }
    }
}
