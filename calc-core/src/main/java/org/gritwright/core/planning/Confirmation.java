package org.gritwright.core.planning;

import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import org.gritwright.core.spi.Setting;
import org.gritwright.units.check.Require;

/**
 * What it takes to be sure of a gate setting that was chosen by geometry alone. Immutable, thread-safe, a value.
 *
 * @param setting the setting
 * @param predictedWithin how far from its prediction the discharge may be, either way
 * @param neededWithin how well it has to be known to tell whether the setting serves
 * @param catches the catches that tell, or the best that can be made; none where the prediction is close enough. The value that the
 *     display is to hold wants a calibration all the same
 */
public record Confirmation(
        Setting setting,
        Quantity<Dimensionless> predictedWithin,
        Quantity<Dimensionless> neededWithin,
        Optional<PlanResult> catches) {
    /** Checks that nothing is null. */
    public Confirmation {
        Require.given(Confirmation.class, setting, predictedWithin, neededWithin, catches);
    }

    /**
     * How many catches tell.
     *
     * @return 0 where the prediction is close enough; none where this scale, sensor and these containers can't tell
     */
    public Optional<Integer> howMany() {
        return catches.isEmpty()
                ? Optional.of(0)
                : catches.filter(PlanResult.Reached.class::isInstance)
                        .map(plan -> plan.series().repeats());
    }
}
