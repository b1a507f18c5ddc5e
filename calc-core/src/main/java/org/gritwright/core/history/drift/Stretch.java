package org.gritwright.core.history.drift;

import java.util.List;
import java.util.Optional;
import org.gritwright.core.history.Event;
import org.gritwright.units.check.Require;

/**
 * A time in which nothing was changed that the discharge depends on. Immutable, thread-safe, a value.
 *
 * @param began the change with which it began; none for the first
 * @param implied what calibrations and verifications imply, in the order of time; possibly none
 */
public record Stretch(Optional<Event> began, List<Implied> implied) {
    /** Copies the list. */
    public Stretch {
        Require.given(Stretch.class, began, implied);
        implied = List.copyOf(implied);
    }
}
