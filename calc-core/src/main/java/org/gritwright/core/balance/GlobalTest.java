package org.gritwright.core.balance;

import java.io.Serializable;
import org.apache.commons.statistics.distribution.ChiSquaredDistribution;
import org.gritwright.units.check.Require;

/**
 * Whether all together adds up as well as the uncertainties let expect. Immutable, thread-safe, a value.
 *
 * @param misfit J, the sum of squares of what has to be corrected, each in its standard uncertainty
 * @param degreesOfFreedom how many balances are left to test, once what isn't measured is determined
 */
public record GlobalTest(double misfit, int degreesOfFreedom) implements Serializable {
    private static final long serialVersionUID = 1L;

    /**
     * Checks the values.
     *
     * @throws org.gritwright.units.InvalidInputException if one is negative
     */
    public GlobalTest {
        Require.notNegative("misfit", misfit);
        Require.that(degreesOfFreedom >= 0, "degrees of freedom", "0 or more", degreesOfFreedom);
    }

    /**
     * The chance of a misfit like this or worse where there is no gross error: the upper tail of χ².
     *
     * @return the probability; 1 where there is nothing to test
     */
    public double probability() {
        return degreesOfFreedom == 0
                ? 1
                : ChiSquaredDistribution.of(degreesOfFreedom).survivalProbability(misfit);
    }

    /**
     * Whether it adds up.
     *
     * @param risk of saying no where there is no gross error
     * @return true unless the misfit is too large for chance
     */
    public boolean holds(double risk) {
        return probability() >= Require.probability("risk", risk);
    }
}
