package org.gritwright.examples.fleetday;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import javax.measure.quantity.Dimensionless;
import org.gritwright.core.fleet.day.FleetDay;
import org.gritwright.core.fleet.day.WeighingMethodEntry;
import org.gritwright.core.fleet.plan.MethodPlan;
import org.gritwright.core.fleet.plan.PointPlan;
import org.gritwright.core.fleet.plan.TruckPlan;
import org.gritwright.core.planning.CatchSeries;
import org.gritwright.core.planning.PlanResult;
import org.gritwright.core.planning.PlannedCount;
import org.gritwright.core.planning.RunPlan;
import org.gritwright.examples.fleetday.SheetTable.Cell;
import org.gritwright.examples.fleetday.SheetTable.Row;
import org.gritwright.units.Amounts;

/**
 * One truck's worksheet, for the template.
 *
 * @param anchor its anchor in the page
 * @param id the truck
 * @param onTruck the equipment on it
 * @param kit what to bring
 * @param parts a part for each material and gate opening
 */
record PlanSheet(String anchor, String id, String onTruck, List<String> kit, List<Part> parts) {
    private static final int DIGITS = 3;

    /** The boxes of more containers go on in another line. */
    private static final int BOXES_A_LINE = 4;

    /**
     * The part for one material and gate opening.
     *
     * @param point material and gate opening
     * @param tasks what to do, a sentence each
     * @param remarks what the plan takes for granted
     * @param tables the weighing methods, the verification runs, the table for the yard
     * @param heads the heads of the boxes before those of the containers
     * @param lines a line of boxes for each catch, or several where the containers are many
     * @param unit the unit in which masses are read
     */
    record Part(
            String point,
            List<String> tasks,
            List<String> remarks,
            List<SheetTable> tables,
            List<String> heads,
            List<Line> lines,
            String unit) {}

    /**
     * A line of boxes to write in.
     *
     * @param head what it is for
     * @param isFirst whether it has the boxes before those of the containers
     * @param containers the names of the containers; an empty one for a point without a box
     */
    record Line(String head, boolean isFirst, List<String> containers) {}

    static PlanSheet of(FleetDay day, TruckPlan truck, int number) {
        List<Part> parts =
                truck.points().stream().map(point -> part(day, truck, point)).toList();
        return new PlanSheet(
                "truck-" + number, truck.truck().id(), TruckSheet.equipment(truck.truck()), kit(truck), parts);
    }

    private static List<String> kit(TruckPlan truck) {
        List<String> kit = new ArrayList<>();
        kit.add("Wheel chocks, lockout locks and tags, high-visibility clothing, eye protection, gloves, dust mask");
        if (truck.quickest().isPresent()) {
            int method = truck.quickest().get();
            int most = truck.points().stream()
                    .map(point -> point.methods().get(method))
                    .mapToInt(PlanSheet::containers)
                    .max()
                    .orElse(1);
            WeighingMethodEntry entry = truck.plan().weighingMethods().get(method);
            kit.add("For " + entry.name() + ": scale " + entry.scale() + ", a test weight near the load, "
                    + Words.count(most, "container") + " for up to "
                    + Amounts.format(entry.containers().holds()) + " each, marked with names");
        } else {
            kit.add("Scales and containers: none of the planned ones will do; see below");
        }
        boolean pulses = truck.points().stream().anyMatch(p -> p.count() instanceof PlannedCount.Pulses);
        kit.add(
                pulses
                        ? "The display’s or a separate counter for the shaft’s pulses"
                        : "Paint or tape to mark the shaft for counting by eye");
        kit.add("Stopwatch, a rule or a gauge for the gate, thermometer for the oil, pen and this sheet");
        return kit;
    }

    private static int containers(MethodPlan method) {
        int calibration = method.calibration()
                .map(result -> result.series().containersToFill())
                .orElse(1);
        int verification = method.verification()
                .map(run -> run.result().series().containersToFill())
                .orElse(1);
        return Math.max(calibration, verification);
    }

    private static Part part(FleetDay day, TruckPlan truck, PointPlan point) {
        Optional<MethodPlan> shown = shown(truck, point);
        List<String> tasks = new ArrayList<>();
        List<String> remarks = new ArrayList<>();
        List<Line> lines = new ArrayList<>();
        shown.ifPresent(method -> {
            CatchSeries series = method.calibration().orElseThrow().series();
            tasks.add(calibrationTask(truck, method, series));
            if (!truck.plan().testSpeeds().isEmpty()) {
                tasks.add(method.verification()
                        .map(PlanSheet::verificationTask)
                        .orElse("Verification: none of the planned rates and speeds fits these containers at a shaft"
                                + " speed that the drive can hold. Plan another rate or speed for this truck."));
            }
            remarks.addAll(series.assumptions());
            int boxes = Math.min(BOXES_A_LINE, containers(method));
            for (int i = 1; i <= series.repeats(); i++) {
                lines.addAll(lines("Catch " + i, series.containersToFill(), boxes));
            }
            method.verification()
                    .ifPresent(run -> lines.addAll(
                            lines("Verification", run.result().series().containersToFill(), boxes)));
        });
        List<SheetTable> tables = new ArrayList<>();
        tables.add(methods(truck, point));
        shown.filter(method -> !truck.plan().testSpeeds().isEmpty())
                .ifPresent(method -> tables.add(runs(truck, method)));
        tables.add(yard(point));
        remarks.add("Expected: " + Figures.text(point.expected(), DIGITS) + ", by "
                + point.source().words() + ".");
        return new Part(
                PlanWords.point(point),
                tasks,
                remarks,
                tables,
                heads(point),
                lines,
                shown.map(method -> unit(day, method)).orElse(""));
    }

    private static String unit(FleetDay day, MethodPlan method) {
        return day.scales().stream()
                .filter(scale -> scale.id().equals(method.method().scale()))
                .findFirst()
                .map(scale -> Amounts.format(scale.division()).replaceFirst("^\\S+ ", ""))
                .orElse("");
    }

    /** The quickest method that does, or the one that comes closest. */
    private static Optional<MethodPlan> shown(TruckPlan truck, PointPlan point) {
        return truck.quickest()
                .map(method -> point.methods().get(method))
                .or(() -> point.methods().stream()
                        .filter(method -> method.calibration().isPresent())
                        .min(Comparator.comparingDouble(method -> Amounts.si(
                                Dimensionless.class,
                                method.calibration().orElseThrow().series().expandedUncertainty()))));
    }

    private static String calibrationTask(TruckPlan truck, MethodPlan method, CatchSeries series) {
        String reach = method.isReached()
                ? "That should show the mass per revolution to within ±"
                : "That comes closest to what is wanted, with ±";
        return "Calibration, " + method.method().name() + ": " + PlanWords.catches(series.repeats()) + " of "
                + Amounts.format(series.revolutions())
                + " (" + series.pulses().map(p -> Amounts.format(p) + ", ").orElse("") + PlanWords.turns(series)
                + "), about "
                + Figures.text(series.massPerCatch(), DIGITS) + " each in "
                + Words.count(series.containersToFill(), "container")
                + truck.plan()
                        .shaftSpeed()
                        .map(speed ->
                                ", about " + Figures.text(series.runTime(speed), 2) + " at " + Amounts.format(speed))
                        .orElse("")
                + ". " + reach + PlanWords.uncertainty(series.expandedUncertainty()) + ".";
    }

    private static String verificationTask(RunPlan run) {
        CatchSeries series = run.result().series();
        String start = run.lostByStart()
                .map(lost -> " The start costs about " + PlanWords.uncertainty(lost)
                        + " of the expected mass: a delivery error, not a calibration error.")
                .orElse("");
        String reach = run.result() instanceof PlanResult.OutOfReach out
                ? " What is wanted is out of reach; main cause: "
                        + out.mainCause().words() + "."
                : "";
        return "Verification: set the truck to " + Amounts.format(run.testSpeed()) + " and "
                + Amounts.format(run.targetRate()) + ", run " + Amounts.format(run.runTime()) + " from rest, about "
                + Figures.text(series.massPerCatch(), DIGITS) + " in "
                + Words.count(series.containersToFill(), "container") + ". One catch shows the calibration error to"
                + " within ±"
                + PlanWords.uncertainty(series.expandedUncertainty()) + "." + reach + start;
    }

    private static SheetTable methods(TruckPlan truck, PointPlan point) {
        List<Row> rows = new ArrayList<>();
        List<String> notes = new ArrayList<>();
        for (int i = 0; i < point.methods().size(); i++) {
            MethodPlan method = point.methods().get(i);
            String objection = PlanWords.objection(method);
            if (!objection.isEmpty()) {
                notes.add(method.method().name() + ": " + objection);
            }
            Optional<CatchSeries> series = method.calibration().map(PlanResult::series);
            rows.add(Row.of(
                    method.method().name(),
                    Cell.of(series.map(PlanSheet::catchesOfRevolutions)),
                    series.map(s -> Cell.computed(s.massPerCatch(), DIGITS)).orElse(Cell.of("—")),
                    Cell.of(series.map(s -> String.valueOf(s.containersToFill()))),
                    Cell.of(series.map(s -> "±" + PlanWords.uncertainty(s.expandedUncertainty()))),
                    Cell.of(truck.time(i).map(PlanWords::duration).orElse("doesn’t work"))));
        }
        return new SheetTable(
                "By each weighing method",
                List.of("catches", "mass of each", "containers", "known to within", "truck takes"),
                rows,
                notes);
    }

    private static String catchesOfRevolutions(CatchSeries series) {
        return series.repeats() + " × " + Amounts.format(series.revolutions());
    }

    private static SheetTable yard(PointPlan point) {
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
                                        .map(method -> Cell.of(
                                                PlanWords.table(method.table().get(line))))
                                        .toList()))
                        .toList();
        return new SheetTable(
                "Total to catch for other uncertainties",
                usable.stream().map(method -> method.method().name()).toList(),
                rows,
                List.of("rev are revolutions of the sensed or watched shaft: "
                        + Amounts.format(point.count().gearRatio()) + " to a turn of the conveyor shaft."));
    }

    private static SheetTable runs(TruckPlan truck, MethodPlan method) {
        List<Row> rows = method.runs().stream()
                .map(run -> Row.of(
                        Amounts.format(run.targetRate()) + " at " + Amounts.format(run.testSpeed()),
                        Cell.of(Amounts.format(run.runTime())),
                        Cell.computed(run.result().series().massPerCatch(), DIGITS),
                        Cell.of(Figures.text(run.shaftSpeed(), DIGITS)
                                + (run.withinRange().orElse(true) ? "" : ", out of range")),
                        Cell.of("±"
                                + PlanWords.uncertainty(run.result().series().expandedUncertainty())),
                        Cell.of(run.lostByStart().map(PlanWords::uncertainty))))
                .toList();
        int left = truck.plan().targetRates().size() * truck.plan().testSpeeds().size() - rows.size();
        return new SheetTable(
                "Verification runs with " + method.method().name(),
                List.of("run", "mass", "shaft speed", "known to within", "start costs"),
                rows,
                left == 0 ? List.of() : List.of(Words.count(left, "other run") + ": too fast for these containers."));
    }

    private static List<String> heads(PointPlan point) {
        List<String> heads = new ArrayList<>(List.of("time"));
        point.point().setting().quantity().ifPresent(setting -> heads.add("gate setting"));
        if (point.count() instanceof PlannedCount.Pulses) {
            heads.addAll(List.of("counter at start", "counter at stop"));
        } else if (point.count() instanceof PlannedCount.ByEye) {
            heads.addAll(List.of("revolutions by eye", "± (standard)"));
        } else {
            heads.addAll(List.of("setting or speed", "seconds"));
        }
        return heads;
    }

    private static List<Line> lines(String head, int containers, int boxes) {
        List<Line> lines = new ArrayList<>();
        for (int first = 1; first <= containers; first += boxes) {
            List<String> names = IntStream.range(first, first + boxes)
                    .mapToObj(i -> i <= containers ? String.valueOf(i) : "")
                    .toList();
            lines.add(new Line(first == 1 ? head : "", first == 1, names));
        }
        return lines;
    }
}
