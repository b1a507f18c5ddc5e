package org.gritwright.examples.fleetday;

import org.gritwright.core.fleet.assessment.MassProof;
import org.gritwright.core.fleet.assessment.PointAssessment;
import org.gritwright.core.fleet.assessment.RoadProof;
import org.gritwright.core.fleet.assessment.TruckAssessment;
import org.gritwright.core.judgement.Verdict;
import org.gritwright.core.verification.Advice;
import org.gritwright.core.verification.VerificationSeries;

/**
 * How what meters on a truck, or its road speed, stands, as a sign and in the words of the yard.
 *
 * @param sign the same in one character, beside the words and never without them
 * @param words for example "right"
 */
record Standing(String sign, String words) {
    private static final Standing WRONG = new Standing("✗", MassProof.NOT_PROVEN.words());
    private static final Standing OPEN = new Standing("?", MassProof.UNDECIDED.words());
    private static final Standing NOT_CHECKED = new Standing("–", MassProof.NOT_CHECKED.words());

    /** What is laid for each turn of the conveyor or pump, or each pulse of the flow meter. */
    static Standing metering(TruckAssessment truck) {
        if (truck.isRefused()) {
            return OPEN;
        }
        return switch (truck.massProof()) {
            case PROVEN, PROVEN_BY_CURVE, DELIVERY_ONLY ->
                right(truck.massProof().words());
            case NOT_PROVEN -> notProven(truck);
            case UNDECIDED -> OPEN;
            case NOT_CHECKED -> NOT_CHECKED;
        };
    }

    static Standing roadSpeed(TruckAssessment truck) {
        if (truck.isRefused()) {
            return OPEN;
        }
        return switch (truck.roadProof()) {
            case PROVEN -> right(RoadProof.PROVEN.words());
            case NOT_PROVEN -> WRONG;
            case UNDECIDED -> OPEN;
            case NOT_CHECKED -> NOT_CHECKED;
        };
    }

    public String text() {
        return sign + " " + words;
    }

    private static Standing right(String words) {
        return new Standing("✓", words);
    }

    /** A value is wrong where its catches show it; a new one that they don't show to be right or wrong is open. */
    private static Standing notProven(TruckAssessment truck) {
        boolean wrong = truck.points().stream()
                .filter(point -> point.proof() == MassProof.NOT_PROVEN)
                .anyMatch(Standing::isWrong);
        return wrong ? WRONG : OPEN;
    }

    private static boolean isWrong(PointAssessment point) {
        return point.judged()
                .map(VerificationSeries::judgement)
                .filter(judgement ->
                        judgement.verdict() == Verdict.OUTSIDE_TOLERANCE && judgement.advice() != Advice.FIND_FAULT)
                .isPresent();
    }
}
