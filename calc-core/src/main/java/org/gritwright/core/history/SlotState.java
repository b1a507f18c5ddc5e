package org.gritwright.core.history;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.gritwright.units.check.Require;

/**
 * What a slot holds at an instant: values at one setting or several, or something that nobody knows. Immutable, thread-safe, a value.
 *
 * @param slot the controller's slot, or where nobody names slots the material
 * @param since since when it holds that
 * @param values the values, in the order in which they were entered; none if nobody knows
 * @param lost by what it lost what it held; none while it holds something known
 */
public record SlotState(String slot, Instant since, List<Held> values, Optional<Event> lost) {
    /** Copies the list. */
    public SlotState {
        Require.given(SlotState.class, slot, since, values, lost);
        values = List.copyOf(values);
        Require.that(
                values.isEmpty() == lost.isPresent(), "values of slot " + slot, "known, or lost by an event", values);
    }
}
