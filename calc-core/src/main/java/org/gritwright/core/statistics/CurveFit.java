package org.gritwright.core.statistics;

import java.io.Serializable;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.OptionalDouble;
import java.util.function.DoubleUnaryOperator;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.check.Require;

/**
 * A known shape fitted to observations of {@link Scatter#RELATIVE relative} scatter: y = k · g(x), or y = k · g(x − x₀).
 *
 * <p>The variance of y is (s · y)² / w, with the weights w scaled to a mean of 1. The estimates solve the quasi-likelihood
 * equations Σ w·r = 0 and Σ w·r·d = 0 with the relative residuals r = y / ŷ − 1 and d = ∂ ln ŷ / ∂x₀ (a generalized linear
 * model with constant coefficient of variation; McCullagh and Nelder, Generalized Linear Models, 2nd edition, chapter 8;
 * cited from memory). So k is the weighted mean of y / g(x − x₀): with equal weights the mean of ratios, with the
 * denominators of y as weights the ratio of sums. s² = Σ w·r² / (n − p), and the covariance of (ln k, x₀) is s² times the
 * inverse of Σ w·(1, d)ᵀ(1, d). Uncertainties are absent, not zero, where no degree of freedom is left.
 *
 * <p>Immutable; thread-safe if the shape is. Serializable with the shape, whose class must be there where the fit is
 * read. Two fits are equal if their numbers and their shapes are.
 */
public final class CurveFit implements Serializable {
    private static final long serialVersionUID = 1L;

    /** How many points the first search for the shift tries, at distances in geometric progression. */
    private static final int GRID = 64;

    private static final double NEAREST = 1e-6;

    /** About the cube root of the precision of doubles, where a central difference is most accurate. */
    private static final double STEP = 6e-6;

    /** The shape g of a curve: a pure function that can be serialized, as a lambda that captures only numbers can. */
    @FunctionalInterface
    public interface Shape extends DoubleUnaryOperator, Serializable {}

    private final Shape shape;
    private final double lowest;
    private final double highest;
    private final int parameters;
    private final double scale;
    private final double shift;
    private final int degreesOfFreedom;
    private final double variance;
    private final double sumWeights;
    private final double meanSlope;
    private final double squaresOfSlope;
    /** Of each observation, w · y / ŷ. */
    private final double[] pulls;
    /** Of each observation, how far its relative slope is from the mean. */
    private final double[] slopes;

    private CurveFit(Shape shape, double lowest, double highest, int parameters, double shift, Observations data) {
        this.shape = shape;
        this.lowest = lowest;
        this.highest = highest;
        this.parameters = parameters;
        this.shift = shift;
        this.scale = scaleAt(shift, data);
        this.degreesOfFreedom = data.n - parameters;
        this.pulls = new double[data.n];
        this.slopes = new double[data.n];
        double squares = 0;
        double weights = 0;
        double sumOfSlopes = 0;
        for (int i = 0; i < data.n; i++) {
            double ratio = data.y[i] / at(data.x[i]);
            double residual = ratio - 1;
            pulls[i] = data.weights[i] * ratio;
            slopes[i] = relativeSlope(data.x[i]);
            squares += data.weights[i] * residual * residual;
            weights += data.weights[i];
            sumOfSlopes += data.weights[i] * slopes[i];
        }
        // Asked for by nobody without a degree of freedom.
        this.variance = squares / degreesOfFreedom;
        this.sumWeights = weights;
        this.meanSlope = sumOfSlopes / weights;
        double spread = 0;
        for (int i = 0; i < data.n; i++) {
            slopes[i] -= meanSlope;
            spread += data.weights[i] * slopes[i] * slopes[i];
        }
        this.squaresOfSlope = spread;
        Require.finite("fitted scale", scale);
    }

    /**
     * Fits y = k · g(x).
     *
     * @param shape g, greater than 0 at every x
     * @param x finite numbers, one or more
     * @param y as many numbers greater than 0
     * @param weights as many numbers greater than 0
     * @return the fit
     * @throws InvalidInputException if there is no observation, the lengths differ, a number is out of its range, or g is
     *     not greater than 0 at an x
     */
    public static CurveFit proportional(Shape shape, double[] x, double[] y, double[] weights) {
        Objects.requireNonNull(shape, "shape");
        Observations data = new Observations(Scatter.RELATIVE, x, y, weights);
        for (double at : x) {
            Require.positive("shape at " + at, shape.applyAsDouble(at));
        }
        return new CurveFit(shape, Double.NEGATIVE_INFINITY, Double.POSITIVE_INFINITY, 1, 0, data);
    }

    /**
     * Fits y = k · g(x − x₀), with x₀ of either sign.
     *
     * @param shape g, rising, defined from the lowest to the highest argument
     * @param lowest the lowest argument of g, finite
     * @param highest the highest argument of g, finite
     * @param x finite numbers, two or more different ones
     * @param y as many numbers greater than 0
     * @param weights as many numbers greater than 0
     * @return the fit
     * @throws InvalidInputException if there are fewer than two different x, the lengths differ, a number is out of its
     *     range, or the best fit is not inside the range that g's limits allow for x₀, as for a y that doesn't rise with x
     */
    public static CurveFit shifted(
            Shape shape, double lowest, double highest, double[] x, double[] y, double[] weights) {
        Objects.requireNonNull(shape, "shape");
        Require.finite("lowest argument of the shape", lowest);
        Require.finite("highest argument of the shape", highest);
        Observations data = new Observations(Scatter.RELATIVE, x, y, weights);
        Observations.Group[] groups = data.groups();
        Require.that(groups.length >= 2, "observations", "at two different x or more", () -> "all at " + x[0]);
        double leastShift = groups[groups.length - 1].x() - highest;
        double greatestShift = groups[0].x() - lowest;
        double shift = new ShiftSearch(shape, lowest, highest, List.of(groups)).find(leastShift, greatestShift);
        return new CurveFit(shape, lowest, highest, 2, shift, data);
    }

    private double scaleAt(double atShift, Observations data) {
        double sum = 0;
        double weights = 0;
        for (int i = 0; i < data.n; i++) {
            sum += data.weights[i] * data.y[i] / shape.applyAsDouble(data.x[i] - atShift);
            weights += data.weights[i];
        }
        return sum / weights;
    }

    /** The search for the shift, by the sign of the quasi-likelihood equation. Observations at one x go in as one. */
    private record ShiftSearch(Shape shape, double lowest, double highest, List<Observations.Group> groups) {

        /** A grid finds the region of least deviance, bisection the root of its derivative there. */
        double find(double least, double greatest) {
            int best = -1;
            double lowestDeviance = Double.POSITIVE_INFINITY;
            for (int i = 0; i < GRID; i++) {
                double deviance = deviance(gridPoint(i, least, greatest));
                if (deviance < lowestDeviance) {
                    lowestDeviance = deviance;
                    best = i;
                }
            }
            double low = gridPoint(Math.max(best - 1, 0), least, greatest);
            double high = gridPoint(Math.min(best + 1, GRID - 1), least, greatest);
            // Beyond the shape's zero the score is not a number: that is too far, like a score below 0.
            if (best < 0 || !(low < high) || !(score(low) > 0) || score(high) > 0) {
                throw new InvalidInputException(
                        "observations",
                        "rising like the shape shifted by between " + least + " and " + greatest,
                        "no such shift fits best");
            }
            double middle = low + (high - low) / 2;
            // Until the interval holds no other double.
            while (low < middle && middle < high) {
                if (score(middle) > 0) {
                    low = middle;
                } else {
                    high = middle;
                }
                middle = low + (high - low) / 2;
            }
            return middle;
        }

        private static double gridPoint(int i, double least, double greatest) {
            double distance = Math.pow(NEAREST, i / (GRID - 1.0));
            return greatest - (greatest - least) * distance;
        }

        /**
         * Half the gamma deviance up to a constant, at the best scale: W·ln k + Σ w·ln g. Where the shape is not finite and
         * above 0 it is infinite or no number, and never the least.
         */
        private double deviance(double shift) {
            double ratios = 0;
            double weights = 0;
            double logarithms = 0;
            for (Observations.Group group : groups) {
                double value = shape.applyAsDouble(group.x() - shift);
                ratios += group.weight() * group.mean() / value;
                weights += group.weight();
                logarithms += group.weight() * Math.log(value);
            }
            return weights * Math.log(ratios) + logarithms;
        }

        /** The negative derivative of the deviance: above 0 below the best shift, NaN where the shape is not above 0. */
        private double score(double shift) {
            double[] values = new double[groups.size()];
            double ratios = 0;
            double weights = 0;
            for (int i = 0; i < groups.size(); i++) {
                values[i] = shape.applyAsDouble(groups.get(i).x() - shift);
                ratios += groups.get(i).weight() * groups.get(i).mean() / values[i];
                weights += groups.get(i).weight();
            }
            double scale = ratios / weights;
            double sum = 0;
            for (int i = 0; i < groups.size(); i++) {
                double residual = groups.get(i).mean() / (scale * values[i]) - 1;
                sum += groups.get(i).weight()
                        * residual
                        * slope(shape, lowest, highest, groups.get(i).x() - shift, values[i]);
            }
            return sum;
        }
    }

    /** ∂ ln g(x − x₀) / ∂x₀ = −g′ / g, by a difference that stays within the shape's limits. */
    private static double slope(Shape shape, double lowest, double highest, double argument, double value) {
        double step = STEP * (highest - lowest);
        double low = Math.max(lowest, argument - step);
        double high = Math.min(highest, argument + step);
        double rise = (shape.applyAsDouble(high) - shape.applyAsDouble(low)) / (high - low);
        return -rise / value;
    }

    private double relativeSlope(double x) {
        double argument = x - shift;
        return parameters == 1 ? 0 : slope(shape, lowest, highest, argument, shape.applyAsDouble(argument));
    }

    /**
     * The fitted factor.
     *
     * @return k
     */
    public double scale() {
        return scale;
    }

    /**
     * The fitted shift.
     *
     * @return x₀; 0 where none was fitted
     */
    public double shift() {
        return shift;
    }

    /**
     * The number of fitted parameters.
     *
     * @return 1 without a shift, 2 with
     */
    public int parameters() {
        return parameters;
    }

    /**
     * The degrees of freedom of the uncertainties.
     *
     * @return the number of observations less that of parameters, 0 or more
     */
    public int degreesOfFreedom() {
        return degreesOfFreedom;
    }

    /**
     * The relative standard deviation of one observation of average weight.
     *
     * @return s; absent without a degree of freedom
     */
    public OptionalDouble relativeDeviation() {
        return degreesOfFreedom > 0 ? OptionalDouble.of(Math.sqrt(variance)) : OptionalDouble.empty();
    }

    /**
     * The standard uncertainty of the factor.
     *
     * @return the uncertainty of k; absent without a degree of freedom
     */
    public OptionalDouble scaleUncertainty() {
        return known(scale * Math.sqrt(variance * leverage(0)));
    }

    /**
     * The standard uncertainty of the shift.
     *
     * @return the uncertainty of x₀; absent without a degree of freedom or without a shift
     */
    public OptionalDouble shiftUncertainty() {
        return parameters == 1 ? OptionalDouble.empty() : known(Math.sqrt(variance / squaresOfSlope));
    }

    private OptionalDouble known(double uncertainty) {
        return degreesOfFreedom > 0 ? OptionalDouble.of(uncertainty) : OptionalDouble.empty();
    }

    /**
     * How much of an observation's variance the curve has.
     *
     * @param x where; x − x₀ within the shape's limits, g greater than 0 there
     * @return the relative variance of {@link #at} ÷ s²
     */
    public double leverageAt(double x) {
        return leverage(relativeSlope(x));
    }

    /** The relative variance of a prediction over s², for the relative slope d at its x. */
    private double leverage(double relativeSlope) {
        double difference = relativeSlope - meanSlope;
        return 1 / sumWeights + (parameters == 1 ? 0 : difference * difference / squaresOfSlope);
    }

    /**
     * The fitted curve.
     *
     * @param x where; x − x₀ within the shape's limits
     * @return k · g(x − x₀)
     */
    public double at(double x) {
        return scale * shape.applyAsDouble(x - shift);
    }

    /**
     * The standard uncertainty of the fitted curve.
     *
     * @param x where; x − x₀ within the shape's limits, g greater than 0 there
     * @return the uncertainty of {@link #at}; absent without a degree of freedom
     */
    public OptionalDouble uncertaintyAt(double x) {
        return known(at(x) * Math.sqrt(variance * leverage(relativeSlope(x))));
    }

    /**
     * What independent relative uncertainties uᵢ of the observations contribute to the curve's: √Σ(sᵢ·uᵢ)², with the
     * sensitivities sᵢ = ∂ ln ŷ / ∂ ln yᵢ = wᵢ·yᵢ/ŷᵢ · (1/Σw + (d − d̄)·(dᵢ − d̄)/Σw(d − d̄)²), whose sum is 1. They
     * come from the same linear design as the covariance: that the curvature of ln g gives a misfit a little more or
     * less weight is left out. What is computed here once doesn't depend on x, so that a value costs the same however
     * many observations there are.
     *
     * @param relative of each observation in the given order
     * @return the relative uncertainty by x, where {@link #uncertaintyAt} has one; serializable with the fit
     * @throws InvalidInputException if there are more numbers or fewer than observations
     */
    public DoubleUnaryOperator relativeUncertainty(double[] relative) {
        requireOnePerObservation(relative, pulls.length);
        double constant = 0;
        double mixed = 0;
        double squared = 0;
        for (int i = 0; i < pulls.length; i++) {
            double part = pulls[i] * relative[i];
            constant += part * part;
            mixed += part * part * slopes[i];
            squared += part * part * slopes[i] * slopes[i];
        }
        return new Propagated(this, constant, mixed, squared);
    }

    static void requireOnePerObservation(double[] relative, int observations) {
        Require.that(
                relative.length == observations,
                "uncertainties of observations",
                "one an observation, " + observations,
                relative.length);
    }

    /** The sums over the observations of (w·y/ŷ·u)², with the distance of the slope from its mean to the power of 0, 1 and 2. */
    private record Propagated(CurveFit fit, double constant, double mixed, double squared)
            implements DoubleUnaryOperator, Serializable {
        @Override
        public double applyAsDouble(double x) {
            double along = fit.parameters == 1 ? 0 : (fit.relativeSlope(x) - fit.meanSlope) / fit.squaresOfSlope;
            double share = 1 / fit.sumWeights;
            return Math.sqrt(Math.max(0, share * share * constant + along * (2 * share * mixed + along * squared)));
        }
    }

    private List<Object> parts() {
        return List.of(shape, lowest, highest, parameters, scale, shift, variance, meanSlope, squaresOfSlope);
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof CurveFit that
                && parts().equals(that.parts())
                && Arrays.equals(pulls, that.pulls)
                && Arrays.equals(slopes, that.slopes);
    }

    @Override
    public int hashCode() {
        return parts().hashCode();
    }

    /**
     * The fit as text.
     *
     * @return for example "y = 16.2 · g(x - 0.375), 4 degrees of freedom"
     */
    @Override
    public String toString() {
        String argument = parameters == 1 ? "x" : "x - " + shift;
        return "y = " + scale + " · g(" + argument + "), " + Optionals.degrees(degreesOfFreedom);
    }
}
