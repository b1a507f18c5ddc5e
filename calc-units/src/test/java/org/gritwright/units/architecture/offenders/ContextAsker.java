package org.gritwright.units.architecture.offenders;

import java.util.ServiceLoader;
import javax.measure.Quantity;
import javax.measure.quantity.Mass;
import javax.measure.spi.ServiceProvider;
import tech.units.indriya.function.Calculus;

/** Asks the context class loader in several ways, on purpose, and a named class loader once. */
public final class ContextAsker {
    private ContextAsker() {}

    static Object[] ask(Quantity<?> quantity) {
        return new Object[] {
            ServiceLoader.load(ServiceProvider.class),
            ServiceLoader.load(ServiceProvider.class, ContextAsker.class.getClassLoader()),
            Thread.currentThread().getContextClassLoader(),
            ServiceProvider.current(),
            quantity.getUnit().asType(Mass.class),
            quantity.asType(Mass.class),
            Calculus.currentNumberSystem()
        };
    }
}
