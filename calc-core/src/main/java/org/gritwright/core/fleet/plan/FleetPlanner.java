package org.gritwright.core.fleet.plan;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Speed;
import org.gritwright.core.calibration.CalibrationFactor;
import org.gritwright.core.fleet.day.CalibrationCatchEntry;
import org.gritwright.core.fleet.day.DayLimits;
import org.gritwright.core.fleet.day.EnteredRanges;
import org.gritwright.core.fleet.day.FleetDay;
import org.gritwright.core.fleet.day.InForceEntry;
import org.gritwright.core.fleet.day.MethodEntry;
import org.gritwright.core.fleet.day.PlanEntry;
import org.gritwright.core.fleet.day.ReadingMethodEntry;
import org.gritwright.core.fleet.day.TruckDay;
import org.gritwright.core.fleet.day.VerificationCatchEntry;
import org.gritwright.core.fleet.day.WeighingMethodEntry;
import org.gritwright.core.fleet.day.Yard;
import org.gritwright.core.metering.Metering;
import org.gritwright.core.observation.CalibrationPoint;
import org.gritwright.core.observation.CatchLimits;
import org.gritwright.core.observation.Material;
import org.gritwright.core.planning.CatchPlanner;
import org.gritwright.core.planning.CatchSetup;
import org.gritwright.core.planning.FirstOrderStart;
import org.gritwright.core.planning.PlanResult;
import org.gritwright.core.planning.PlannedAmount;
import org.gritwright.core.planning.PlannedCount;
import org.gritwright.core.planning.PredictedDischarge;
import org.gritwright.core.planning.RunPlan;
import org.gritwright.core.planning.RunPlanner;
import org.gritwright.core.range.WorkingRange;
import org.gritwright.core.spi.Setting;
import org.gritwright.core.spi.TypeRegistry;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.UnitSymbol;
import org.gritwright.units.check.Require;
import org.gritwright.units.quantity.DischargePerRevolution;

/**
 * Plans a fleet's day before anything is dropped, truck by truck: one that can't be planned doesn't stop the others.
 *
 * <p>A truck is planned for the calibration points of its calibrations in force, with their values as the expected
 * discharge. Without one, it is planned for the points of the recorded catches, or for the day's one material on a
 * spreader that has no gate to set; the expected discharge is then the swept volume × the loose bulk density × the
 * middle of the usual apparent fill.
 *
 * @param types the conveyor and gate types that are known
 * @param limits thresholds beyond which a catch would be flagged
 */
public record FleetPlanner(TypeRegistry types, CatchLimits limits) {

    /** Checks that all are given. */
    public FleetPlanner {
        Require.given(FleetPlanner.class, types, limits);
    }

    /**
     * A planner with the common limits and no allowance except the common scatter.
     *
     * @param types the conveyor and gate types that are known
     * @return the planner
     */
    public static FleetPlanner of(TypeRegistry types) {
        return new FleetPlanner(types, CatchLimits.COMMON);
    }

    /**
     * Plans all trucks.
     *
     * @param day the fleet's day
     * @param plan what the plan is to reach
     * @return the plan
     * @throws InvalidInputException if the tolerance is not greater than zero, two scales or materials share a name, a
     *     weighing method names a scale or a route something that isn't there, or a number of the plan is out of its range
     */
    public FleetPlan plan(FleetDay day, PlanEntry plan) {
        DayLimits.COMMON.requireFew(day);
        EnteredRanges.check(plan, "/plan", (at, refused) -> {
            throw refused.withField(at + ": " + refused.field());
        });
        Yard yard = Yard.of(day);
        for (WeighingMethodEntry method : plan.weighingMethods()) {
            Require.naming("weighing method \"" + method.name() + "\"", () -> yard.scale(method.scale()));
        }
        for (ReadingMethodEntry method : plan.readingMethods()) {
            Require.naming("reading method \"" + method.name() + "\"", () -> yard.graduate(method.container()));
        }
        return new FleetPlan(
                plan,
                day.trucks().stream().map(truck -> plan(yard, plan, truck)).toList());
    }

    private TruckPlan plan(Yard yard, PlanEntry plan, TruckDay truck) {
        try {
            DayLimits.COMMON.excess(truck).ifPresent(refused -> {
                throw refused;
            });
            EnteredRanges.check(truck, "", (at, refused) -> {
                throw refused.withField(at + ": " + refused.field());
            });
            Metering spreader = truck.spreader().metering(types);
            PlannedRange drive = Require.naming("drive", () -> PlannedRange.of(plan, truck));
            Wanted wanted = new Wanted(yard, plan, TruckPlan.targetRates(plan, truck), drive.range());
            List<PointPlan> points = truck.inForce().isEmpty()
                    ? noted(yard, truck, spreader).stream()
                            .map(point -> estimated(wanted, point))
                            .toList()
                    : truck.inForce().stream()
                            .map(entry -> inForce(wanted, spreader, entry))
                            .toList();
            return new TruckPlan(truck, plan, Optional.empty(), drive.range(), points, drive.findings());
        } catch (InvalidInputException e) {
            return refused(truck, plan, e.getMessage());
        } catch (RuntimeException e) {
            return refused(truck, plan, "result must be one that can be computed: " + e);
        }
    }

    private static TruckPlan refused(TruckDay truck, PlanEntry plan, String reason) {
        return new TruckPlan(truck, plan, Optional.of(reason), Optional.empty(), List.of(), List.of());
    }

    /** What a truck is planned for, and the shaft speeds that it holds. */
    private record Wanted(Yard yard, PlanEntry plan, List<Quantity<?>> rates, Optional<WorkingRange> range) {}

    private PointPlan inForce(Wanted wanted, Metering spreader, InForceEntry entry) {
        return Require.naming("calibration in force", () -> {
            Material material = wanted.yard().material(entry.material());
            CalibrationPoint point = CalibrationPoint.of(material, spreader, setting(entry.setting()));
            double kilograms = CalibrationFactor.of(entry.value()).kilogramsPerRevolution(point);
            return point(wanted, point, discharge(kilograms, entry.value()), PointPlan.Source.IN_FORCE);
        });
    }

    private static Setting setting(Optional<Quantity<?>> reading) {
        return reading.map(Setting::of).orElse(Setting.none());
    }

    private PointPlan estimated(Wanted wanted, CalibrationPoint point) {
        return point(wanted, point, PredictedDischarge.of(point).expected(), PointPlan.Source.GEOMETRY);
    }

    private static Quantity<DischargePerRevolution> discharge(double kilograms, Quantity<?> inTheSystemOf) {
        return Amounts.ofSi(kilograms, UnitSymbol.tradeUnit(DischargePerRevolution.class, inTheSystemOf));
    }

    /** The calibration points that somebody wrote down. */
    private static List<CalibrationPoint> noted(Yard yard, TruckDay truck, Metering spreader) {
        Set<CalibrationPoint> noted = new LinkedHashSet<>();
        Stream.concat(
                        truck.calibrationCatches().stream().map(CalibrationCatchEntry::entry),
                        truck.verificationCatches().stream().map(VerificationCatchEntry::entry))
                .map(entry -> CalibrationPoint.of(yard.material(entry.material()), spreader, setting(entry.setting())))
                .forEach(noted::add);
        if (!noted.isEmpty()) {
            return List.copyOf(noted);
        }
        Require.that(
                !spreader.isSettable(),
                "gate setting to plan for",
                "known from a calibration in force or a catch",
                "nothing");
        List<Material> materials = yard.materials().values().stream()
                .filter(one -> one.isLiquid() == spreader.isForLiquids())
                .toList();
        Require.that(
                materials.size() == 1,
                "material to plan for",
                "known from a calibration in force or a catch, or the only one of the day",
                () -> materials.size() + " materials");
        return List.of(CalibrationPoint.of(materials.get(0), spreader, Setting.none()));
    }

    private PointPlan point(
            Wanted wanted, CalibrationPoint point, Quantity<DischargePerRevolution> expected, PointPlan.Source source) {
        PlanEntry plan = wanted.plan();
        PlannedCount count = PlannedCount.with(point.metering().feedback(), plan.countUncertainty());
        List<MethodPlan> methods = plan.methods().stream()
                .map(method -> method(wanted, method, point, count, expected))
                .toList();
        return new PointPlan(point, expected, source, count, methods);
    }

    /** A method that can't take even the smallest catch is no fault of the truck's. */
    private MethodPlan method(
            Wanted wanted,
            MethodEntry method,
            CalibrationPoint point,
            PlannedCount count,
            Quantity<DischargePerRevolution> expected) {
        Yard yard = wanted.yard();
        PlanEntry plan = wanted.plan();
        try {
            Require.that(
                    method.isForLiquids() == point.material().isLiquid(),
                    "method",
                    point.material().isLiquid() ? "one for liquids" : "one for grains",
                    method.name());
            CatchSetup setup = CatchSetup.at(
                    point,
                    amount(yard, method),
                    count,
                    expected,
                    limits.withAllowances(yard.day().allowances()));
            CatchPlanner planner = CatchPlanner.of(setup, plan.fewest(), plan.most());
            PlanResult calibration = planner.plan(plan.wantedUncertainty());
            return new MethodPlan(
                    method,
                    Optional.empty(),
                    Optional.of(calibration),
                    planner.table(CatchPlanner.USUAL),
                    runs(
                            wanted,
                            point,
                            setup.afterCalibration(calibration.series().repeats())));
        } catch (InvalidInputException e) {
            return MethodPlan.refused(method, e.getMessage());
        }
    }

    private static PlannedAmount amount(Yard yard, MethodEntry method) {
        if (method instanceof ReadingMethodEntry reading) {
            return new PlannedAmount.Read(yard.graduate(reading.container()), reading.fills(), reading.holds());
        }
        WeighingMethodEntry weighing = (WeighingMethodEntry) method;
        PlannedAmount.Weighed weighed = new PlannedAmount.Weighed(
                yard.scale(weighing.scale()), yard.day().day(), weighing.containers());
        return weighing.density()
                .<PlannedAmount>map(density -> new PlannedAmount.WeighedLiquid(weighed, density.density()))
                .orElse(weighed);
    }

    private static List<RunPlan> runs(Wanted wanted, CalibrationPoint point, CatchSetup setup) {
        PlanEntry plan = wanted.plan();
        Quantity<Dimensionless> uncertainty =
                plan.wantedVerificationUncertainty().orElse(wanted.yard().day().tolerance());
        List<RunPlan> runs = new ArrayList<>();
        for (Quantity<?> rate : wanted.rates()) {
            RunPlanner planner = new RunPlanner(
                            setup,
                            rate,
                            wanted.range(),
                            plan.startTimeConstant().map(FirstOrderStart::new),
                            plan.greatestStartLoss())
                    .through(point.metering());
            for (Quantity<Speed> speed : plan.testSpeeds()) {
                planner.at(speed, uncertainty).ifPresent(runs::add);
            }
        }
        return runs;
    }
}
