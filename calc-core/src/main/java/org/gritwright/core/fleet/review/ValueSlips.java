package org.gritwright.core.fleet.review;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Mass;
import org.gritwright.core.calibration.CalibrationFactor;
import org.gritwright.core.calibration.CalibrationInForce;
import org.gritwright.core.finding.Slip;
import org.gritwright.core.finding.Slip.Mistake;
import org.gritwright.core.finding.Term;
import org.gritwright.core.plausibility.Digits;
import org.gritwright.core.verification.VerificationCatch;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;

/**
 * Values in force: those that catches were made with are not those that the truck lists, nor the day's calibration; or, where
 * nothing was caught, they don't fit the equipment.
 */
final class ValueSlips {
    private static final List<Double> MASS_FACTORS =
            List.of(10.0, 1 / Amounts.si(Mass.class, Amounts.of(1, SpreadingUnits.POUND)));

    private ValueSlips() {}

    static List<Hypothesis> of(Sketch day) {
        List<Hypothesis> all = new ArrayList<>();
        // Pulses per gallon and per liter are a display's matter of course; what it took for the other, catches show.
        boolean liquid =
                day.held().stream().anyMatch(value -> value.point().material().isLiquid());
        if (day.catches().isEmpty() || liquid) {
            day.held().forEach(value -> {
                for (double factor : liquid ? Digits.VOLUME_FACTORS : MASS_FACTORS) {
                    all.add(scaled(day, value, factor, Mistake.TOO_SMALL));
                    all.add(scaled(day, value, 1 / factor, Mistake.TOO_LARGE));
                }
            });
        }
        if (day.unlisted() == 0) {
            return all;
        }
        for (Sketch.Held expected : day.expected()) {
            Optional<CalibrationInForce> used = day.catches().stream()
                    .filter(one -> one.point().equals(expected.point()))
                    .flatMap(one -> one.verification().stream())
                    .map(VerificationCatch::inForce)
                    .filter(value -> value.kilogramsPerRevolution() != expected.kilogramsPerRevolution())
                    .findFirst();
            used.ifPresent(value -> all.add(notAsExpected(day, expected, value)));
        }
        return all;
    }

    /** Its decimal point moved, or in another unit of mass. */
    private static Hypothesis scaled(Sketch day, Sketch.Held value, double factor, Mistake mistake) {
        double kilograms = value.kilogramsPerRevolution() * factor;
        Slip slip = Slip.byFactor(
                Term.VALUE_IN_FORCE,
                mistake,
                Math.max(factor, 1 / factor),
                instead(value, value.entered().orElseThrow(), kilograms));
        return new Hypothesis(
                slip,
                List.of(day.withHeld(one -> one.equals(value) ? one.with(kilograms, one.looseKilograms()) : one)),
                day.held().size());
    }

    private static Quantity<?> instead(Sketch.Held value, CalibrationFactor written, double kilograms) {
        return written.withDischarge(kilograms, value.point()).value();
    }

    /** Either may be the wrong one. */
    private static Hypothesis notAsExpected(Sketch day, Sketch.Held expected, CalibrationInForce used) {
        double other = used.kilogramsPerRevolution();
        Sketch asExpected = day.with(one -> one.isVerification() && one.heldKilograms() == other
                ? one.withHeld(expected.kilogramsPerRevolution())
                : one);
        return new Hypothesis(
                Slip.of(
                        Term.VALUE_IN_FORCE,
                        Mistake.NOT_AS_LISTED,
                        List.of(instead(expected, used.factor(), expected.kilogramsPerRevolution()))),
                List.of(asExpected.without(other), day.without(expected.kilogramsPerRevolution())),
                1);
    }
}
