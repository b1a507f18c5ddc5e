package org.gritwright.core.fleet.plan;

import java.util.List;
import javax.measure.Quantity;
import javax.measure.quantity.Time;
import org.gritwright.core.fleet.day.PlanEntry;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
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
     * How long the day takes with a weighing method, one truck after the other.
     *
     * @param method its position in the plan, from 0
     * @return the time in hours, of the trucks for which that method reaches the wanted uncertainty
     */
    public Quantity<Time> time(int method) {
        double seconds = trucks.stream()
                .flatMap(truck -> truck.time(method).stream())
                .mapToDouble(MethodPlan::si)
                .sum();
        return Amounts.ofSi(seconds, SpreadingUnits.HOUR);
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
                .toList();
    }
}
