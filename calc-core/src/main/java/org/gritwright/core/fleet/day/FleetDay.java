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
import org.gritwright.core.weighing.Scale;
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
 * @param materials the materials in use
 * @param plan what the day is to be planned for; none if nobody plans it
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
        List<Material> materials,
        Optional<PlanEntry> plan,
        List<TruckDay> trucks) {

    /**
     * Copies the lists.
     *
     * @throws org.gritwright.units.InvalidInputException if there is no truck
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
                materials,
                plan,
                trucks);
        Require.that(!trucks.isEmpty(), "trucks of a day", "one or more", "none");
        scales = List.copyOf(scales);
        materials = List.copyOf(materials);
        trucks = List.copyOf(trucks);
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
                materials,
                empty(),
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
                day, seasonStart, tolerance, other, allowances, site, technician, scales, materials, plan, trucks);
    }

    /**
     * The same day with one truck only, and with those scales and materials that the truck's entries name; without the plan,
     * which is the whole day's.
     *
     * @param truck one of the trucks
     * @return the day as that truck saw it
     */
    public FleetDay withOnly(TruckDay truck) {
        Set<String> scalesOfTruck = truck.entries().map(CatchEntry::scale).collect(Collectors.toSet());
        Set<String> materialsOfTruck = Stream.concat(
                        truck.entries().map(CatchEntry::material),
                        truck.inForce().stream().map(InForceEntry::material))
                .collect(Collectors.toSet());
        return with(
                allowances,
                scales.stream()
                        .filter(scale -> scalesOfTruck.contains(scale.id()))
                        .toList(),
                materials.stream()
                        .filter(material -> materialsOfTruck.contains(material.name()))
                        .toList(),
                empty(),
                List.of(truck));
    }

    /**
     * The same day with other trucks.
     *
     * @param all the trucks
     * @return the day
     */
    public FleetDay withTrucks(List<TruckDay> all) {
        return with(allowances, scales, materials, plan, all);
    }

    /**
     * The same day with other allowances.
     *
     * @param allowed errors of the catches that their readings don't show
     * @return the day
     */
    public FleetDay withAllowances(CatchAllowances allowed) {
        return with(allowed, scales, materials, plan, trucks);
    }

    /**
     * The same day with a plan.
     *
     * @param wanted what the day is to be planned for
     * @return the day
     */
    public FleetDay withPlan(PlanEntry wanted) {
        return with(allowances, scales, materials, Optional.of(wanted), trucks);
    }

    private FleetDay with(
            CatchAllowances allowed,
            List<Scale> others,
            List<Material> substances,
            Optional<PlanEntry> planned,
            List<TruckDay> all) {
        return new FleetDay(
                day, seasonStart, tolerance, decisionRule, allowed, site, technician, others, substances, planned, all);
    }
}
