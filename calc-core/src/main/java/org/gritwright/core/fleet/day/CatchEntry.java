package org.gritwright.core.fleet.day;

import java.time.OffsetDateTime;
import java.util.List;
import java.util.Optional;
import javax.measure.Quantity;

/**
 * What every catch has, of either purpose, as it was written down.
 *
 * @param at day and time of the catch
 * @param operator who was at the controls
 * @param scale the id of the scale
 * @param containers the containers, one or more
 * @param counted what was counted
 * @param opening the gate opening; none for a spreader without a gate to set
 * @param material the name of the material
 * @param conditions what else was written down
 * @param notes remarks
 */
public record CatchEntry(
        OffsetDateTime at,
        Optional<String> operator,
        String scale,
        List<WeighingEntry> containers,
        Optional<CountEntry> counted,
        Optional<Quantity<?>> opening,
        String material,
        Optional<Conditions> conditions,
        Optional<String> notes) {

    /** Copies the list. */
    public CatchEntry {
        containers = List.copyOf(containers);
    }
}
