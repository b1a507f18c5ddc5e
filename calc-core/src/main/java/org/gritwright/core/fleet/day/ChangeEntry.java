package org.gritwright.core.fleet.day;

import java.time.LocalDate;
import java.util.Optional;
import org.gritwright.core.calibration.Change;

/**
 * A repair or another change, as it was written down.
 *
 * @param on the day
 * @param part what was changed
 * @param notes remarks
 */
public record ChangeEntry(LocalDate on, Change.Part part, Optional<String> notes) {}
