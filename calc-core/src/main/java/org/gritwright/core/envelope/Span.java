package org.gritwright.core.envelope;

import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.Unit;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.units.Rounded;
import org.gritwright.units.check.Require;

/**
 * From where to where something holds. Immutable, thread-safe, a value.
 *
 * @param <Q> the kind of quantity
 * @param lowest the lower side; none where the drive's slowest steady speed is 0, so that there is no lower limit
 * @param highest the upper side; below the lower one where nothing holds: grains that run more slowly than the slowest shaft asks for
 */
public record Span<Q extends Quantity<Q>>(Optional<Bound<Q>> lowest, Bound<Q> highest) {
    private static final int DIGITS = 3;

    /** Checks that nothing is null. */
    public Span {
        Require.given(Span.class, lowest, highest);
    }

    /** Both sides of a span of flows, over a rate or a speed. */
    <R extends Quantity<R>> Span<R> over(double divisor, Class<Q> kind, Unit<R> unit) {
        return new Span<>(lowest.map(bound -> bound.over(divisor, kind, unit)), highest.over(divisor, kind, unit));
    }

    /**
     * From where to where, in words.
     *
     * @return for example "5.2 mi/h to 31.4 mi/h", rounded to three significant digits
     */
    @Override
    public String toString() {
        return lowest.map(bound -> words(bound.value()) + " to ").orElse("up to ") + words(highest.value());
    }

    private static String words(Measured<?> measured) {
        return Rounded.text(measured.value(), DIGITS);
    }
}
