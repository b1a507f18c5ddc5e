package org.gritwright.core.boom;

import javax.measure.quantity.Dimensionless;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.units.check.Require;

/**
 * One nozzle beside a yardstick. Immutable, thread-safe, a value.
 *
 * @param nozzle the nozzle and its flow
 * @param deviation flow ÷ yardstick − 1, in percent, with what the measured flows make uncertain of it, if all of them say
 * @param condition what that shows
 */
public record NozzleComparison(NozzleFlow nozzle, Measured<Dimensionless> deviation, NozzleCondition condition) {
    /** Checks that nothing is null. */
    public NozzleComparison {
        Require.given(NozzleComparison.class, nozzle, deviation, condition);
    }
}
