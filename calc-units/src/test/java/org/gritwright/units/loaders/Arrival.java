package org.gritwright.units.loaders;

import java.io.InputStream;
import java.io.ObjectInputStream;
import java.util.Objects;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import org.gritwright.units.Amounts;
import org.gritwright.units.UnitSymbol;

/** Reads a crate and prints what is in it. */
public final class Arrival implements Callable<String> {
    static final String FILE = "arrival.ser";

    /** Made by the probe, by name. */
    public Arrival() {}

    @Override
    public String call() throws Exception {
        try (InputStream bytes = Objects.requireNonNull(Arrival.class.getResourceAsStream(FILE));
                ObjectInputStream in = new ObjectInputStream(bytes)) {
            return print((Crate) in.readObject());
        }
    }

    static String print(Crate crate) {
        return crate.quantities().stream().map(Amounts::format).collect(Collectors.joining(", "))
                + "; "
                + crate.units().stream()
                        .map(unit -> UnitSymbol.of(unit).symbol())
                        .collect(Collectors.joining(", "))
                + "; "
                + crate.conversion() + " gives " + crate.conversion().convert(250)
                + "; "
                + crate.refusal().code() + " " + crate.refusal().arguments();
    }
}
