package org.gritwright.core.chart;

import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import org.gritwright.units.check.Require;

/**
 * The control setting that comes nearest to a rate at a road speed, and what it leaves. Immutable, thread-safe, a value.
 *
 * @param <Q> the kind of rate
 * @param setting the setting
 * @param cell what it gives
 * @param error given ÷ asked for − 1; negative for a shortfall
 */
public record BestSetting<Q extends Quantity<Q>>(
        ControlSetting setting, OpenLoopCell<Q> cell, Quantity<Dimensionless> error) {
    /** Checks that nothing is null. */
    public BestSetting {
        Require.given(BestSetting.class, setting, cell, error);
    }
}
