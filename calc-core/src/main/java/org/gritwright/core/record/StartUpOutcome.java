package org.gritwright.core.record;

import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Mass;
import javax.measure.quantity.Time;
import org.gritwright.core.verification.StartUp;

/**
 * What a start loses, as it stands in a record.
 *
 * @param lostMassPerStart mass that a start loses
 * @param lostTimePerStart the same as time at the steady flow
 * @param steadyError steady flow ÷ target flow − 1
 * @param steadyErrorUncertainty its standard uncertainty; none for two catches
 */
public record StartUpOutcome(
        Quantity<Mass> lostMassPerStart,
        Quantity<Time> lostTimePerStart,
        Quantity<Dimensionless> steadyError,
        Optional<Quantity<Dimensionless>> steadyErrorUncertainty) {
    static StartUpOutcome of(StartUp startUp) {
        return new StartUpOutcome(
                startUp.lostMassPerStart(),
                startUp.lostTimePerStart(),
                startUp.steadyError(),
                startUp.steadyErrorUncertainty());
    }
}
