package org.gritwright.core.budget;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.gritwright.core.observation.ErrorSource;
import org.gritwright.core.uncertainty.ComponentKey;
import org.gritwright.core.weighing.CaughtMass;

/** The errors common to two lots of catches that were made in the same way: they cancel in the difference. */
public final class SharedErrors {

    private SharedErrors() {}

    /**
     * The keys of the common errors.
     *
     * @param some what was caught
     * @param others what was caught otherwise
     * @return the spans of the scales that both were weighed on, and all that is allowed for
     */
    public static Set<ComponentKey> of(List<CaughtMass> some, List<CaughtMass> others) {
        Set<ComponentKey> keys = spans(some);
        keys.retainAll(spans(others));
        keys.addAll(List.of(ErrorSource.SPILLAGE.key(), ErrorSource.TRANSIENT.key(), ErrorSource.MOISTURE.key()));
        return Set.copyOf(keys);
    }

    private static Set<ComponentKey> spans(List<CaughtMass> caught) {
        return caught.stream()
                .map(one -> ErrorSource.spanOf(one.scale()))
                .collect(Collectors.toCollection(HashSet::new));
    }
}
