package org.gritwright.core.fleet.assessment;

import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.gritwright.core.calibration.Calibration;
import org.gritwright.core.calibration.CalibrationFactor;
import org.gritwright.core.finding.Finding;
import org.gritwright.core.finding.FindingCode;
import org.gritwright.core.judgement.Tolerance;
import org.gritwright.core.judgement.Verdict;
import org.gritwright.core.verification.Advice;
import org.gritwright.core.verification.Correction;
import org.gritwright.core.verification.StartUp;
import org.gritwright.core.verification.Verification;
import org.gritwright.core.verification.VerificationCatch;
import org.gritwright.core.verification.VerificationSeries;

/**
 * What the catches of one material and gate opening show together, in the order of time: a correction of one says
 * nothing of another.
 */
final class PlaceAssessment {

    /** A verification and when its catch was made. */
    record Timed(OffsetDateTime at, Verification verification) {}

    private final Optional<Calibration> calibration;
    private final Optional<OffsetDateTime> lastCalibratedAt;
    private final List<Timed> verifications;
    private final Optional<StartUp> startUp;
    private final Optional<VerificationSeries> judged;
    private final List<Finding> contradictions = new ArrayList<>();
    private final Optional<Correction> correction;

    /**
     * Assesses one place.
     *
     * @param calibration the calibration from its calibration catches, if there are any
     * @param lastCalibratedAt when the last of those was made
     * @param verifications its verification catches in the order of time
     * @param tolerance the day's tolerance
     */
    PlaceAssessment(
            Optional<Calibration> calibration,
            Optional<OffsetDateTime> lastCalibratedAt,
            List<Timed> verifications,
            Tolerance tolerance) {
        this.calibration = calibration;
        this.lastCalibratedAt = lastCalibratedAt;
        this.verifications = List.copyOf(verifications);
        List<VerificationCatch> catches =
                verifications.stream().map(v -> v.verification().source()).toList();
        this.startUp =
                StartUp.isSeparable(catches) ? Optional.of(StartUp.separate(catches, tolerance)) : Optional.empty();
        this.judged = this.verifications.isEmpty()
                ? Optional.empty()
                : Optional.of(seriesUpTo(this.verifications.size() - 1));
        this.correction = followCorrections();
    }

    /**
     * Follows the day: a catch that calls for a correction proposes a correction, a later catch with another value in force shows
     * what was entered, and that or a still later one may confirm it. The catch that a correction was made from never
     * corrects again, and one that passes with the value as found speaks against the proposal.
     */
    private Optional<Correction> followCorrections() {
        Correction current = null;
        for (int i = 0; i < verifications.size(); i++) {
            Timed timed = verifications.get(i);
            Verification verification = timed.verification();
            VerificationSeries series = seriesUpTo(i);
            CalibrationFactor inForce = verification.source().inForce().factor();
            boolean proposed = current != null && current.status() == Correction.Status.PROPOSED;
            if (proposed && !inForce.equals(current.asFound())) {
                current = current.entered(inForce, timed.at().toLocalDate());
            } else if (proposed && passes(verification)) {
                contradictions.add(Finding.of(
                        FindingCode.CATCHES_DISAGREE,
                        Map.of("error", verification.calibrationError().orElseThrow())));
                current = null;
            }
            if (current != null && isConfirmableBy(current, series)) {
                current = current.confirmedBy(series);
            }
            boolean again = current != null && verification.source().isSameDischarge(current.evidence());
            if (series.judgement().advice() == Advice.CORRECT && !again) {
                current = series.proposedCorrection().orElse(current);
            }
        }
        return Optional.ofNullable(current);
    }

    private static boolean isConfirmableBy(Correction correction, VerificationSeries series) {
        return series.verifications().stream().allMatch(v -> correction.isConfirmableBy(v.source()));
    }

    /**
     * The catches up to one of them that were made with its calibration, each discharge once: they are judged together. One
     * whose data are doubted stands alone.
     */
    private VerificationSeries seriesUpTo(int index) {
        Verification last = verifications.get(index).verification();
        ArrayDeque<Verification> together = new ArrayDeque<>(List.of(last));
        for (int i = index - 1; i >= 0 && !isDoubted(last); i--) {
            Verification earlier = verifications.get(i).verification();
            boolean alike = earlier.source().inForce().equals(last.source().inForce())
                    && earlier.calibrationError().isPresent()
                            == last.calibrationError().isPresent()
                    && !isDoubted(earlier);
            if (!alike) {
                break;
            }
            if (together.stream().noneMatch(v -> v.source().isSameDischarge(earlier.source()))) {
                together.addFirst(earlier);
            }
        }
        return VerificationSeries.of(List.copyOf(together));
    }

    private static boolean passes(Verification verification) {
        return verification.calibrationError().isPresent()
                && verification.verdict() == Verdict.WITHIN_TOLERANCE
                && !isDoubted(verification);
    }

    private static boolean isDoubted(Verification verification) {
        return verification.findings().stream().anyMatch(f -> f.code().doubtsData());
    }

    Optional<Calibration> calibration() {
        return calibration;
    }

    List<Timed> verifications() {
        return verifications;
    }

    Optional<Correction> correction() {
        return correction;
    }

    Optional<StartUp> startUp() {
        return startUp;
    }

    /** What the catches with the calibration in force last say together. */
    Optional<VerificationSeries> judged() {
        return judged;
    }

    private Optional<Timed> last() {
        return verifications.isEmpty() ? Optional.empty() : Optional.of(verifications.get(verifications.size() - 1));
    }

    /** A calibration made after the last verification catch is as yet unproven. */
    MassProof massProof() {
        boolean calibratedSince = last().isEmpty()
                || lastCalibratedAt
                        .filter(at -> at.isAfter(last().orElseThrow().at()))
                        .isPresent();
        if (calibratedSince) {
            return MassProof.NOT_CHECKED;
        }
        Verification verification = last().get().verification();
        boolean open = correction.isPresent() && correction.get().status() != Correction.Status.CONFIRMED;
        boolean counted = verification.calibrationError().isPresent();
        Verdict verdict = judged().orElseThrow().judgement().verdict();
        if (verdict == Verdict.OUTSIDE_TOLERANCE || open || (counted && isDoubted(verification))) {
            return MassProof.NOT_PROVEN;
        }
        if (verdict != Verdict.WITHIN_TOLERANCE) {
            return MassProof.UNDECIDED;
        }
        return counted ? MassProof.PROVEN : MassProof.DELIVERY_ONLY;
    }

    /** The day on which the value in the display was last made new: by a calibration or an entered correction. */
    Optional<LocalDate> renewedOn() {
        Optional<LocalDate> corrected = correction
                .flatMap(Correction::asLeft)
                .flatMap(left -> last())
                .map(timed -> timed.at().toLocalDate());
        return corrected.or(() -> lastCalibratedAt.map(OffsetDateTime::toLocalDate));
    }

    /** Everything noticed. */
    List<Finding> findings() {
        List<Finding> findings = new ArrayList<>();
        calibration.ifPresent(c -> findings.addAll(c.findings()));
        verifications.forEach(v -> findings.addAll(v.verification().findings()));
        addFollowing(findings);
        return findings;
    }

    /** What still stands: an earlier catch that a later one has settled is history. */
    List<Finding> currentFindings() {
        List<Finding> findings = new ArrayList<>();
        calibration.ifPresent(c -> findings.addAll(c.findings()));
        last().ifPresent(v -> findings.addAll(v.verification().findings()));
        addFollowing(findings);
        return findings;
    }

    private void addFollowing(List<Finding> findings) {
        findings.addAll(contradictions);
        correction.ifPresent(c -> findings.addAll(c.findings()));
        startUp.ifPresent(s -> findings.addAll(s.findings()));
    }
}
