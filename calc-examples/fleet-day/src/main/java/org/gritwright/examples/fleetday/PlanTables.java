package org.gritwright.examples.fleetday;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.IntStream;
import org.gritwright.core.finding.Finding;
import org.gritwright.core.fleet.plan.MethodPlan;
import org.gritwright.core.fleet.plan.PointPlan;
import org.gritwright.core.fleet.plan.TruckPlan;
import org.gritwright.core.planning.CatchSeries;
import org.gritwright.core.planning.PlanResult;
import org.gritwright.core.planning.RunPlan;
import org.gritwright.examples.fleetday.SheetTable.Cell;
import org.gritwright.examples.fleetday.SheetTable.Row;
import org.gritwright.units.Amounts;

/**
 * What the planner of the day may want to know of a truck, beyond its worksheet.
 *
 * @param id the truck
 * @param points the tables of each material and gate opening
 */
record PlanTables(String id, List<Point> points) {
    private static final int DIGITS = 3;

    /**
     * One material and gate opening.
     *
     * @param name material and gate opening
     * @param tables the weighing methods, the verification runs, the total to catch for other uncertainties
     */
    record Point(String name, List<SheetTable> tables) {}

    static PlanTables of(DayPlan day, TruckPlan truck) {
        return new PlanTables(
                truck.truck().id(),
                truck.points().stream()
                        .map(point -> new Point(PlanWords.point(point), tables(day, truck, point)))
                        .toList());
    }

    private static List<SheetTable> tables(DayPlan day, TruckPlan truck, PointPlan point) {
        List<SheetTable> tables = new ArrayList<>();
        tables.add(methods(truck, point));
        if (!truck.plan().testSpeeds().isEmpty()) {
            day.method(truck)
                    .ifPresent(method ->
                            tables.add(runs(truck, point, point.methods().get(method))));
        }
        tables.add(others(point));
        return tables;
    }

    private static SheetTable methods(TruckPlan truck, PointPlan point) {
        List<Row> rows = new ArrayList<>();
        List<String> notes = new ArrayList<>();
        Set<String> taken = new LinkedHashSet<>();
        for (int i = 0; i < point.methods().size(); i++) {
            MethodPlan method = point.methods().get(i);
            if (method.method().isForLiquids() != point.point().material().isLiquid()) {
                continue;
            }
            String objection = PlanWords.objection(method);
            if (!objection.isEmpty()) {
                notes.add(method.method().name() + ": " + objection);
            }
            Optional<CatchSeries> series = method.calibration().map(PlanResult::series);
            series.map(CatchSeries::assumptions).ifPresent(taken::addAll);
            rows.add(Row.of(
                    method.method().name(),
                    Cell.of(series.map(one -> one.repeats() + " × " + PlanWords.turns(point, one))),
                    series.map(one -> Cell.computed(one.amountPerCatch(), DIGITS))
                            .orElse(Cell.of("—")),
                    Cell.of(series.map(one -> String.valueOf(one.containersToFill()))),
                    Cell.of(series.map(one -> "±" + PlanWords.uncertainty(one.expandedUncertainty()))),
                    Cell.of(truck.time(i).map(PlanWords::duration).orElse("doesn’t work"))));
        }
        notes.addAll(taken);
        truck.findings().stream().map(Finding::sentence).forEach(notes::add);
        return new SheetTable(
                "By each weighing method",
                point.point().material().isLiquid()
                        ? List.of("catches", "volume of each", "fills of each", "known to within", "truck takes")
                        : List.of("catches", "mass of each", "weighings of each", "known to within", "truck takes"),
                rows,
                notes);
    }

    private static SheetTable others(PointPlan point) {
        List<MethodPlan> usable = point.methods().stream()
                .filter(method -> method.refusal().isEmpty())
                .toList();
        List<Row> rows = usable.isEmpty()
                ? List.of()
                : IntStream.range(0, usable.get(0).table().size())
                        .mapToObj(line -> new Row(
                                "±"
                                        + Amounts.format(
                                                usable.get(0).table().get(line).wanted()),
                                usable.stream()
                                        .map(method -> Cell.of(PlanWords.table(
                                                point, method.table().get(line))))
                                        .toList()))
                        .toList();
        return new SheetTable(
                "Total to catch for other uncertainties",
                usable.stream().map(method -> method.method().name()).toList(),
                rows,
                !point.point().metering().hasShaft()
                        ? List.of()
                        : List.of("rev are revolutions of the sensed or watched shaft: "
                                + Amounts.format(point.count().gearRatio()) + " to a turn of the "
                                + Metered.machine(point.point().metering().kind()) + " shaft."));
    }

    private static SheetTable runs(TruckPlan truck, PointPlan point, MethodPlan method) {
        List<Row> rows = method.runs().stream()
                .map(run -> Row.of(
                        rate(truck, run) + " at " + Amounts.format(run.testSpeed()),
                        Cell.of(Amounts.format(run.runTime())),
                        Cell.computed(run.result().series().amountPerCatch(), DIGITS),
                        Cell.of(pace(point, run) + (run.withinRange().orElse(true) ? "" : ", out of range")),
                        Cell.of("±"
                                + PlanWords.uncertainty(run.result().series().expandedUncertainty())),
                        Cell.of(run.lostByStart().map(PlanWords::uncertainty))))
                .toList();
        return new SheetTable(
                "Verification runs with " + method.method().name(),
                point.point().material().isLiquid()
                        ? List.of("run", "volume", "flow", "known to within", "start costs")
                        : List.of("run", "mass", "shaft speed", "known to within", "start costs"),
                rows,
                List.of("What the start costs is a delivery error, not a calibration error."));
    }

    /** As the plan has it; of what wets, as it is set in the display. */
    private static String rate(TruckPlan truck, RunPlan run) {
        return truck.truck().wets().isPresent()
                ? PlanWords.rate(truck, TruckUnits.of(truck), run.run().targetRate())
                : Amounts.format(run.run().targetRate());
    }

    private static String pace(PointPlan point, RunPlan run) {
        return point.point().material().isLiquid()
                ? run.flow().map(flow -> Figures.text(flow, DIGITS)).orElse("")
                : Figures.text(run.shaftSpeed(), DIGITS);
    }
}
