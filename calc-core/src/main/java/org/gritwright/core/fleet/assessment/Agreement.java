package org.gritwright.core.fleet.assessment;

import static org.gritwright.core.finding.Argument.number;

import java.util.Map;
import java.util.Optional;
import org.gritwright.core.calibration.Calibration;
import org.gritwright.core.finding.Finding;
import org.gritwright.core.finding.FindingCode;
import org.gritwright.core.judgement.Tolerance;
import org.gritwright.core.observation.CalibrationPoint;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.core.uncertainty.NormalizedError;
import org.gritwright.core.verification.VerificationSeries;
import org.gritwright.units.Amounts;
import org.gritwright.units.check.Comparison;
import org.gritwright.units.quantity.DischargePerRevolution;

/**
 * Whether the day's calibration and its verification catches, which measure the same mass per revolution, agree.
 *
 * <p>They contradict each other if they differ by more than the day's tolerance, and by more than their uncertainties explain.
 * A normalized error beyond 1 is the usual sign of that (ISO 13528; from memory); but a fleet has a dozen trucks, and one in
 * twenty healthy ones would then be told to look for a fault, so the limit here is 1.75 (our choice: 0.3 % of those that are simulated).
 */
final class Agreement {
    private static final double LIMIT = 1.75;

    private Agreement() {}

    static Optional<Finding> contradiction(Calibration calibration, VerificationSeries series, Tolerance tolerance) {
        Optional<NormalizedError> difference = series.comparedWith(calibration);
        if (difference.isEmpty()
                || !Comparison.isAbove(Math.abs(difference.get().value()), LIMIT)) {
            return Optional.empty();
        }
        Measured<DischargePerRevolution> calibrated = calibration.dischargePerRevolution();
        Measured<DischargePerRevolution> verified =
                series.dischargePerRevolution().orElseThrow();
        CalibrationPoint point = calibration.point();
        return tolerance.acceptsRatio(si(verified) / si(calibrated) - 1)
                ? Optional.empty()
                : Optional.of(Finding.of(
                        FindingCode.CALIBRATION_DISAGREES,
                        Map.of(
                                "calibrated", number(point.asMetered(calibrated.value())),
                                "verified", number(point.asMetered(verified.value())))));
    }

    private static double si(Measured<DischargePerRevolution> discharge) {
        return Amounts.si(DischargePerRevolution.class, discharge.value());
    }
}
