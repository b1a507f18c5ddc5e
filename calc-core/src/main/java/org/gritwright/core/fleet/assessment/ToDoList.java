package org.gritwright.core.fleet.assessment;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import javax.measure.quantity.Dimensionless;
import org.gritwright.core.finding.Finding;
import org.gritwright.core.finding.FindingCode;
import org.gritwright.core.finding.Severity;
import org.gritwright.core.fleet.day.TruckDay;
import org.gritwright.core.verification.Advice;
import org.gritwright.core.verification.Correction;
import org.gritwright.units.Amounts;

/**
 * What has to be done on a truck, most urgent first, and of the same step where the error is largest first: the one place where
 * advice is made, from judgements, corrections and all findings. Of each point it names the most urgent step toward a proven
 * value, and whether what is delivered has to be looked into.
 */
record ToDoList(
        TruckDay truck,
        List<Finding> curveFindings,
        List<Finding> contradictions,
        RoadProof roadProof,
        Optional<DriveAssessment> drive,
        Optional<BoomAssessment> boom,
        List<RouteAssessment> routes,
        DriveLimits limits) {
    private static final Set<FindingCode> MISSED_DELIVERY =
            Set.of(FindingCode.SHORTFALL, FindingCode.OVERRUN, FindingCode.START_UP_LOSS, FindingCode.STEADY_FLOW_OFF);

    /** What a limit of the drive makes. */
    private static final Set<FindingCode> BY_LIMIT =
            Set.of(FindingCode.SHORTFALL, FindingCode.OVERRUN, FindingCode.STEADY_FLOW_OFF);

    /** What explains a missed delivery without anything wrong with the truck. */
    private static final Set<FindingCode> SLIPS_OF_DELIVERY =
            Set.of(FindingCode.RATE_IN_OTHER_UNIT, FindingCode.RUN_TIME_IN_MINUTES, FindingCode.PREWET_BY_OTHER_TON);

    /** Warnings that nothing may be built on before somebody has looked. */
    private static final Set<FindingCode> DOUBTFUL_ENTRIES = Set.of(
            FindingCode.FILL_IMPLAUSIBLE,
            FindingCode.PUMPED_VOLUME_IMPLAUSIBLE,
            FindingCode.METERED_VOLUME_IMPLAUSIBLE,
            FindingCode.OTHER_VALUE_IN_FORCE,
            FindingCode.CATCH_OF_ANOTHER_DAY,
            FindingCode.NO_TARE);

    List<ToDo> of(List<PointHistory> histories, List<PointAssessment> points, Map<PointHistory, List<Finding>> ages) {
        List<ToDo> toDo = new ArrayList<>();
        if (isFault(curveFindings)) {
            toDo.add(ToDo.ofTruck(NextStep.FIND_FAULT));
        }
        if (!contradictions.isEmpty()) {
            toDo.add(ToDo.ofTruck(NextStep.CHECK_ENTRIES));
        }
        boolean explained = contradictions.stream().map(Finding::code).anyMatch(SLIPS_OF_DELIVERY::contains);
        if (histories.isEmpty()) {
            toDo.add(ToDo.ofTruck(NextStep.CALIBRATE));
        }
        for (int i = 0; i < histories.size(); i++) {
            PointHistory history = histories.get(i);
            MassProof proof = points.get(i).proof();
            Optional<NextStep> step = towardsProof(
                    history, proof, !ages.getOrDefault(history, List.of()).isEmpty());
            step.ifPresent(s -> toDo.add(new ToDo(s, Optional.of(history.point()))));
            Optional<DriveLimits.Explained> limit = history.last().flatMap(limits::of);
            boolean limited = limit.filter(DriveLimits.Explained::wholly).isPresent();
            boolean missed = history.currentFindings().stream()
                    .map(Finding::code)
                    .filter(code -> !limited || !BY_LIMIT.contains(code))
                    .anyMatch(MISSED_DELIVERY::contains);
            boolean byPressure = history.last()
                    .flatMap(last -> boom.filter(one -> one.explains(last.deliveryError())))
                    .isPresent();
            if (missed && !explained && !byPressure && !isFault(history.currentFindings())) {
                toDo.add(new ToDo(NextStep.CHECK_DELIVERY, Optional.of(history.point())));
            }
            if (limit.isPresent()) {
                toDo.add(new ToDo(NextStep.FIT_TO_DRIVE, Optional.of(history.point())));
            }
        }
        ofDrive(toDo);
        if (boom.filter(BoomAssessment::isSetForOtherLiquid).isPresent()) {
            toDo.add(ToDo.ofTruck(NextStep.SET_BOOM_PRESSURE));
        }
        if (boom.filter(BoomAssessment::hasNozzlesOff).isPresent()) {
            toDo.add(ToDo.ofTruck(NextStep.MEND_NOZZLES));
        } else if (boom.filter(BoomAssessment::hasNozzlesUndecided).isPresent()) {
            // Nozzles that were mended are caught again anyway.
            toDo.add(ToDo.ofTruck(NextStep.CATCH_NOZZLES));
        }
        if (roadProof == RoadProof.NOT_PROVEN) {
            toDo.add(ToDo.ofTruck(NextStep.FIX_ROAD_SPEED));
        }
        // What wets is driven by another truck, which has it to do.
        if (roadProof == RoadProof.NOT_CHECKED && truck.wets().isEmpty()) {
            toDo.add(ToDo.ofTruck(NextStep.CHECK_ROAD_SPEED));
        }
        return toDo.stream()
                .sorted(Comparator.comparing(ToDo::step)
                        .thenComparing(Comparator.<ToDo>comparingDouble(one -> error(one, points))
                                .reversed()))
                .toList();
    }

    /** What routes and a drive that holds less than before, or was changed since, ask for, where it isn't to be done anyway. */
    private void ofDrive(List<ToDo> toDo) {
        Set<RouteAssessment.Status> found =
                routes.stream().map(RouteAssessment::status).collect(Collectors.toSet());
        if (found.contains(RouteAssessment.Status.NOT_HELD)) {
            toDo.add(ToDo.ofTruck(NextStep.FIT_TO_DRIVE));
        }
        if (found.contains(RouteAssessment.Status.NOT_CALIBRATED) && !toDo.contains(ToDo.ofTruck(NextStep.CALIBRATE))) {
            toDo.add(ToDo.ofTruck(NextStep.CALIBRATE));
        }
        if (drive.filter(DriveCheck::isNarrower).isPresent()) {
            toDo.add(ToDo.ofTruck(NextStep.CHECK_DELIVERY));
        }
        if (drive.filter(DriveAge::isOutOfDate).isPresent()) {
            toDo.add(ToDo.ofTruck(NextStep.MEASURE_RANGE));
        }
    }

    /** How far the value in force is off at a task's point, as far as its catches tell. */
    private static double error(ToDo task, List<PointAssessment> points) {
        return points.stream()
                .filter(point -> task.point().filter(point.point()::equals).isPresent())
                .flatMap(point -> point.judged().stream())
                .mapToDouble(series -> Math.abs(Amounts.si(Dimensionless.class, series.error())))
                .findFirst()
                .orElse(0);
    }

    /** Whether something seems wrong with what was written down. */
    static boolean isContradicted(List<PointHistory> histories, List<Finding> curveFindings) {
        return isFault(curveFindings)
                || histories.stream()
                        .map(PointHistory::currentFindings)
                        .anyMatch(found -> isFault(found) || isDoubtful(found));
    }

    /** Whether something was written down that contradicts itself or is hardly possible. */
    static boolean isDoubtful(List<Finding> findings) {
        return findings.stream().map(Finding::code).anyMatch(DOUBTFUL_ENTRIES::contains);
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
        if (isDoubtful(history.currentFindings())) {
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
