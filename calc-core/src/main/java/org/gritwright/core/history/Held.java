package org.gritwright.core.history;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import javax.measure.quantity.Dimensionless;
import org.gritwright.core.calibration.CalibrationInForce;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.check.Require;
import org.gritwright.units.quantity.DischargePerRevolution;

/**
 * A value that a slot holds at an instant, and what is known of it. Immutable, thread-safe, a value.
 *
 * @param value the value, with its calibration point
 * @param since since when it is held
 * @param entered the event by which it came there
 * @param calibrated the last calibration of the point until then; none if there was none
 * @param verified the last verification of this value since it is held; none if there was none
 * @param found the verification that called for it, if it is a correction and that is known
 * @param changed what was changed of the truck, what came as another lot of the material, or a catch with another value in force, since it was last verified or, if it never
 *     was, since it was entered
 */
public record Held(
        CalibrationInForce value,
        Instant since,
        Event entered,
        Optional<Event> calibrated,
        Optional<Event> verified,
        Optional<Event> found,
        List<Event> changed) {
    /** Copies the list. */
    public Held {
        Require.given(Held.class, value, since, entered, calibrated, verified, found, changed);
        changed = List.copyOf(changed);
    }

    /**
     * How sure the value is.
     *
     * @return as the events so far say
     */
    public Standing standing() {
        boolean isChanged = changed.stream().anyMatch(event -> event.what() instanceof What.Changed);
        boolean isContradicted = changed.stream().anyMatch(event -> event.what() instanceof What.Verified);
        if (isChanged || (isContradicted && verified.isPresent())) {
            return Standing.CHANGED_SINCE;
        }
        return verified.map(event -> switch (((What.Verified) event.what()).verdict()) {
                    case WITHIN_TOLERANCE -> Standing.PROVEN;
                    case OUTSIDE_TOLERANCE -> Standing.WRONG;
                    case UNDECIDED, UNDECIDABLE -> Standing.UNDECIDED;
                })
                .orElse(Standing.NOT_CHECKED);
    }

    /**
     * By how much the value is off, as far as it is known: what the last verification found; else 0, as uncertain as the catches from
     * which a correction was computed; else what the calibration before it says.
     *
     * @return indicated ÷ true mass − 1; none if nothing is known
     */
    public Optional<Measured<Dimensionless>> error() {
        return verified.or(() -> found).or(() -> calibrated).map(event -> errorBy(value, event));
    }

    /** The error of a value by a verification of it, by the verification that called for it, or by a calibration. */
    static Measured<Dimensionless> errorBy(CalibrationInForce value, Event evidence) {
        if (evidence.what() instanceof What.Verified verified) {
            return verified.inForce().factor().equals(value.factor()) ? verified.error() : corrected(verified.error());
        }
        return againstCalibration(value, (What.Calibrated) evidence.what());
    }

    /** A value that a catch called for is right by that catch, and as uncertain as the catch is. */
    private static Measured<Dimensionless> corrected(Measured<Dimensionless> found) {
        double grown = 1 + Amounts.si(Dimensionless.class, found.value());
        return relative(
                0,
                found.standardUncertainty()
                        .map(u -> Amounts.si(Dimensionless.class, u) / grown)
                        .orElse(Double.NaN),
                found.degreesOfFreedom().orElse(1));
    }

    private static Measured<Dimensionless> againstCalibration(CalibrationInForce value, What.Calibrated calibration) {
        double calibrated =
                Amounts.si(DischargePerRevolution.class, calibration.discharge().value());
        double ratio = value.kilogramsPerRevolution() / calibrated;
        return relative(
                ratio - 1,
                calibration
                        .discharge()
                        .standardUncertainty()
                        .map(u -> Amounts.si(DischargePerRevolution.class, u) / calibrated * ratio)
                        .orElse(Double.NaN),
                calibration.discharge().degreesOfFreedom().orElse(1));
    }

    /** In per cent; without an uncertainty where that isn't a number. */
    private static Measured<Dimensionless> relative(double error, double uncertainty, double degreesOfFreedom) {
        return Double.isNaN(uncertainty)
                ? Measured.once(Amounts.ofSi(error, SpreadingUnits.PERCENT))
                : Measured.of(
                        Amounts.ofSi(error, SpreadingUnits.PERCENT),
                        Amounts.ofSi(uncertainty, SpreadingUnits.PERCENT),
                        degreesOfFreedom);
    }
}
