package org.gritwright.core.uncertainty;

import org.gritwright.core.statistics.Student;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.check.Require;

/**
 * How likely the true value is within limits, each limit told apart (JCGM 106:2012, 7.2 to 7.4). With finite degrees of
 * freedom Student's t stands in for the normal distribution. Immutable, thread-safe, a value.
 *
 * @param below the probability that the true value is below the lower limit
 * @param within the probability that it is within the limits: the probability of conformity
 * @param above the probability that it is above the upper limit
 */
public record Conformity(double below, double within, double above) {
    private static final double ROUNDING = 1e-9;

    /**
     * Checks the numbers.
     *
     * @throws InvalidInputException if one is no probability, or they don't sum to 1
     */
    public Conformity {
        boolean possible = below >= 0 && within >= 0 && above >= 0;
        if (!(possible && Math.abs(below + within + above - 1) <= ROUNDING)) {
            throw new InvalidInputException(
                    "probabilities of conformity", "0 to 1, together 1", below + ", " + within + ", " + above);
        }
    }

    /**
     * The probabilities for a measured number.
     *
     * @param value the measured number
     * @param standardUncertainty its standard uncertainty, 0 or more
     * @param degreesOfFreedom of the uncertainty, greater than 0, possibly infinite
     * @param lower the lower limit; −∞ for none
     * @param upper the upper limit, not below the lower; ∞ for none
     * @return the probabilities, which sum to 1
     * @throws InvalidInputException if a number is out of its range
     */
    public static Conformity of(
            double value, double standardUncertainty, double degreesOfFreedom, double lower, double upper) {
        Require.finite("value", value);
        if (!(Require.finite("standard uncertainty", standardUncertainty) >= 0)) {
            throw new InvalidInputException("standard uncertainty", "0 or more", String.valueOf(standardUncertainty));
        }
        if (!(lower <= upper)) {
            throw new InvalidInputException("limits", "the lower not above the upper", lower + " and " + upper);
        }
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
