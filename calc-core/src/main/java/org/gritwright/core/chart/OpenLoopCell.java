package org.gritwright.core.chart;

import javax.measure.Quantity;
import org.gritwright.units.check.Require;

/**
 * What a control setting gives at a road speed. Immutable, thread-safe, a value.
 *
 * @param <Q> the kind of rate
 * @param rate the rate, with what is known of the uncertainties of calibration and shaft speed, taken as independent
 * @param isLessSure whether one of the two isn't known, so that the rate is less sure than its uncertainty says
 */
public record OpenLoopCell<Q extends Quantity<Q>>(CellValue<Q> rate, boolean isLessSure) {
    /** Checks that nothing is null. */
    public OpenLoopCell {
        Require.given(OpenLoopCell.class, rate);
    }
}
