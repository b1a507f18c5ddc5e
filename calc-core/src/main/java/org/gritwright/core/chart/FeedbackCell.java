package org.gritwright.core.chart;

import java.util.Optional;
import javax.measure.Quantity;
import org.gritwright.core.envelope.Limit;
import org.gritwright.units.check.Require;
import org.gritwright.units.quantity.DischargeRate;
import org.gritwright.units.quantity.RotationalSpeed;

/**
 * What a rate asks for at a road speed. Immutable, thread-safe, a value.
 *
 * @param <Q> the kind of rate
 * @param shaftSpeed the steady speed of the sensed or watched shaft that is asked for, as uncertain as the calibration
 * @param flow the mass per time that is asked for: what is put down is as uncertain as the calibration
 * @param outside what happens instead; none where the truck holds the rate
 */
public record FeedbackCell<Q extends Quantity<Q>>(
        CellValue<RotationalSpeed> shaftSpeed, CellValue<DischargeRate> flow, Optional<Outside<Q>> outside) {
    /**
     * What happens outside the working range: a page says so in words or by hatching, not by color alone.
     *
     * @param <Q> the kind of rate
     * @param limit why the rate doesn't hold
     * @param delivered the rate that is put down
     * @param flow the mass per time that is put down
     */
    public record Outside<Q extends Quantity<Q>>(Limit limit, CellValue<Q> delivered, CellValue<DischargeRate> flow) {
        /** Checks that nothing is null. */
        public Outside {
            Require.given(Outside.class, limit, delivered, flow);
        }
    }

    /** Checks that nothing is null. */
    public FeedbackCell {
        Require.given(FeedbackCell.class, shaftSpeed, flow, outside);
    }
}
