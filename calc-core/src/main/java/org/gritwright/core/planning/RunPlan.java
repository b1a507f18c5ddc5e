package org.gritwright.core.planning;

import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Speed;
import javax.measure.quantity.Time;
import org.gritwright.core.verification.TestRun;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.UnitSymbol;
import org.gritwright.units.check.Require;
import org.gritwright.units.quantity.ApplicationRate;
import org.gritwright.units.quantity.FlowRate;
import org.gritwright.units.quantity.RotationalSpeed;

/**
 * A planned verification catch at one test speed. Immutable, thread-safe, a value.
 *
 * @param run the target rate to set, the road speed to feed to the truck, and how long to run, in whole seconds
 * @param result whether one catch reaches the wanted uncertainty of the calibration error; its one catch is what the run
 *     is expected to put down
 * @param shaftSpeed the steady speed of the sensed or watched shaft that target rate and test speed ask for; of a flow meter its pulses
 *     stand in the place of revolutions
 * @param withinRange whether the drive can hold that, and the pump or flow meter is good for it; none where nobody knows
 * @param lostByStart the part of the expected amount that the start costs, which is a delivery error and no calibration
 *     error; none where the start isn't known
 * @param shortestForStart how long a run must be for the start to cost no more than was allowed; none where nothing was
 */
public record RunPlan(
        TestRun run,
        PlanResult result,
        Quantity<RotationalSpeed> shaftSpeed,
        Optional<Boolean> withinRange,
        Optional<Quantity<Dimensionless>> lostByStart,
        Optional<Quantity<Time>> shortestForStart) {
    /** Checks that nothing is null. */
    public RunPlan {
        Require.given(RunPlan.class, run, result, shaftSpeed, withinRange, lostByStart, shortestForStart);
    }

    /**
     * The target rate of a granular material.
     *
     * @return the mass per distance to set
     * @throws InvalidInputException if it is a run of a liquid, whose target rate is a volume per distance
     */
    public Quantity<ApplicationRate> targetRate() {
        Require.that(!run.isOfLiquid(), "target rate", "a mass per distance", run.targetRate());
        return run.targetRate().asType(ApplicationRate.class);
    }

    /**
     * The road speed to feed to the truck.
     *
     * @return the test speed
     */
    public Quantity<Speed> testSpeed() {
        return run.testSpeed();
    }

    /**
     * How long to run.
     *
     * @return whole seconds
     */
    public Quantity<Time> runTime() {
        return run.runTime().orElseThrow();
    }

    /**
     * The flow of a liquid that target rate and test speed ask for.
     *
     * @return volume per time, in gallons or liters as the target rate is given; none of a granular material
     */
    public Optional<Quantity<FlowRate>> flow() {
        return run.isOfLiquid()
                ? Optional.of(Amounts.ofSi(
                        RunPlanner.siPerMeter(run.targetRate()) * Amounts.si(Speed.class, run.testSpeed()),
                        UnitSymbol.tradeUnit(FlowRate.class, run.targetRate())))
                : Optional.empty();
    }
}
