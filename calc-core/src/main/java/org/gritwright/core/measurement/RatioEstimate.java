package org.gritwright.core.measurement;

import java.util.OptionalDouble;
import org.gritwright.units.InvalidInputException;

/**
 * The outcome of a {@link RatioEstimator}, in the units of its input. Immutable, thread-safe, a value.
 *
 * @param ratio the estimated ratio
 * @param sampleDeviation the sample standard deviation of the single ratios; absent for one pair
 * @param standardUncertainty the standard uncertainty of the estimate, with n − 1 degrees of freedom; absent for one
 *     pair
 * @param pairs the number of pairs, n, 1 or more
 */
public record RatioEstimate(
        double ratio, OptionalDouble sampleDeviation, OptionalDouble standardUncertainty, int pairs) {

    /**
     * Checks the values.
     *
     * @throws InvalidInputException if a number is not finite, there is no pair, or deviation and uncertainty are not
     *     present for two pairs or more and absent for one
     */
    public RatioEstimate {
        Require.finite("ratio", ratio);
        sampleDeviation.ifPresent(s -> Require.finite("sample deviation", s));
        standardUncertainty.ifPresent(u -> Require.finite("standard uncertainty", u));
        boolean repeated = pairs > 1;
        if (pairs < 1 || sampleDeviation.isPresent() != repeated || standardUncertainty.isPresent() != repeated) {
            throw new InvalidInputException(
                    "ratio of pairs",
                    "of one pair, or of more with deviation and uncertainty",
                    pairs + " pairs, " + sampleDeviation + ", " + standardUncertainty);
        }
    }

    /**
     * The degrees of freedom of the deviation and the uncertainty.
     *
     * @return n − 1
     */
    public int degreesOfFreedom() {
        return pairs - 1;
    }
}
