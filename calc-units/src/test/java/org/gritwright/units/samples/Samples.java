package org.gritwright.units.samples;

import static org.assertj.core.api.Assertions.assertThatExceptionOfType;

import java.lang.reflect.Proxy;
import javax.measure.Quantity;
import javax.measure.Unit;
import javax.measure.quantity.Length;
import javax.measure.quantity.Mass;
import org.assertj.core.api.ThrowableAssert.ThrowingCallable;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.SpreadingUnits;

/** Quantities for tests, and what raw types and foreign implementations can do to them. */
public final class Samples {
    private Samples() {}

    public static Quantity<Mass> pounds(double pounds) {
        return Amounts.of(pounds, SpreadingUnits.POUND);
    }

    public static Quantity<Length> inches(double inches) {
        return Amounts.of(inches, SpreadingUnits.INCH);
    }

    /** Asserts that a call is refused with exactly this message. */
    public static void assertRefused(String message, ThrowingCallable call) {
        assertThatExceptionOfType(InvalidInputException.class).isThrownBy(call).withMessage(message);
    }

    /** A quantity of another implementation, which may hold what ours can't. */
    @SuppressWarnings("unchecked") // the proxy implements nothing else
    public static <Q extends Quantity<Q>> Quantity<Q> foreign(double value, Unit<Q> unit) {
        return (Quantity<Q>) Proxy.newProxyInstance(
                Samples.class.getClassLoader(),
                new Class<?>[] {Quantity.class},
                (proxy, method, arguments) -> switch (method.getName()) {
                    case "getValue" -> value;
                    case "getUnit" -> unit;
                    default -> throw new UnsupportedOperationException(method.getName());
                });
    }

    /** What raw types let through: a quantity of one kind in the place of another. */
    @SuppressWarnings("unchecked") // the wrong kind on purpose
    public static <Q extends Quantity<Q>> Quantity<Q> wrongKind(Quantity<?> quantity) {
        return (Quantity<Q>) quantity;
    }
}
