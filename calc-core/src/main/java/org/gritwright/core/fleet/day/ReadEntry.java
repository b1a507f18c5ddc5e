package org.gritwright.core.fleet.day;

import java.util.List;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Volume;
import org.gritwright.units.check.Require;

/**
 * What was read of a caught liquid in a container with marks, as it was written down.
 *
 * @param container the id of the container
 * @param fills what was read, one fill or more, the container emptied in between
 */
public record ReadEntry(String container, List<Quantity<Volume>> fills) {
    /** Copies the list. */
    public ReadEntry {
        Require.given(ReadEntry.class, container, fills);
        fills = List.copyOf(fills);
    }

    /**
     * One fill.
     *
     * @param container the id of the container
     * @param fill what was read
     * @return the entry
     */
    public static ReadEntry of(String container, Quantity<Volume> fill) {
        return new ReadEntry(container, List.of(Objects.requireNonNull(fill, "fill")));
    }
}
