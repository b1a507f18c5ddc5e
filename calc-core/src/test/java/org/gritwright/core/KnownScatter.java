package org.gritwright.core;

import java.util.Optional;
import java.util.SplittableRandom;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import org.gritwright.core.observation.Repeatability;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;

/** What is known of how a truck's catches scatter before a day's are made. */
public enum KnownScatter {
    /** How they truly scatter, as if nothing could be truer. */
    FIRMLY,
    /** What five catches before showed. */
    FROM_FIVE_CATCHES,
    NOTHING;

    /**
     * What is stated.
     *
     * @param scatter how the catches truly scatter, a ratio
     * @param random for the catches before
     */
    public Optional<Repeatability> of(double scatter, SplittableRandom random) {
        return switch (this) {
            case FIRMLY -> Optional.of(Repeatability.assumed(percent(scatter)));
            case FROM_FIVE_CATCHES -> {
                double squares = 0;
                for (int i = 0; i < 4; i++) {
                    squares += Math.pow(random.nextGaussian(), 2);
                }
                yield Optional.of(new Repeatability(percent(scatter * Math.sqrt(squares / 4)), 4));
            }
            case NOTHING -> Optional.empty();
        };
    }

    private static Quantity<Dimensionless> percent(double ratio) {
        return Amounts.of(100 * ratio, SpreadingUnits.PERCENT);
    }
}
