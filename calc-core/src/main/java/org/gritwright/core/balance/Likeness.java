package org.gritwright.core.balance;

import java.io.Serializable;
import org.gritwright.units.check.Require;

/**
 * How alike the traces of two gross errors are. Immutable, thread-safe, a value.
 *
 * @param candidate the other one
 * @param correlation of their scores, from −1 to 1: at ±1 nothing in the data tells one from the other
 */
public record Likeness(Candidate candidate, double correlation) implements Serializable {
    private static final long serialVersionUID = 1L;

    private static final double SAME = 1e-9;

    /**
     * Checks the values.
     *
     * @throws org.gritwright.units.InvalidInputException if the correlation isn't finite
     */
    public Likeness {
        Require.given(Likeness.class, candidate);
        Require.finite("correlation", correlation);
    }

    /**
     * Whether the traces are the same: no data of the network tells one error from the other.
     *
     * @return true for a correlation of ±1, but for rounding
     */
    public boolean isSame() {
        return Math.abs(correlation) > 1 - SAME;
    }
}
