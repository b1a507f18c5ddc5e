package org.gritwright.examples.fleetday;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.gritwright.core.finding.Finding;
import org.gritwright.core.finding.FindingCode;
import org.gritwright.core.fleet.assessment.Refusal;
import org.gritwright.core.fleet.assessment.TankAssessment;
import org.gritwright.core.fleet.assessment.TruckAssessment;
import org.gritwright.core.fleet.day.FleetDay;
import org.gritwright.core.fleet.plan.TruckPlan;
import org.gritwright.core.record.PlacedDocument;

/**
 * What is wrong with a day as it was typed, and what looks like a slip, without any result.
 *
 * @param problems what can't be computed or planned with, a line each
 * @param doubts what can, but should be looked at once more, a line each
 */
record DayCheck(List<String> problems, List<String> doubts) {

    /** The lines of a day that could be read. */
    static DayCheck of(PlacedDocument<FleetDay> day, FleetResult result, List<TruckPlan> planned) {
        List<String> problems = new ArrayList<>();
        List<String> doubts = new ArrayList<>();
        Set<String> refused = new HashSet<>();
        List<TruckAssessment> trucks =
                result.trucks().stream().map(TruckResult::assessment).toList();
        for (TruckAssessment truck : trucks) {
            String id = truck.truck().id();
            for (Refusal refusal : truck.refusals()) {
                refused.add(id);
                problems.add(problem(day, refusal));
            }
            truck.findings().stream()
                    .filter(DayCheck::isDoubt)
                    .map(finding -> "truck " + id + ": " + finding.sentence())
                    .forEach(doubts::add);
        }
        for (TankAssessment tank : result.tanks()) {
            tank.refusals().forEach(refusal -> problems.add(problem(day, refusal)));
            tank.findings().stream()
                    .filter(finding -> finding.code() == FindingCode.TANK_DENSITY_DIFFERS)
                    .map(Finding::sentence)
                    .forEach(doubts::add);
        }
        for (TruckPlan truck : planned) {
            String id = truck.truck().id();
            truck.refusal()
                    .filter(reason -> !refused.contains(id))
                    .ifPresent(reason -> problems.add("truck " + id + " can't be planned: " + reason));
        }
        return new DayCheck(problems, doubts);
    }

    private static String problem(PlacedDocument<FleetDay> day, Refusal refusal) {
        return refusal.pointer()
                + day.place(refusal.pointer()).map(place -> " (" + place + ")").orElse("")
                + ": " + refusal.sentence();
    }

    /** Whether something may have been typed wrong; how a truck does is no matter of typing. */
    private static boolean isDoubt(Finding finding) {
        FindingCode code = finding.code();
        return code.doubtsData() || Instruction.OF_ENTRIES.contains(code);
    }

    List<String> lines(String file) {
        List<String> lines = new ArrayList<>();
        lines.add(file + ": " + Words.count(problems.size(), "problem") + ", " + Words.count(doubts.size(), "thing")
                + " to look at once more");
        problems.stream().map("  "::concat).forEach(lines::add);
        if (!doubts.isEmpty()) {
            lines.add("Look at once more:");
            doubts.stream().map("  "::concat).forEach(lines::add);
        }
        return lines;
    }
}
