package org.gritwright.core.fleet.plan;

import java.util.List;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Time;
import org.gritwright.core.fleet.day.MethodEntry;
import org.gritwright.core.fleet.day.PlanEntry;
import org.gritwright.core.planning.CatchSeries;
import org.gritwright.core.planning.PlanResult;
import org.gritwright.core.planning.RunPlan;
import org.gritwright.units.Amounts;
import org.gritwright.units.check.Require;

/**
 * The plan for one material and gate opening with one weighing method.
 *
 * @param method the weighing method
 * @param refusal why nothing can be planned with it; none if something can
 * @param calibration the calibration catches, or why the wanted uncertainty is out of reach; none with a refusal
 * @param table what it takes to reach each of the usual uncertainties; empty with a refusal
 * @param runs verification catches, for each target rate and test speed that fits; possibly none
 */
public record MethodPlan(
        MethodEntry method,
        Optional<String> refusal,
        Optional<PlanResult> calibration,
        List<PlanResult> table,
        List<RunPlan> runs) {

    /** Copies the lists. */
    public MethodPlan {
        Require.given(MethodPlan.class, method, refusal, calibration, table, runs);
        table = List.copyOf(table);
        runs = List.copyOf(runs);
    }

    static MethodPlan refused(MethodEntry method, String reason) {
        return new MethodPlan(method, Optional.of(reason), Optional.empty(), List.of(), List.of());
    }

    /**
     * Whether the calibration can be made as certain as wanted.
     *
     * @return true if it can
     */
    public boolean isReached() {
        return calibration.filter(PlanResult.Reached.class::isInstance).isPresent();
    }

    /**
     * The verification catches to make: one at each planned rate and speed that the containers can take and whose shaft speed
     * the drive can hold.
     *
     * @return the runs in the order of the plan, possibly none
     */
    public List<RunPlan> verifications() {
        return runs.stream().filter(run -> run.withinRange().orElse(true)).toList();
    }

    /** The seconds for all catches here, without setting up and cleaning up. */
    double seconds(PlanEntry plan) {
        double sum = 0;
        if (calibration.isPresent()) {
            CatchSeries series = calibration.get().series();
            // The plan's shaft speed is a conveyor's.
            double run = plan.shaftSpeed()
                    .filter(speed -> !method.isForLiquids())
                    .map(series::runTime)
                    .map(MethodPlan::si)
                    .orElse(0.0);
            sum += series.repeats() * (si(method.times().perCatch()) + run + weighing(series));
        }
        for (RunPlan run : verifications()) {
            sum += si(method.times().perVerification())
                    + si(run.runTime())
                    + weighing(run.result().series());
        }
        return sum;
    }

    private double weighing(CatchSeries series) {
        return series.containersToFill() * si(method.times().perContainer());
    }

    static double si(Quantity<Time> time) {
        return Amounts.si(Time.class, time);
    }
}
