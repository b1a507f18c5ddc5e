package org.gritwright.core.statistics;

import java.io.Serializable;
import org.apache.commons.statistics.distribution.ChiSquaredDistribution;
import org.apache.commons.statistics.distribution.FDistribution;
import org.gritwright.units.check.Require;

/**
 * A variance and how well it is known. Immutable, thread-safe, a value.
 *
 * @param value s², finite, 0 or more
 * @param degreesOfFreedom ν, greater than 0; infinite for a variance that is simply stated
 */
public record Variance(double value, double degreesOfFreedom) implements Serializable {
    /** The chance with which two estimates of one variance are taken for two. */
    private static final double RISK = 0.05;

    /**
     * Checks the values.
     *
     * @throws org.gritwright.units.InvalidInputException if one is out of its range
     */
    public Variance {
        Require.notNegative("variance", value);
        Require.that(degreesOfFreedom > 0, "degrees of freedom", "greater than 0", degreesOfFreedom);
    }

    /**
     * The variance known before and another one observed together, (ν₁·s₁² + ν₂·s₂²) ÷ (ν₁ + ν₂) with ν₁ + ν₂ degrees of
     * freedom (NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.5.3); one that is infinitely well known stays as it is.
     *
     * <p>Both must be estimates of one variance: where {@link #isExceededBy} says that they are not, the observed one holds alone,
     * and there is nothing to pool.
     *
     * @param observed a variance of finite degrees of freedom
     * @return the pooled variance
     */
    public Variance pooledWith(Variance observed) {
        double degrees = degreesOfFreedom + observed.degreesOfFreedom;
        return Double.isInfinite(degreesOfFreedom)
                ? this
                : new Variance(
                        (degreesOfFreedom * value + observed.degreesOfFreedom * observed.value) / degrees, degrees);
    }

    /**
     * Whether an observed variance is larger than this one by more than chance explains in 95 % of all cases: the upper
     * one-sided F test (NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.5.9); against a variance that is infinitely well
     * known, the χ² test (1.3.5.8).
     *
     * @param observed a variance of finite degrees of freedom
     * @return true if it is
     */
    public boolean isExceededBy(Variance observed) {
        if (!(observed.value > value)) {
            return false;
        }
        if (value == 0) {
            return true;
        }
        double ratio = observed.value / value;
        double chance = Double.isInfinite(degreesOfFreedom)
                ? ChiSquaredDistribution.of(observed.degreesOfFreedom)
                        .survivalProbability(ratio * observed.degreesOfFreedom)
                : FDistribution.of(observed.degreesOfFreedom, degreesOfFreedom).survivalProbability(ratio);
        return chance < RISK;
    }
}
