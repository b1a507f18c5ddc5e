package org.gritwright.core.history.drift;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import javax.measure.quantity.Dimensionless;
import org.gritwright.core.history.Event;
import org.gritwright.core.history.What;
import org.gritwright.core.observation.CalibrationPoint;
import org.gritwright.core.telemetry.SharedError;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.units.Amounts;
import org.gritwright.units.UnitSymbol;
import org.gritwright.units.check.Require;
import org.gritwright.units.quantity.DischargePerRevolution;

/**
 * What left per revolution, as one calibration or verification implies it. A verification implies the value in force ÷ (1 + error): it
 * compares what was indicated with what was caught, so that a correction, which changes the value and with it the error, changes
 * nothing here. Immutable, thread-safe, a value.
 *
 * @param by the calibration or verification
 * @param at when
 * @param discharge mass per revolution of the sensed shaft; of a liquid at its stated density; its uncertainty may be unknown
 * @param shared the parts of its uncertainty that others share, relative
 */
public record Implied(Event by, Instant at, Measured<DischargePerRevolution> discharge, List<SharedError> shared) {
    /** Copies the list. */
    public Implied {
        Require.given(Implied.class, by, at, discharge, shared);
        shared = List.copyOf(shared);
    }

    /** What an event implies at a point; nothing if it is no calibration or verification of it. */
    static Optional<Implied> of(Event event, Instant at, CalibrationPoint.Key point) {
        if (event.what().point().filter(one -> one.key().equals(point)).isEmpty()) {
            return Optional.empty();
        }
        if (event.what() instanceof What.Calibrated known) {
            return Optional.of(new Implied(event, at, known.discharge(), known.shared()));
        }
        return event.what() instanceof What.Verified verified
                ? Optional.of(new Implied(event, at, implied(verified), verified.shared()))
                : Optional.empty();
    }

    private static Measured<DischargePerRevolution> implied(What.Verified verified) {
        Measured<Dimensionless> error = verified.error();
        double grown = 1 + Amounts.si(Dimensionless.class, error.value());
        double implied = verified.inForce().kilogramsPerRevolution() / grown;
        var unit = UnitSymbol.tradeUnit(
                DischargePerRevolution.class, verified.inForce().factor().value());
        return error.standardUncertainty()
                .map(u -> Measured.of(
                        Amounts.ofSi(implied, unit),
                        Amounts.ofSi(implied * Amounts.si(Dimensionless.class, u) / grown, unit),
                        error.degreesOfFreedom().orElseThrow()))
                .orElseGet(() -> Measured.once(Amounts.ofSi(implied, unit)));
    }

    CalibrationPoint point() {
        return by.what().point().orElseThrow();
    }

    double kilogramsPerRevolution() {
        return Amounts.si(DischargePerRevolution.class, discharge.value());
    }

    /** The relative standard uncertainty that isn't shared. */
    double ownUncertainty() {
        double total = discharge
                        .standardUncertainty()
                        .map(u -> Amounts.si(DischargePerRevolution.class, u))
                        .orElseThrow()
                / kilogramsPerRevolution();
        double rest = total * total;
        for (SharedError one : shared) {
            double u = Amounts.si(Dimensionless.class, one.standardUncertainty());
            rest -= u * u;
        }
        return Math.sqrt(Math.max(0, rest));
    }
}
