package org.gritwright.core.uncertainty;

import java.io.Serializable;
import org.gritwright.core.statistics.Student;
import org.gritwright.units.check.Require;

/**
 * How probable it is that the true value lies within limits, below the lower one and above the upper one (JCGM 106:2012, 7.2
 * to 7.4). With finite degrees of freedom, Student's t replaces the normal distribution. Immutable, thread-safe, a value.
 *
 * @param below the probability that the true value is below the lower limit
 * @param within the probability that it is within the limits: the probability of conformity
 * @param above the probability that it is above the upper limit
 */
public record Conformity(double below, double within, double above) implements Serializable {
    private static final double ROUNDING = 1e-9;

    /**
     * Checks the numbers.
     *
     * @throws org.gritwright.units.InvalidInputException if one is not a probability, or they don't sum to 1
     */
    public Conformity {
        boolean possible = below >= 0 && within >= 0 && above >= 0;
        Require.that(
                possible && Math.abs(below + within + above - 1) <= ROUNDING,
                "probabilities of conformity",
                "0 to 1, with a sum of 1",
                () -> below + ", " + within + ", " + above);
    }

    /**
     * The probabilities for a measured number.
     *
     * @param value the measured number
     * @param standardUncertainty its standard uncertainty, 0 or more
     * @param degreesOfFreedom of the uncertainty, greater than 0, possibly infinite
     * @param lower the lower limit, itself within; −∞ for none
     * @param upper the upper limit, itself within and not below the lower; ∞ for none
     * @return the probabilities, which sum to 1
     * @throws org.gritwright.units.InvalidInputException if a number is out of its range
     */
    public static Conformity of(
            double value, double standardUncertainty, double degreesOfFreedom, double lower, double upper) {
        Require.finite("value", value);
        Require.notNegative("standard uncertainty", standardUncertainty);
        Require.that(lower <= upper, "limits", "a lower one not above the upper", () -> lower + " and " + upper);
        if (standardUncertainty == 0) {
            double below = value < lower ? 1 : 0;
            double above = value > upper ? 1 : 0;
            return new Conformity(below, 1 - below - above, above);
        }
        Student student = Student.of(degreesOfFreedom);
        double below = student.probabilityBelow((lower - value) / standardUncertainty);
        double above = student.probabilityAbove((upper - value) / standardUncertainty);
        return new Conformity(below, Math.max(0, 1 - below - above), above);
    }
}
