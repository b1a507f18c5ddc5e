package org.gritwright.core.envelope;

import java.util.function.DoubleUnaryOperator;
import javax.measure.Quantity;
import javax.measure.Unit;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.units.Amounts;

/** What is in proportion to something measured, and so, relative to itself, as uncertain. */
final class Proportional {
    private Proportional() {}

    /**
     * The proportional value.
     *
     * @param to what it is in proportion to
     * @param kind of that
     * @param factor the proportion: SI numbers to SI numbers, times or over a number
     * @param unit of the result
     */
    static <Q extends Quantity<Q>, R extends Quantity<R>> Measured<R> value(
            Measured<Q> to, Class<Q> kind, DoubleUnaryOperator factor, Unit<R> unit) {
        Quantity<R> value = Amounts.ofSi(factor.applyAsDouble(Amounts.si(kind, to.value())), unit);
        return to.standardUncertainty()
                .map(u -> Measured.of(
                        value,
                        Amounts.ofSi(factor.applyAsDouble(Amounts.si(kind, u)), unit),
                        to.degreesOfFreedom().orElseThrow()))
                .orElseGet(() -> Measured.once(value));
    }
}
