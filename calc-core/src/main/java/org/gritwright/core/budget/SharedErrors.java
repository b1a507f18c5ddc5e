package org.gritwright.core.budget;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.gritwright.core.observation.ErrorSource;
import org.gritwright.core.uncertainty.ComponentKey;
import org.gritwright.core.weighing.Caught;

/** The errors common to two lots of catches that were made in the same way: they cancel in the difference. */
public final class SharedErrors {

    private SharedErrors() {}

    /**
     * The keys of the common errors.
     *
     * @param some what was caught
     * @param others what was caught otherwise
     * @return the spans of the scales and containers that both were measured with, the density that turned masses of both into
     *     volumes, and all that is allowed for
     */
    public static Set<ComponentKey> of(List<? extends Caught> some, List<? extends Caught> others) {
        Set<ComponentKey> keys = spans(some);
        keys.retainAll(spans(others));
        keys.addAll(List.of(ErrorSource.SPILLAGE.key(), ErrorSource.TRANSIENT.key(), ErrorSource.MOISTURE.key()));
        return Set.copyOf(keys);
    }

    private static Set<ComponentKey> spans(List<? extends Caught> caught) {
        Set<ComponentKey> keys =
                caught.stream().map(ErrorSource::spanOf).collect(Collectors.toCollection(HashSet::new));
        if (caught.stream().anyMatch(one -> one.relativeDensityUncertainty() > 0)) {
            keys.add(ErrorSource.LIQUID_DENSITY.key());
        }
        return keys;
    }
}
