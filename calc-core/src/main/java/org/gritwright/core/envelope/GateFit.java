package org.gritwright.core.envelope;

import java.util.List;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Speed;
import org.gritwright.core.spi.Setting;
import org.gritwright.units.check.Require;

/**
 * How well a gate setting serves what is demanded. Immutable, thread-safe, a value.
 *
 * @param setting the gate setting
 * @param margin how far the shaft is from its limits where it is nearest: 1.2 if every demand could ask for a fifth more and a
 *     sixth less; 1 or less where something is lost
 * @param losses what isn't served, and what is put down instead, at the ends of the demanded speeds
 */
public record GateFit(Setting setting, Quantity<Dimensionless> margin, List<Loss> losses) {
    /**
     * What a setting doesn't serve.
     *
     * @param demand what was demanded
     * @param speed at which road speed
     * @param delivered what is put down instead, and why
     */
    public record Loss(Demand demand, Quantity<Speed> speed, Delivered delivered) {
        /** Checks that nothing is null. */
        public Loss {
            Require.given(Loss.class, demand, speed, delivered);
        }
    }

    /** Checks that nothing is null. */
    public GateFit {
        Require.given(GateFit.class, setting, margin, losses);
        losses = List.copyOf(losses);
    }

    /**
     * Whether every demand is served.
     *
     * @return true if nothing is lost
     */
    public boolean servesAll() {
        return losses.isEmpty();
    }
}
