package org.gritwright.core.fleet.assessment;

import java.util.List;
import java.util.Optional;
import org.gritwright.core.calibration.Calibration;
import org.gritwright.core.calibration.CalibrationInForce;
import org.gritwright.core.envelope.Envelope;
import org.gritwright.core.finding.Finding;
import org.gritwright.core.observation.CalibrationPoint;
import org.gritwright.core.verification.Correction;
import org.gritwright.core.verification.StartUp;
import org.gritwright.core.verification.Verification;
import org.gritwright.core.verification.VerificationSeries;
import org.gritwright.units.check.Require;

/**
 * What a truck's day shows about one calibration point. Immutable, thread-safe, a value.
 *
 * @param point the calibration point
 * @param inForce the values in force for it when the day began; none where only catches name the point
 * @param calibration the calibration from the day's calibration catches
 * @param verifications the verification catches in the order of time
 * @param judged what the verification catches with the value in force last say together
 * @param correction the last correction, with its history
 * @param startUp what a start loses, where two run times tell
 * @param proof whether the value in force is proven
 * @param held what the display holds for the point after the day, as far as the catches show
 * @param envelope what the truck can do on the road with the discharge as it is best known: the day's calibration, or else the
 *     value as left; none where the drive's range or the discharge isn't known
 * @param findings everything that a person should know about the point
 */
public record PointAssessment(
        CalibrationPoint point,
        List<CalibrationInForce> inForce,
        Optional<Calibration> calibration,
        List<Verification> verifications,
        Optional<VerificationSeries> judged,
        Optional<Correction> correction,
        Optional<StartUp> startUp,
        MassProof proof,
        List<CalibrationInForce> held,
        Optional<Envelope> envelope,
        List<Finding> findings) {

    /** Copies the lists. */
    public PointAssessment {
        Require.given(
                PointAssessment.class,
                point,
                inForce,
                calibration,
                verifications,
                judged,
                correction,
                startUp,
                proof,
                held,
                envelope,
                findings);
        inForce = List.copyOf(inForce);
        verifications = List.copyOf(verifications);
        held = List.copyOf(held);
        findings = List.copyOf(findings);
    }

    /**
     * The last verification.
     *
     * @return the last one in the order of time
     */
    public Optional<Verification> lastVerification() {
        return verifications.isEmpty() ? Optional.empty() : Optional.of(verifications.get(verifications.size() - 1));
    }
}
