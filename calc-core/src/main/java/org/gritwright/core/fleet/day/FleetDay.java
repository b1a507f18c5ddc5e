package org.gritwright.core.fleet.day;

import static java.util.Optional.empty;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import org.gritwright.core.judgement.DecisionRule;
import org.gritwright.core.observation.CatchAllowances;
import org.gritwright.core.observation.Material;
import org.gritwright.core.weighing.Graduate;
import org.gritwright.core.weighing.Scale;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.check.Require;

/**
 * A fleet's calibration day as it was written down: the input of the main job.
 *
 * @param day the day
 * @param seasonStart the first day of the season to come or under way
 * @param tolerance how far an error may be from zero
 * @param decisionRule how an uncertain error is compared with the tolerance
 * @param allowances errors of the catches that their readings don't show
 * @param site where
 * @param technician who is in charge
 * @param scales the scales in use
 * @param graduates the containers with marks in use, in which liquids are read
 * @param materials the materials in use
 * @param plan what the day is to be planned for; none if nobody plans it
 * @param routes what the trucks are to do on the road
 * @param tanks the tanks of the yard with what is in them; what they hold is a matter of no truck
 * @param trucks the trucks, one or more
 */
public record FleetDay(
        LocalDate day,
        LocalDate seasonStart,
        Quantity<Dimensionless> tolerance,
        DecisionRule decisionRule,
        CatchAllowances allowances,
        Optional<String> site,
        Optional<String> technician,
        List<Scale> scales,
        List<Graduate> graduates,
        List<Material> materials,
        Optional<PlanEntry> plan,
        List<RouteEntry> routes,
        List<TankEntry> tanks,
        List<TruckDay> trucks) {

    /**
     * Copies the lists.
     *
     * @throws InvalidInputException if there is no truck
     */
    public FleetDay {
        Require.given(
                FleetDay.class,
                day,
                seasonStart,
                tolerance,
                decisionRule,
                allowances,
                site,
                technician,
                scales,
                graduates,
                materials,
                plan,
                routes,
                tanks,
                trucks);
        Require.that(!trucks.isEmpty(), "trucks of a day", "one or more", "none");
        scales = List.copyOf(scales);
        graduates = List.copyOf(graduates);
        materials = List.copyOf(materials);
        routes = List.copyOf(routes);
        tanks = List.copyOf(tanks);
        trucks = List.copyOf(trucks);
    }

    /**
     * A day without tanks.
     *
     * @param day as of the record
     * @param seasonStart as of the record
     * @param tolerance as of the record
     * @param decisionRule as of the record
     * @param allowances as of the record
     * @param site as of the record
     * @param technician as of the record
     * @param scales as of the record
     * @param graduates as of the record
     * @param materials as of the record
     * @param plan as of the record
     * @param routes as of the record
     * @param trucks as of the record
     * @throws InvalidInputException if there is no truck
     */
    public FleetDay(
            LocalDate day,
            LocalDate seasonStart,
            Quantity<Dimensionless> tolerance,
            DecisionRule decisionRule,
            CatchAllowances allowances,
            Optional<String> site,
            Optional<String> technician,
            List<Scale> scales,
            List<Graduate> graduates,
            List<Material> materials,
            Optional<PlanEntry> plan,
            List<RouteEntry> routes,
            List<TruckDay> trucks) {
        this(
                day,
                seasonStart,
                tolerance,
                decisionRule,
                allowances,
                site,
                technician,
                scales,
                graduates,
                materials,
                plan,
                routes,
                List.of(),
                trucks);
    }

    /**
     * A day with what every day has: simple acceptance, no allowances, no plan.
     *
     * @param day the day
     * @param seasonStart the first day of the season to come or under way
     * @param tolerance how far an error may be from zero
     * @param scales the scales in use
     * @param materials the materials in use
     * @param trucks the trucks
     * @return the day
     */
    public static FleetDay of(
            LocalDate day,
            LocalDate seasonStart,
            Quantity<Dimensionless> tolerance,
            List<Scale> scales,
            List<Material> materials,
            List<TruckDay> trucks) {
        return new FleetDay(
                day,
                seasonStart,
                tolerance,
                DecisionRule.SIMPLE,
                CatchAllowances.NONE,
                empty(),
                empty(),
                scales,
                List.of(),
                materials,
                empty(),
                List.of(),
                trucks);
    }

    /**
     * The same day with another decision rule.
     *
     * @param other how an uncertain error is compared with the tolerance
     * @return the day
     */
    public FleetDay withDecisionRule(DecisionRule other) {
        return new FleetDay(
                day,
                seasonStart,
                tolerance,
                other,
                allowances,
                site,
                technician,
                scales,
                graduates,
                materials,
                plan,
                routes,
                tanks,
                trucks);
    }

    /**
     * The same day with one truck only, with those routes that are for it, and with those scales, containers with marks and materials that its entries
     * and routes name; without plan and tanks, which are the whole day's.
     *
     * @param truck one of the trucks
     * @return the day as that truck saw it
     */
    public FleetDay withOnly(TruckDay truck) {
        Set<String> scalesOfTruck =
                truck.entries().flatMap(one -> one.scale().stream()).collect(Collectors.toSet());
        Set<String> graduatesOfTruck = truck.entries()
                .flatMap(one -> one.read().stream())
                .map(ReadEntry::container)
                .collect(Collectors.toSet());
        List<RouteEntry> routesOfTruck = routesOf(truck).stream()
                .map(route -> route.withOnly(truck.id()))
                .toList();
        Set<String> materialsOfTruck = Stream.of(
                        truck.entries().map(CatchEntry::material),
                        truck.inForce().stream().map(InForceEntry::material),
                        routesOfTruck.stream().map(RouteEntry::material))
                .flatMap(names -> names)
                .collect(Collectors.toSet());
        return with(
                allowances,
                scales.stream()
                        .filter(scale -> scalesOfTruck.contains(scale.id()))
                        .toList(),
                graduates.stream()
                        .filter(one -> graduatesOfTruck.contains(one.id()))
                        .toList(),
                materials.stream()
                        .filter(material -> materialsOfTruck.contains(material.name()))
                        .toList(),
                empty(),
                routesOfTruck,
                List.of(),
                List.of(truck));
    }

    /**
     * What a truck is to do on the road.
     *
     * @param truck one of the trucks
     * @return the routes that name it, and those for all trucks whose material it can meter
     */
    public List<RouteEntry> routesOf(TruckDay truck) {
        Set<String> others = materials.stream()
                .filter(one -> one.isLiquid() != truck.spreader().isForLiquids())
                .map(Material::name)
                .collect(Collectors.toSet());
        return routes.stream()
                .filter(route ->
                        route.trucks().isEmpty() ? !others.contains(route.material()) : route.isFor(truck.id()))
                .toList();
    }

    /**
     * The same day with other trucks.
     *
     * @param all the trucks
     * @return the day
     */
    public FleetDay withTrucks(List<TruckDay> all) {
        return with(allowances, scales, graduates, materials, plan, routes, tanks, all);
    }

    /**
     * The same day with containers in which liquids are read.
     *
     * @param used the containers with marks
     * @return the day
     */
    public FleetDay withGraduates(List<Graduate> used) {
        return with(allowances, scales, used, materials, plan, routes, tanks, trucks);
    }

    /**
     * The same day with other allowances.
     *
     * @param allowed errors of the catches that their readings don't show
     * @return the day
     */
    public FleetDay withAllowances(CatchAllowances allowed) {
        return with(allowed, scales, graduates, materials, plan, routes, tanks, trucks);
    }

    /**
     * The same day with a plan.
     *
     * @param wanted what the day is to be planned for
     * @return the day
     */
    public FleetDay withPlan(PlanEntry wanted) {
        return with(allowances, scales, graduates, materials, Optional.of(wanted), routes, tanks, trucks);
    }

    /**
     * The same day with other routes.
     *
     * @param all what the trucks are to do on the road
     * @return the day
     */
    public FleetDay withRoutes(List<RouteEntry> all) {
        return with(allowances, scales, graduates, materials, plan, all, tanks, trucks);
    }

    /**
     * The same day with other tanks.
     *
     * @param all the tanks of the yard with what is in them
     * @return the day
     */
    public FleetDay withTanks(List<TankEntry> all) {
        return with(allowances, scales, graduates, materials, plan, routes, all, trucks);
    }

    private FleetDay with(
            CatchAllowances allowed,
            List<Scale> others,
            List<Graduate> read,
            List<Material> substances,
            Optional<PlanEntry> planned,
            List<RouteEntry> driven,
            List<TankEntry> stored,
            List<TruckDay> all) {
        return new FleetDay(
                day,
                seasonStart,
                tolerance,
                decisionRule,
                allowed,
                site,
                technician,
                others,
                read,
                substances,
                planned,
                driven,
                stored,
                all);
    }
}
