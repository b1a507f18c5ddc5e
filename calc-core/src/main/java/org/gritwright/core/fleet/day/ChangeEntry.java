package org.gritwright.core.fleet.day;

import java.time.LocalDate;
import java.util.Optional;
import org.gritwright.core.calibration.Change;
import org.gritwright.units.check.Require;

/**
 * A repair or another change, as it was written down.
 *
 * @param on the day
 * @param part what was changed
 * @param notes remarks
 */
public record ChangeEntry(LocalDate on, Change.Part part, Optional<String> notes) {
    /** Checks that nothing is null. */
    public ChangeEntry {
        Require.given(ChangeEntry.class, on, part, notes);
    }
}
