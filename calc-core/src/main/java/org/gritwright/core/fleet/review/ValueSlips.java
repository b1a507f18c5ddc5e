package org.gritwright.core.fleet.review;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.gritwright.core.calibration.CalibrationInForce;
import org.gritwright.core.finding.Slip;
import org.gritwright.core.finding.Slip.Mistake;
import org.gritwright.core.finding.Term;
import org.gritwright.core.verification.VerificationCatch;

/** Values in force: those that catches were made with are not those that the truck lists, nor the day's calibration. */
final class ValueSlips {
    private ValueSlips() {}

    static List<Hypothesis> of(Sketch day) {
        List<Hypothesis> all = new ArrayList<>();
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
                        List.of(used.factor()
                                .withDischarge(
                                        expected.kilogramsPerRevolution(),
                                        expected.point().metering().feedback())
                                .value())),
                List.of(asExpected.without(other), day.without(expected.kilogramsPerRevolution())),
                1);
    }
}
