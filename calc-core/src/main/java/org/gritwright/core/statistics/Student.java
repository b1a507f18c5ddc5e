package org.gritwright.core.statistics;

import java.math.BigDecimal;
import java.math.MathContext;
import org.apache.commons.statistics.distribution.TDistribution;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.check.Require;

/**
 * Student's t distribution, the normal distribution for infinite degrees of freedom (JCGM 100:2008, the GUM, G.3). The
 * degrees of freedom need not be whole, as effective ones are not. Immutable, thread-safe.
 */
public final class Student {
    private final TDistribution distribution;

    private Student(TDistribution distribution) {
        this.distribution = distribution;
    }

    /**
     * The distribution.
     *
     * @param degreesOfFreedom greater than 0, possibly infinite
     * @return the distribution
     * @throws InvalidInputException if there is no degree of freedom
     */
    public static Student of(double degreesOfFreedom) {
        if (!(degreesOfFreedom > 0)) {
            throw new InvalidInputException("degrees of freedom", "greater than 0", String.valueOf(degreesOfFreedom));
        }
        return new Student(TDistribution.of(degreesOfFreedom));
    }

    /**
     * The factor for an interval about the value that holds the true value with a stated coverage.
     *
     * @param coverage greater than 0 and below 1, for example 0.95
     * @return for example 2.262 for 9 degrees of freedom, 1.960 for infinitely many
     * @throws InvalidInputException if the coverage is out of its range
     */
    public double coverageFactor(double coverage) {
        return distribution.inverseSurvivalProbability((1 - Require.probability("coverage", coverage)) / 2);
    }

    /**
     * The factor that is exceeded with a stated risk, on one side.
     *
     * @param risk greater than 0 and below 1, for example 0.05
     * @return for example 1.645 for infinitely many degrees of freedom
     * @throws InvalidInputException if the risk is out of its range
     */
    public double factorExceededWith(double risk) {
        return distribution.inverseSurvivalProbability(Require.probability("risk", risk));
    }

    /**
     * The probability of a value at or below t.
     *
     * @param t any number, possibly infinite
     * @return from 0 to 1
     */
    public double probabilityBelow(double t) {
        return distribution.cumulativeProbability(t);
    }

    /**
     * The probability of a value above t, exact where it is small.
     *
     * @param t any number, possibly infinite
     * @return from 0 to 1
     */
    public double probabilityAbove(double t) {
        return distribution.survivalProbability(t);
    }

    /** Degrees of freedom to a tenth, for texts. */
    public static String words(double degreesOfFreedom) {
        if (Double.isInfinite(degreesOfFreedom)) {
            return "∞";
        }
        BigDecimal exact = BigDecimal.valueOf(degreesOfFreedom);
        int digits = Math.max(1, exact.precision() - exact.scale() + 1);
        BigDecimal rounded = exact.round(new MathContext(digits)).stripTrailingZeros();
        return rounded.toPlainString();
    }
}
