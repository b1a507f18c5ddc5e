package org.gritwright.core.history;

import java.time.Instant;
import java.util.Optional;
import org.gritwright.core.calibration.CalibrationInForce;
import org.gritwright.units.check.Require;

/**
 * A slot that came to hold something else: who changed it, when, from what and to what. Immutable, thread-safe, a value.
 *
 * @param at when
 * @param slot the controller's slot, or where nobody names slots the material
 * @param from what it held for the point before; none if it held nothing known for it
 * @param to what it holds since; none if nobody knows
 * @param by the event, which says who and from where it is known; one that only shows the value says that nobody wrote the change down
 */
public record ValueChange(
        Instant at, String slot, Optional<CalibrationInForce> from, Optional<CalibrationInForce> to, Event by) {
    /** Checks that nothing is null. */
    public ValueChange {
        Require.given(ValueChange.class, at, slot, from, to, by);
    }

    /**
     * Whether somebody wrote down when it was changed, or it was only noticed later.
     *
     * @return false if the display was seen to hold a value, and nobody says since when
     */
    public boolean isWrittenDown() {
        return by.what() instanceof What.Shown shown
                ? shown.seen().since().isPresent()
                : !(by.what() instanceof What.Verified);
    }
}
