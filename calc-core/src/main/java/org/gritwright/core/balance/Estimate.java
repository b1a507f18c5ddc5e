package org.gritwright.core.balance;

import java.io.Serializable;
import org.gritwright.units.check.Require;

/**
 * A number with its uncertainty. Immutable, thread-safe, a value.
 *
 * @param value the number
 * @param standardUncertainty 0 or more
 */
public record Estimate(double value, double standardUncertainty) implements Serializable {
    private static final long serialVersionUID = 1L;

    /**
     * Checks the numbers.
     *
     * @throws org.gritwright.units.InvalidInputException if one isn't finite, or the uncertainty is negative
     */
    public Estimate {
        Require.finite("value", value);
        Require.notNegative("standard uncertainty", standardUncertainty);
    }
}
