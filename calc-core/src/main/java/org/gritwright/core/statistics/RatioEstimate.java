package org.gritwright.core.statistics;

import java.util.OptionalDouble;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.check.Require;

/**
 * The outcome of a {@link RatioEstimator}, in the units of its input. Immutable, thread-safe, a value.
 *
 * @param ratio the estimated ratio
 * @param sampleDeviation how the single ratios scatter: their sample standard deviation; of a line that of the single
 *     ratios about the slope once the intercept is taken off, with its degrees of freedom; absent without one
 * @param standardUncertainty the standard uncertainty of the ratio; absent without a degree of freedom
 * @param pairs the number of pairs, n, 1 or more
 * @param intercept the numerator at a denominator of 0, where it was estimated: what a start gains, negative for a loss
 * @param interceptUncertainty its standard uncertainty; absent without a degree of freedom
 */
public record RatioEstimate(
        double ratio,
        OptionalDouble sampleDeviation,
        OptionalDouble standardUncertainty,
        int pairs,
        OptionalDouble intercept,
        OptionalDouble interceptUncertainty) {

    /**
     * Checks the values.
     *
     * @throws InvalidInputException if a number is not finite, there are fewer pairs than estimated parameters, or
     *     deviation and uncertainties are not present with a degree of freedom and absent without
     */
    public RatioEstimate {
        Require.finite("ratio", ratio);
        sampleDeviation.ifPresent(s -> Require.finite("sample deviation", s));
        standardUncertainty.ifPresent(u -> Require.finite("standard uncertainty", u));
        intercept.ifPresent(a -> Require.finite("intercept", a));
        interceptUncertainty.ifPresent(u -> Require.finite("uncertainty of the intercept", u));
        int degrees = degreesOfFreedom(pairs, intercept);
        boolean repeated = degrees > 0;
        if (degrees < 0
                || sampleDeviation.isPresent() != repeated
                || standardUncertainty.isPresent() != repeated
                || interceptUncertainty.isPresent() != (repeated && intercept.isPresent())) {
            throw new InvalidInputException(
                    "ratio of pairs",
                    "of as many pairs as parameters, or of more with deviation and uncertainty",
                    pairs + " pairs, " + sampleDeviation + ", " + standardUncertainty + ", intercept " + intercept
                            + ", " + interceptUncertainty);
        }
    }

    /**
     * An estimate of the ratio alone.
     *
     * @param ratio the estimated ratio
     * @param sampleDeviation the sample standard deviation of the single ratios; absent for one pair
     * @param standardUncertainty the standard uncertainty of the estimate; absent for one pair
     * @param pairs the number of pairs, 1 or more
     * @throws InvalidInputException as for the full form
     */
    public RatioEstimate(double ratio, OptionalDouble sampleDeviation, OptionalDouble standardUncertainty, int pairs) {
        this(ratio, sampleDeviation, standardUncertainty, pairs, OptionalDouble.empty(), OptionalDouble.empty());
    }

    /**
     * The degrees of freedom of the deviation and the uncertainties.
     *
     * @return n − 1; n − 2 with an intercept
     */
    public int degreesOfFreedom() {
        return degreesOfFreedom(pairs, intercept);
    }

    private static int degreesOfFreedom(int pairs, OptionalDouble intercept) {
        return pairs - (intercept.isPresent() ? 2 : 1);
    }
}
