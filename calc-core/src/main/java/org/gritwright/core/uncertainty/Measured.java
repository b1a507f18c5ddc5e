package org.gritwright.core.uncertainty;

import java.io.Serializable;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import javax.measure.Quantity;
import org.gritwright.core.statistics.Student;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.check.Require;
import org.gritwright.units.check.SerialForm;

/**
 * A measured quantity: its value and, where it is known, its standard uncertainty with degrees of freedom.
 *
 * <p>The uncertainty is absent, not zero, where it isn't known. Immutable, thread-safe, a value.
 *
 * @param <Q> the kind of quantity
 * @param value the value
 * @param standardUncertainty one standard deviation of the value, 0 or more, in the value's unit; if known
 * @param degreesOfFreedom of the uncertainty, 1 or more, possibly infinite; present where the uncertainty is
 */
public record Measured<Q extends Quantity<Q>>(
        Quantity<Q> value, Optional<Quantity<Q>> standardUncertainty, OptionalDouble degreesOfFreedom)
        implements Serializable {
    /**
     * Checks the numbers.
     *
     * @throws InvalidInputException if a number is not finite, the uncertainty is negative or in another unit, or there
     *     is no degree of freedom
     */
    public Measured {
        Require.given(Measured.class, value, standardUncertainty, degreesOfFreedom);
        Require.finite("value", value);
        standardUncertainty.ifPresent(u -> {
            Require.finite("standard uncertainty", u);
            if (!u.getUnit().equals(value.getUnit()) || !(u.getValue().doubleValue() >= 0)) {
                throw new InvalidInputException(
                        "standard uncertainty",
                        "0 or more and in the unit of " + Amounts.format(value),
                        Amounts.format(u));
            }
        });
        double degrees = degreesOfFreedom.orElse(1);
        Require.that(degrees >= 1, "degrees of freedom", "1 or more", degrees);
        Require.that(
                standardUncertainty.isPresent() == degreesOfFreedom.isPresent(),
                "degrees of freedom",
                "given with a standard uncertainty, and only with it",
                degreesOfFreedom);
    }

    /**
     * A value with a standard uncertainty.
     *
     * @param <Q> the kind of quantity
     * @param value the value
     * @param standardUncertainty one standard deviation of the value, 0 or more, in the value's unit
     * @param degreesOfFreedom of the uncertainty, 1 or more; infinite where it is taken as exactly known
     * @return the measured quantity
     * @throws InvalidInputException if a number is not finite, the uncertainty is negative or in another unit, or there
     *     is no degree of freedom
     */
    public static <Q extends Quantity<Q>> Measured<Q> of(
            Quantity<Q> value, Quantity<Q> standardUncertainty, double degreesOfFreedom) {
        Objects.requireNonNull(standardUncertainty, "standardUncertainty");
        return new Measured<>(value, Optional.of(standardUncertainty), OptionalDouble.of(degreesOfFreedom));
    }

    /**
     * A value whose uncertainty is not known.
     *
     * @param <Q> the kind of quantity
     * @param value the value
     * @return the measured quantity
     * @throws InvalidInputException if the value is not finite
     */
    public static <Q extends Quantity<Q>> Measured<Q> once(Quantity<Q> value) {
        return new Measured<>(value, Optional.empty(), OptionalDouble.empty());
    }

    /**
     * The coverage factor: the standard uncertainty times this factor is half the width of the interval about the value
     * that contains the true value with a stated probability. Student's t; for infinite degrees of freedom, the normal
     * quantile (JCGM 100:2008, the GUM, G.3.2 and G.4).
     *
     * @param coverage greater than 0 and below 1, for example 0.95
     * @return the coverage factor, present where the uncertainty is
     * @throws InvalidInputException if the coverage is out of its range
     */
    public OptionalDouble coverageFactor(double coverage) {
        double factor =
                Student.of(degreesOfFreedom.orElse(Double.POSITIVE_INFINITY)).coverageFactor(coverage);
        return degreesOfFreedom.isPresent() ? OptionalDouble.of(factor) : degreesOfFreedom;
    }

    /**
     * The expanded uncertainty: half the width of the interval about the value that contains the true value with a stated
     * probability.
     *
     * @param coverage greater than 0 and below 1, for example 0.95
     * @return coverage factor × standard uncertainty, in the value's unit, present where the uncertainty is
     * @throws InvalidInputException if the coverage is out of its range
     */
    public Optional<Quantity<Q>> expandedUncertainty(double coverage) {
        OptionalDouble factor = coverageFactor(coverage);
        return standardUncertainty.map(
                u -> Amounts.of(factor.getAsDouble() * u.getValue().doubleValue(), u.getUnit()));
    }

    private Object writeReplace() {
        return SerialForm.of(this);
    }

    @Override
    public String toString() {
        return Amounts.format(value)
                + standardUncertainty
                        .map(u -> " (u " + Amounts.format(u) + ", " + Student.words(degreesOfFreedom.orElseThrow())
                                + " degrees of freedom)")
                        .orElse(" (one measurement)");
    }
}
