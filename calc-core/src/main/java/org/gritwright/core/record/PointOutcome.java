package org.gritwright.core.record;

import java.util.List;
import java.util.Optional;
import javax.measure.Quantity;
import org.gritwright.core.calibration.Since;
import org.gritwright.core.fleet.assessment.MassProof;
import org.gritwright.core.fleet.assessment.PointAssessment;
import org.gritwright.core.fleet.day.InForceEntry;

/**
 * What a day showed about one calibration point, as it stands in a record.
 *
 * @param material the material's name
 * @param setting where the gate stood; none for a spreader without a gate to set
 * @param proof whether the value in force is proven; none in older records
 * @param calibration the calibration; none if none was made
 * @param verifications the verification catches in the order of time
 * @param correction the last correction; none if none was needed
 * @param startUp what a start loses; none where two run times don't tell
 * @param held what the display held for the point after the day, as the next day's calibrations in force; empty in older
 *     records
 */
public record PointOutcome(
        String material,
        Optional<Quantity<?>> setting,
        Optional<MassProof> proof,
        Optional<CalibrationOutcome> calibration,
        List<VerificationOutcome> verifications,
        Optional<CorrectionOutcome> correction,
        Optional<StartUpOutcome> startUp,
        List<InForceEntry> held) {
    /** Copies the lists. */
    public PointOutcome {
        verifications = List.copyOf(verifications);
        held = List.copyOf(held);
    }

    static PointOutcome of(PointAssessment assessment, Since day) {
        return new PointOutcome(
                assessment.point().material().name(),
                assessment.point().setting().quantity(),
                Optional.of(assessment.proof()),
                assessment.calibration().map(CalibrationOutcome::of),
                assessment.verifications().stream()
                        .map(v -> VerificationOutcome.of(v, assessment.judged()))
                        .toList(),
                assessment.correction().map(CorrectionOutcome::of),
                assessment.startUp().map(StartUpOutcome::of),
                assessment.held().stream()
                        .map(held -> InForceEntry.of(held, day))
                        .toList());
    }
}
