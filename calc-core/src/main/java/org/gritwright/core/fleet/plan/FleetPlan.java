package org.gritwright.core.fleet.plan;

import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import org.gritwright.core.fleet.day.PlanEntry;
import org.gritwright.units.check.Require;

/**
 * A day's plan.
 *
 * @param plan what the plan is to reach
 * @param trucks the trucks' plans, in the order of the day
 */
public record FleetPlan(PlanEntry plan, List<TruckPlan> trucks) {

    /** Copies the list. */
    public FleetPlan {
        Require.given(FleetPlan.class, plan, trucks);
        trucks = List.copyOf(trucks);
    }

    /**
     * How long it takes with one weighing method.
     *
     * @param method its position in the plan, from 0
     * @return the days of the trucks for which that method reaches the wanted uncertainty
     */
    public Schedule schedule(int method) {
        return schedule(truck -> Optional.of(method));
    }

    /**
     * How long it takes with a mix of weighing methods.
     *
     * @param methodOf the position of a truck's method in the plan, from 0; none for a truck that is left out
     * @return the days of the trucks that have a method which reaches the wanted uncertainty
     */
    public Schedule schedule(Function<TruckPlan, Optional<Integer>> methodOf) {
        return Schedule.of(this, methodOf);
    }

    /**
     * The trucks that have a plan, but for which a weighing method doesn't reach the wanted uncertainty.
     *
     * @param method its position in the plan, from 0
     * @return the trucks, possibly none
     */
    public List<TruckPlan> outOfReach(int method) {
        return trucks.stream()
                .filter(truck -> truck.refusal().isEmpty() && !truck.isReachedBy(method))
                // No pail with marks is wanted for grains.
                .filter(truck -> plan.methods().get(method).isForLiquids()
                        == truck.truck().spreader().isForLiquids())
                .toList();
    }
}
