package org.gritwright.core.envelope;

import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import org.gritwright.units.check.Require;
import org.gritwright.units.quantity.ApplicationRate;
import org.gritwright.units.quantity.RotationalSpeed;

/**
 * What a rate comes to at a road speed. Immutable, thread-safe, a value.
 *
 * @param asked the rate that was asked for
 * @param delivered the rate that is put down
 * @param shaftSpeed the steady speed of the sensed or watched shaft that was asked for
 * @param limit why it isn't what was asked for; none where it is
 * @param share delivered ÷ asked
 */
public record Delivered(
        Quantity<ApplicationRate> asked,
        Quantity<ApplicationRate> delivered,
        Quantity<RotationalSpeed> shaftSpeed,
        Optional<Limit> limit,
        Quantity<Dimensionless> share) {
    /** Checks that nothing is null. */
    public Delivered {
        Require.given(Delivered.class, asked, delivered, shaftSpeed, limit, share);
    }
}
