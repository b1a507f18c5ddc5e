package org.gritwright.examples.fleetday;

import java.io.IOException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.gritwright.core.fleet.day.MethodEntry;
import org.gritwright.core.fleet.day.ReadingMethodEntry;
import org.gritwright.core.fleet.day.WeighingMethodEntry;
import org.gritwright.core.fleet.plan.Schedule;
import org.gritwright.core.fleet.plan.TruckPlan;
import org.gritwright.examples.fleetday.SheetTable.Cell;
import org.gritwright.examples.fleetday.SheetTable.Row;
import org.gritwright.units.Amounts;

/** The plan: an overview for the planner of the day, then a worksheet a truck to print, with room to write. */
final class PlanPage {
    private static final List<String> TEMPLATES =
            List.of("plan.peb", "worksheet.peb", "liquids.peb", "safety.peb", "table.peb");

    private PlanPage() {}

    static String html(DayPlan plan) throws IOException {
        Map<String, Object> model = model(plan);
        model.put("style", PageTemplate.resource("report.css") + PageTemplate.resource("plan.css"));
        return PageTemplate.of(TEMPLATES).filled(model);
    }

    /** The same for {@link Papers}. */
    static String paper(DayPlan plan) throws IOException {
        Map<String, Object> model = model(plan);
        model.put("style", PageTemplate.resource("papers.css"));
        model.put(
                "foot",
                PlainText.shortened(site(plan), PaperPage.LONGEST_SITE) + ", plan for "
                        + plan.day().day());
        return PageTemplate.of(TEMPLATES).filled(model);
    }

    /** A truck's worksheet, for {@link Papers}. */
    static String paper(DayPlan plan, TruckPlan truck) throws IOException {
        Map<String, Object> model = heading(plan);
        model.put("style", PageTemplate.resource("papers.css"));
        model.put("foot", "");
        model.put("id", truck.truck().id());
        model.put("what", "worksheet for");
        model.put("sheet", PlanSheet.of(plan, truck, 1));
        return PageTemplate.of(List.of("paper.peb", "worksheet.peb", "liquids.peb", "safety.peb"))
                .filled(model);
    }

    private static String site(DayPlan plan) {
        return plan.day().site().orElse("Calibration day");
    }

    private static Map<String, Object> heading(DayPlan plan) {
        Map<String, Object> model = new HashMap<>();
        model.put("full", true);
        model.put("site", site(plan));
        model.put("day", plan.day().day().toString());
        return model;
    }

    private static Map<String, Object> model(DayPlan plan) {
        List<PlanSheet> sheets = new ArrayList<>();
        for (TruckPlan truck : plan.planned()) {
            sheets.add(PlanSheet.of(plan, truck, sheets.size() + 1));
        }
        Map<String, Object> model = heading(plan);
        model.put("technician", plan.day().technician().orElse(""));
        model.put("wanted", Amounts.format(plan.plan().plan().wantedUncertainty()));
        model.put("scatter", plan.scatter());
        model.put("summary", plan.summary());
        model.put("methods", methods(plan));
        model.put("trucks", trucks(plan));
        model.put("objections", objections(plan));
        model.put(
                "notVerified",
                plan.planned().stream()
                        .flatMap(truck -> plan.notVerified(truck).stream()
                                .map(sentence -> new Refused(truck.truck().id(), sentence)))
                        .toList());
        model.put(
                "refused",
                plan.refused().stream()
                        .map(truck -> new Refused(
                                truck.truck().id(), Words.ended(truck.refusal().orElseThrow())))
                        .toList());
        model.put(
                "tables",
                plan.planned().stream().map(truck -> PlanTables.of(plan, truck)).toList());
        model.put("sheets", sheets);
        model.put("tanks", TankReadingSheet.of(plan.day()));
        model.put("tankSteps", WorkStep.ofTanks());
        return model;
    }

    /**
     * A truck for which something can't be done as planned, and why.
     *
     * @param id the truck
     * @param reason why
     */
    record Refused(String id, String reason) {}

    private static SheetTable methods(DayPlan plan) {
        List<Row> rows = new ArrayList<>();
        for (int i = 0; i < plan.methods().size(); i++) {
            MethodEntry method = plan.methods().get(i);
            boolean forAll = plan.meantFor(i).size() == plan.planned().size();
            rows.add(schedule(
                    method.name(),
                    plan.plan().schedule(i),
                    plan.plan().outOfReach(i),
                    forAll ? "none" : "none of the " + PlanWords.machines(method),
                    equipment(method)));
        }
        rows.add(schedule(
                "a mix: each truck by its own method below",
                plan.mix(),
                plan.planned().stream()
                        .filter(truck -> plan.method(truck).isEmpty())
                        .toList(),
                "none",
                plan.planned().stream()
                        .flatMap(truck -> plan.method(truck).stream())
                        .distinct()
                        .sorted()
                        .map(method -> plan.methods().get(method).name())
                        .collect(Collectors.joining("; "))));
        List<String> notes = new ArrayList<>(List.of(
                "With " + plan.crews()
                        + ". Each crew needs a scale, containers and people of its own, and sets up"
                        + " the yard once a day for each method that it uses that day. A truck isn’t left"
                        + " half done overnight.",
                "Times are the yard’s own minutes for each step and the runs. Driving, warming up, the road course,"
                        + " breaks and waiting are not in them."));
        if (!plan.besides().isEmpty()) {
            notes.add("Neither is what comes besides, as nobody stated its minutes: " + plan.besides() + ".");
        }
        return new SheetTable(
                "The days by each weighing method",
                List.of("days", "trucks a day", "work of all crews", "works for", "doesn’t work for", "equipment"),
                rows,
                notes);
    }

    private static String equipment(MethodEntry method) {
        if (method instanceof ReadingMethodEntry reading) {
            return "container " + reading.container() + ", " + Words.count(reading.fills(), "fill") + " of "
                    + Amounts.format(reading.holds());
        }
        WeighingMethodEntry weighing = (WeighingMethodEntry) method;
        return "scale " + weighing.scale() + ", "
                + Words.count(weighing.containers().howMany(), "container") + " of "
                + Amounts.format(weighing.containers().holds());
    }

    private static Row schedule(String name, Schedule schedule, List<TruckPlan> out, String none, String equipment) {
        return Row.of(
                name,
                Cell.of(String.valueOf(schedule.days())),
                Cell.of(String.format(Locale.ROOT, "%.1f", schedule.trucksPerDay())),
                Cell.of(PlanWords.duration(schedule.work())),
                Cell.of(Words.count(schedule.trucks(), "truck")),
                Cell.of(
                        out.isEmpty()
                                ? none
                                : out.stream().map(truck -> truck.truck().id()).collect(Collectors.joining(", "))),
                Cell.of(equipment));
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
                        Cell.of(plan.method(truck)
                                .map(method -> plan.methods().get(method).name())
                                .orElse("none works")),
                        Cell.of(plan.method(truck)
                                .map(method -> truck.points().stream()
                                        .map(point -> PlanWords.table(
                                                point,
                                                point.methods()
                                                        .get(method)
                                                        .calibration()
                                                        .orElseThrow()))
                                        .collect(Collectors.joining("; ")))),
                        Cell.of(plan.method(truck).flatMap(truck::time).map(PlanWords::duration)),
                        Cell.of(plan.notVerified(truck).isEmpty() ? "as planned" : "not as planned")))
                .toList();
        return new SheetTable(
                "The trucks",
                List.of("where", "quickest weighing method", "how much to catch", "takes", "verification"),
                rows,
                List.of("The quickest method is taken among those whose scale reads in the truck’s own units, if one of"
                        + " these will do."));
    }
}
