package org.gritwright.core.observation;

import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import org.gritwright.core.uncertainty.Component;
import org.gritwright.core.uncertainty.Distribution;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.check.Require;

/**
 * How much catches with one spreader, material and gate opening scatter beyond what the rounding of scale and count does.
 * Immutable, thread-safe, a value.
 *
 * @param relativeDeviation standard deviation of one catch's mass per revolution ÷ that mass per revolution, 0 or more
 *     and below 100 %
 * @param degreesOfFreedom of the deviation, 1 or more; infinite for an assumption
 */
public record Repeatability(Quantity<Dimensionless> relativeDeviation, double degreesOfFreedom) {
    /** From so many catches on their own scatter counts, which then stands for the rounding of scale and count as well. */
    public static final int FEWEST_CATCHES = 3;

    /**
     * Checks the values.
     *
     * @throws InvalidInputException if one is out of its range
     */
    public Repeatability {
        Require.share("repeatability", relativeDeviation);
        if (!(degreesOfFreedom >= 1)) {
            throw new InvalidInputException(
                    "degrees of freedom of the repeatability", "1 or more", String.valueOf(degreesOfFreedom));
        }
    }

    /**
     * A repeatability that is taken for granted.
     *
     * @param relativeDeviation as for the full form
     * @return the repeatability, with infinite degrees of freedom
     * @throws InvalidInputException if it is out of its range
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

    /**
     * The scatter in a budget: type A where repeats gave it, type B where it is assumed.
     *
     * @param <Q> the kind of the result
     * @param contribution to the result
     * @return the component
     */
    public <Q extends Quantity<Q>> Component<Q> component(Quantity<Q> contribution) {
        String name = "scatter of catches, from experience";
        return Double.isInfinite(degreesOfFreedom)
                ? Component.typeB(name, Distribution.NORMAL, relativeDeviation, contribution)
                : Component.typeA(name, relativeDeviation, contribution, degreesOfFreedom);
    }
}
