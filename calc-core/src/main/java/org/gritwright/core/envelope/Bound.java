package org.gritwright.core.envelope;

import javax.measure.Quantity;
import javax.measure.Unit;
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

    /** A flow over a rate is a speed, over a speed a rate; as uncertain as the flow, and for the same reason. */
    <R extends Quantity<R>> Bound<R> over(double divisor, Class<Q> kind, Unit<R> unit) {
        return new Bound<>(Proportional.value(value, kind, si -> si / divisor, unit), limit);
    }
}
