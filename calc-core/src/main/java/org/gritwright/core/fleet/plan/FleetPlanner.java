package org.gritwright.core.fleet.plan;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Stream;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Speed;
import org.gritwright.core.calibration.CalibrationFactor;
import org.gritwright.core.fleet.assessment.Place;
import org.gritwright.core.fleet.day.CalibrationCatchEntry;
import org.gritwright.core.fleet.day.FleetDay;
import org.gritwright.core.fleet.day.InForceEntry;
import org.gritwright.core.fleet.day.PlanEntry;
import org.gritwright.core.fleet.day.TruckDay;
import org.gritwright.core.fleet.day.VerificationCatchEntry;
import org.gritwright.core.fleet.day.WayEntry;
import org.gritwright.core.fleet.day.Yard;
import org.gritwright.core.metering.Spreader;
import org.gritwright.core.observation.CatchLimits;
import org.gritwright.core.observation.Material;
import org.gritwright.core.planning.CatchPlanner;
import org.gritwright.core.planning.CatchSetup;
import org.gritwright.core.planning.FirstOrderStart;
import org.gritwright.core.planning.PlanResult;
import org.gritwright.core.planning.PlannedCount;
import org.gritwright.core.planning.RunPlan;
import org.gritwright.core.planning.RunPlanner;
import org.gritwright.core.spi.FillLimits;
import org.gritwright.core.spi.TypeRegistry;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.TradeSystem;
import org.gritwright.units.UnitSymbol;
import org.gritwright.units.check.Require;
import org.gritwright.units.quantity.ApplicationRate;
import org.gritwright.units.quantity.BulkDensity;
import org.gritwright.units.quantity.DischargePerRevolution;

/**
 * Plans a fleet's day before anything is dropped, truck by truck: one that can't be planned doesn't stop the others.
 *
 * <p>A truck is planned for the material and gate opening of its calibration in force, with that value as the expected
 * discharge. Without one it is for those of the catches that are written down, or for the day's one material on a spreader
 * that has no gate to set; the expected discharge is then the swept volume × the loose bulk density × the middle of the
 * usual apparent fill.
 *
 * @param types the conveyor and gate types that are known
 * @param limits where a catch would begin to be remarkable
 */
public record FleetPlanner(TypeRegistry types, CatchLimits limits) {

    /** Checks that all are given. */
    public FleetPlanner {
        Objects.requireNonNull(types, "types");
        Objects.requireNonNull(limits, "limits");
    }

    /**
     * A planner with the common limits and nothing allowed for but the common scatter.
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
     * @param plan what it is to be planned for
     * @return the plan
     * @throws InvalidInputException if the tolerance is not greater than zero, two scales or materials share a name, or a
     *     way of weighing names a scale that isn't there
     */
    public FleetPlan plan(FleetDay day, PlanEntry plan) {
        Yard yard = Yard.of(day);
        for (WayEntry way : plan.waysOfWeighing()) {
            Require.naming("way of weighing \"" + way.name() + "\"", () -> yard.scale(way.scale()));
        }
        return new FleetPlan(
                plan,
                day.trucks().stream().map(truck -> plan(yard, plan, truck)).toList());
    }

    private TruckPlan plan(Yard yard, PlanEntry plan, TruckDay truck) {
        try {
            Spreader spreader = truck.spreader(types);
            List<PlacePlan> places = truck.inForce().isPresent()
                    ? List.of(inForce(yard, plan, spreader, truck.inForce().get()))
                    : noted(yard, truck, spreader).stream()
                            .map(place -> estimated(yard, plan, spreader, place))
                            .toList();
            return new TruckPlan(truck, plan, Optional.empty(), places);
        } catch (InvalidInputException e) {
            return new TruckPlan(truck, plan, Optional.of(e.getMessage()), List.of());
        }
    }

    private PlacePlan inForce(Yard yard, PlanEntry plan, Spreader spreader, InForceEntry entry) {
        return Require.naming("calibration in force", () -> {
            entry.opening().ifPresent(opening -> spreader.sweptCubicMetresPerRevolution(Optional.of(opening)));
            double kilograms = CalibrationFactor.of(entry.value()).kilogramsPerRevolution(spreader.feedback());
            return place(
                    yard,
                    plan,
                    spreader,
                    new Noted(yard.material(entry.material()), entry.opening()),
                    discharge(kilograms, entry.value()),
                    PlacePlan.Source.IN_FORCE);
        });
    }

    private PlacePlan estimated(Yard yard, PlanEntry plan, Spreader spreader, Noted noted) {
        FillLimits fill = spreader.conveyor().fillLimits();
        double kilograms = spreader.sweptCubicMetresPerRevolution(noted.opening())
                * Amounts.si(BulkDensity.class, noted.material().looseBulkDensity())
                * (fill.lowestUsual() + fill.highestUsual())
                / 2;
        return place(
                yard,
                plan,
                spreader,
                noted,
                discharge(kilograms, noted.material().looseBulkDensity()),
                PlacePlan.Source.GEOMETRY);
    }

    private static Quantity<DischargePerRevolution> discharge(double kilograms, Quantity<?> inTheSystemOf) {
        TradeSystem system = UnitSymbol.of(inTheSystemOf.getUnit()).system();
        return Amounts.ofSi(kilograms, UnitSymbol.tradeUnit(DischargePerRevolution.class, system));
    }

    /** A material and a gate opening that somebody wrote down. */
    private record Noted(Material material, Optional<Quantity<?>> opening) {}

    private static List<Noted> noted(Yard yard, TruckDay truck, Spreader spreader) {
        List<Noted> noted = new ArrayList<>();
        List<Place> places = new ArrayList<>();
        Stream.concat(
                        truck.calibrationCatches().stream().map(CalibrationCatchEntry::entry),
                        truck.verificationCatches().stream().map(VerificationCatchEntry::entry))
                .filter(entry -> !places.contains(Place.of(entry)))
                .forEach(entry -> {
                    places.add(Place.of(entry));
                    noted.add(new Noted(yard.material(entry.material()), entry.opening()));
                });
        if (!noted.isEmpty()) {
            return noted;
        }
        if (spreader.gate().isAdjustable()) {
            throw new InvalidInputException(
                    "gate opening to plan for", "known from a calibration in force or a catch", "nothing");
        }
        if (yard.materials().size() != 1) {
            throw new InvalidInputException(
                    "material to plan for",
                    "known from a calibration in force or a catch, or the only one of the day",
                    yard.materials().size() + " materials");
        }
        return List.of(new Noted(yard.materials().values().iterator().next(), Optional.empty()));
    }

    private PlacePlan place(
            Yard yard,
            PlanEntry plan,
            Spreader spreader,
            Noted noted,
            Quantity<DischargePerRevolution> expected,
            PlacePlan.Source source) {
        PlannedCount count = PlannedCount.with(spreader.feedback(), plan.countUncertainty());
        List<WayPlan> ways = plan.waysOfWeighing().stream()
                .map(way -> way(yard, plan, way, count, expected))
                .toList();
        return new PlacePlan(noted.material(), noted.opening(), expected, source, count, ways);
    }

    /** A way that can't take even the smallest catch is no fault of the truck's. */
    private WayPlan way(
            Yard yard, PlanEntry plan, WayEntry way, PlannedCount count, Quantity<DischargePerRevolution> expected) {
        try {
            CatchSetup setup = new CatchSetup(
                    yard.scale(way.scale()),
                    yard.day().day(),
                    way.containers(),
                    count,
                    expected,
                    limits.withAllowances(yard.day().allowances()));
            CatchPlanner planner = CatchPlanner.of(setup, plan.fewest(), plan.most());
            PlanResult calibration = planner.plan(plan.wantedUncertainty());
            return new WayPlan(
                    way,
                    Optional.empty(),
                    Optional.of(calibration),
                    planner.table(CatchPlanner.USUAL),
                    runs(yard, plan, setup.afterCalibration(calibration.series().repeats())));
        } catch (InvalidInputException e) {
            return WayPlan.refused(way, e.getMessage());
        }
    }

    private static List<RunPlan> runs(Yard yard, PlanEntry plan, CatchSetup setup) {
        Quantity<Dimensionless> wanted =
                plan.wantedVerificationUncertainty().orElse(yard.day().tolerance());
        List<RunPlan> runs = new ArrayList<>();
        for (Quantity<ApplicationRate> rate : plan.targetRates()) {
            RunPlanner planner = new RunPlanner(
                    setup,
                    rate,
                    plan.range(),
                    plan.startTimeConstant().map(FirstOrderStart::new),
                    plan.greatestStartLoss());
            for (Quantity<Speed> speed : plan.testSpeeds()) {
                planner.at(speed, wanted).ifPresent(runs::add);
            }
        }
        return runs;
    }
}
