package org.gritwright.core.fleet.assessment;

import java.util.List;
import java.util.Optional;
import org.gritwright.core.calibration.Calibration;
import org.gritwright.core.curve.DischargeCurve;
import org.gritwright.core.finding.Finding;
import org.gritwright.core.fleet.day.TruckDay;
import org.gritwright.core.roadspeed.RoadSpeedCheck;
import org.gritwright.core.verification.Advice;
import org.gritwright.core.verification.Correction;
import org.gritwright.core.verification.StartUp;
import org.gritwright.core.verification.Verification;
import org.gritwright.core.verification.VerificationSeries;

/**
 * What a truck's day shows.
 *
 * @param truck the day as it was written down
 * @param refusal why the day can't be computed with; none if it can
 * @param calibrations the calibrations, one for each material and gate opening, in the order of their first catch
 * @param curves the discharge curves, one for each material that was caught at several gate openings
 * @param verifications the verification catches in the order of time
 * @param judged what the verification catches with the calibration in force last say together, for each material and gate
 *     opening
 * @param corrections the last correction for each material and gate opening that needed one, with its history
 * @param startUps what a start loses, for each material and gate opening where two run times tell
 * @param roadSpeed the check of the road speed
 * @param massProof whether the mass per revolution is proven
 * @param roadProof whether the road speed is proven
 * @param nextStep what has to be done next
 * @param findings everything that a person should know, each once
 */
public record TruckAssessment(
        TruckDay truck,
        Optional<String> refusal,
        List<Calibration> calibrations,
        List<DischargeCurve> curves,
        List<Verification> verifications,
        List<VerificationSeries> judged,
        List<Correction> corrections,
        List<StartUp> startUps,
        Optional<RoadSpeedCheck> roadSpeed,
        MassProof massProof,
        RoadProof roadProof,
        NextStep nextStep,
        List<Finding> findings) {

    /** Copies the lists. */
    public TruckAssessment {
        calibrations = List.copyOf(calibrations);
        curves = List.copyOf(curves);
        verifications = List.copyOf(verifications);
        judged = List.copyOf(judged);
        corrections = List.copyOf(corrections);
        startUps = List.copyOf(startUps);
        findings = List.copyOf(findings);
    }

    static TruckAssessment refused(TruckDay truck, String reason) {
        return new TruckAssessment(
                truck,
                Optional.of(reason),
                List.of(),
                List.of(),
                List.of(),
                List.of(),
                List.of(),
                List.of(),
                Optional.empty(),
                MassProof.NOT_CHECKED,
                RoadProof.NOT_CHECKED,
                NextStep.MEND_RECORD,
                List.of());
    }

    /**
     * The overall verdict in words.
     *
     * @return for example "mass per revolution proven, road speed not checked"
     */
    public String verdict() {
        return massProof.words() + ", " + roadProof.words();
    }

    /**
     * The correction to deal with.
     *
     * @return the first that isn't confirmed, else the first; none if there is no correction
     */
    public Optional<Correction> correction() {
        return corrections.stream()
                .filter(c -> c.status() != Correction.Status.CONFIRMED)
                .findFirst()
                .or(() -> corrections.stream().findFirst());
    }

    /**
     * The verification catches that can't tell and ask for more to be caught.
     *
     * @return the first; none if all tell
     */
    public Optional<VerificationSeries> undecided() {
        return judged.stream()
                .filter(series -> series.judgement().advice() == Advice.CATCH_MORE)
                .findFirst();
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
