package org.gritwright.core.fleet.plan;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import javax.measure.Quantity;
import javax.measure.quantity.Time;
import org.gritwright.core.finding.Finding;
import org.gritwright.core.fleet.day.PlanEntry;
import org.gritwright.core.fleet.day.StepTimes;
import org.gritwright.core.fleet.day.TruckDay;
import org.gritwright.core.range.WorkingRange;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.check.Require;
import org.gritwright.units.rate.PrewetRates;

/**
 * One truck's plan.
 *
 * @param truck the truck
 * @param plan what the plan is to reach
 * @param refusal why nothing can be planned; none if something can
 * @param range the steady shaft speeds that are planned with: the truck's own, measured or stated, or else the plan's; none where
 *     neither is known
 * @param points a plan for each calibration point; empty with a refusal
 * @param findings where the plan doesn't go with the truck's drive
 */
public record TruckPlan(
        TruckDay truck,
        PlanEntry plan,
        Optional<String> refusal,
        Optional<WorkingRange> range,
        List<PointPlan> points,
        List<Finding> findings) {

    /** Copies the lists. */
    public TruckPlan {
        Require.given(TruckPlan.class, truck, plan, refusal, range, points, findings);
        points = List.copyOf(points);
        findings = List.copyOf(findings);
    }

    /**
     * The target rates of its verification catches.
     *
     * @return masses per distance; of a liquid volumes: each prewet rate with each target rate where it wets, and one rate where
     *     two such pairs come to the same
     */
    public List<Quantity<?>> targetRates() {
        return targetRates(plan, truck);
    }

    static List<Quantity<?>> targetRates(PlanEntry plan, TruckDay truck) {
        if (!truck.spreader().isForLiquids()) {
            return List.copyOf(plan.targetRates());
        }
        return truck.wets().isEmpty()
                ? List.copyOf(plan.liquidRates())
                : plan.targetRates().stream()
                        .<Quantity<?>>flatMap(rate -> plan.prewetRates().stream()
                                .map(prewet -> PrewetRates.liquidRateFromDryRate(rate, prewet)))
                        .distinct()
                        .toList();
    }

    /**
     * Whether a weighing method reaches the wanted uncertainty everywhere on this truck.
     *
     * @param method its position in the plan, from 0
     * @return true if it does
     */
    public boolean isReachedBy(int method) {
        return refusal.isEmpty()
                && points.stream().allMatch(point -> point.methods().get(method).isReached());
    }

    /**
     * How long the truck takes with a weighing method: setting up at it, all catches with their runs and containers, cleaning
     * up at it. What is done once a day isn't in it.
     *
     * @param method its position in the plan, from 0
     * @return the time in minutes; none where that method doesn't reach the wanted uncertainty
     */
    public Optional<Quantity<Time>> time(int method) {
        if (!isReachedBy(method)) {
            return Optional.empty();
        }
        StepTimes times = plan.methods().get(method).times();
        double seconds = MethodPlan.si(times.setUp()) + MethodPlan.si(times.cleanUp());
        for (PointPlan point : points) {
            seconds += point.methods().get(method).seconds(plan);
        }
        return Optional.of(Amounts.ofSi(seconds, SpreadingUnits.MINUTE));
    }

    /**
     * The quickest weighing method that reaches the wanted uncertainty.
     *
     * @return its position in the plan, from 0; none if none reaches it
     */
    public Optional<Integer> quickest() {
        return IntStream.range(0, plan.methods().size())
                .filter(this::isReachedBy)
                .boxed()
                .min(Comparator.comparingDouble(
                        method -> MethodPlan.si(time(method).orElseThrow())));
    }
}
