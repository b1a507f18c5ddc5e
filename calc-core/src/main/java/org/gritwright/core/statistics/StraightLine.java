package org.gritwright.core.statistics;

import java.io.Serializable;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.check.Require;
import org.gritwright.units.check.SerialForm;

/**
 * The least-squares straight line y = intercept + slope · x, or through the origin y = slope · x, with what follows from it:
 * uncertainties, the mean of y and one more observation at an x, and the x that belongs to either.
 *
 * <p>x is taken to be exact, and the scatter of y to be {@link Scatter#ABSOLUTE absolute}: its variance is s²/w with the
 * weights w, 1 where none are given. The weights are taken as they are, so that s, estimated from the residuals, is the
 * standard deviation of an observation of weight 1, and the mean of m of them is an observation of weight m. Slope, intercept
 * and their uncertainties depend only on the proportions of the weights (JCGM 100:2008, the GUM, H.3, with equal weights).
 *
 * <p>Computed about the weighted means of x and y, and the residuals after the fit, so that nothing is lost to cancellation.
 * Uncertainties are absent, not zero, where no degree of freedom is left: for two points, or one through the origin.
 * Immutable, thread-safe, a value.
 */
public final class StraightLine implements Serializable {
    private static final long serialVersionUID = 1L;

    private final boolean throughOrigin;
    private final double slope;
    private final double intercept;
    private final double[] residuals;
    private final int degreesOfFreedom;
    private final double variance;
    /** The weighted means of x and y; 0 through the origin. */
    private final double centreX;

    private final double centreY;
    /** One over the sum of weights; 0 through the origin, where the center is not estimated. */
    private final double centreVariance;
    /** The weighted sum of squares of x about the center. */
    private final double squaresOfX;

    private StraightLine(boolean throughOrigin, double[] x, double[] y, double[] weights) {
        requirePoints(throughOrigin ? 1 : 2, x, y, weights);
        int n = x.length;
        this.throughOrigin = throughOrigin;
        double sumWeights = 0;
        for (double weight : weights) {
            sumWeights += weight;
        }
        this.centreX = throughOrigin ? 0 : mean(x, weights, sumWeights);
        this.centreY = throughOrigin ? 0 : mean(y, weights, sumWeights);
        this.centreVariance = throughOrigin ? 0 : 1 / sumWeights;
        double sxx = 0;
        double sxy = 0;
        for (int i = 0; i < n; i++) {
            double fromCentre = x[i] - centreX;
            sxx += weights[i] * fromCentre * fromCentre;
            sxy += weights[i] * fromCentre * (y[i] - centreY);
        }
        if (!(sxx > 0)) {
            throw new InvalidInputException(
                    "points of a line",
                    throughOrigin ? "at an x other than 0" : "at two different x or more",
                    "all at " + x[0]);
        }
        this.squaresOfX = Require.finite("sum of squares of x", sxx);
        this.slope = Require.finite("slope", sxy / sxx);
        this.intercept = throughOrigin ? 0 : Require.finite("intercept", centreY - slope * centreX);
        this.degreesOfFreedom = throughOrigin ? n - 1 : n - 2;
        this.residuals = new double[n];
        double squares = 0;
        for (int i = 0; i < n; i++) {
            residuals[i] = Require.finite("residual", y[i] - centreY - slope * (x[i] - centreX));
            squares += weights[i] * residuals[i] * residuals[i];
        }
        this.variance =
                degreesOfFreedom > 0 ? Require.finite("variance of the residuals", squares / degreesOfFreedom) : 0;
    }

    private static void requirePoints(int fewest, double[] x, double[] y, double[] weights) {
        int n = Objects.requireNonNull(x, "x").length;
        Objects.requireNonNull(y, "y");
        Objects.requireNonNull(weights, "weights");
        if (n < fewest || y.length != n || weights.length != n) {
            throw new InvalidInputException(
                    "points of a line",
                    (fewest == 1 ? "one" : "two") + " or more, with an x, a y and a weight each",
                    n + " x, " + y.length + " y, " + weights.length + " weights");
        }
        for (int i = 0; i < n; i++) {
            Require.finite("x", x[i]);
            Require.finite("y", y[i]);
            Require.positive("weight", weights[i]);
        }
    }

    /** Two passes: the second recovers what the first lost to rounding. */
    private static double mean(double[] values, double[] weights, double sumWeights) {
        double mean = 0;
        for (int pass = 0; pass < 2; pass++) {
            double rest = 0;
            for (int i = 0; i < values.length; i++) {
                rest += weights[i] * (values[i] - mean);
            }
            mean += rest / sumWeights;
        }
        return mean;
    }

    private static double[] equal(double[] x) {
        double[] weights = new double[Objects.requireNonNull(x, "x").length];
        Arrays.fill(weights, 1);
        return weights;
    }

    /**
     * Fits a line with an intercept.
     *
     * @param x finite numbers, at least two of them different
     * @param y as many finite numbers
     * @return the line, with n − 2 degrees of freedom
     * @throws InvalidInputException if there are fewer than two points, the lengths differ, all x are the same, or a
     *     number or the result is not finite
     */
    public static StraightLine fit(double[] x, double[] y) {
        return fit(x, y, equal(x));
    }

    /**
     * Fits a line with an intercept to points of different weight.
     *
     * @param x finite numbers, at least two of them different
     * @param y as many finite numbers
     * @param weights as many numbers greater than 0, in inverse proportion to the variances of y
     * @return the line, with n − 2 degrees of freedom
     * @throws InvalidInputException if there are fewer than two points, the lengths differ, all x are the same, a weight is
     *     not greater than 0, or a number or the result is not finite
     */
    public static StraightLine fit(double[] x, double[] y, double[] weights) {
        return new StraightLine(false, x, y, weights);
    }

    /**
     * Fits a line through the origin.
     *
     * @param x finite numbers, at least one of them not 0
     * @param y as many finite numbers
     * @return the line, with n − 1 degrees of freedom
     * @throws InvalidInputException if there is no point, the lengths differ, all x are 0, or a number or the result is not
     *     finite
     */
    public static StraightLine throughOrigin(double[] x, double[] y) {
        return throughOrigin(x, y, equal(x));
    }

    /**
     * Fits a line through the origin to points of different weight.
     *
     * @param x finite numbers, at least one of them not 0
     * @param y as many finite numbers
     * @param weights as many numbers greater than 0, in inverse proportion to the variances of y
     * @return the line, with n − 1 degrees of freedom
     * @throws InvalidInputException if there is no point, the lengths differ, all x are 0, a weight is not greater than 0,
     *     or a number or the result is not finite
     */
    public static StraightLine throughOrigin(double[] x, double[] y, double[] weights) {
        return new StraightLine(true, x, y, weights);
    }

    /**
     * The intercept: y at x = 0.
     *
     * @return the intercept; 0 through the origin
     */
    public double intercept() {
        return intercept;
    }

    /**
     * The change of y per x.
     *
     * @return the slope
     */
    public double slope() {
        return slope;
    }

    /**
     * The standard uncertainty of the intercept.
     *
     * @return the uncertainty; absent without a degree of freedom, and through the origin, where nothing is estimated
     */
    public OptionalDouble interceptUncertainty() {
        return throughOrigin ? OptionalDouble.empty() : uncertainty(leverage(0));
    }

    /**
     * The standard uncertainty of the slope.
     *
     * @return the uncertainty; absent without a degree of freedom
     */
    public OptionalDouble slopeUncertainty() {
        return uncertainty(1 / squaresOfX);
    }

    /**
     * The covariance of intercept and slope.
     *
     * @return the covariance; absent where the intercept's uncertainty is
     */
    public OptionalDouble covariance() {
        return interceptUncertainty().isPresent()
                ? OptionalDouble.of(-variance * centreX / squaresOfX)
                : OptionalDouble.empty();
    }

    /**
     * The correlation of intercept and slope. It depends on where x = 0 is: with x counted from its weighted mean it is 0.
     *
     * @return from −1 to 1; absent where the intercept's uncertainty is
     */
    public OptionalDouble correlation() {
        return interceptUncertainty().isPresent()
                ? OptionalDouble.of(-centreX / Math.sqrt(leverage(0) * squaresOfX))
                : OptionalDouble.empty();
    }

    /**
     * The degrees of freedom of all uncertainties.
     *
     * @return the number of points less 2; less 1 through the origin
     */
    public int degreesOfFreedom() {
        return degreesOfFreedom;
    }

    /**
     * The standard deviation of an observation of weight 1, estimated from the residuals.
     *
     * @return s; absent without a degree of freedom
     */
    public OptionalDouble residualDeviation() {
        return uncertainty(1);
    }

    /**
     * The residuals.
     *
     * @return each y less the line's, in the order of the points
     */
    public double[] residuals() {
        return residuals.clone();
    }

    private OptionalDouble uncertainty(double factor) {
        return degreesOfFreedom > 0 ? OptionalDouble.of(Math.sqrt(variance * factor)) : OptionalDouble.empty();
    }

    /** The variance of the line at an x over s². */
    private double leverage(double x) {
        return centreVariance + (x - centreX) * (x - centreX) / squaresOfX;
    }

    private Prediction prediction(double value, double factor) {
        return new Prediction(value, uncertainty(factor), degreesOfFreedom);
    }

    private double valueAt(double x) {
        return centreY + slope * (Require.finite("x", x) - centreX);
    }

    /**
     * The mean of y at an x: the line itself, without the scatter of single observations.
     *
     * @param x where; finite
     * @return the line's y with its standard uncertainty, u = s · √(1/Σw + (x − x̄)²/Sxx), through the origin without the
     *     first term
     * @throws InvalidInputException if x or the result is not finite
     */
    public Prediction meanAt(double x) {
        return prediction(valueAt(x), leverage(x));
    }

    /**
     * One more observation of weight 1 at an x.
     *
     * @param x where; finite
     * @return the line's y, with the standard uncertainty of line and observation together
     * @throws InvalidInputException if x or the result is not finite
     */
    public Prediction observationAt(double x) {
        return observationAt(x, 1);
    }

    /**
     * One more observation at an x, or the mean of several.
     *
     * @param x where; finite
     * @param weight its weight, greater than 0: m for the mean of m observations of weight 1
     * @return the line's y, with the standard uncertainty of line and observation together, u = s · √(1/w + 1/Σw +
     *     (x − x̄)²/Sxx), through the origin without the second term
     * @throws InvalidInputException if a number is out of its range or the result is not finite
     */
    public Prediction observationAt(double x, double weight) {
        return prediction(valueAt(x), 1 / Require.positive("weight", weight) + leverage(x));
    }

    /**
     * The x at which the mean of y has a wanted value: where to set a machine so that on average it gives y. The value is
     * exact, so only the line is uncertain.
     *
     * @param y the wanted mean; finite
     * @return the x with its standard uncertainty, to first order; see {@link #rangeOfXForMean} for a slope that is poorly
     *     known
     * @throws InvalidInputException if y is not finite, the line is level, or the result is not finite
     */
    public Prediction xForMean(double y) {
        return xFor(y, 0);
    }

    /**
     * The x that belongs to one observation of y, of weight 1: reading the line backwards.
     *
     * @param y the observation; finite
     * @return the x with its standard uncertainty, as in the full form
     * @throws InvalidInputException if y is not finite, the line is level, or the result is not finite
     */
    public Prediction xForObservation(double y) {
        return xForObservation(y, 1);
    }

    /**
     * The x that belongs to an observation of y, or to the mean of several: reading the line backwards.
     *
     * <p>u = s/|slope| · √(1/w + 1/Σw + (x − x̄)²/Sxx), through the origin without the second term. s is that of the line
     * alone, with its degrees of freedom, as in D. L. Massart and others (Handbook of Chemometrics and Qualimetrics, part A,
     * 1997, chapter 8), the EURACHEM/CITAC guide QUAM (example A5) and, from memory, ISO 8466-1. The other published method
     * pools it with the spread of the m new observations, for n + m − 3 degrees of freedom. It isn't used here, because a
     * few observations in a row scatter less than observations do about a line, and a lucky pair would make the uncertainty
     * too small.
     *
     * @param y the observation; finite
     * @param weight its weight, greater than 0: m for the mean of m observations of weight 1
     * @return the x with its standard uncertainty, to first order; see {@link #rangeOfXForObservation(double, double,
     *     double)} for a slope that is poorly known
     * @throws InvalidInputException if a number is out of its range, the line is level, or the result is not finite
     */
    public Prediction xForObservation(double y, double weight) {
        return xFor(y, 1 / Require.positive("weight", weight));
    }

    private Prediction xFor(double y, double ofObservation) {
        Require.finite("y", y);
        Require.that(slope != 0, "slope of a line that is read backwards", "other than 0", "0");
        double x = centreX + (y - centreY) / slope;
        return prediction(x, (ofObservation + leverage(x)) / (slope * slope));
    }

    /**
     * Every x at which the mean of y could well be the wanted value: where the interval about {@link #meanAt} covers it
     * (E. C. Fieller's method, as in F. A. Graybill and H. K. Iyer, Regression Analysis: Concepts and Applications, 1994). Not
     * symmetric about {@link #xForMean}, and exact where that is to first order; the two agree for a well-known slope.
     *
     * @param y the wanted mean; finite
     * @param coverage greater than 0 and below 1, for example 0.95
     * @return the range; none without a degree of freedom, or where at this coverage the slope could be 0, so that no x can
     *     be ruled out
     * @throws InvalidInputException if a number is out of its range
     */
    public Optional<Range> rangeOfXForMean(double y, double coverage) {
        return rangeOfX(y, 0, coverage);
    }

    /**
     * Every x to which one observation of y, of weight 1, could well belong.
     *
     * @param y the observation; finite
     * @param coverage greater than 0 and below 1, for example 0.95
     * @return the range, as in the full form
     * @throws InvalidInputException if a number is out of its range
     */
    public Optional<Range> rangeOfXForObservation(double y, double coverage) {
        return rangeOfXForObservation(y, 1, coverage);
    }

    /**
     * Every x to which an observation of y, or the mean of several, could well belong: where the interval about {@link
     * #observationAt(double, double)} covers it, by the method of {@link #rangeOfXForMean}.
     *
     * @param y the observation; finite
     * @param weight its weight, greater than 0: m for the mean of m observations of weight 1
     * @param coverage greater than 0 and below 1, for example 0.95
     * @return the range; none without a degree of freedom, or where at this coverage the slope could be 0, so that no x can
     *     be ruled out
     * @throws InvalidInputException if a number is out of its range
     */
    public Optional<Range> rangeOfXForObservation(double y, double weight, double coverage) {
        return rangeOfX(y, 1 / Require.positive("weight", weight), coverage);
    }

    private Optional<Range> rangeOfX(double y, double ofObservation, double coverage) {
        double reading = Require.finite("y", y) - centreY;
        Require.probability("coverage", coverage);
        if (degreesOfFreedom == 0) {
            return Optional.empty();
        }
        double t = Student.of(degreesOfFreedom).coverageFactor(coverage);
        // All d = x − x̄ with (reading − slope · d)² ≤ t² s² (1/w + 1/Σw + d²/Sxx): a quadratic.
        double slopeError = t * t * variance / squaresOfX;
        double a = slope * slope - slopeError;
        if (!(a > 0)) {
            return Optional.empty();
        }
        double c = t * t * variance * (ofObservation + centreVariance);
        double root = Math.sqrt(reading * reading * slopeError + a * c);
        return Optional.of(new Range(centreX + (slope * reading - root) / a, centreX + (slope * reading + root) / a));
    }

    private List<Object> parts() {
        return List.of(
                throughOrigin,
                slope,
                intercept,
                degreesOfFreedom,
                variance,
                centreX,
                centreY,
                centreVariance,
                squaresOfX);
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof StraightLine that
                && parts().equals(that.parts())
                && Arrays.equals(residuals, that.residuals);
    }

    @Override
    public int hashCode() {
        return parts().hashCode();
    }

    /**
     * The line as text.
     *
     * @return for example "y = -0.5 + 0.6 · x, 2 degrees of freedom"
     */
    @Override
    public String toString() {
        return "y = " + (throughOrigin ? "" : intercept + " + ") + slope + " · x, "
                + Optionals.degrees(degreesOfFreedom);
    }

    /**
     * A value that follows from a line. Immutable, thread-safe, a value.
     *
     * @param value the value
     * @param standardUncertainty its standard uncertainty; absent without a degree of freedom
     * @param degreesOfFreedom of the uncertainty
     */
    public record Prediction(double value, OptionalDouble standardUncertainty, int degreesOfFreedom)
            implements Serializable {
        /**
         * Checks the values.
         *
         * @throws InvalidInputException if one is not finite, or the uncertainty is missing with a degree of freedom or
         *     present without
         */
        public Prediction {
            Require.finite("predicted value", value);
            Objects.requireNonNull(standardUncertainty, "standardUncertainty");
            standardUncertainty.ifPresent(u -> Require.finite("uncertainty of a predicted value", u));
            if (degreesOfFreedom < 0 || standardUncertainty.isPresent() != degreesOfFreedom > 0) {
                throw new InvalidInputException(
                        "uncertainty of a predicted value",
                        "present with a degree of freedom, and absent without",
                        Optionals.text(standardUncertainty) + " with " + Optionals.degrees(degreesOfFreedom));
            }
        }

        /**
         * Half the width of the interval about the value: Student's t times the standard uncertainty.
         *
         * @param coverage greater than 0 and below 1, for example 0.95
         * @return the half-width; absent where the uncertainty is
         * @throws InvalidInputException if the coverage is out of its range
         */
        public OptionalDouble halfWidth(double coverage) {
            Require.probability("coverage", coverage);
            return standardUncertainty.isPresent()
                    ? OptionalDouble.of(
                            Student.of(degreesOfFreedom).coverageFactor(coverage) * standardUncertainty.getAsDouble())
                    : OptionalDouble.empty();
        }

        private Object writeReplace() {
            return SerialForm.of(this);
        }

        /**
         * The value as text.
         *
         * @return for example "2.2 (u 0.3, 2 degrees of freedom)"
         */
        @Override
        public String toString() {
            return Optionals.estimate(value, standardUncertainty, degreesOfFreedom);
        }
    }

    /**
     * A range of values. Immutable, thread-safe, a value.
     *
     * @param lowest the lowest value
     * @param highest the highest value
     */
    public record Range(double lowest, double highest) implements Serializable {
        /**
         * Checks the values.
         *
         * @throws InvalidInputException if one is not finite, or the highest is below the lowest
         */
        public Range {
            Require.finite("lowest value", lowest);
            Require.finite("highest value", highest);
            if (highest < lowest) {
                throw new InvalidInputException("highest value", "at least " + lowest, String.valueOf(highest));
            }
        }
    }
}
