package org.gritwright.core.judgement;

import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.check.Comparison;
import org.gritwright.units.check.Require;

/**
 * How far an error may be from zero, either way, and still pass. The caller's choice: no standard gives one for dry
 * spreaders (a university fact sheet on rotary spreaders, UMass turf programme, accepts ±5 %). Immutable, thread-safe,
 * a value.
 *
 * @param limit the limit, greater than zero and below 100 %, itself accepted
 */
public record Tolerance(Quantity<Dimensionless> limit) {
    /**
     * Checks the limit.
     *
     * @throws org.gritwright.units.InvalidInputException if it is not greater than zero or not below 100 %
     */
    public Tolerance {
        Require.fraction("tolerance", limit);
    }

    /**
     * A tolerance in per cent.
     *
     * @param percent for example 4 for ±4 %
     * @return the tolerance
     * @throws org.gritwright.units.InvalidInputException if it is not greater than zero or not below 100 %
     */
    public static Tolerance percent(double percent) {
        return new Tolerance(Amounts.of(percent, SpreadingUnits.PERCENT));
    }

    /**
     * Whether an error is accepted.
     *
     * @param error the error, a ratio − 1, for example 0.0108; finite
     * @return true within the limit, the limit included
     * @throws org.gritwright.units.InvalidInputException if the error is not finite
     */
    public boolean accepts(double error) {
        return !Comparison.isAbove(Math.abs(Require.finite("error", error)), ratio(), 1);
    }

    /** The limit as a ratio. */
    public double ratio() {
        return Amounts.si(Dimensionless.class, limit);
    }
}
