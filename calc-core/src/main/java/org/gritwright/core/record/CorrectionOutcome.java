package org.gritwright.core.record;

import java.util.Optional;
import javax.measure.Quantity;
import org.gritwright.core.calibration.CalibrationFactor;
import org.gritwright.core.calibration.CalibrationInForce;
import org.gritwright.core.verification.Correction;

/**
 * A correction as it stands in a record.
 *
 * @param material the name of the material it is for
 * @param opening the gate opening it is for; none for a spreader without a gate to set
 * @param asFound the value in force when the catch was made
 * @param computed the value that the catch calls for, not rounded
 * @param toEnter the value to enter, rounded to the display's step
 * @param asLeft the value that the display reads back; none before it was entered
 * @param status how far the correction has come
 */
public record CorrectionOutcome(
        String material,
        Optional<Quantity<?>> opening,
        Quantity<?> asFound,
        Quantity<?> computed,
        Quantity<?> toEnter,
        Optional<Quantity<?>> asLeft,
        Correction.Status status) {

    static CorrectionOutcome of(Correction correction) {
        CalibrationInForce inForce = correction.evidence().inForce();
        return new CorrectionOutcome(
                inForce.material().name(),
                inForce.opening(),
                correction.asFound().value(),
                correction.computed().value(),
                correction.toEnter().value(),
                correction.asLeft().map(CalibrationFactor::value),
                correction.status());
    }
}
