package org.gritwright.core.statistics;

import java.util.Optional;
import java.util.function.DoubleUnaryOperator;
import org.apache.commons.statistics.distribution.FDistribution;

/**
 * The lack-of-fit test of a curve with repeats at some x: does the curve miss the means by more than the repeats scatter?
 *
 * <p>F = (Σ W·(ȳ/ŷ − 1)² / (c − p)) ÷ (Σ w·(y/ȳ − 1)² / (n − c)), with the means ȳ of c groups of one x, the sums W of
 * their weights, and p fitted parameters; by Fisher's F with c − p and n − c degrees of freedom (the usual test, as
 * worked in the NIST/SEMATECH e-Handbook of Statistical Methods, 4.6.1.5, load cell; here with relative deviations, as the
 * scatter is relative). A passed test with few repeats proves nothing.
 *
 * @param statistic F, 0 or more; infinite where repeats don't scatter at all and the curve misses them
 * @param misfitDegrees c − p, 1 or more
 * @param scatterDegrees n − c, 1 or more
 * @param chance how often a curve that is right would miss by so much or more: the p-value
 */
public record LackOfFit(double statistic, int misfitDegrees, int scatterDegrees, double chance) {
    /** Sums of squares below this are the rounding of doubles. */
    private static final double ROUNDING = 1e-24;

    /**
     * Tests a curve.
     *
     * @param x finite numbers
     * @param y as many numbers greater than 0
     * @param weights as many numbers greater than 0
     * @param curve the fitted curve
     * @param parameters how many parameters it was fitted with
     * @return the test; none without repeats, or without more different x than parameters
     * @throws org.gritwright.units.InvalidInputException if the lengths differ or a number is out of its range
     */
    public static Optional<LackOfFit> test(
            double[] x, double[] y, double[] weights, DoubleUnaryOperator curve, int parameters) {
        Observations data = new Observations(x, y, weights);
        Observations.Group[] groups = data.groups();
        int misfitDegrees = groups.length - parameters;
        int scatterDegrees = data.n - groups.length;
        if (misfitDegrees < 1 || scatterDegrees < 1) {
            return Optional.empty();
        }
        double misfit = 0;
        double scatter = 0;
        for (Observations.Group group : groups) {
            double deviation = group.mean() / curve.applyAsDouble(group.x()) - 1;
            misfit += group.weight() * deviation * deviation;
            scatter += group.squares();
        }
        if (misfit < ROUNDING) {
            return Optional.of(new LackOfFit(0, misfitDegrees, scatterDegrees, 1));
        }
        if (scatter < ROUNDING) {
            return Optional.of(new LackOfFit(Double.POSITIVE_INFINITY, misfitDegrees, scatterDegrees, 0));
        }
        double statistic = (misfit / misfitDegrees) / (scatter / scatterDegrees);
        double chance = FDistribution.of(misfitDegrees, scatterDegrees).survivalProbability(statistic);
        return Optional.of(new LackOfFit(statistic, misfitDegrees, scatterDegrees, chance));
    }
}
