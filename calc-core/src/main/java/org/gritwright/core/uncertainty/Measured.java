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
import org.jspecify.annotations.Nullable;

/**
 * A measured quantity: its value and, where it is known, its standard uncertainty with degrees of freedom.
 *
 * <p>The uncertainty is absent, not zero, where it isn't known. Immutable, thread-safe, a value.
 *
 * @param <Q> the kind of quantity
 */
public final class Measured<Q extends Quantity<Q>> implements Serializable {
    private static final long serialVersionUID = 1L;

    private final Quantity<Q> value;
    private final @Nullable Quantity<Q> standardUncertainty;
    private final double degreesOfFreedom;

    private Measured(Quantity<Q> value, @Nullable Quantity<Q> standardUncertainty, double degreesOfFreedom) {
        this.value = value;
        this.standardUncertainty = standardUncertainty;
        this.degreesOfFreedom = degreesOfFreedom;
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
        Require.finite("value", Objects.requireNonNull(value, "value"));
        Require.finite("standard uncertainty", Objects.requireNonNull(standardUncertainty, "standardUncertainty"));
        if (!standardUncertainty.getUnit().equals(value.getUnit())
                || !(standardUncertainty.getValue().doubleValue() >= 0)) {
            throw new InvalidInputException(
                    "standard uncertainty",
                    "0 or more and in the unit of " + Amounts.format(value),
                    Amounts.format(standardUncertainty));
        }
        Require.that(degreesOfFreedom >= 1, "degrees of freedom", "1 or more", degreesOfFreedom);
        return new Measured<>(value, standardUncertainty, degreesOfFreedom);
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
        Require.finite("value", Objects.requireNonNull(value, "value"));
        return new Measured<>(value, null, Double.POSITIVE_INFINITY);
    }

    /**
     * The value.
     *
     * @return the value
     */
    public Quantity<Q> value() {
        return value;
    }

    /**
     * The standard uncertainty, in the value's unit.
     *
     * @return one standard deviation of the value, if known
     */
    public Optional<Quantity<Q>> standardUncertainty() {
        return Optional.ofNullable(standardUncertainty);
    }

    /**
     * The degrees of freedom of the standard uncertainty.
     *
     * @return 1 or more, possibly infinite; present where the uncertainty is
     */
    public OptionalDouble degreesOfFreedom() {
        return standardUncertainty == null ? OptionalDouble.empty() : OptionalDouble.of(degreesOfFreedom);
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
        double factor = Student.of(degreesOfFreedom).coverageFactor(coverage);
        return standardUncertainty == null ? OptionalDouble.empty() : OptionalDouble.of(factor);
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
        return standardUncertainty()
                .map(u -> Amounts.of(factor.getAsDouble() * u.getValue().doubleValue(), u.getUnit()));
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Measured<?> that
                && value.equals(that.value)
                && Objects.equals(standardUncertainty, that.standardUncertainty)
                && Double.compare(degreesOfFreedom, that.degreesOfFreedom) == 0;
    }

    @Override
    public int hashCode() {
        return Objects.hash(value, standardUncertainty, degreesOfFreedom);
    }

    /**
     * Value and uncertainty as text.
     *
     * @return for example "6.1 lb/rev (u 0.04 lb/rev, 2 degrees of freedom)"; degrees of freedom to a tenth
     */
    @Override
    public String toString() {
        return standardUncertainty == null
                ? Amounts.format(value) + " (one measurement)"
                : Amounts.format(value) + " (u " + Amounts.format(standardUncertainty) + ", "
                        + Student.words(degreesOfFreedom) + " degrees of freedom)";
    }
}
