package org.gritwright.core.history;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.gritwright.core.observation.CalibrationPoint;
import org.gritwright.units.check.Require;

/**
 * What a truck's slots hold at an instant. Immutable, thread-safe, a value.
 *
 * @param truck the truck's id
 * @param at the instant; what happened at it is in
 * @param slots the slots that anything is known of, by name
 */
public record TruckState(String truck, Instant at, List<SlotState> slots) {
    /** Copies the list. */
    public TruckState {
        Require.given(TruckState.class, truck, at, slots);
        slots = List.copyOf(slots);
    }

    /**
     * All values that are held.
     *
     * @return slot by slot
     */
    public List<Held> values() {
        return slots.stream().flatMap(slot -> slot.values().stream()).toList();
    }

    /**
     * A slot.
     *
     * @param name the controller's slot, or where nobody names slots the material
     * @return what it holds; none if nothing is known of it
     */
    public Optional<SlotState> slot(String name) {
        return slots.stream().filter(slot -> slot.slot().equals(name)).findFirst();
    }

    /**
     * The value that is held for a point.
     *
     * @param point what tells the point from the truck's others
     * @return the value that was entered last, if several slots hold one; none if none is known
     */
    public Optional<Held> value(CalibrationPoint.Key point) {
        return values().stream()
                .filter(held -> held.value().point().key().equals(point))
                .reduce((one, other) -> other.since().isBefore(one.since()) ? one : other);
    }
}
