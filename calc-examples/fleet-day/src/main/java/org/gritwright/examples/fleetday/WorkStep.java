package org.gritwright.examples.fleetday;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import javax.measure.quantity.Dimensionless;
import org.gritwright.core.fleet.day.CalibrationCatchEntry;
import org.gritwright.core.fleet.day.ReadingMethodEntry;
import org.gritwright.core.fleet.day.VerificationCatchEntry;
import org.gritwright.core.fleet.plan.MethodPlan;
import org.gritwright.core.fleet.plan.PointPlan;
import org.gritwright.core.fleet.plan.TruckPlan;
import org.gritwright.core.metering.Metering;
import org.gritwright.core.observation.Conditions;
import org.gritwright.core.planning.PlannedCount;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.quantity.PulsesPerRevolution;

/**
 * A step of a truck's day, with a box to tick, or one for each time it is done.
 *
 * @param text what to do
 * @param times what the boxes are for; one empty text for a step that is done once
 */
record WorkStep(String text, List<String> times) {
    private static final int TURNS = 10;

    private static WorkStep once(String text) {
        return new WorkStep(text, List.of(""));
    }

    private static WorkStep numbered(String text, int times) {
        return new WorkStep(
                text, IntStream.rangeClosed(1, times).mapToObj(String::valueOf).toList());
    }

    /** In working order: what needs the engine off is done before the next start, and the road comes after the last guard. */
    static List<WorkStep> of(DayPlan day, TruckPlan truck) {
        Optional<Integer> method = day.method(truck);
        List<MethodPlan> plans = method.stream()
                .flatMap(index ->
                        truck.points().stream().map(point -> point.methods().get(index)))
                .toList();
        int catches = plans.stream()
                .flatMap(plan -> plan.calibration().stream())
                .mapToInt(result -> result.series().repeats())
                .sum();
        int verifications =
                plans.stream().mapToInt(plan -> plan.verifications().size()).sum();
        String gates = gates(truck);
        boolean several = truck.points().size() > 1;
        if (truck.truck().spreader().isForLiquids()) {
            return ofLiquid(day, truck, plans, catches, verifications);
        }
        List<WorkStep> steps = new ArrayList<>();
        steps.add(once("Truck and yard safe: every caution above ticked, cones set, signals agreed."));
        steps.add(once("Write down every constant of the display, as found, before anything is changed."));
        steps.add(once("Scale level and at zero. Weigh a test weight about as heavy as the load."));
        steps.add(once(
                "Warm up until oil and engine hold what the maker’s manual says. Write both down." + lastTime(truck)));
        steps.add(once("Lock out. Mark the shaft"
                + (gates.isEmpty() ? "." : ", set the gate to " + gates + ", measure it, enter it in the display.")));
        steps.add(once("Tarp or tray in place, everybody out of the zone. Prime: run until it falls evenly."));
        steps.add(once(turns(truck)));
        steps.add(once("Lock out. Clear tarp or tray."));
        steps.add(numbered(
                "Catch: tarp or tray in place, everybody out, own locks off. " + counted(truck)
                        + " Lock out, shovel, weigh full, then empty."
                        + (several ? " Set and measure the gate between its catches, locked out." : ""),
                catches));
        steps.add(
                once(
                        "Net ÷ turns of each catch against what side 2 expects"
                                + (several ? ", opening by opening" : "") + ". Within ±"
                                + Amounts.format(day.day().tolerance())
                                + ": leave the display’s value. Beyond: find out why first; what is left is entered as the new value."));
        steps.add(once("Read the value back from the display."));
        if (verifications > 0) {
            steps.add(numbered(
                    "Verification at each planned speed, from tarp to weighing as for a catch: "
                            + (gates.isEmpty() ? "" : "gate and slot of side 2, ")
                            + "simulated speed and rate set only when everybody is out, since they may start the conveyor.",
                    verifications));
        }
        steps.add(once(
                "Simulated speed canceled. Lock out. Tarp away, every guard seen on, spinner enabled by the maker’s"
                        + " method."));
        steps.add(once("Off the stands, if it was on any; chocks last. Everybody out, each takes off their own lock."));
        steps.add(numbered("Road speed over the measured course; the second person writes.", 3));
        steps.add(once("Write down every constant, as left. Switch the display off and on, write them down again and"
                + " compare."));
        steps.add(once("Settings saved or backed up."));
        steps.add(once("Put away: locks, cones, scale, material. Sheet signed."));
        return steps;
    }

    /** Pressure is relieved before a line is opened, and brine goes back into the tank. */
    private static List<WorkStep> ofLiquid(
            DayPlan day, TruckPlan truck, List<MethodPlan> plans, int catches, int verifications) {
        boolean isRead = plans.stream().anyMatch(plan -> plan.method() instanceof ReadingMethodEntry);
        boolean isCounted = truck.truck().spreader().kind() == Metering.Kind.FLOW_METER || hasSensor(truck);
        String measured = isRead
                ? " Lock out, wait until the foam is gone, read at eye height, empty back into the tank."
                : " Lock out, weigh full, empty back into the tank, weigh empty.";
        List<WorkStep> steps = new ArrayList<>();
        steps.add(once("Truck and yard safe: every caution above ticked, cones set, signals agreed."));
        steps.add(once("Write down every constant of the display, as found, before anything is changed."));
        steps.add(once(
                isRead
                        ? "Container clean and empty, on a level board; marks read at eye height."
                        : "Scale level and at zero. Weigh a test weight about as heavy as the load. Measure the liquid’s"
                                + " density in the tank, with its temperature."));
        steps.add(once("Tank at least a quarter full, strainer clean, suction hoses tight: air is counted as liquid."));
        steps.add(
                once(
                        "Stop the pump, relieve the pressure, lock out. Lead all outlets into the container, hoses tied down."));
        steps.add(once(
                "Everybody out, glasses on. Prime: run until it flows without bubbles. Stop, lock out, empty back."));
        steps.add(numbered(
                "Catch: container in place, everybody out, own locks off. "
                        + (isCounted
                                ? "Counter read at the controls, run, stop, counter read when all stands still."
                                : "Run, turns or seconds counted from outside the zone, stop.")
                        + measured,
                catches));
        steps.add(
                once(
                        "Each catch in " + units(truck) + (isRead ? "" : ", its volume being net mass ÷ density,")
                                + " against what side 2 expects. Within ±"
                                + Amounts.format(day.day().tolerance())
                                + ": leave the display’s value. Beyond: find out why first; what is left is entered as the new value."));
        steps.add(once("Read the value back from the display."));
        if (verifications > 0) {
            steps.add(numbered(
                    "Verification at each planned speed, as a catch: simulated speed and rate set only when everybody is out,"
                            + " since they may start the pump.",
                    verifications));
        }
        if (truck.truck().boom().isPresent()) {
            steps.add(once(
                    "Stop the pump, relieve the pressure, lock out. Hoses off, filters and nozzles clean and on. Then"
                            + " each nozzle, as the side about nozzles says."));
        }
        steps.add(once(
                "Simulated speed canceled. Stop the pump, relieve the pressure, lock out. Hoses back on, every guard"
                        + " seen on."));
        steps.add(once("Rinse what brine ran over; nothing goes into a drain."));
        steps.add(once("Everybody out, each takes off their own lock; chocks last."));
        if (truck.truck().wets().isEmpty()) {
            steps.add(numbered("Road speed over the measured course; the second person writes.", 3));
        }
        steps.add(once("Write down every constant, as left. Switch the display off and on, write them down again and"
                + " compare."));
        steps.add(once("Settings saved or backed up."));
        steps.add(once("Put away: locks, cones, containers, hoses. Sheet signed."));
        return steps;
    }

    /** What side 2 expects is in, for example "pulse/gal": a value of volume per count, or of counts per volume. */
    private static String units(TruckPlan truck) {
        return truck.points().stream()
                .map(point -> TruckUnits.symbolOf(PlanSheet.expected(truck, point)))
                .distinct()
                .collect(Collectors.joining(" or "));
    }

    /** For each tank of the yard; nothing is added before somebody has computed how much. */
    static List<WorkStep> ofTanks() {
        return List.of(
                once("Circulate until it is mixed: what is strong lies at the bottom."),
                once("Draw the sample at a tap, or from outside with a long dipper."),
                once("Jar and instrument clean. It floats free, without bubbles; read it at eye height, at the liquid’s"
                        + " surface, as its maker says. The sample’s temperature at the same time."),
                once("The tank’s own temperature, and its level. The sample goes back into the tank."),
                // A step ÷ √12, rounded up.
                once("± (standard): a third of a step of the instrument, or more if its maker says so."),
                once("Nothing is added before it is computed how much, and all cautions above hold."));
    }

    /** Whether the truck's shaft has a sensor that counts. */
    static boolean hasSensor(TruckPlan truck) {
        return truck.points().stream().anyMatch(point -> point.count() instanceof PlannedCount.Pulses);
    }

    private static String gates(TruckPlan truck) {
        return truck.points().stream()
                .flatMap(point -> point.point().setting().quantity().stream())
                .distinct()
                .map(Amounts::format)
                .collect(Collectors.joining(", then "));
    }

    /** Ten turns are few enough to be counted by eye, and enough to show a wrong number of pulses. */
    private static String turns(TruckPlan truck) {
        String watch = "Ten turns of the marked shaft, run slowly and watched from outside the zone: ";
        return truck.points().stream()
                .map(PointPlan::count)
                .filter(PlannedCount.Pulses.class::isInstance)
                .map(PlannedCount.Pulses.class::cast)
                .findFirst()
                .map(count -> watch + pulses(count))
                .orElse(watch + "two people count the same by eye, beside the one at the controls.");
    }

    /** Where a counter or a shaft is read or watched while nothing is locked out. */
    private static String counted(TruckPlan truck) {
        return hasSensor(truck)
                ? "Counter read at the controls, run, stop, counter read when all stands still; a counter on the shaft is"
                        + " read locked out."
                : "Run, turns or seconds counted from outside the zone, stop.";
    }

    private static String pulses(PlannedCount.Pulses count) {
        double perRevolution = Amounts.si(PulsesPerRevolution.class, count.perRevolution());
        double gearRatio = Amounts.si(Dimensionless.class, count.gearRatio());
        String sensed = counted(TURNS * perRevolution);
        return gearRatio == 1
                ? "the counter shows " + sensed + "."
                : "the counter shows " + sensed + " for the sensed shaft, " + counted(TURNS * perRevolution * gearRatio)
                        + " for the conveyor’s.";
    }

    private static String counted(double pulses) {
        return Amounts.format(Amounts.of(Math.rint(pulses), SpreadingUnits.PULSE));
    }

    /** What somebody wrote down of a warm truck; the manual's values aren't ours to know. */
    private static String lastTime(TruckPlan truck) {
        TruckUnits units = TruckUnits.of(truck);
        return Stream.concat(
                        truck.truck().calibrationCatches().stream().map(CalibrationCatchEntry::entry),
                        truck.truck().verificationCatches().stream().map(VerificationCatchEntry::entry))
                .flatMap(entry -> entry.conditions().stream())
                .map(conditions -> lastTime(units, conditions))
                .filter(words -> !words.isEmpty())
                .findFirst()
                .map(words -> " Last time: " + words + ".")
                .orElse("");
    }

    private static String lastTime(TruckUnits units, Conditions conditions) {
        Stream<String> oil = conditions.oilTemperature().stream().map(value -> "oil " + units.text(value));
        Stream<String> engine = conditions.engineSpeed().stream().map(value -> "engine " + units.text(value));
        return Stream.concat(oil, engine).collect(Collectors.joining(", "));
    }
}
