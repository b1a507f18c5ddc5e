package org.gritwright.core.planning;

import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import org.gritwright.units.Amounts;
import org.gritwright.units.check.Comparison;
import org.gritwright.units.check.Require;

/** The answer to "what does it take to reach this uncertainty?". Implementations are immutable values. */
public sealed interface PlanResult {
    /**
     * What was asked for.
     *
     * @return the relative expanded uncertainty (95 %)
     */
    Quantity<Dimensionless> wanted();

    /**
     * The catches: those that reach it, or the best that can be made.
     *
     * @return the catches
     */
    CatchSeries series();

    /**
     * Catches that reach it with the least material.
     *
     * @param wanted what was asked for
     * @param series the catches
     */
    record Reached(Quantity<Dimensionless> wanted, CatchSeries series) implements PlanResult {
        /** Checks that nothing is null. */
        public Reached {
            Require.given(Reached.class, wanted, series);
        }
    }

    /**
     * It can't be reached with this scale, sensor and these containers.
     *
     * @param wanted what was asked for
     * @param series the catches that come closest
     * @param mainCause the largest part of their uncertainty
     * @param floor the relative expanded uncertainty (95 %) that no number of catches gets below, of whatever size: that of the errors
     *     which all have in common, such as the span of the scale, the marks of a container or the density of a liquid
     */
    record OutOfReach(
            Quantity<Dimensionless> wanted, CatchSeries series, Cause mainCause, Quantity<Dimensionless> floor)
            implements PlanResult {
        /** Checks that nothing is null. */
        public OutOfReach {
            Require.given(OutOfReach.class, wanted, series, mainCause, floor);
        }

        /**
         * Whether more catches would be in vain.
         *
         * @return true if what was asked for is not above the floor
         */
        public boolean isBelowFloor() {
            return !Comparison.isAbove(Amounts.si(Dimensionless.class, wanted), Amounts.si(Dimensionless.class, floor));
        }
    }
}
