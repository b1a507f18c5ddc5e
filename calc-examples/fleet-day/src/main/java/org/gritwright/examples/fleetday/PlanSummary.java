package org.gritwright.examples.fleetday;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.gritwright.core.fleet.plan.PointPlan;
import org.gritwright.core.fleet.plan.Schedule;
import org.gritwright.core.fleet.plan.TruckPlan;
import org.gritwright.core.planning.CatchSeries;
import org.gritwright.units.Amounts;

/**
 * A day's plan on a terminal: a line a truck, a line for each weighing method, and where the worksheets are.
 *
 * @param plan the plan
 */
record PlanSummary(DayPlan plan) {
    private static final int WIDTH = ConsoleSummary.WIDTH;

    List<String> lines(Path page) {
        List<String> lines = new ArrayList<>();
        lines.addAll(TextTable.wrap(
                plan.day().site().map(site -> site + ": ").orElse("") + "plan for "
                        + plan.day().day()
                        + ", calibrations to +/-"
                        + Amounts.format(plan.plan().plan().wantedUncertainty())
                        + " (95 %), the quickest weighing method for each truck. " + plan.scatter(),
                WIDTH));
        lines.add("");
        TextTable trucks = new TextTable(List.of(14, 24, 46, 10));
        lines.addAll(trucks.row(List.of("Truck", "Where", "Catch", "Takes")));
        lines.add("-".repeat(WIDTH));
        plan.plan().trucks().forEach(truck -> lines.addAll(trucks.row(cells(truck))));
        lines.add("-".repeat(WIDTH));
        TextTable methods = new TextTable(List.of(40, 6, 12, 36));
        lines.addAll(methods.row(List.of("Weighing method, with " + plan.crews(), "Days", "Trucks a day", "")));
        for (int i = 0; i < plan.methods().size(); i++) {
            lines.addAll(methods.row(
                    schedule(plan.methods().get(i).name(), plan.plan().schedule(i), without(i))));
        }
        lines.addAll(methods.row(schedule("a mix: each truck as above", plan.mix(), "for all that have a method")));
        lines.add("-".repeat(WIDTH));
        lines.addAll(TextTable.wrap(plan.summary(), WIDTH));
        if (!plan.besides().isEmpty()) {
            lines.addAll(TextTable.wrap("Besides, in no time above: " + plan.besides() + ".", WIDTH));
        }
        lines.add("Worksheets: " + PlainText.oneLine(page.toString()));
        lines.add("To type them in: "
                + PlainText.oneLine(page.resolveSibling(OutputFolder.TYPE_IN).toString()));
        lines.add("Blank sheets: "
                + PlainText.oneLine(page.resolveSibling(OutputFolder.BLANK).toString()));
        return lines;
    }

    private static List<String> schedule(String name, Schedule schedule, String remark) {
        return List.of(
                name,
                String.valueOf(schedule.days()),
                String.format(Locale.ROOT, "%.1f", schedule.trucksPerDay()),
                remark);
    }

    private String without(int method) {
        List<TruckPlan> out = plan.plan().outOfReach(method);
        return out.isEmpty()
                ? whole(method)
                : "without " + out.stream().map(truck -> truck.truck().id()).collect(Collectors.joining(", "))
                        + ", where it can't reach that";
    }

    private String whole(int method) {
        int meant = plan.meantFor(method).size();
        if (meant == 0) {
            return "for no truck of this plan";
        }
        return meant == plan.planned().size()
                ? "for all trucks that have a plan"
                : "for all " + PlanWords.machines(plan.methods().get(method)) + " with a plan";
    }

    private List<String> cells(TruckPlan truck) {
        String id = truck.truck().id();
        if (truck.refusal().isPresent()) {
            return List.of(id, "-", "Can't be planned: " + truck.refusal().get(), "-");
        }
        String where = truck.points().stream().map(PlanWords::point).collect(Collectors.joining("; "));
        if (plan.method(truck).isEmpty()) {
            return List.of(id, where, closest(truck), "-");
        }
        int method = plan.method(truck).get();
        String catches = truck.points().stream()
                .map(point -> catches(
                        point,
                        point.methods().get(method).calibration().orElseThrow().series()))
                .collect(Collectors.joining("; "));
        return List.of(
                id,
                where,
                catches + " (" + truck.plan().methods().get(method).name() + ")"
                        + (plan.notVerified(truck).isEmpty() ? "" : ". Can't be verified as planned."),
                PlanWords.duration(truck.time(method).orElseThrow()));
    }

    private static String closest(TruckPlan truck) {
        return "No weighing method reaches it" + (truck.points().size() > 1 ? " everywhere. " : ". ")
                + truck.points().stream()
                        .flatMap(point -> point.methods().stream()
                                .filter(method -> !method.isReached()
                                        && method.method().isForLiquids()
                                                == point.point().material().isLiquid())
                                .map(method -> PlanWords.where(truck, point)
                                        + method.method().name() + ": " + PlanWords.objection(method)))
                        .collect(Collectors.joining(" "));
    }

    private static String catches(PointPlan point, CatchSeries series) {
        return series.repeats() + " x " + PlanWords.turns(point, series) + ", "
                + Figures.text(series.amountPerCatch(), 3) + " each";
    }
}
