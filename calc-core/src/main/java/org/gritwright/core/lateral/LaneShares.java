package org.gritwright.core.lateral;

import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.units.Amounts;
import org.gritwright.units.check.Require;

/**
 * Which part of what the pans account for lies left of a strip of the road, on it, and right of it; together they are 1.
 * Immutable, thread-safe, a value.
 *
 * @param left the share left of it
 * @param inside the share on it
 * @param right the share right of it
 */
public record LaneShares(Measured<Dimensionless> left, Measured<Dimensionless> inside, Measured<Dimensionless> right) {
    /** Checks that nothing is null. */
    public LaneShares {
        Require.given(LaneShares.class, left, inside, right);
    }

    /**
     * What lies outside on either side.
     *
     * @return the sum of both sides, in the unit of the left one
     */
    public Quantity<Dimensionless> outside() {
        double sum = Amounts.si(Dimensionless.class, left.value()) + Amounts.si(Dimensionless.class, right.value());
        return Amounts.ofSi(sum, left.value().getUnit());
    }
}
