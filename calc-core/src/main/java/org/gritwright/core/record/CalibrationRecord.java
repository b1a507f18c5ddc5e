package org.gritwright.core.record;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.gritwright.core.finding.Finding;
import org.gritwright.core.fleet.assessment.MassProof;
import org.gritwright.core.fleet.assessment.NextStep;
import org.gritwright.core.fleet.assessment.RoadProof;
import org.gritwright.core.fleet.assessment.TruckAssessment;
import org.gritwright.core.fleet.day.FleetDay;
import org.gritwright.units.InvalidInputException;

/**
 * One truck's calibration record: what was written down that day, so that anyone can compute it again, what came out,
 * and who signed it off.
 *
 * @param entered the day with this truck only
 * @param refusal why the day can't be computed with; none if it can
 * @param calibrations the calibrations
 * @param curves the discharge curves over several gate openings
 * @param verifications the verification catches in the order of time
 * @param corrections the last correction for each material and gate opening that needed one
 * @param startUps what a start loses, for each material and gate opening where two run times tell
 * @param roadSpeed the check of the road speed
 * @param massProof whether the mass per revolution is proven
 * @param roadProof whether the road speed is proven
 * @param nextStep what has to be done next
 * @param findings everything that a person should know
 * @param signOff who signed; none before
 */
public record CalibrationRecord(
        FleetDay entered,
        Optional<String> refusal,
        List<CalibrationOutcome> calibrations,
        List<CurveOutcome> curves,
        List<VerificationOutcome> verifications,
        List<CorrectionOutcome> corrections,
        List<StartUpOutcome> startUps,
        Optional<RoadSpeedOutcome> roadSpeed,
        MassProof massProof,
        RoadProof roadProof,
        NextStep nextStep,
        List<Finding> findings,
        Optional<SignOff> signOff) {
    /**
     * Copies the lists.
     *
     * @throws InvalidInputException if the day doesn't hold exactly one truck
     */
    public CalibrationRecord {
        if (entered.trucks().size() != 1) {
            throw new InvalidInputException(
                    "trucks of a calibration record",
                    "exactly one",
                    String.valueOf(entered.trucks().size()));
        }
        Objects.requireNonNull(massProof, "massProof");
        Objects.requireNonNull(roadProof, "roadProof");
        Objects.requireNonNull(nextStep, "nextStep");
        calibrations = List.copyOf(calibrations);
        curves = List.copyOf(curves);
        verifications = List.copyOf(verifications);
        corrections = List.copyOf(corrections);
        startUps = List.copyOf(startUps);
        findings = List.copyOf(findings);
    }

    /**
     * The record of an assessment, not yet signed.
     *
     * @param day the fleet's day
     * @param assessment one truck's assessment
     * @return the record
     */
    public static CalibrationRecord of(FleetDay day, TruckAssessment assessment) {
        return new CalibrationRecord(
                day.withOnly(assessment.truck()),
                assessment.refusal(),
                assessment.calibrations().stream().map(CalibrationOutcome::of).toList(),
                assessment.curves().stream().map(CurveOutcome::of).toList(),
                assessment.verifications().stream()
                        .map(v -> VerificationOutcome.of(v, assessment.judged()))
                        .toList(),
                assessment.corrections().stream().map(CorrectionOutcome::of).toList(),
                assessment.startUps().stream().map(StartUpOutcome::of).toList(),
                assessment.roadSpeed().map(RoadSpeedOutcome::of),
                assessment.massProof(),
                assessment.roadProof(),
                assessment.nextStep(),
                assessment.findings(),
                Optional.empty());
    }

    /**
     * The same record with a signature.
     *
     * @param signature who signs off
     * @return the signed record
     */
    public CalibrationRecord signedBy(SignOff signature) {
        return new CalibrationRecord(
                entered,
                refusal,
                calibrations,
                curves,
                verifications,
                corrections,
                startUps,
                roadSpeed,
                massProof,
                roadProof,
                nextStep,
                findings,
                Optional.of(signature));
    }
}
