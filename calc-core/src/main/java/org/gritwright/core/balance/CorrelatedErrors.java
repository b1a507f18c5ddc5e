package org.gritwright.core.balance;

import java.io.Serializable;
import java.util.Objects;
import org.gritwright.units.check.Require;

/**
 * Two measurements whose own errors are correlated, where the error that they share has no name. Immutable, thread-safe, a value.
 *
 * @param first the name of one measured quantity
 * @param second the name of another
 * @param coefficient their correlation coefficient, from −1 to 1; covariance ÷ product of the standard uncertainties
 */
public record CorrelatedErrors(String first, String second, double coefficient) implements Serializable {
    private static final long serialVersionUID = 1L;

    /**
     * Checks the values.
     *
     * @throws org.gritwright.units.InvalidInputException if both are the same, or the coefficient isn't within −1 to 1
     */
    public CorrelatedErrors {
        Objects.requireNonNull(first, "first");
        Objects.requireNonNull(second, "second");
        Require.that(!first.equals(second), "correlated quantities", "two", first + " twice");
        Require.that(
                coefficient >= -1 && coefficient <= 1,
                "correlation of " + first + " and " + second,
                "within -1 to 1",
                coefficient);
    }
}
