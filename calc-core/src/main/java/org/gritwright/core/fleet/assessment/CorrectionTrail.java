package org.gritwright.core.fleet.assessment;

import static org.gritwright.core.finding.Argument.number;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.gritwright.core.calibration.CalibrationFactor;
import org.gritwright.core.finding.Finding;
import org.gritwright.core.finding.FindingCode;
import org.gritwright.core.verification.Advice;
import org.gritwright.core.verification.Correction;
import org.gritwright.core.verification.SeriesFollower;
import org.gritwright.core.verification.Verification;
import org.gritwright.core.verification.VerificationSeries;

/**
 * Follows the day's catches at one point: a catch that calls for a correction proposes a correction, a later catch with another
 * value in force shows what was entered, and that or a still later one may confirm it. The catch that a correction was made
 * from never corrects again, and one that passes with the value as found speaks against the proposal, as do all together where they
 * no longer call for it. Each catch costs about the same, however many came before.
 */
final class CorrectionTrail {
    private final SeriesFollower together = new SeriesFollower();
    private final List<Finding> contradictions = new ArrayList<>();
    private Optional<VerificationSeries> alone = Optional.empty();
    private Optional<VerificationSeries> judged = Optional.empty();
    private Optional<Correction> correction = Optional.empty();
    /** Whether every catch of the series that is judged may confirm the correction. */
    private boolean confirmable;
    /** The last series that confirms it. */
    private Optional<VerificationSeries> proof = Optional.empty();

    void follow(Verification verification) {
        VerificationSeries own = together.follow(verification);
        boolean begins = own.size() == 1;
        VerificationSeries series = own.withCalibration();
        alone = Optional.of(own);
        judged = Optional.of(series);
        CalibrationFactor inForce = verification.source().inForce().factor();
        boolean proposed =
                correction.filter(c -> c.status() == Correction.Status.PROPOSED).isPresent();
        if (proposed && !inForce.equals(correction.get().asFound())) {
            correction = correction.map(c ->
                    c.entered(inForce, verification.source().observation().at().toLocalDate()));
        } else if (proposed && verification.passes()) {
            contradictions.add(Finding.of(
                    FindingCode.CATCHES_DISAGREE,
                    Map.of("error", number(verification.calibrationError().orElseThrow()))));
            replace(Optional.empty());
        } else if (proposed && !begins && series.advice() != Advice.CORRECT) {
            // What the first catches called for, all together don't.
            replace(Optional.empty());
        }
        confirmable = (begins || confirmable)
                && correction
                        .filter(c -> c.isConfirmableBy(verification.source()))
                        .isPresent();
        if (confirmable && series.passes()) {
            proof = Optional.of(series);
        }
        boolean again = correction
                .filter(c -> verification.source().isSameDischarge(c.evidence()))
                .isPresent();
        if (series.advice() == Advice.CORRECT && !again) {
            series.proposedCorrection().ifPresent(c -> replace(Optional.of(c)));
        }
    }

    private void replace(Optional<Correction> other) {
        correction = other;
        proof = Optional.empty();
    }

    /** The same without the calibration catches. */
    Optional<VerificationSeries> alone() {
        return alone;
    }

    /** What the catches with the calibration in force last say together, with the calibration catches where that is needed. */
    Optional<VerificationSeries> judged() {
        return judged;
    }

    /** The last correction, with its history. */
    Optional<Correction> correction() {
        return correction.map(c -> proof.map(c::confirmedBy).orElse(c));
    }

    List<Finding> contradictions() {
        return contradictions;
    }
}
