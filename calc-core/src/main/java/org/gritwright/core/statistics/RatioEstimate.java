package org.gritwright.core.statistics;

import java.io.Serializable;
import java.util.OptionalDouble;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.check.Require;
import org.gritwright.units.check.SerialForm;

/**
 * The outcome of a {@link RatioEstimator}, in the units of its input. Immutable, thread-safe, a value.
 *
 * @param ratio the estimated ratio
 * @param sampleDeviation how the single ratios scatter: their sample standard deviation; for a line that of the single
 *     ratios about the slope once the intercept is subtracted, with its degrees of freedom; absent without one
 * @param standardUncertainty the standard uncertainty of the ratio; absent without a degree of freedom
 * @param pairs the number of pairs, n, 1 or more
 * @param intercept the numerator at a denominator of 0, where it was estimated: what a start adds, negative for a loss
 * @param interceptUncertainty its standard uncertainty; absent without a degree of freedom
 */
public record RatioEstimate(
        double ratio,
        OptionalDouble sampleDeviation,
        OptionalDouble standardUncertainty,
        int pairs,
        OptionalDouble intercept,
        OptionalDouble interceptUncertainty)
        implements Serializable {
    /**
     * Checks the values.
     *
     * @throws InvalidInputException if a number is not finite, there are fewer pairs than estimated parameters, or
     *     a deviation or an uncertainty is missing with a degree of freedom or present without
     */
    public RatioEstimate {
        Require.given(RatioEstimate.class, sampleDeviation, standardUncertainty, intercept, interceptUncertainty);
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
                    "as many pairs as parameters without uncertainties, or more with deviation and uncertainties",
                    pairs + " pairs, deviation " + Optionals.text(sampleDeviation) + ", uncertainty "
                            + Optionals.text(standardUncertainty) + ", intercept " + Optionals.text(intercept)
                            + ", its uncertainty " + Optionals.text(interceptUncertainty));
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

    private Object writeReplace() {
        return SerialForm.of(this);
    }

    /**
     * The estimate as text.
     *
     * @return for example "6.1 (u 0.02, 2 degrees of freedom)", and for a line its intercept
     */
    @Override
    public String toString() {
        String ofRatio = Optionals.estimate(ratio, standardUncertainty, degreesOfFreedom());
        return intercept.isPresent() ? ofRatio + ", intercept " + intercept.getAsDouble() : ofRatio;
    }
}
