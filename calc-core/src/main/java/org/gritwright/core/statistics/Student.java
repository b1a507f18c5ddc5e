package org.gritwright.core.statistics;

import java.io.Serializable;
import java.math.BigDecimal;
import java.math.MathContext;
import org.apache.commons.statistics.distribution.TDistribution;
import org.gritwright.units.check.Require;

/**
 * Student's t distribution; for infinite degrees of freedom, the normal distribution (JCGM 100:2008, the GUM, G.3). The
 * degrees of freedom need not be whole: effective ones are not. Immutable, thread-safe, a value.
 */
public final class Student implements Serializable {
    private static final double FEWEST = 0.01;
    private static final double FARTHEST = 1e150;
    private static final long serialVersionUID = 1L;

    private final double degreesOfFreedom;
    private final transient TDistribution distribution;

    private Student(double degreesOfFreedom) {
        this.degreesOfFreedom = degreesOfFreedom;
        this.distribution = TDistribution.of(degreesOfFreedom);
    }

    /**
     * The distribution.
     *
     * @param degreesOfFreedom 0.01 or more, possibly infinite
     * @return the distribution
     * @throws org.gritwright.units.InvalidInputException if there is no degree of freedom
     */
    public static Student of(double degreesOfFreedom) {
        Require.that(degreesOfFreedom > 0, "degrees of freedom", "greater than 0", degreesOfFreedom);
        Require.that(degreesOfFreedom >= FEWEST, "degrees of freedom", "at least " + FEWEST, degreesOfFreedom);
        return new Student(degreesOfFreedom);
    }

    /**
     * The factor for an interval about the value that contains the true value with a stated probability.
     *
     * @param coverage greater than 0 and below 1, for example 0.95
     * @return for example 2.262 for 9 degrees of freedom, 1.960 for infinitely many; infinite beyond 1e150
     * @throws org.gritwright.units.InvalidInputException if the coverage is out of its range
     */
    public double coverageFactor(double coverage) {
        return factor((1 - Require.probability("coverage", coverage)) / 2);
    }

    /**
     * The factor that is exceeded, on one side, with a stated probability.
     *
     * @param risk greater than 0 and below 1, for example 0.05
     * @return for example 1.645 for infinitely many degrees of freedom; infinite beyond 1e150
     * @throws org.gritwright.units.InvalidInputException if the risk is out of its range
     */
    public double factorExceededWith(double risk) {
        return factor(Require.probability("risk", risk));
    }

    /** The search for a factor that no double holds would never end. */
    private double factor(double survival) {
        double side = Math.min(survival, 1 - survival);
        if (distribution.survivalProbability(FARTHEST) > side) {
            return survival < 0.5 ? Double.POSITIVE_INFINITY : Double.NEGATIVE_INFINITY;
        }
        return distribution.inverseSurvivalProbability(survival);
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

    private Object readResolve() {
        return of(degreesOfFreedom);
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Student that && Double.compare(degreesOfFreedom, that.degreesOfFreedom) == 0;
    }

    @Override
    public int hashCode() {
        return Double.hashCode(degreesOfFreedom);
    }

    /**
     * The distribution as text.
     *
     * @return for example "Student's t, 9 degrees of freedom"
     */
    @Override
    public String toString() {
        return "Student's t, " + words(degreesOfFreedom) + " degrees of freedom";
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
