package org.gritwright.core.fleet.assessment;

import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Speed;
import org.gritwright.core.envelope.Delivered;
import org.gritwright.core.envelope.Envelope;
import org.gritwright.core.envelope.Span;
import org.gritwright.core.observation.CalibrationPoint;
import org.gritwright.units.check.Require;

/**
 * What a route comes to at one of the truck's calibrated settings. Immutable, thread-safe, a value.
 *
 * @param point the calibration point
 * @param envelope what the truck holds there
 * @param speeds between which road speeds the route's rate holds there
 * @param atSlowest what is put down at the route's lowest speed
 * @param atFastest what is put down at its highest
 * @param margin how far the shaft is from its limits where it is nearest: 1.2 if the route could ask for a fifth more and a sixth
 *     less; below 1 where something is lost
 * @param held whether no more is lost, or laid too much, than the day's tolerance
 */
public record RouteFit(
        CalibrationPoint point,
        Envelope envelope,
        Span<Speed> speeds,
        Delivered atSlowest,
        Delivered atFastest,
        Quantity<Dimensionless> margin,
        boolean held) {
    /** Checks that nothing is null. */
    public RouteFit {
        Require.given(RouteFit.class, point, envelope, speeds, atSlowest, atFastest, margin);
    }
}
