package org.gritwright.core.fleet.plan;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import javax.measure.Quantity;
import javax.measure.quantity.Time;
import org.gritwright.core.fleet.day.PlanEntry;
import org.gritwright.core.fleet.day.StepTimes;
import org.gritwright.core.fleet.day.TruckDay;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;

/**
 * One truck's plan.
 *
 * @param truck the truck
 * @param plan what was to be planned for
 * @param refusal why nothing can be planned; none if something can
 * @param points a plan for each calibration point; empty with a refusal
 */
public record TruckPlan(TruckDay truck, PlanEntry plan, Optional<String> refusal, List<PointPlan> points) {

    /** Copies the list. */
    public TruckPlan {
        points = List.copyOf(points);
    }

    /**
     * Whether a way of weighing reaches the wanted uncertainty everywhere on this truck.
     *
     * @param way its point in the plan, from 0
     * @return true if it does
     */
    public boolean isReachedBy(int way) {
        return refusal.isEmpty()
                && points.stream().allMatch(point -> point.ways().get(way).isReached());
    }

    /**
     * How long the truck takes with a way of weighing: setting up, all catches with their runs and containers, cleaning
     * up.
     *
     * @param way its point in the plan, from 0
     * @return the time in minutes; none where that way doesn't reach the wanted uncertainty
     */
    public Optional<Quantity<Time>> time(int way) {
        if (!isReachedBy(way)) {
            return Optional.empty();
        }
        StepTimes times = plan.waysOfWeighing().get(way).times();
        double seconds = WayPlan.si(times.setUp()) + WayPlan.si(times.cleanUp());
        for (PointPlan point : points) {
            seconds += point.ways().get(way).seconds(plan);
        }
        return Optional.of(Amounts.ofSi(seconds, SpreadingUnits.MINUTE));
    }

    /**
     * The way of weighing that takes the least time of those that reach the wanted uncertainty.
     *
     * @return its point in the plan, from 0; none if none reaches it
     */
    public Optional<Integer> quickest() {
        return IntStream.range(0, plan.waysOfWeighing().size())
                .filter(this::isReachedBy)
                .boxed()
                .min(Comparator.comparingDouble(way -> WayPlan.si(time(way).orElseThrow())));
    }
}
