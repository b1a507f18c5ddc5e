package org.gritwright.examples.fleetday;

import java.io.IOException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.gritwright.core.fleet.day.WeighingMethodEntry;
import org.gritwright.core.fleet.plan.TruckPlan;
import org.gritwright.examples.fleetday.SheetTable.Cell;
import org.gritwright.examples.fleetday.SheetTable.Row;
import org.gritwright.units.Amounts;

/** The plan as worksheets to print: a page for the day, then a page a truck with room to write. */
final class PlanPage {
    private PlanPage() {}

    static String html(DayPlan plan) throws IOException {
        List<PlanSheet> sheets = new ArrayList<>();
        for (TruckPlan truck : plan.planned()) {
            sheets.add(PlanSheet.of(plan.day(), truck, sheets.size() + 1));
        }
        Map<String, Object> model = new HashMap<>();
        model.put("style", ReportPage.resource("report.css") + ReportPage.resource("plan.css"));
        model.put("site", plan.day().site().orElse("Calibration day"));
        model.put("day", plan.day().day().toString());
        model.put("technician", plan.day().technician().orElse(""));
        model.put("wanted", Amounts.format(plan.plan().plan().wantedUncertainty()));
        model.put("scatter", plan.scatter());
        model.put("summary", plan.summary());
        model.put("methods", methods(plan));
        model.put("objections", objections(plan));
        model.put("trucks", trucks(plan));
        model.put(
                "refused",
                plan.refused().stream()
                        .map(truck ->
                                new Refused(truck.truck().id(), truck.refusal().orElseThrow()))
                        .toList());
        model.put("sheets", sheets);
        return ReportPage.filled(List.of("plan.peb", "worksheet.peb", "safety.peb", "table.peb"), model);
    }

    /**
     * A truck without a plan, or with a weighing method that doesn't do, and why.
     *
     * @param id the truck
     * @param reason why
     */
    record Refused(String id, String reason) {}

    private static SheetTable methods(DayPlan plan) {
        List<Row> rows = new ArrayList<>();
        for (int i = 0; i < plan.methods().size(); i++) {
            WeighingMethodEntry method = plan.methods().get(i);
            int index = i;
            long reached = plan.plan().trucks().stream()
                    .filter(truck -> truck.isReachedBy(index))
                    .count();
            String out = plan.plan().outOfReach(i).stream()
                    .map(truck -> truck.truck().id())
                    .collect(Collectors.joining(", "));
            rows.add(Row.of(
                    method.name(),
                    Cell.of(PlanWords.duration(plan.plan().time(i))),
                    Cell.of(Words.count(reached, "truck")),
                    Cell.of(out.isEmpty() ? "none" : out),
                    Cell.of("scale " + method.scale() + ", "
                            + Words.count(method.containers().howMany(), "container") + " of "
                            + Amounts.format(method.containers().holds()))));
        }
        return new SheetTable(
                "The day by each weighing method",
                List.of("total time", "works for", "doesn’t work for", "equipment"),
                rows,
                List.of("Times are the yard’s own minutes per step and the runs, one truck after the other; driving,"
                        + " warming up and waiting are not in them."));
    }

    private static List<Refused> objections(DayPlan plan) {
        return IntStream.range(0, plan.methods().size())
                .boxed()
                .flatMap(method -> plan.plan().outOfReach(method).stream()
                        .map(truck -> new Refused(
                                truck.truck().id(),
                                plan.methods().get(method).name() + ". "
                                        + truck.points().stream()
                                                .filter(point -> !point.methods()
                                                        .get(method)
                                                        .isReached())
                                                .map(point -> PlanWords.where(truck, point)
                                                        + PlanWords.objection(
                                                                point.methods().get(method)))
                                                .collect(Collectors.joining(" ")))))
                .toList();
    }

    private static SheetTable trucks(DayPlan plan) {
        List<Row> rows = plan.planned().stream()
                .map(truck -> Row.of(
                        truck.truck().id(),
                        Cell.of(truck.points().stream().map(PlanWords::point).collect(Collectors.joining("; "))),
                        Cell.of(truck.quickest()
                                .map(method -> plan.methods().get(method).name())
                                .orElse("none works")),
                        Cell.of(truck.quickest()
                                .map(method -> truck.points().stream()
                                        .map(point -> PlanWords.table(point.methods()
                                                .get(method)
                                                .calibration()
                                                .orElseThrow()))
                                        .collect(Collectors.joining("; ")))),
                        Cell.of(truck.quickest().flatMap(truck::time).map(PlanWords::duration))))
                .toList();
        return new SheetTable(
                "The trucks",
                List.of("where", "quickest weighing method", "calibration catches", "takes"),
                rows,
                List.of());
    }
}
