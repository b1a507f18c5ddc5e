package org.gritwright.core.fleet.plan;

import static org.gritwright.core.finding.Argument.number;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import javax.measure.Quantity;
import org.gritwright.core.finding.Finding;
import org.gritwright.core.finding.FindingCode;
import org.gritwright.core.fleet.assessment.DriveAssessment;
import org.gritwright.core.fleet.day.DriveEntry;
import org.gritwright.core.fleet.day.PlanEntry;
import org.gritwright.core.fleet.day.TruckDay;
import org.gritwright.core.range.RangeEnd;
import org.gritwright.core.range.WorkingRange;
import org.gritwright.units.quantity.RotationalSpeed;

/**
 * The steady shaft speeds that a truck is planned with: a plan's range is said of all drives, what was measured or stated of this one
 * wins.
 *
 * @param range the range; none where neither says anything
 * @param findings where plan and drive don't go together
 */
record PlannedRange(Optional<WorkingRange> range, List<Finding> findings) {

    static PlannedRange of(PlanEntry plan, TruckDay truck) {
        Optional<DriveEntry> entry = truck.drive();
        if (truck.spreader().isForLiquids()) {
            // What a plan says is said of conveyors.
            return new PlannedRange(
                    entry.flatMap(one -> new DriveAssessment(one.response(), one.stated(), List.of()).range()),
                    List.of());
        }
        Optional<DriveAssessment> drive =
                entry.map(one -> new DriveAssessment(one.response(), one.stated(), List.of()));
        Optional<WorkingRange> own = drive.flatMap(DriveAssessment::range);
        List<Finding> findings = new ArrayList<>();
        own.ifPresent(range -> {
            plan.range()
                    .filter(planned -> differs(drive.flatMap(DriveAssessment::lowest), planned.lowest())
                            || differs(drive.flatMap(DriveAssessment::highest), planned.highest()))
                    .ifPresent(planned -> findings.add(Finding.of(
                            FindingCode.PLAN_RANGE_DISAGREES,
                            Map.of(
                                    "planLowest", number(planned.lowest()),
                                    "planHighest", number(planned.highest()),
                                    "lowest", number(range.lowest()),
                                    "highest", number(range.highest())))));
            plan.shaftSpeed()
                    .filter(speed -> !range.contains(speed))
                    .ifPresent(speed -> findings.add(Finding.of(
                            FindingCode.PLAN_SPEED_OUTSIDE_RANGE,
                            Map.of(
                                    "shaftSpeed", number(speed),
                                    "lowest", number(range.lowest()),
                                    "highest", number(range.highest())))));
        });
        return new PlannedRange(own.or(plan::range), findings);
    }

    private static boolean differs(Optional<RangeEnd> own, Quantity<RotationalSpeed> planned) {
        return own.filter(end -> end.differsFrom(planned)).isPresent();
    }
}
