package org.gritwright.units.loaders;

import java.io.InputStream;
import java.io.ObjectInputStream;
import java.util.List;
import java.util.Objects;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import javax.measure.Quantity;
import org.gritwright.units.Amounts;

/** Reads quantities that no class of the application holds, after preparing for it. */
public final class ArrivalOfQuantities implements Callable<String> {
    static final String FILE = "quantities.ser";

    /** Made by the probe, by name. */
    public ArrivalOfQuantities() {}

    @Override
    public String call() throws Exception {
        Amounts.prepare();
        try (InputStream bytes = Objects.requireNonNull(ArrivalOfQuantities.class.getResourceAsStream(FILE));
                ObjectInputStream in = new ObjectInputStream(bytes)) {
            return ((List<?>) in.readObject())
                    .stream()
                            .map(quantity -> Amounts.format((Quantity<?>) quantity))
                            .collect(Collectors.joining(", "));
        }
    }
}
