package org.gritwright.core.uncertainty;

import java.io.Serializable;
import java.util.Optional;
import java.util.OptionalDouble;
import javax.measure.Quantity;
import org.gritwright.core.statistics.Student;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.check.Require;
import org.gritwright.units.check.SerialForm;

/**
 * One source of uncertainty in a budget: the standard uncertainty of an input, and what it contributes to the result.
 * Immutable, thread-safe, a value.
 *
 * @param <Q> the kind of the result
 * @param key what it is known by
 * @param name what is uncertain, in the trade's words, as it is printed
 * @param evaluation how the uncertainty was found
 * @param distribution the shape of the error's distribution
 * @param standardUncertainty of the input, in its own unit, 0 or more
 * @param contribution sensitivity × standard uncertainty, in the result's unit; negative where the result falls as the
 *     input rises
 * @param degreesOfFreedom of the standard uncertainty, 1 or more; infinite where it is taken as exactly known
 * @param group the common error: components of one group are one and the same error, like the span error of one scale in
 *     several weighings; none for an error of its own
 */
public record Component<Q extends Quantity<Q>>(
        ComponentKey key,
        String name,
        Evaluation evaluation,
        Distribution distribution,
        Quantity<?> standardUncertainty,
        Quantity<Q> contribution,
        double degreesOfFreedom,
        Optional<String> group)
        implements Serializable {
    /** How a standard uncertainty was found (JCGM 100:2008, the GUM, 4.2 and 4.3). */
    public enum Evaluation {
        /** From the scatter of repeats. */
        TYPE_A,
        /** From anything else: limits, resolution, certificates, experience. */
        TYPE_B
    }

    /**
     * Checks the values.
     *
     * @throws InvalidInputException if the name is blank, a number is not finite, the uncertainty is negative, the
     *     uncertainty is 0 where the contribution is not, or there is less than 1 degree of freedom
     */
    public Component {
        Require.given(Component.class, key, name, evaluation, distribution, standardUncertainty, contribution, group);
        Require.text("name of an uncertainty", name);
        double input = Require.finite(
                "standard uncertainty of " + name,
                standardUncertainty.getValue().doubleValue());
        double output = Require.finite(
                "contribution of " + name, contribution.getValue().doubleValue());
        if (!(input >= 0) || (input == 0 && output != 0)) {
            throw new InvalidInputException(
                    "standard uncertainty of " + name,
                    "0 or more, and more than 0 if it contributes",
                    Amounts.format(standardUncertainty));
        }
        if (!(degreesOfFreedom >= 1)) {
            throw new InvalidInputException(
                    "degrees of freedom of " + name, "1 or more", String.valueOf(degreesOfFreedom));
        }
        group.ifPresent(g -> Require.text("group of " + name, g));
    }

    /**
     * An uncertainty from the scatter of repeats: normal, independent of the others, with its name as its key.
     *
     * @param <Q> the kind of the result
     * @param name what is uncertain
     * @param standardUncertainty of the input
     * @param contribution to the result
     * @param degreesOfFreedom 1 or more
     * @return the component
     * @throws InvalidInputException as for the full form
     */
    public static <Q extends Quantity<Q>> Component<Q> typeA(
            String name, Quantity<?> standardUncertainty, Quantity<Q> contribution, double degreesOfFreedom) {
        return typeA(ComponentKey.of(name), name, standardUncertainty, contribution, degreesOfFreedom);
    }

    /**
     * An uncertainty from the scatter of repeats: normal, independent of the others.
     *
     * @param <Q> the kind of the result
     * @param key what it is known by
     * @param name what is uncertain
     * @param standardUncertainty of the input
     * @param contribution to the result
     * @param degreesOfFreedom 1 or more
     * @return the component
     * @throws InvalidInputException as for the full form
     */
    public static <Q extends Quantity<Q>> Component<Q> typeA(
            ComponentKey key,
            String name,
            Quantity<?> standardUncertainty,
            Quantity<Q> contribution,
            double degreesOfFreedom) {
        return new Component<>(
                key,
                name,
                Evaluation.TYPE_A,
                Distribution.NORMAL,
                standardUncertainty,
                contribution,
                degreesOfFreedom,
                Optional.empty());
    }

    /**
     * An uncertainty from anything but repeats: with infinite degrees of freedom, independent of the others, with its name
     * as its key.
     *
     * @param <Q> the kind of the result
     * @param name what is uncertain
     * @param distribution the shape of the error's distribution
     * @param standardUncertainty of the input
     * @param contribution to the result
     * @return the component
     * @throws InvalidInputException as for the full form
     */
    public static <Q extends Quantity<Q>> Component<Q> typeB(
            String name, Distribution distribution, Quantity<?> standardUncertainty, Quantity<Q> contribution) {
        return typeB(ComponentKey.of(name), name, distribution, standardUncertainty, contribution);
    }

    /**
     * An uncertainty from anything but repeats: with infinite degrees of freedom, independent of the others.
     *
     * @param <Q> the kind of the result
     * @param key what it is known by
     * @param name what is uncertain
     * @param distribution the shape of the error's distribution
     * @param standardUncertainty of the input
     * @param contribution to the result
     * @return the component
     * @throws InvalidInputException as for the full form
     */
    public static <Q extends Quantity<Q>> Component<Q> typeB(
            ComponentKey key,
            String name,
            Distribution distribution,
            Quantity<?> standardUncertainty,
            Quantity<Q> contribution) {
        return new Component<>(
                key,
                name,
                Evaluation.TYPE_B,
                distribution,
                standardUncertainty,
                contribution,
                Double.POSITIVE_INFINITY,
                Optional.empty());
    }

    /**
     * The same as part of a group.
     *
     * @param common the name of the common error
     * @return the component
     * @throws InvalidInputException if the name is blank
     */
    public Component<Q> inGroup(String common) {
        return new Component<>(
                key,
                name,
                evaluation,
                distribution,
                standardUncertainty,
                contribution,
                degreesOfFreedom,
                Optional.of(common));
    }

    /**
     * The sensitivity: by how much the result changes per change of the input, in their units.
     *
     * @return contribution ÷ standard uncertainty; none for an uncertainty of 0
     */
    public OptionalDouble sensitivity() {
        double input = standardUncertainty.getValue().doubleValue();
        return input == 0
                ? OptionalDouble.empty()
                : OptionalDouble.of(contribution.getValue().doubleValue() / input);
    }

    private Object writeReplace() {
        return SerialForm.of(this);
    }
    /**
     * The component as text.
     *
     * @return for example "count of revolutions: u 0.29 rev, contributes 0.09 lb/rev, ∞ degrees of freedom"
     */
    @Override
    public String toString() {
        return name + ": u " + Amounts.format(standardUncertainty) + ", contributes " + Amounts.format(contribution)
                + ", "
                + Student.words(degreesOfFreedom) + " degrees of freedom"
                + group.map(common -> ", one error with others of " + common).orElse("");
    }
}
