package org.gritwright.core.planning;

import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Speed;
import javax.measure.quantity.Time;
import org.gritwright.units.check.Require;
import org.gritwright.units.quantity.ApplicationRate;
import org.gritwright.units.quantity.RotationalSpeed;

/**
 * A planned verification catch at one test speed. Immutable, thread-safe, a value.
 *
 * @param targetRate the target rate to set
 * @param testSpeed the road speed to feed to the truck
 * @param runTime how long to run, in whole seconds
 * @param result whether one catch reaches the wanted uncertainty of the calibration error; its one catch is what the run
 *     is expected to put down
 * @param shaftSpeed the steady speed of the sensed or watched shaft that target rate and test speed ask for
 * @param withinRange whether the drive can hold that; none where its range isn't known
 * @param lostByStart the part of the expected mass that the start costs, which is a delivery error and no calibration
 *     error; none where the start isn't known
 * @param shortestForStart how long a run must be for the start to cost no more than was allowed; none where nothing was
 */
public record RunPlan(
        Quantity<ApplicationRate> targetRate,
        Quantity<Speed> testSpeed,
        Quantity<Time> runTime,
        PlanResult result,
        Quantity<RotationalSpeed> shaftSpeed,
        Optional<Boolean> withinRange,
        Optional<Quantity<Dimensionless>> lostByStart,
        Optional<Quantity<Time>> shortestForStart) {
    /** Checks that nothing is null. */
    public RunPlan {
        Require.given(
                RunPlan.class,
                targetRate,
                testSpeed,
                runTime,
                result,
                shaftSpeed,
                withinRange,
                lostByStart,
                shortestForStart);
    }
}
