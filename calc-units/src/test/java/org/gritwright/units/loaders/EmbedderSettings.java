package org.gritwright.units.loaders;

import java.util.concurrent.Callable;
import javax.measure.spi.ServiceProvider;
import tech.units.indriya.function.Calculus;
import tech.units.indriya.function.DefaultNumberSystem;
import tech.units.indriya.spi.DefaultServiceProvider;
import tech.units.indriya.spi.NumberSystem;

/** An application that has set its own number system and service provider before this library's first use. */
public final class EmbedderSettings implements Callable<String> {

    /** Made by the probe, by name. */
    public EmbedderSettings() {}

    @Override
    public String call() throws Exception {
        NumberSystem numbers = new DefaultNumberSystem() {};
        ServiceProvider provider = new DefaultServiceProvider() {};
        Calculus.setCurrentNumberSystem(numbers);
        ServiceProvider.setCurrent(provider);
        String result = new FirstUse().call();
        boolean kept = Calculus.currentNumberSystem() == numbers && ServiceProvider.current() == provider;
        return result + "; settings " + (kept ? "kept" : "lost");
    }
}
