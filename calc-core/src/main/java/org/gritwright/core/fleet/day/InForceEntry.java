package org.gritwright.core.fleet.day;

import java.util.Optional;
import javax.measure.Quantity;
import org.gritwright.core.calibration.CalibrationInForce;
import org.gritwright.core.calibration.Since;
import org.gritwright.units.check.Require;

/**
 * A calibration in force when the day began, as it was written down. A truck has any number of them, each for one calibration
 * point; one of the controller's slots holds one of them. Immutable, thread-safe, a value.
 *
 * @param value the value that the display held
 * @param displayStep the step in which the display takes that value
 * @param since since when the display held it
 * @param material the name of the material it is for
 * @param setting the gate setting it is for; none for a spreader without a gate to set
 * @param slot where the controller keeps it
 */
public record InForceEntry(
        Quantity<?> value,
        Optional<Quantity<?>> displayStep,
        Since since,
        String material,
        Optional<Quantity<?>> setting,
        Optional<String> slot) {
    /** Checks that nothing is null. */
    public InForceEntry {
        Require.given(InForceEntry.class, value, displayStep, since, material, setting, slot);
    }

    /**
     * A calibration in force as it is written down, so that one day's result becomes the next day's beginning.
     *
     * @param held what a display holds
     * @param since since when, where the calibration doesn't say
     * @return the entry
     */
    public static InForceEntry of(CalibrationInForce held, Since since) {
        return new InForceEntry(
                held.factor().value(),
                held.displayStep(),
                held.since().orElse(since),
                held.point().material().name(),
                held.point().setting().quantity(),
                held.slot());
    }
}
