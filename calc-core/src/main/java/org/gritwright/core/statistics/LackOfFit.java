package org.gritwright.core.statistics;

import java.io.Serializable;
import java.util.Arrays;
import java.util.Objects;
import java.util.Optional;
import java.util.function.DoubleUnaryOperator;
import org.apache.commons.statistics.distribution.FDistribution;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.check.Require;

/**
 * The lack-of-fit test of a curve with repeats at some x: does the curve miss the means by more than the scatter of the
 * repeats explains?
 *
 * <p>F = (Σ W·D² / (c − p)) ÷ (Σ w·d² / (n − c)), with c groups of equal x, the sums W of their weights and their weighted
 * means ȳ, n observations and p fitted parameters. By {@link Scatter#ABSOLUTE absolute} scatter D = ȳ − ŷ and d = y − ȳ (the
 * usual test, as worked in the NIST/SEMATECH e-Handbook of Statistical Methods, 4.6.1.5, load cell); by {@link
 * Scatter#RELATIVE relative} scatter D = ȳ/ŷ − 1 and d = y/ȳ − 1 (derived from the same definition). The chance is that of
 * Fisher's F with c − p and n − c degrees of freedom. A passed test with few repeats proves nothing. Immutable, thread-safe,
 * a value.
 *
 * <ul>
 *   <li>No repeats, or no more different x than parameters: there is no test.
 *   <li>Repeats that agree to the rounding of doubles and a curve that misses them: F is infinite, the chance 0.
 *   <li>A curve through all means: F is 0, the chance 1, whatever the scatter.
 * </ul>
 *
 * @param statistic F, 0 or more, possibly infinite
 * @param misfitDegrees c − p, 1 or more
 * @param scatterDegrees n − c, 1 or more
 * @param chance the probability that the repeats' scatter alone would give such a misfit or a larger one: the p-value
 */
public record LackOfFit(double statistic, int misfitDegrees, int scatterDegrees, double chance)
        implements Serializable {
    /**
     * Checks the values.
     *
     * @throws InvalidInputException if one is out of its range
     */
    public LackOfFit {
        if (!(statistic >= 0 && chance >= 0 && chance <= 1) || misfitDegrees < 1 || scatterDegrees < 1) {
            throw new InvalidInputException(
                    "lack-of-fit test",
                    "F of 0 or more with 1 degree of freedom or more each, and a chance of 0 to 1",
                    "F " + statistic + ", " + misfitDegrees + " and " + scatterDegrees + ", chance " + chance);
        }
    }

    /**
     * Tests a curve by observations of equal weight.
     *
     * @param scatter how the observations scatter: as the fit took it
     * @param x finite numbers
     * @param y as many finite numbers, greater than 0 for relative scatter
     * @param curve the fitted curve
     * @param parameters how many parameters it was fitted with, 0 or more
     * @return the test; none without repeats, or without more different x than parameters
     * @throws InvalidInputException as for the full form
     */
    public static Optional<LackOfFit> test(
            Scatter scatter, double[] x, double[] y, DoubleUnaryOperator curve, int parameters) {
        double[] equal = new double[Objects.requireNonNull(x, "x").length];
        Arrays.fill(equal, 1);
        return test(scatter, x, y, equal, curve, parameters);
    }

    /**
     * Tests a curve.
     *
     * @param scatter how the observations scatter: as the fit took it
     * @param x finite numbers
     * @param y as many finite numbers, greater than 0 for relative scatter
     * @param weights as many numbers greater than 0
     * @param curve the fitted curve
     * @param parameters how many parameters it was fitted with, 0 or more
     * @return the test; none without repeats, or without more different x than parameters
     * @throws InvalidInputException if there is no observation, the lengths differ, a number is out of its range, or the
     *     curve gives no finite number at an x (for relative scatter, none greater than 0)
     */
    public static Optional<LackOfFit> test(
            Scatter scatter, double[] x, double[] y, double[] weights, DoubleUnaryOperator curve, int parameters) {
        Objects.requireNonNull(curve, "curve");
        Observations data = new Observations(scatter, x, y, weights);
        if (parameters < 0) {
            throw new InvalidInputException("fitted parameters", "0 or more", String.valueOf(parameters));
        }
        Observations.Group[] groups = data.groups();
        int misfitDegrees = groups.length - parameters;
        int scatterDegrees = data.n - groups.length;
        if (misfitDegrees < 1 || scatterDegrees < 1) {
            return Optional.empty();
        }
        double misfit = 0;
        double within = 0;
        for (Observations.Group group : groups) {
            double deviation = scatter.deviation(group.mean(), valueAt(group.x(), curve, scatter));
            misfit += group.weight() * deviation * deviation;
            within += group.squares();
        }
        if (misfit < data.rounding()) {
            return Optional.of(new LackOfFit(0, misfitDegrees, scatterDegrees, 1));
        }
        if (within < data.rounding()) {
            return Optional.of(new LackOfFit(Double.POSITIVE_INFINITY, misfitDegrees, scatterDegrees, 0));
        }
        double statistic = (misfit / misfitDegrees) / (within / scatterDegrees);
        double chance = FDistribution.of(misfitDegrees, scatterDegrees).survivalProbability(statistic);
        return Optional.of(new LackOfFit(statistic, misfitDegrees, scatterDegrees, chance));
    }

    private static double valueAt(double x, DoubleUnaryOperator curve, Scatter scatter) {
        String field = "curve at " + x;
        double value = curve.applyAsDouble(x);
        return scatter == Scatter.RELATIVE ? Require.positive(field, value) : Require.finite(field, value);
    }
}
