package org.gritwright.core.fleet.assessment;

import java.util.List;
import java.util.Optional;
import org.gritwright.core.calibration.Calibration;
import org.gritwright.core.verification.Advice;
import org.gritwright.core.verification.Correction;
import org.gritwright.core.verification.StartUp;
import org.gritwright.core.verification.VerificationSeries;

/** What an assessment shows, gathered over its calibration points in their order. */
final class Assessments {
    private Assessments() {}

    static List<Calibration> calibrations(TruckAssessment assessment) {
        return assessment.points().stream()
                .flatMap(point -> point.calibration().stream())
                .toList();
    }

    static List<Correction> corrections(TruckAssessment assessment) {
        return assessment.points().stream()
                .flatMap(point -> point.correction().stream())
                .toList();
    }

    /** The correction that needs attention. */
    static Correction correction(TruckAssessment assessment) {
        return assessment.toCorrect().orElseThrow().correction().orElseThrow();
    }

    static List<StartUp> startUps(TruckAssessment assessment) {
        return assessment.points().stream()
                .flatMap(point -> point.startUp().stream())
                .toList();
    }

    static List<VerificationSeries> judged(TruckAssessment assessment) {
        return assessment.points().stream()
                .flatMap(point -> point.judged().stream())
                .toList();
    }

    /** The first that asks for more catches. */
    static Optional<VerificationSeries> undecided(TruckAssessment assessment) {
        return judged(assessment).stream()
                .filter(series -> series.judgement().advice() == Advice.CATCH_MORE)
                .findFirst();
    }

    /** Every reason for which a truck was refused, each with its place. */
    static List<String> reasons(TruckAssessment assessment) {
        return assessment.refusals().stream().map(Refusal::toString).toList();
    }
}
