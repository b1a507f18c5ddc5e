package org.gritwright.units.loaders;

import java.util.concurrent.Callable;
import javax.measure.spi.ServiceProvider;
import tech.units.indriya.function.Calculus;
import tech.units.indriya.unit.Units;

/** What an application sees of the reference implementation, without a word to this library. */
public final class EmbedderView implements Callable<String> {

    /** Made by the probe, by name. */
    public EmbedderView() {}

    @Override
    public String call() {
        Class<?> numbers = Calculus.currentNumberSystem().getClass();
        return String.join(
                "; ",
                numbers.getName(),
                "its loader: " + (numbers.getClassLoader() == Calculus.class.getClassLoader() ? "own" : "foreign"),
                "current: " + ServiceProvider.current(),
                "available: " + ServiceProvider.available(),
                String.valueOf(Units.KILOMETRE_PER_HOUR
                        .getConverterTo(Units.METRE_PER_SECOND)
                        .convert(36)),
                "precision: " + Calculus.MATH_CONTEXT);
    }
}
