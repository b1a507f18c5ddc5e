package org.gritwright.core.fleet.plan;

import java.util.List;
import javax.measure.Quantity;
import javax.measure.quantity.Time;
import org.gritwright.core.fleet.day.PlanEntry;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;

/**
 * A day's plan.
 *
 * @param plan what was to be planned for
 * @param trucks the trucks' plans, in the order of the day
 */
public record FleetPlan(PlanEntry plan, List<TruckPlan> trucks) {

    /** Copies the list. */
    public FleetPlan {
        trucks = List.copyOf(trucks);
    }

    /**
     * How long the day takes with a way of weighing, one truck after the other.
     *
     * @param way its place in the plan, from 0
     * @return the time in hours, of the trucks for which that way reaches the wanted uncertainty
     */
    public Quantity<Time> time(int way) {
        double seconds = trucks.stream()
                .flatMap(truck -> truck.time(way).stream())
                .mapToDouble(WayPlan::si)
                .sum();
        return Amounts.ofSi(seconds, SpreadingUnits.HOUR);
    }

    /**
     * The trucks that have a plan, but for which a way of weighing doesn't reach the wanted uncertainty.
     *
     * @param way its place in the plan, from 0
     * @return the trucks, possibly none
     */
    public List<TruckPlan> outOfReach(int way) {
        return trucks.stream()
                .filter(truck -> truck.refusal().isEmpty() && !truck.isReachedBy(way))
                .toList();
    }
}
