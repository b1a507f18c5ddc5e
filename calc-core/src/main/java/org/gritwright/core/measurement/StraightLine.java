package org.gritwright.core.measurement;

import java.util.OptionalDouble;
import org.gritwright.units.InvalidInputException;

/**
 * The least-squares straight line y = intercept + slope · x.
 *
 * <p>Computed about the means of x and y, so that nothing is lost to cancellation. Two points give the line through
 * them, without uncertainty. Immutable, thread-safe, a value.
 *
 * @param intercept y at x = 0
 * @param slope the change of y per x
 * @param interceptUncertainty standard uncertainty of the intercept; absent for two points
 * @param slopeUncertainty standard uncertainty of the slope; absent for two points
 */
public record StraightLine(
        double intercept, double slope, OptionalDouble interceptUncertainty, OptionalDouble slopeUncertainty) {

    /**
     * Checks the values.
     *
     * @throws InvalidInputException if one is not finite
     */
    public StraightLine {
        Require.finite("intercept", intercept);
        Require.finite("slope", slope);
        interceptUncertainty.ifPresent(u -> Require.finite("uncertainty of the intercept", u));
        slopeUncertainty.ifPresent(u -> Require.finite("uncertainty of the slope", u));
    }

    /**
     * Fits the line (JCGM 100:2008, the GUM, H.3, with equal weights).
     *
     * @param x finite numbers, at least two of them different
     * @param y as many finite numbers
     * @return the line
     * @throws InvalidInputException if there are fewer than two points, the lengths differ, all x are the same, or a
     *     number or the result is not finite
     */
    public static StraightLine fit(double[] x, double[] y) {
        int n = x.length;
        if (n < 2 || y.length != n) {
            throw new InvalidInputException("points of a line", "two or more", n + " x, " + y.length + " y");
        }
        for (int i = 0; i < n; i++) {
            Require.finite("x", x[i]);
            Require.finite("y", y[i]);
        }
        double meanX = mean(x);
        double meanY = mean(y);
        double sxx = 0;
        double sxy = 0;
        for (int i = 0; i < n; i++) {
            sxx += (x[i] - meanX) * (x[i] - meanX);
            sxy += (x[i] - meanX) * (y[i] - meanY);
        }
        if (!(sxx > 0)) {
            throw new InvalidInputException("points of a line", "at two different x or more", "all at " + x[0]);
        }
        double slope = sxy / sxx;
        double intercept = meanY - slope * meanX;
        if (n == 2) {
            return new StraightLine(intercept, slope, OptionalDouble.empty(), OptionalDouble.empty());
        }
        double squares = 0;
        for (int i = 0; i < n; i++) {
            double residual = y[i] - meanY - slope * (x[i] - meanX);
            squares += residual * residual;
        }
        double variance = squares / (n - 2);
        return new StraightLine(
                intercept,
                slope,
                OptionalDouble.of(Math.sqrt(variance * (1.0 / n + meanX * meanX / sxx))),
                OptionalDouble.of(Math.sqrt(variance / sxx)));
    }

    private static double mean(double[] values) {
        double sum = 0;
        for (double value : values) {
            sum += value;
        }
        return sum / values.length;
    }
}
