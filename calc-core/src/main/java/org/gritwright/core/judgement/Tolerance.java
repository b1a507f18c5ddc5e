package org.gritwright.core.judgement;

import java.io.Serializable;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.check.Comparison;
import org.gritwright.units.check.Require;

/**
 * How far an error may be from zero, in either direction, and still pass. It is the caller's choice: no standard sets one
 * for spreaders of granular material (a university fact sheet on rotary spreaders, UMass turf program, accepts ±5 %).
 * Immutable, thread-safe, a value.
 *
 * @param limit the largest error that is accepted, greater than zero and below 100 %
 */
public record Tolerance(Quantity<Dimensionless> limit) implements Serializable {
    /**
     * Checks the limit.
     *
     * @throws org.gritwright.units.InvalidInputException if it is not greater than zero or not below 100 %
     */
    public Tolerance {
        Require.fraction("tolerance", limit);
    }

    /**
     * A tolerance in percent.
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
     * @param error the error, for example 1.08 %
     * @return true up to the limit and at it
     * @throws org.gritwright.units.InvalidInputException if the error is not finite or of another kind
     */
    public boolean accepts(Quantity<Dimensionless> error) {
        return acceptsRatio(Amounts.si(Dimensionless.class, Objects.requireNonNull(error, "error")));
    }

    /**
     * Whether an error that was computed as a ratio is accepted.
     *
     * @param errorRatio the error as a ratio − 1, for example 0.0108 for 1.08 %; finite
     * @return true up to the limit and at it
     * @throws org.gritwright.units.InvalidInputException if the error is not finite
     */
    public boolean acceptsRatio(double errorRatio) {
        return !Comparison.isAbove(Math.abs(Require.finite("error", errorRatio)), ratio(), 1);
    }

    /**
     * The limit as a ratio.
     *
     * @return for example 0.04 for ±4 %
     */
    public double ratio() {
        return Amounts.si(Dimensionless.class, limit);
    }

    /**
     * The tolerance as text.
     *
     * @return for example "±4 %"
     */
    @Override
    public String toString() {
        return "±" + Amounts.format(limit);
    }
}
