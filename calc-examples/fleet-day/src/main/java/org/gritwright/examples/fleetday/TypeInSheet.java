package org.gritwright.examples.fleetday;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import javax.measure.Quantity;
import javax.measure.Unit;
import javax.measure.quantity.Mass;
import javax.measure.quantity.Speed;
import javax.measure.quantity.Time;
import javax.measure.quantity.Volume;
import org.gritwright.core.fleet.day.DensityEntry;
import org.gritwright.core.fleet.day.InForceEntry;
import org.gritwright.core.fleet.day.MethodEntry;
import org.gritwright.core.fleet.day.ReadingMethodEntry;
import org.gritwright.core.fleet.day.WeighingMethodEntry;
import org.gritwright.core.fleet.plan.MethodPlan;
import org.gritwright.core.fleet.plan.PointPlan;
import org.gritwright.core.fleet.plan.TruckPlan;
import org.gritwright.core.metering.Metering;
import org.gritwright.core.metering.OpenLoop;
import org.gritwright.core.planning.CatchSeries;
import org.gritwright.core.planning.RunPlan;
import org.gritwright.core.verification.TestRun;
import org.gritwright.core.weighing.Graduate;
import org.gritwright.core.weighing.Scale;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.UnitSymbol;
import org.gritwright.units.quantity.ApplicationRate;
import org.gritwright.units.quantity.DischargePerRevolution;
import org.gritwright.units.quantity.LiquidApplicationRate;
import org.gritwright.units.quantity.PrewetRate;
import org.gritwright.units.quantity.PulsesPerDistance;
import org.gritwright.units.quantity.PulsesPerRevolution;
import org.gritwright.units.quantity.RotationalSpeed;
import org.gritwright.units.rate.PrewetRates;

/**
 * One truck's boxes for the type-in page: those of the worksheet's side 2 that the document has a field for, in the order of the
 * paper, and what the plan expects in them.
 *
 * @param index the truck's place in the day
 * @param id the truck
 * @param onTruck the equipment on it
 * @param scale the id of the scale that is planned; none where all is read in a container with marks
 * @param container the id of the container with marks that is planned; none where all is weighed
 * @param before the boxes for what is the same for all catches
 * @param parts a part for each material and gate opening
 * @param control control settings and the revolutions a second at each, in order; empty without such a table
 * @param indicatedStep the box for the step in which the display shows mass, or the volume of a liquid
 * @param roadInForce the box for the road-speed value; none for what wets the grains of another truck
 * @param road the boxes for the measured course
 */
record TypeInSheet(
        int index,
        String id,
        String onTruck,
        Optional<String> scale,
        Optional<String> container,
        List<TypeInBox> before,
        List<Part> parts,
        List<List<Double>> control,
        TypeInBox indicatedStep,
        Optional<TypeInBox> roadInForce,
        List<TypeInBox> road) {

    /** Net masses further from what is expected are asked about, by where that comes from (common practice, no source). */
    private static final double USUAL_OF_A_CALIBRATION = 1.5;

    private static final double USUAL_OF_AN_ESTIMATE = 2.5;

    /**
     * One material and gate opening.
     *
     * @param point both in words
     * @param task what to catch
     * @param material the material
     * @param setting the gate setting as the document has it; none where there is nothing to set
     * @param gate the box for the gate as measured, and what is planned
     * @param held the place of its value among those in force; -1 where the document has none
     * @param slot the slot of that value
     * @param value the box for that value
     * @param kilogramsPerRevolution what is expected of the sensed or watched shaft
     * @param usual so many times more or less is worth a question
     * @param pulsesPerRevolution of the sensor, if there is one; a flow meter's pulse is a turn of its own
     * @param liquid what is taken for the liquid; none for grains
     * @param lines the catches planned, calibration catches first
     * @param more a verification catch that nobody planned; none where no weighing method will do
     */
    record Part(
            String point,
            String task,
            String material,
            Optional<String> setting,
            Optional<Gate> gate,
            int held,
            Optional<String> slot,
            TypeInBox value,
            double kilogramsPerRevolution,
            double usual,
            Optional<Double> pulsesPerRevolution,
            Optional<Liquid> liquid,
            List<Line> lines,
            Optional<Line> more) {}

    /**
     * The gate as measured.
     *
     * @param box its box
     * @param planned what is planned, in the box's unit
     * @param off how far it may be off what is read, in the box's unit
     */
    record Gate(TypeInBox box, double planned, double off) {}

    /**
     * A liquid.
     *
     * @param kilogramsPerCubicMeter its density as the document has it
     * @param shown a cubic meter in the unit that the display shows
     * @param noRate no liquid at all over a distance, as the library says it
     * @param turns what the turns are called
     */
    record Liquid(double kilogramsPerCubicMeter, double shown, String noRate, String turns) {}

    /**
     * One planned catch.
     *
     * @param head for example "Catch 1"
     * @param task what is set for it; empty if the part says it for all
     * @param isCalibration whether it is a calibration catch
     * @param boxes all but those of the containers
     * @param container what a container is called: a pail among several, or a container of another kind
     * @param pails how many containers are planned
     * @param revolutions how many revolutions are planned
     * @param planned rate, speed and seconds of a verification, in the units of their boxes, and the prewet rate if there is one,
     *     for each way to set it; empty for a calibration catch
     * @param kilograms what a rate of one at a speed of one puts down in a second, in those units
     * @param read whether it is read in a container with marks, as only a liquid is; left out for what is weighed
     * @param density the density that is planned; none where none is needed
     */
    record Line(
            String head,
            String task,
            boolean isCalibration,
            List<TypeInBox> boxes,
            String container,
            int pails,
            double revolutions,
            List<List<Double>> planned,
            double kilograms,
            Optional<Boolean> read,
            Optional<Density> density) {}

    /**
     * The density that is planned for what is weighed.
     *
     * @param value its number, in the unit of its box
     * @param standardUncertainty how certain it is in the same unit, as it was written down
     */
    record Density(double value, String standardUncertainty) {
        static Density of(DensityEntry planned) {
            return new Density(
                    planned.value().getValue().doubleValue(),
                    Amounts.format(planned.standardUncertainty()).replaceFirst(" .*", ""));
        }
    }

    /**
     * A scale of the day.
     *
     * @param id its id
     * @param unit the unit that it reads in
     * @param division its division in that unit
     * @param capacity its capacity in that unit
     * @param capacityWords its capacity as it was written down
     * @param kilogram a kilogram in that unit
     * @param gross what a gross mass on it can be
     * @param tare what a tare on it can be
     * @param testWeight what a test weight on it can be
     * @param reading what its reading of a test weight can be
     */
    record ScaleChoice(
            String id,
            String unit,
            double division,
            double capacity,
            String capacityWords,
            double kilogram,
            Optional<TypeInBox.Range> gross,
            Optional<TypeInBox.Range> tare,
            Optional<TypeInBox.Range> testWeight,
            Optional<TypeInBox.Range> reading) {

        static ScaleChoice of(Scale scale) {
            Unit<Mass> unit = scale.division().getUnit();
            return new ScaleChoice(
                    scale.id(),
                    TruckUnits.symbolOf(scale.division()),
                    scale.division().getValue().doubleValue(),
                    Amounts.in(scale.capacity(), unit),
                    Amounts.format(scale.capacity()),
                    Amounts.in(Amounts.of(1, SpreadingUnits.KILOGRAM), unit),
                    TypeInBox.Range.of("gross", unit),
                    TypeInBox.Range.of("tare", unit),
                    TypeInBox.Range.of("testWeight", unit),
                    TypeInBox.Range.of("reading", unit));
        }
    }

    /**
     * A container with marks of the day.
     *
     * @param id its id
     * @param unit the unit that it reads in
     * @param capacity its highest mark in that unit
     * @param capacityWords its highest mark as it was written down
     * @param cubicMeter a cubic meter in that unit
     * @param fills what can be read in it
     */
    record GraduateChoice(
            String id,
            String unit,
            double capacity,
            String capacityWords,
            double cubicMeter,
            Optional<TypeInBox.Range> fills) {

        static GraduateChoice of(Graduate container) {
            Unit<Volume> unit = container.division().getUnit();
            return new GraduateChoice(
                    container.id(),
                    TruckUnits.symbolOf(container.division()),
                    Amounts.in(container.capacity(), unit),
                    Amounts.format(container.capacity()),
                    Amounts.in(Amounts.of(1, SpreadingUnits.CUBIC_METER), unit),
                    TypeInBox.Range.of("fills", unit));
        }
    }

    static TypeInSheet of(DayPlan day, TruckPlan truck) {
        PlanSheet paper = PlanSheet.of(day, truck, 1);
        TruckUnits units = TruckUnits.of(truck);
        Optional<String> scale = scale(day, truck);
        List<TypeInBox> before = paper.before().stream()
                .filter(box -> !box.field().isEmpty() && !box.field().equals(PlanSheet.GATE))
                .filter(box -> scale.isPresent() || !box.field().startsWith("scale-check/"))
                .map(TypeInBox::of)
                .collect(Collectors.toCollection(ArrayList::new));
        if (WorkStep.hasSensor(truck)) {
            before.add(TypeInBox.of("catch/counted.modulus", "counter rolls over at", "pulse"));
        }
        String roadUnit = truck.truck()
                .roadSpeed()
                .map(check -> TruckUnits.symbolOf(check.inForce()))
                .orElseGet(() -> units.symbol(PulsesPerDistance.class));
        return new TypeInSheet(
                day.day().trucks().indexOf(truck.truck()),
                truck.truck().id(),
                paper.onTruck(),
                scale,
                methods(day, truck)
                        .filter(ReadingMethodEntry.class::isInstance)
                        .map(method -> ((ReadingMethodEntry) method).container())
                        .findFirst(),
                before,
                IntStream.range(0, truck.points().size())
                        .mapToObj(i -> part(day, truck, paper.parts().get(i), i))
                        .toList(),
                truck.truck().spreader().controlSettings().stream()
                        .map(row -> List.of(
                                row.setting().getValue().doubleValue(),
                                Amounts.si(RotationalSpeed.class, row.shaftSpeed())))
                        .toList(),
                isLiquid(truck)
                        ? TypeInBox.of(
                                "catch/indicatedStep", "display’s volume in steps of", units.symbol(Volume.class))
                        : TypeInBox.of("catch/indicatedStep", "display’s mass in steps of", units.symbol(Mass.class)),
                paper.road().isEmpty()
                        ? Optional.empty()
                        : Optional.of(TypeInBox.of("road-speed/inForce", "road speed", roadUnit)),
                paper.road().stream().map(TypeInBox::of).toList());
    }

    private static boolean isLiquid(TruckPlan truck) {
        return truck.truck().spreader().isForLiquids();
    }

    /** The planned method of each point that has one. */
    private static Stream<MethodEntry> methods(DayPlan day, TruckPlan truck) {
        return truck.points().stream()
                .flatMap(point -> PlanSheet.shown(day, truck, point).stream())
                .map(MethodPlan::method);
    }

    /** A liquid that is read needs none; who has no method at all may still have tested a scale. */
    private static Optional<String> scale(DayPlan day, TruckPlan truck) {
        Optional<MethodEntry> first = isLiquid(truck)
                ? methods(day, truck)
                        .filter(WeighingMethodEntry.class::isInstance)
                        .findFirst()
                : PlanSheet.shown(day, truck, truck.points().get(0)).map(MethodPlan::method);
        return first.map(method -> ((WeighingMethodEntry) method).scale())
                .or(() -> methods(day, truck).anyMatch(ReadingMethodEntry.class::isInstance)
                        ? Optional.empty()
                        : day.day().scales().stream().map(Scale::id).findFirst());
    }

    private static Part part(DayPlan day, TruckPlan truck, PlanSheet.Part paper, int index) {
        PointPlan point = truck.points().get(index);
        // The plan has a point for each value in force, or else for each point that somebody wrote down.
        Optional<InForceEntry> held =
                truck.truck().inForce().stream().skip(index).findFirst();
        Optional<Quantity<?>> setting = point.point().setting().quantity();
        return new Part(
                paper.point(),
                paper.task(),
                point.point().material().name(),
                setting.map(Amounts::format),
                setting.map(one -> gate(truck, one)),
                held.isPresent() ? index : -1,
                held.flatMap(InForceEntry::slot),
                TypeInBox.of(
                        "in-force/value",
                        (isLiquid(truck) ? "volume value" : "mass value")
                                + held.flatMap(InForceEntry::slot)
                                        .map(slot -> ", slot " + slot)
                                        .orElse(""),
                        TruckUnits.symbolOf(held.<Quantity<?>>map(InForceEntry::value)
                                .orElseGet(() -> point.point().asMetered(point.expected())))),
                Amounts.si(DischargePerRevolution.class, point.expected()),
                point.source() == PointPlan.Source.IN_FORCE ? USUAL_OF_A_CALIBRATION : USUAL_OF_AN_ESTIMATE,
                truck.truck()
                        .spreader()
                        .pulsesPerRevolution()
                        .or(() -> isMeter(truck)
                                ? Optional.of(Amounts.of(1, SpreadingUnits.PULSE_PER_REVOLUTION))
                                : Optional.empty())
                        .map(pulses -> Amounts.si(PulsesPerRevolution.class, pulses)),
                isLiquid(truck) ? Optional.of(liquid(truck, point)) : Optional.empty(),
                PlanSheet.shown(day, truck, point)
                        .map(method -> lines(truck, point, paper, method))
                        .orElse(List.of()),
                PlanSheet.shown(day, truck, point)
                        .map(method -> verification(
                                new PlanSheet.Line(
                                        "",
                                        "",
                                        PlanSheet.verificationBoxes(truck, point, TruckUnits.of(truck)),
                                        List.of()),
                                truck,
                                point,
                                method,
                                Optional.empty())));
    }

    private static boolean isMeter(TruckPlan truck) {
        return truck.truck().spreader().kind() == Metering.Kind.FLOW_METER;
    }

    private static Liquid liquid(TruckPlan truck, PointPlan point) {
        return new Liquid(
                point.point().material().kilogramsPerAmount(),
                Amounts.in(
                        Amounts.of(1, SpreadingUnits.CUBIC_METER),
                        UnitSymbol.tradeUnit(Volume.class, TruckUnits.of(truck).like())),
                "0 " + TruckUnits.of(truck).symbol(LiquidApplicationRate.class),
                isMeter(truck) ? "pulses" : "turns");
    }

    /** Where nobody says how closely a gate is read, a tenth of what is planned is no reading error any more. */
    private static Gate gate(TruckPlan truck, Quantity<?> planned) {
        double number = planned.getValue().doubleValue();
        return new Gate(
                TypeInBox.of(
                        PlanSheet.GATE,
                        truck.points().size() > 1 ? "gate at " + Amounts.format(planned) : "gate measured",
                        TruckUnits.symbolOf(planned)),
                number,
                truck.truck()
                        .spreader()
                        .gateReading()
                        .map(off -> TypeInBox.in(off, planned.getUnit()))
                        .orElse(number / 10));
    }

    private static List<Line> lines(TruckPlan truck, PointPlan point, PlanSheet.Part paper, MethodPlan method) {
        CatchSeries series = method.calibration().orElseThrow().series();
        List<RunPlan> runs = method.verifications();
        return IntStream.range(0, paper.lines().size())
                .mapToObj(i -> i < series.repeats()
                        ? calibration(paper.lines().get(i), truck, method)
                        : verification(
                                paper.lines().get(i),
                                truck,
                                point,
                                method,
                                Optional.of(runs.get(i - series.repeats()))))
                .toList();
    }

    private static Line calibration(PlanSheet.Line line, TruckPlan truck, MethodPlan method) {
        CatchSeries series = method.calibration().orElseThrow().series();
        return new Line(
                line.head(),
                line.task(),
                true,
                boxes(truck, line, method),
                container(method),
                series.containersToFill(),
                series.revolutions().getValue().doubleValue(),
                List.of(),
                0,
                read(method),
                density(method).map(Density::of));
    }

    private static Line verification(
            PlanSheet.Line line, TruckPlan truck, PointPlan point, MethodPlan method, Optional<RunPlan> run) {
        CatchSeries series = run.map(RunPlan::result)
                .orElseGet(() -> method.calibration().orElseThrow())
                .series();
        List<TypeInBox> boxes = boxes(truck, line, method);
        Unit<Speed> speed = unit(boxes, "catch/testSpeed").asType(Speed.class);
        return new Line(
                line.head(),
                line.task(),
                false,
                boxes,
                container(method),
                series.containersToFill(),
                series.revolutions().getValue().doubleValue(),
                run.map(one -> planned(truck, boxes, one, speed)).orElse(List.of()),
                kilograms(truck, point, boxes, speed),
                read(method),
                density(method).map(Density::of));
    }

    /** Rate, speed and seconds, and of a liquid that wets the prewet rate, in each way that gives the planned flow. */
    private static List<List<Double>> planned(TruckPlan truck, List<TypeInBox> boxes, RunPlan run, Unit<Speed> speed) {
        Unit<?> rate = unit(boxes, "catch/targetRate");
        double testSpeed = Amounts.in(run.testSpeed(), speed);
        double seconds = Amounts.in(run.runTime(), SpreadingUnits.SECOND);
        if (truck.truck().wets().isEmpty()) {
            return List.of(List.of(TypeInBox.in(run.run().targetRate(), rate), testSpeed, seconds));
        }
        Unit<?> prewet = unit(boxes, "catch/prewetRate");
        return Prewetting.of(truck, run.run().targetRate()).stream()
                .map(one ->
                        List.of(TypeInBox.in(one.dry(), rate), testSpeed, seconds, TypeInBox.in(one.prewet(), prewet)))
                .toList();
    }

    /** What is put down in a second at a rate, a speed and, where it wets, a prewet rate of one. */
    private static double kilograms(TruckPlan truck, PointPlan point, List<TypeInBox> boxes, Unit<Speed> speed) {
        Unit<?> rate = unit(boxes, "catch/targetRate");
        Quantity<Speed> one = Amounts.of(1, speed);
        Quantity<Time> second = Amounts.of(1, SpreadingUnits.SECOND);
        TestRun run;
        if (truck.truck().wets().isPresent()) {
            Unit<PrewetRate> prewet = unit(boxes, "catch/prewetRate").asType(PrewetRate.class);
            run = TestRun.pumping(
                    PrewetRates.liquidRateFromDryRate(
                            Amounts.of(1, rate.asType(ApplicationRate.class)), Amounts.of(1, prewet)),
                    one,
                    second);
        } else if (isLiquid(truck)) {
            run = TestRun.pumping(Amounts.of(1, rate.asType(LiquidApplicationRate.class)), one, second);
        } else {
            run = TestRun.lasting(Amounts.of(1, rate.asType(ApplicationRate.class)), one, second);
        }
        return run.expectedKilograms(point.point().material());
    }

    private static Optional<Boolean> read(MethodPlan method) {
        return method.method() instanceof ReadingMethodEntry ? Optional.of(true) : Optional.empty();
    }

    private static String container(MethodPlan method) {
        if (read(method).isPresent()) {
            return "fill";
        }
        return method.method().mostContainers() > 1 ? "pail" : "container";
    }

    /** The page has the boxes of fills and containers itself, and asks how certain a density is. */
    private static List<TypeInBox> boxes(TruckPlan truck, PlanSheet.Line line, MethodPlan method) {
        Stream<TypeInBox> boxes = line.boxes().stream()
                .filter(box -> !box.field().isEmpty()
                        && !box.field().equals("catch/read.fills")
                        && !box.field().equals("catch/density.value"))
                .flatMap(box -> asked(truck, box));
        return Stream.concat(boxes, density(method).stream().flatMap(TypeInSheet::densityBoxes))
                .toList();
    }

    private static Optional<DensityEntry> density(MethodPlan method) {
        return method.method() instanceof WeighingMethodEntry weighing ? weighing.density() : Optional.empty();
    }

    private static Stream<TypeInBox> densityBoxes(DensityEntry planned) {
        return Stream.of(
                TypeInBox.of("catch/density.value", "density", TruckUnits.symbolOf(planned.value())),
                TypeInBox.of(
                        "catch/density.standardUncertainty",
                        "density ± (standard)",
                        TruckUnits.symbolOf(planned.value())));
    }

    private static Unit<?> unit(List<TypeInBox> boxes, String field) {
        return boxes.stream()
                .filter(box -> box.field().equals(field))
                .map(box -> TypeInBox.unit(box.unit()))
                .findFirst()
                .orElseThrow();
    }

    /**
     * A control setting without a table that says its speed can't be computed with: then the speed itself is asked for. The rate
     * of what wets is that of the grains, and the library calls it so.
     */
    private static Stream<TypeInBox> asked(TruckPlan truck, PlanSheet.Box box) {
        if (box.field().equals("catch/targetRate") && truck.truck().wets().isPresent()) {
            return Stream.of(TypeInBox.of(box).asked("dry rate", "not-negative"));
        }
        if (!box.field().equals("catch/counted.setting")) {
            return Stream.of(TypeInBox.of(box));
        }
        List<OpenLoop.Row> table = truck.truck().spreader().controlSettings();
        return Stream.of(
                table.isEmpty()
                        ? TypeInBox.of("catch/counted.shaftSpeed", "shaft speed", "rev/min")
                        : TypeInBox.of(box).within(table));
    }
}
