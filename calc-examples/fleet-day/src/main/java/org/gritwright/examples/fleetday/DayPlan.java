package org.gritwright.examples.fleetday;

import java.util.List;
import org.gritwright.core.fleet.day.FleetDay;
import org.gritwright.core.fleet.day.WeighingMethodEntry;
import org.gritwright.core.fleet.plan.FleetPlan;
import org.gritwright.core.fleet.plan.TruckPlan;
import org.gritwright.core.observation.Repeatability;
import org.gritwright.units.Amounts;

/**
 * What is planned for a day, for the page and the console alike.
 *
 * @param day the day as it was written down
 * @param plan its plan
 */
record DayPlan(FleetDay day, FleetPlan plan) {

    List<WeighingMethodEntry> methods() {
        return plan.plan().weighingMethods();
    }

    List<TruckPlan> planned() {
        return plan.trucks().stream().filter(truck -> truck.refusal().isEmpty()).toList();
    }

    List<TruckPlan> refused() {
        return plan.trucks().stream()
                .filter(truck -> truck.refusal().isPresent())
                .toList();
    }

    /** Trucks that can't be planned, and those that no weighing method makes as certain as wanted. */
    long needAttention() {
        return plan.trucks().stream()
                .filter(truck -> truck.quickest().isEmpty())
                .count();
    }

    /** How much catches scatter decides how certain a plan is: whether that is known or only assumed. */
    String scatter() {
        return day.allowances()
                .repeatability()
                .map(stated -> "Catches are taken to scatter by " + Amounts.format(stated.relativeDeviation())
                        + ", as the day states.")
                .orElseGet(() -> "The day states no repeatability: catches are assumed to scatter by "
                        + Amounts.format(Repeatability.COMMON.relativeDeviation())
                        + " (common practice, no source).");
    }

    /** For example "20 trucks: 19 have a plan that reaches what is wanted, 1 can't reach it, 0 can't be planned." */
    String summary() {
        long refused = refused().size();
        long outOfReach = needAttention() - refused;
        long reached = plan.trucks().size() - needAttention();
        return Words.count(plan.trucks().size(), "truck") + ": " + reached + " "
                + Words.verb(reached, "has", "have") + " a plan that reaches what is wanted, " + outOfReach
                + " can't reach it, " + refused + " can't be planned.";
    }
}
