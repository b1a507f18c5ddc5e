package org.gritwright.core.fleet.day;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import javax.measure.Quantity;
import org.gritwright.units.check.Require;
import org.gritwright.units.quantity.BulkDensity;

/**
 * A boom that a liquid leaves through, as it was written down. Nothing but presence is checked here. Immutable, thread-safe, a value.
 *
 * @param control how its rate is kept
 * @param setUpWith of a rate that is kept by pressure, the density of the liquid that the pressure was set with; else none
 * @param nozzles what its nozzles gave, all caught at one pressure; empty if they weren't caught
 */
public record BoomEntry(BoomControl control, Optional<Quantity<BulkDensity>> setUpWith, List<NozzleEntry> nozzles) {
    /** Copies the list. */
    public BoomEntry {
        Require.given(BoomEntry.class, control, setUpWith, nozzles);
        nozzles = List.copyOf(nozzles);
    }

    /**
     * A boom whose rate is kept by flow.
     *
     * @param nozzles what its nozzles gave
     * @return the boom
     */
    public static BoomEntry keptByFlow(List<NozzleEntry> nozzles) {
        return new BoomEntry(BoomControl.FLOW, Optional.empty(), nozzles);
    }

    /**
     * A boom whose rate is kept by pressure.
     *
     * @param setUpWith the density of the liquid that the pressure was set with
     * @param nozzles what its nozzles gave
     * @return the boom
     */
    public static BoomEntry keptByPressure(Quantity<BulkDensity> setUpWith, List<NozzleEntry> nozzles) {
        return new BoomEntry(
                BoomControl.PRESSURE, Optional.of(Objects.requireNonNull(setUpWith, "setUpWith")), nozzles);
    }

    /**
     * The same boom of which no nozzle was caught, as it stands on another day.
     *
     * @return the boom
     */
    public BoomEntry withoutNozzles() {
        return new BoomEntry(control, setUpWith, List.of());
    }
}
