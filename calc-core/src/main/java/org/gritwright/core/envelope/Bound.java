package org.gritwright.core.envelope;

import javax.measure.Quantity;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.units.check.Require;

/**
 * One side of a {@link Span}, and why it is there. Immutable, thread-safe, a value.
 *
 * @param <Q> the kind of quantity
 * @param value where it is, with what the calibration's uncertainty makes of it
 * @param limit why
 */
public record Bound<Q extends Quantity<Q>>(Measured<Q> value, Limit limit) {
    /** Checks that nothing is null. */
    public Bound {
        Require.given(Bound.class, value, limit);
    }
}
