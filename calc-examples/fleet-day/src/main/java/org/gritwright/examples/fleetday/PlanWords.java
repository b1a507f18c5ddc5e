package org.gritwright.examples.fleetday;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Speed;
import javax.measure.quantity.Time;
import org.gritwright.core.fleet.day.MethodEntry;
import org.gritwright.core.fleet.plan.MethodPlan;
import org.gritwright.core.fleet.plan.PointPlan;
import org.gritwright.core.fleet.plan.TruckPlan;
import org.gritwright.core.observation.CalibrationPoint;
import org.gritwright.core.planning.CatchSeries;
import org.gritwright.core.planning.PlanResult;
import org.gritwright.core.planning.RunPlan;
import org.gritwright.core.range.WorkingRange;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;

/** A plan's numbers as people say them. */
final class PlanWords {
    private static final int DIGITS = 3;

    private PlanWords() {}

    /** For example "road salt, gate 2 in". */
    static String point(PointPlan plan) {
        CalibrationPoint point = plan.point();
        return point.material().name()
                + point.setting()
                        .quantity()
                        .map(setting -> ", gate " + Amounts.format(setting))
                        .orElse("");
    }

    /** Where a truck has several points, the one that is meant. */
    static String where(TruckPlan truck, PointPlan point) {
        return truck.points().size() > 1 ? "For " + point(point) + ": " : "";
    }

    /** For example "2.41 %". */
    static String uncertainty(Quantity<Dimensionless> ratio) {
        return Figures.text(Amounts.of(Amounts.in(ratio, SpreadingUnits.PERCENT), SpreadingUnits.PERCENT), DIGITS);
    }

    /** For example "10 rev (900 pulse, 5 turns of the conveyor shaft)"; of a flow meter its pulses alone. */
    static String counted(PointPlan point, CatchSeries series) {
        if (!point.point().metering().hasShaft()) {
            return turns(point, series);
        }
        double turns = Amounts.in(series.conveyorTurns(), SpreadingUnits.REVOLUTION);
        return Amounts.format(series.revolutions()) + " ("
                + series.pulses().map(p -> Amounts.format(p) + ", ").orElse("")
                + Figures.text(Amounts.of(turns, SpreadingUnits.ONE), DIGITS) + " turns of the "
                + Metered.machine(point.point().metering().kind()) + " shaft)";
    }

    /** For example "10 rev", of a flow meter "3000 pulse". */
    static String turns(PointPlan point, CatchSeries series) {
        return Amounts.format(
                point.point().metering().hasShaft()
                        ? series.revolutions()
                        : Amounts.of(
                                Amounts.in(series.revolutions(), SpreadingUnits.REVOLUTION), SpreadingUnits.PULSE));
    }

    /** For example "6 × 10 rev, 316 lb". */
    static String table(PointPlan point, PlanResult result) {
        CatchSeries series = result.series();
        return result instanceof PlanResult.Reached
                ? series.repeats() + " × " + turns(point, series) + ", " + Figures.text(series.totalAmount(), DIGITS)
                : "out of reach";
    }

    /** Why a weighing method doesn't do, in a few sentences; empty if it does. */
    static String objection(MethodPlan method) {
        if (method.refusal().isPresent()) {
            return "Can't be used: " + method.refusal().get() + ".";
        }
        return method.calibration()
                .map(result -> result instanceof PlanResult.OutOfReach out
                        ? uncertainty(out.series().expandedUncertainty()) + " at best, with "
                                + catches(out.series().repeats()) + " of "
                                + Figures.text(out.series().amountPerCatch(), DIGITS) + ". Main cause: "
                                + out.mainCause().words() + ". "
                                + out.mainCause().help()
                        : "")
                .orElse("");
    }

    /** At which planned rates and speeds a truck can't be verified, and why, in a sentence. */
    static String notVerified(TruckPlan truck, MethodPlan method) {
        TruckUnits units = TruckUnits.of(truck);
        List<String> reasons = new ArrayList<>();
        for (Quantity<?> rate : truck.targetRates()) {
            for (Quantity<Speed> speed : truck.plan().testSpeeds()) {
                Optional<RunPlan> run = method.runs().stream()
                        .filter(one -> one.run().targetRate().equals(rate)
                                && one.testSpeed().equals(speed))
                        .findFirst();
                if (run.isEmpty()) {
                    reasons.add(at(truck, units, rate, speed)
                            + " (no run of whole seconds gives more than the smallest sensible catch and less than the"
                            + " containers hold)");
                } else if (!run.get().withinRange().orElse(true)) {
                    reasons.add(at(truck, units, rate, speed) + " ("
                            + (truck.truck().spreader().isForLiquids()
                                    ? run.get()
                                                    .flow()
                                                    .map(flow -> Figures.text(flow, DIGITS))
                                                    .orElse("the flow") + " is beyond what pump or meter is good for"
                                    : Figures.text(run.get().shaftSpeed(), DIGITS) + ", and " + range(truck))
                            + ")");
                }
            }
        }
        return "Can't be verified as planned at " + String.join(", nor at ", reasons)
                + ". Plan another rate or speed for this truck.";
    }

    /** As the plan has it of all drives, or what this one's own is. */
    private static String range(TruckPlan truck) {
        WorkingRange range = truck.range().orElseThrow();
        return truck.range().equals(truck.plan().range())
                ? "the drives hold " + Amounts.format(range.lowest()) + " to " + Amounts.format(range.highest())
                : "its drive holds " + Figures.text(range.lowest(), DIGITS) + " to "
                        + Figures.text(range.highest(), DIGITS);
    }

    /** What a method is for, for example "conveyors". */
    static String machines(MethodEntry method) {
        return method.isForLiquids() ? "pumps and meters" : "conveyors";
    }

    /** For example "320 lb/mi and 15 mi/h". */
    static String at(TruckPlan truck, TruckUnits units, Quantity<?> rate, Quantity<Speed> speed) {
        return rate(truck, units, rate) + " and " + units.text(speed);
    }

    /** As it is set in the display: of what wets, the rate of the dry material and the prewet rate. */
    static String rate(TruckPlan truck, TruckUnits units, Quantity<?> rate) {
        if (truck.truck().wets().isEmpty()) {
            return units.text(rate);
        }
        List<String> settings = Prewetting.of(truck, rate).stream()
                .map(one -> units.text(one.dry()) + ", " + units.text(one.prewet()))
                .toList();
        return settings.get(0)
                + (settings.size() == 1
                        ? ""
                        : " (the same flow as " + String.join(" or ", settings.subList(1, settings.size())) + ")");
    }

    /** For example "75 min", "21 h 40 min". */
    static String duration(Quantity<Time> time) {
        long minutes = Math.round(Amounts.in(time, SpreadingUnits.MINUTE));
        return minutes < 120 ? minutes + " min" : minutes / 60 + " h " + minutes % 60 + " min";
    }

    /** For example "1 catch", "6 catches". */
    static String catches(int repeats) {
        return repeats + (repeats == 1 ? " catch" : " catches");
    }
}
