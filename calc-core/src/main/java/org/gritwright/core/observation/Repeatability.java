package org.gritwright.core.observation;

import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.check.Require;

/**
 * How much catches at one calibration point scatter beyond the rounding of scale and count. Immutable, thread-safe, a
 * value.
 *
 * @param relativeDeviation standard deviation of one catch's mass per revolution ÷ that mass per revolution, 0 or more
 *     and below 100 %
 * @param degreesOfFreedom of the deviation, 1 or more; infinite for an assumption
 */
public record Repeatability(Quantity<Dimensionless> relativeDeviation, double degreesOfFreedom) {
    /**
     * How much catches are assumed to scatter where nobody has stated it: 1 %, as if it had been estimated with 2 degrees of
     * freedom, so that a single catch is uncertain by 4.3 % (common practice, no source). Over trucks whose catches scatter by
     * all of 0.3 to 3 %, intervals of 95 % with it hold the truth in 95 to 98 % of simulated days. Those of a truck that scatters
     * by 2 or 3 % hold it in fewer, with one catch in as few as 86 or 74 %: state what is known of such a truck.
     */
    public static final Repeatability COMMON = new Repeatability(Amounts.of(1, SpreadingUnits.PERCENT), 2);

    /**
     * Checks the values.
     *
     * @throws org.gritwright.units.InvalidInputException if one is out of its range
     */
    public Repeatability {
        Require.share("repeatability", relativeDeviation);
        Require.that(degreesOfFreedom >= 1, "degrees of freedom of the repeatability", "1 or more", degreesOfFreedom);
    }

    /**
     * An assumed repeatability.
     *
     * @param relativeDeviation as for the full form
     * @return the repeatability, with infinite degrees of freedom
     * @throws org.gritwright.units.InvalidInputException if it is out of its range
     */
    public static Repeatability assumed(Quantity<Dimensionless> relativeDeviation) {
        return new Repeatability(relativeDeviation, Double.POSITIVE_INFINITY);
    }

    /**
     * The deviation as a number.
     *
     * @return a ratio
     */
    public double relative() {
        return Amounts.si(Dimensionless.class, relativeDeviation);
    }
}
