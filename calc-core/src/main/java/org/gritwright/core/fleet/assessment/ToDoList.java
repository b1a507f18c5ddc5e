package org.gritwright.core.fleet.assessment;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.gritwright.core.finding.Finding;
import org.gritwright.core.finding.FindingCode;
import org.gritwright.core.finding.Severity;
import org.gritwright.core.fleet.day.TruckDay;
import org.gritwright.core.verification.Advice;
import org.gritwright.core.verification.Correction;

/**
 * What has to be done on a truck, most urgent first: the one place where advice is made, from judgements, corrections
 * and all findings. Of each point it names the most urgent step toward a proven value, and whether what is delivered
 * has to be looked into.
 */
record ToDoList(TruckDay truck, List<Finding> curveFindings, RoadProof roadProof) {
    private static final Set<FindingCode> MISSED_DELIVERY =
            Set.of(FindingCode.SHORTFALL, FindingCode.OVERRUN, FindingCode.START_UP_LOSS, FindingCode.STEADY_FLOW_OFF);

    /** Warnings that nothing may be built on before somebody has looked. */
    private static final Set<FindingCode> DOUBTFUL_ENTRIES =
            Set.of(FindingCode.FILL_IMPLAUSIBLE, FindingCode.OTHER_VALUE_IN_FORCE, FindingCode.CATCH_OF_ANOTHER_DAY);

    List<ToDo> of(List<PointHistory> histories, List<PointAssessment> points, Map<PointHistory, List<Finding>> ages) {
        List<ToDo> toDo = new ArrayList<>();
        if (isFault(curveFindings)) {
            toDo.add(ToDo.ofTruck(NextStep.FIND_FAULT));
        }
        if (histories.isEmpty()) {
            toDo.add(ToDo.ofTruck(NextStep.CALIBRATE));
        }
        for (int i = 0; i < histories.size(); i++) {
            PointHistory history = histories.get(i);
            MassProof proof = points.get(i).proof();
            Optional<NextStep> step = towardsProof(
                    history, proof, !ages.getOrDefault(history, List.of()).isEmpty());
            step.ifPresent(s -> toDo.add(new ToDo(s, Optional.of(history.point()))));
            boolean missed =
                    history.currentFindings().stream().map(Finding::code).anyMatch(MISSED_DELIVERY::contains);
            if (missed && !isFault(history.currentFindings())) {
                toDo.add(new ToDo(NextStep.CHECK_DELIVERY, Optional.of(history.point())));
            }
        }
        if (roadProof == RoadProof.NOT_PROVEN) {
            toDo.add(ToDo.ofTruck(NextStep.FIX_ROAD_SPEED));
        }
        if (roadProof == RoadProof.NOT_CHECKED) {
            toDo.add(ToDo.ofTruck(NextStep.CHECK_ROAD_SPEED));
        }
        return toDo.stream().sorted(Comparator.comparing(ToDo::step)).toList();
    }

    private static boolean isFault(List<Finding> findings) {
        return findings.stream().anyMatch(f -> f.severity() == Severity.ERROR);
    }

    private Optional<NextStep> towardsProof(PointHistory history, MassProof proof, boolean outOfDate) {
        Optional<Correction.Status> correction = history.correction().map(Correction::status);
        boolean proven = proof == MassProof.PROVEN || proof == MassProof.PROVEN_BY_CURVE;
        boolean nothingToWorkWith =
                truck.inForce().isEmpty() && truck.calibrationCatches().isEmpty();
        if (isFault(history.currentFindings())) {
            return Optional.of(NextStep.FIND_FAULT);
        }
        if (history.isSetElsewhere() && !proven) {
            return Optional.of(NextStep.MATCH_DISPLAY);
        }
        if (history.currentFindings().stream().map(Finding::code).anyMatch(DOUBTFUL_ENTRIES::contains)) {
            return Optional.of(NextStep.CHECK_ENTRIES);
        }
        if (correction.filter(Correction.Status.PROPOSED::equals).isPresent()) {
            return Optional.of(NextStep.ENTER_CORRECTION);
        }
        if (correction.filter(Correction.Status.UNCONFIRMED::equals).isPresent()) {
            return Optional.of(NextStep.CONFIRM_CORRECTION);
        }
        if (history.judged()
                .filter(series -> series.judgement().advice() == Advice.CATCH_MORE)
                .isPresent()) {
            return Optional.of(NextStep.CATCH_MORE);
        }
        if (proven) {
            return Optional.empty();
        }
        if (outOfDate || nothingToWorkWith) {
            return Optional.of(NextStep.CALIBRATE);
        }
        return proof == MassProof.DELIVERY_ONLY ? Optional.empty() : Optional.of(NextStep.VERIFY);
    }
}
