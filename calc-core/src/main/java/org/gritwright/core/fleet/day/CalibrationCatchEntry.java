package org.gritwright.core.fleet.day;

import org.gritwright.core.observation.Coasting;
import org.gritwright.units.check.Require;

/**
 * A calibration catch as it was written down.
 *
 * @param entry what every catch has
 * @param primed whether the conveyor was full to its end before the count began
 * @param coasting what became of the run-down
 */
public record CalibrationCatchEntry(CatchEntry entry, boolean primed, Coasting coasting) {
    /** Checks that nothing is null. */
    public CalibrationCatchEntry {
        Require.given(CalibrationCatchEntry.class, entry, coasting);
    }
}
