package org.gritwright.core.fleet;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.gritwright.core.calibration.CalibrationFactor;
import org.gritwright.core.finding.Finding;
import org.gritwright.core.verification.Correction;
import org.gritwright.core.verification.StartUp;
import org.gritwright.core.verification.Tolerance;
import org.gritwright.core.verification.Verdict;
import org.gritwright.core.verification.Verification;
import org.gritwright.core.verification.VerificationCatch;

/** What the verification catches of one material and gate opening prove, in the order of time. */
record Proof(List<Verification> inOrder, Optional<Correction> correction, Optional<StartUp> startUp) {

    static Proof of(List<Verification> inOrder, Tolerance tolerance) {
        List<VerificationCatch> catches =
                inOrder.stream().map(Verification::source).toList();
        Optional<StartUp> startUp =
                StartUp.isSeparable(catches) ? Optional.of(StartUp.separate(catches, tolerance)) : Optional.empty();
        return new Proof(inOrder, followCorrections(inOrder), startUp);
    }

    /**
     * Follows the day: a catch outside tolerance proposes a correction, a later catch with another value in force shows
     * what was entered, and that or a still later one may confirm it.
     */
    private static Optional<Correction> followCorrections(List<Verification> inOrder) {
        Correction current = null;
        for (Verification verification : inOrder) {
            CalibrationFactor inForce = verification.source().inForce().factor();
            if (current != null
                    && current.status() == Correction.Status.PROPOSED
                    && !inForce.equals(current.asFound())) {
                current = current.entered(inForce);
            }
            if (current != null && current.isConfirmableBy(verification.source())) {
                current = current.confirmedBy(verification);
            }
            if (verification.verdict() == Verdict.OUTSIDE_TOLERANCE) {
                current = verification.proposedCorrection().orElse(current);
            }
        }
        return Optional.ofNullable(current);
    }

    private Verification last() {
        return inOrder.get(inOrder.size() - 1);
    }

    MassProof massProof() {
        boolean open = correction.isPresent() && correction.get().status() != Correction.Status.CONFIRMED;
        boolean doubted = last().calibrationError().isPresent()
                && last().findings().stream().anyMatch(f -> f.code().doubtsData());
        if (last().verdict() == Verdict.OUTSIDE_TOLERANCE || open || doubted) {
            return MassProof.NOT_PROVEN;
        }
        return last().calibrationError().isPresent() ? MassProof.PROVEN : MassProof.DELIVERY_ONLY;
    }

    /** Findings of what still stands: an earlier catch that a later one has settled is history. */
    List<Finding> currentFindings() {
        List<Finding> current = new ArrayList<>(last().findings());
        correction.ifPresent(c -> current.addAll(c.findings()));
        startUp.ifPresent(s -> current.addAll(s.findings()));
        return current;
    }
}
