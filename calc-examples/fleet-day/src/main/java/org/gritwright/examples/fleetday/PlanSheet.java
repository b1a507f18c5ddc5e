package org.gritwright.examples.fleetday;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Mass;
import javax.measure.quantity.Speed;
import javax.measure.quantity.Temperature;
import javax.measure.quantity.Volume;
import org.gritwright.core.finding.Finding;
import org.gritwright.core.fleet.day.InForceEntry;
import org.gritwright.core.fleet.day.MethodEntry;
import org.gritwright.core.fleet.day.ReadingMethodEntry;
import org.gritwright.core.fleet.day.WeighingMethodEntry;
import org.gritwright.core.fleet.plan.MethodPlan;
import org.gritwright.core.fleet.plan.PointPlan;
import org.gritwright.core.fleet.plan.TruckPlan;
import org.gritwright.core.metering.Metering;
import org.gritwright.core.planning.CatchSeries;
import org.gritwright.core.planning.PlanResult;
import org.gritwright.core.planning.PlannedCount;
import org.gritwright.core.planning.RunPlan;
import org.gritwright.units.Amounts;
import org.gritwright.units.quantity.ApplicationRate;
import org.gritwright.units.quantity.LiquidApplicationRate;
import org.gritwright.units.quantity.PrewetRate;
import org.gritwright.units.quantity.PulsesPerDistance;

/**
 * One truck's worksheet, for the template: side 1 is what to do, side 2 a box for every number.
 *
 * @param anchor its anchor in the page
 * @param id the truck
 * @param onTruck the equipment on it
 * @param kit what to bring
 * @param steps what to do, in working order
 * @param before boxes for what is the same for all catches
 * @param parts a part for each material and gate opening
 * @param constants the constants of the display, at most ten side by side
 * @param nozzles the side for its boom's nozzles; none without a boom
 * @param road boxes for the measured course
 * @param isLiquid whether a pump or flow meter is calibrated
 */
record PlanSheet(
        String anchor,
        String id,
        String onTruck,
        List<String> kit,
        List<WorkStep> steps,
        List<Box> before,
        List<Part> parts,
        List<List<Box>> constants,
        List<NozzleSheet> nozzles,
        List<Box> road,
        boolean isLiquid) {
    private static final int DIGITS = 3;

    private static final int CONSTANTS_SIDE_BY_SIDE = 10;

    /** Boxes of further pails in a row. */
    private static final int MORE_SIDE_BY_SIDE = 12;

    /** Before the first catch, three for the display's constants, road speed. */
    private static final int ROWS_OF_ALL = 5;

    private static final int ROOMY_ROWS = 13;

    /** Boxes for constants of the display that we don't know of. */
    private static final int MORE_CONSTANTS = 2;

    private static final int COURSE_RUNS = 3;

    /** The gate as measured, which the document has no field for but the notes of each catch. */
    static final String GATE = "gate";

    /** Gross, tare, net. */
    private static final int BOXES_A_WEIGHING = 3;

    /**
     * A box to write one number in, or to cross out what isn't so.
     *
     * @param label what belongs in it
     * @param unit its unit, or empty
     * @param choice words of which one is crossed out, or empty
     * @param field where the document has it, as "definition/path"; empty for what only the paper keeps
     */
    record Box(String label, String unit, String choice, String field) {
        static Box of(String label, String unit) {
            return new Box(label, unit, "", "");
        }

        static Box choice(String label, String choice) {
            return new Box(label, "", choice, "");
        }

        /** The same box, for a field of the document. */
        Box as(String where) {
            return new Box(label, unit, choice, where);
        }
    }

    /**
     * The boxes of one catch.
     *
     * @param head for example "Catch 1"
     * @param task what is set for it; empty if the part says it for all
     * @param boxes time, counter and the like, and what is weighed first
     * @param more three boxes for each further pail
     */
    record Line(String head, String task, List<Box> boxes, List<Box> more) {
        static Line of(String head, String task, List<Box> boxes, int containers, String unit) {
            List<Box> weighed = IntStream.rangeClosed(1, containers)
                    .mapToObj(i -> containers == 1 ? "" : "pail " + i + " ")
                    .flatMap(pail -> Stream.of("gross", "tare", "net").map(what -> Box.of(pail + what, unit)))
                    .toList();
            List<Box> first = new ArrayList<>(boxes);
            first.addAll(weighed.subList(0, BOXES_A_WEIGHING));
            return new Line(head, task, first, weighed.subList(BOXES_A_WEIGHING, weighed.size()));
        }
    }

    /**
     * The part for one material and gate opening.
     *
     * @param point material and gate opening
     * @param task what to catch for the calibration; empty if no weighing method will do
     * @param remarks what the plan takes for granted, and what can't be done
     * @param lines the boxes of each catch
     */
    record Part(String point, String task, List<String> remarks, List<Line> lines) {}

    static PlanSheet of(DayPlan day, TruckPlan truck, int number) {
        TruckUnits units = TruckUnits.of(truck);
        return new PlanSheet(
                "truck-" + number,
                truck.truck().id(),
                TruckSheet.equipment(truck.truck()),
                kit(day, truck),
                WorkStep.of(day, truck),
                before(day, truck, units),
                truck.points().stream().map(point -> part(day, truck, point)).toList(),
                constants(truck, units),
                NozzleSheet.of(truck).stream().toList(),
                // The truck whose grains it wets has the road course on its sheet.
                truck.truck().wets().isPresent() ? List.of() : road(units),
                truck.truck().spreader().isForLiquids());
    }

    /** The truck, for the foot of a page, which is one line. */
    public String shortId() {
        return PlainText.shortened(id, PaperPage.LONGEST_ID);
    }

    /** How the second side's boxes are spaced, so that it stays one side: a class of the style sheets. */
    public String spacing() {
        int rows = ROWS_OF_ALL + parts.stream().mapToInt(PlanSheet::rows).sum();
        if (rows <= ROOMY_ROWS) {
            return "";
        }
        return parts.size() == 1 ? "close" : "closest";
    }

    private static int rows(Part part) {
        return part.lines().stream()
                .mapToInt(line -> 1 + (line.more().size() + MORE_SIDE_BY_SIDE - 1) / MORE_SIDE_BY_SIDE)
                .sum();
    }

    private static List<String> kit(DayPlan day, TruckPlan truck) {
        List<String> kit = new ArrayList<>();
        kit.add("cones, wheel chocks, lockout locks and tags");
        kit.add("high-visibility clothing, boots with grip, glasses, dust mask, hearing protection, gloves");
        kit.add(
                truck.truck().spreader().isForLiquids()
                        ? "hoses that fit and are tied down, a tub, water to rinse"
                        : "tarp or tray, shovel, broom");
        if (truck.truck().boom().isPresent()) {
            kit.add("a graduate and a funnel for single nozzles, a gauge for the boom’s pressure");
        }
        Optional<Integer> method = day.method(truck);
        if (method.isPresent()) {
            var entry = day.methods().get(method.get());
            int most = truck.points().stream()
                    .map(point -> point.methods().get(method.get()))
                    .mapToInt(PlanSheet::weighings)
                    .max()
                    .orElse(1);
            kit.add(kit(entry)
                    + (most > 1 && entry instanceof WeighingMethodEntry weighing
                            ? ", " + most + " pails or fewer to fill again, up to "
                                    + Amounts.format(weighing.containers().holds()) + " each, marked with names"
                            : ""));
        } else {
            kit.add("scales and containers: none of the planned ones will do");
        }
        if (truck.truck().spreader().kind() == Metering.Kind.FLOW_METER) {
            kit.add("the display’s or a separate counter for the meter’s pulses");
            kit.add("stopwatch, thermometer, clipboard, pencil (ink freezes)");
            return kit;
        }
        kit.add(
                WorkStep.hasSensor(truck)
                        ? "the display’s or a separate counter for the shaft’s pulses, paint for the mark"
                        : "paint or tape to mark the shaft for counting by eye");
        kit.add("stopwatch, rule or gauge for the gate, oil thermometer, clipboard, pencil (ink freezes)");
        return kit;
    }

    private static String kit(MethodEntry method) {
        return method instanceof ReadingMethodEntry reading
                ? "for " + method.name() + ": container " + reading.container() + ", clean, on a level board"
                : "for " + method.name() + ": scale " + ((WeighingMethodEntry) method).scale()
                        + ", a test weight near the load" + (method.isForLiquids() ? ", a hydrometer" : "");
    }

    private static int weighings(MethodPlan method) {
        return Math.max(
                method.calibration()
                        .map(result -> result.series().containersToFill())
                        .orElse(1),
                method.verifications().stream()
                        .mapToInt(run -> run.result().series().containersToFill())
                        .max()
                        .orElse(1));
    }

    private static List<Box> before(DayPlan day, TruckPlan truck, TruckUnits units) {
        List<Box> boxes = new ArrayList<>();
        String scale = shown(day, truck, truck.points().get(0))
                .map(method -> scaleUnit(day, method))
                .orElse("");
        String degrees = units.symbol(Temperature.class);
        if (!shown(day, truck, truck.points().get(0)).map(PlanSheet::isRead).orElse(false)) {
            boxes.add(Box.of("test weight", scale).as("scale-check/testWeight"));
            boxes.add(Box.of("scale reads", scale).as("scale-check/reading"));
        }
        boxes.add(Box.of("oil target", degrees));
        boxes.add(Box.of("oil reached", degrees).as("conditions/oilTemperature"));
        boxes.add(Box.of("engine target", "rev/min"));
        boxes.add(Box.of("engine held", "rev/min").as("conditions/engineSpeed"));
        boolean isLiquid = truck.truck().spreader().isForLiquids();
        if (isLiquid) {
            boxes.add(Box.of("tank level", "%").as("conditions/hopperLevel"));
            boxes.add(Box.of("liquid", degrees));
        } else {
            boxes.add(Box.of("hopper level", "%").as("conditions/hopperLevel"));
            boxes.add(Box.of("moisture", "%").as("conditions/moisture"));
        }
        if (WorkStep.hasSensor(truck) && truck.truck().spreader().kind() != Metering.Kind.FLOW_METER) {
            boxes.add(Box.of("ten turns", "pulse"));
        }
        for (PointPlan point : truck.points()) {
            point.point()
                    .setting()
                    .quantity()
                    .ifPresent(setting -> boxes.add(Box.of(
                                    truck.points().size() > 1 ? "gate at " + Amounts.format(setting) : "gate measured",
                                    TruckUnits.symbolOf(setting))
                            .as(GATE)));
        }
        return boxes;
    }

    private static Part part(DayPlan day, TruckPlan truck, PointPlan point) {
        Optional<MethodPlan> shown = shown(day, truck, point);
        List<String> remarks = new ArrayList<>();
        List<Line> lines = new ArrayList<>();
        shown.ifPresentOrElse(
                method -> {
                    CatchSeries series = method.calibration().orElseThrow().series();
                    String unit = scaleUnit(day, method);
                    for (int i = 1; i <= series.repeats(); i++) {
                        lines.add(line(method, "Catch " + i, "", calibrationBoxes(point), series, unit));
                    }
                    TruckUnits units = TruckUnits.of(truck);
                    int number = 0;
                    for (RunPlan run : method.verifications()) {
                        number++;
                        lines.add(line(
                                method,
                                "Verification " + number,
                                verificationTask(truck, units, run),
                                verificationBoxes(truck, point, units),
                                run.result().series(),
                                unit));
                    }
                    if (!units.isOwn(day.division(method.method()))) {
                        remarks.add((isRead(method) ? "The container reads " : "The scale reads ") + unit
                                + ": write down what it shows; nobody converts by hand.");
                    }
                },
                () -> remarks.add("None of the planned weighing methods will do: plan others for this truck."));
        day.method(truck)
                .map(method -> point.methods().get(method))
                .filter(method -> method.verifications().size() < DayPlan.runs(truck))
                .ifPresent(method -> remarks.add(PlanWords.notVerified(truck, method)));
        truck.findings().stream().map(Finding::sentence).forEach(remarks::add);
        remarks.add("Expected: " + Figures.text(expected(truck, point), DIGITS) + ", by "
                + point.source().words() + ".");
        return new Part(
                PlanWords.point(point),
                shown.map(method -> calibrationTask(truck, point, method)).orElse(""),
                remarks,
                lines);
    }

    private static boolean isRead(MethodPlan method) {
        return method.method() instanceof ReadingMethodEntry;
    }

    /** Of a liquid as the display keeps it, where that is known. */
    static Quantity<?> expected(TruckPlan truck, PointPlan point) {
        return truck.truck().inForce().stream()
                .filter(entry -> point.point().material().isLiquid()
                        && point.source() == PointPlan.Source.IN_FORCE
                        && entry.material().equals(point.point().material().name()))
                .findFirst()
                .<Quantity<?>>map(InForceEntry::value)
                .orElseGet(() -> point.point().asMetered(point.expected()));
    }

    private static Line line(
            MethodPlan method, String head, String task, List<Box> boxes, CatchSeries series, String unit) {
        if (!isRead(method)) {
            List<Box> all = new ArrayList<>(boxes);
            if (method.method().isForLiquids()) {
                all.add(Box.of("density", "").as("catch/density.value"));
            }
            return Line.of(head, task, all, series.containersToFill(), unit);
        }
        List<Box> all = new ArrayList<>(boxes);
        for (int fill = 1; fill <= series.containersToFill(); fill++) {
            all.add(Box.of(series.containersToFill() == 1 ? "volume" : "fill " + fill, unit)
                    .as("catch/read.fills"));
        }
        return new Line(head, task, all, List.of());
    }

    private static String scaleUnit(DayPlan day, MethodPlan method) {
        return TruckUnits.symbolOf(day.division(method.method()));
    }

    /** The truck's method, or the one that comes closest. */
    static Optional<MethodPlan> shown(DayPlan day, TruckPlan truck, PointPlan point) {
        return day.method(truck)
                .map(method -> point.methods().get(method))
                .or(() -> point.methods().stream()
                        .filter(method -> method.calibration().isPresent())
                        .min(Comparator.comparingDouble(method -> Amounts.si(
                                Dimensionless.class,
                                method.calibration().orElseThrow().series().expandedUncertainty()))));
    }

    private static String calibrationTask(TruckPlan truck, PointPlan point, MethodPlan method) {
        CatchSeries series = method.calibration().orElseThrow().series();
        String reach = method.isReached()
                ? " Shows the " + Metered.discharge(point.point()) + " to within ±"
                : " Comes closest to what is wanted, with ±";
        return PlanWords.catches(series.repeats()) + " of "
                + PlanWords.counted(point, series) + ", about "
                + Figures.text(series.amountPerCatch(), DIGITS) + " each"
                + truck.plan()
                        .shaftSpeed()
                        .filter(speed -> !point.point().material().isLiquid())
                        .map(speed ->
                                ", about " + Figures.text(series.runTime(speed), 2) + " at " + Amounts.format(speed))
                        .orElse("")
                + "; " + weighed(method, series.containersToFill()) + "." + reach
                + PlanWords.uncertainty(series.expandedUncertainty()) + ".";
    }

    /** Whatever falls is first on the ground: several containers are filled from there, one after the other. */
    private static String weighed(MethodPlan method, int containers) {
        if (method.method().isForLiquids()) {
            return method.method().name() + ": "
                    + (isRead(method)
                            ? containers == 1
                                    ? "read it at eye height, foam gone"
                                    : "read " + containers + " fills from the tub at eye height, foam gone"
                            : "weigh full and empty, and measure the density");
        }
        return method.method().name() + ": "
                + (containers == 1
                        ? "weigh the whole drop at once"
                        : "shovel the dropped heap into " + containers + " pails and weigh each");
    }

    private static String verificationTask(TruckPlan truck, TruckUnits units, RunPlan run) {
        CatchSeries series = run.result().series();
        return "Set " + PlanWords.at(truck, units, run.run().targetRate(), run.testSpeed()) + ", run "
                + Amounts.format(run.runTime()) + " from rest, about "
                + Figures.text(series.amountPerCatch(), DIGITS) + ". Shows the calibration error to within ±"
                + PlanWords.uncertainty(series.expandedUncertainty()) + "."
                + (run.result() instanceof PlanResult.OutOfReach out
                        ? " What is wanted is out of reach; main cause: "
                                + out.mainCause().words() + "."
                        : "");
    }

    private static List<Box> calibrationBoxes(PointPlan point) {
        List<Box> boxes = new ArrayList<>();
        boxes.add(Box.of("time", "").as("catch/at"));
        boxes.addAll(counted(point));
        boxes.add(Box.choice("primed", "yes / no").as("catch/primed"));
        boxes.add(Box.choice("run-down", "in / out").as("catch/coasting"));
        return boxes;
    }

    static List<Box> verificationBoxes(TruckPlan truck, PointPlan point, TruckUnits units) {
        List<Box> boxes = new ArrayList<>();
        boxes.add(Box.of("time", "").as("catch/at"));
        boxes.add(Box.of("speed run", units.symbol(Speed.class)).as("catch/testSpeed"));
        boolean wets = truck.truck().wets().isPresent();
        boolean isLiquid = point.point().material().isLiquid();
        boxes.add(Box.of(
                        "rate run",
                        isLiquid && !wets
                                ? units.symbol(LiquidApplicationRate.class)
                                : units.symbol(ApplicationRate.class))
                .as("catch/targetRate"));
        if (wets) {
            boxes.add(Box.of("prewet run", units.symbol(PrewetRate.class)).as("catch/prewetRate"));
        }
        boxes.add(Box.of("seconds run", "s").as("catch/runTime"));
        boxes.addAll(counted(point));
        boxes.add((isLiquid
                        ? Box.of("display’s volume", units.symbol(Volume.class))
                        : Box.of("display’s mass", units.symbol(Mass.class)))
                .as("catch/indicated"));
        return boxes;
    }

    private static List<Box> counted(PointPlan point) {
        if (point.count() instanceof PlannedCount.Pulses) {
            return List.of(
                    Box.of("counter, start", "pulse").as("catch/counted.start"),
                    Box.of("counter, stop", "pulse").as("catch/counted.stop"));
        }
        if (point.count() instanceof PlannedCount.ByEye) {
            return List.of(
                    Box.of("turns by eye", "rev").as("catch/counted.revolutions"),
                    Box.of("± (standard)", "rev").as("catch/counted.standardUncertainty"));
        }
        return List.of(
                Box.of("control setting", "").as("catch/counted.setting"),
                Box.of("time run", "s").as("catch/counted.time"));
    }

    private static List<List<Box>> constants(TruckPlan truck, TruckUnits units) {
        List<Box> all = new ArrayList<>();
        truck.truck()
                .inForce()
                .forEach(entry -> all.add(Box.of(
                        (truck.truck().spreader().isForLiquids() ? "volume value" : "mass value")
                                + entry.slot().map(slot -> ", slot " + slot).orElse(""),
                        TruckUnits.symbolOf(entry.value()))));
        if (all.isEmpty()) {
            all.add(Box.of(
                    truck.truck().spreader().isForLiquids() ? "volume value" : "mass value",
                    TruckUnits.symbolOf(expected(truck, truck.points().get(0)))));
        }
        truck.points().stream()
                .flatMap(point -> point.point().setting().quantity().stream())
                .map(setting -> Box.of(
                        truck.points().size() > 1 ? "gate for " + Amounts.format(setting) : "gate in display",
                        TruckUnits.symbolOf(setting)))
                .forEach(all::add);
        truck.truck()
                .spreader()
                .pulsesPerRevolution()
                .ifPresent(pulses -> all.add(Box.of("shaft sensor", "pulse/rev")));
        all.add(Box.of(
                "road speed",
                truck.truck()
                        .roadSpeed()
                        .map(check -> TruckUnits.symbolOf(check.inForce()))
                        .orElseGet(() -> units.symbol(PulsesPerDistance.class))));
        all.addAll(Collections.nCopies(MORE_CONSTANTS, Box.of("other:", "")));
        List<List<Box>> chunks = new ArrayList<>();
        for (int from = 0; from < all.size(); from += CONSTANTS_SIDE_BY_SIDE) {
            chunks.add(all.subList(from, Math.min(all.size(), from + CONSTANTS_SIDE_BY_SIDE)));
        }
        return chunks;
    }

    private static List<Box> road(TruckUnits units) {
        List<Box> boxes = new ArrayList<>();
        // A course is as long as the unit that the display counts by.
        boxes.add(Box.of("course", units.symbol(PulsesPerDistance.class).replaceFirst("^.*/", ""))
                .as("course-run/course"));
        for (int run = 1; run <= COURSE_RUNS; run++) {
            boxes.add(Box.of("run " + run, "pulse").as("course-run/pulses"));
        }
        return boxes;
    }
}
