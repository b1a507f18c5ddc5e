package org.gritwright.core.record;

import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import org.gritwright.core.judgement.Verdict;
import org.gritwright.core.roadspeed.RoadSpeedCheck;
import org.gritwright.units.quantity.PulsesPerDistance;

/**
 * A check of the road speed as it stands in a record.
 *
 * @param inForce the value that the display held
 * @param measured pulses per distance over the course
 * @param standardUncertainty standard uncertainty of the measured value, with runs − 1 degrees of freedom
 * @param error value in force ÷ measured − 1
 * @param effectOnRate by how much the applied rate differs from the target
 * @param verdict whether the effect is within tolerance
 */
public record RoadSpeedOutcome(
        Quantity<PulsesPerDistance> inForce,
        Quantity<PulsesPerDistance> measured,
        Quantity<PulsesPerDistance> standardUncertainty,
        Quantity<Dimensionless> error,
        Quantity<Dimensionless> effectOnRate,
        Verdict verdict) {
    static RoadSpeedOutcome of(RoadSpeedCheck check) {
        return new RoadSpeedOutcome(
                check.inForce(),
                check.measured().value(),
                check.measured().standardUncertainty().orElseThrow(),
                check.error(),
                check.effectOnRate(),
                check.verdict());
    }
}
