package org.gritwright.core.control;

import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.gritwright.units.check.Require;

/**
 * Individual observations with their moving range: a signal where an observation is farther from the center than its limit, or from the
 * observation before than the limit of the range. Both limits are multiples of the standard deviation. Immutable, thread-safe, a
 * value.
 *
 * <p>Unlike the other charts it takes observations as they are; center and deviation standardize them. A change, and what
 * {@link #scaled} makes larger, is counted in deviations from the center here too. Looking at the range
 * makes false alarms more frequent and finds little that the observations themselves don't (S. V. Crowder, 1987; S. E. Rigdon
 * and others, 1994; from memory).
 *
 * @param center the target
 * @param deviation the standard deviation, greater than 0
 * @param limit how many of them an observation may be from the center, greater than 0
 * @param rangeLimit how many of them two observations may be apart, a tenth of the limit or more
 */
public record IndividualsChart(double center, double deviation, double limit, double rangeLimit)
        implements ControlChart {
    private static final double MOST_LIMIT = 20;
    private static final double COMMON = 3;

    /**
     * A point of the chart.
     *
     * @param number the observation's number, from 1
     * @param value the observation
     * @param range how far it is from the one before, 0 for the first
     * @param isOutside whether the observation is beyond its limits
     * @param isRangeOutside whether the range is beyond its limit
     */
    public record Point(long number, double value, double range, boolean isOutside, boolean isRangeOutside)
            implements Serializable {
        /**
         * Checks the values.
         *
         * @throws org.gritwright.units.InvalidInputException if one is not finite or out of its range
         */
        public Point {
            Require.that(number >= 1, "number of the observation", "1 or more", number);
            Require.finite("observation", value);
            Require.notNegative("moving range", range);
        }

        /**
         * Whether it is a signal.
         *
         * @return true if the observation or its range is beyond its limits
         */
        public boolean isSignal() {
            return isOutside || isRangeOutside;
        }
    }

    /**
     * Checks the values.
     *
     * @throws org.gritwright.units.InvalidInputException if one is out of its range
     */
    public IndividualsChart {
        Require.finite("center", center);
        Require.positive("standard deviation", deviation);
        Require.that(limit > 0 && limit <= MOST_LIMIT, "limit", "greater than 0, at most " + MOST_LIMIT, limit);
        Require.that(
                rangeLimit >= limit / 10 && Double.isFinite(rangeLimit),
                "limit of the moving range",
                "a tenth of the other limit or more, " + limit / 10,
                rangeLimit);
    }

    /**
     * For standardized observations.
     *
     * @param limit how far an observation may be from 0
     * @param rangeLimit how far two observations may be apart
     * @return the chart
     * @throws org.gritwright.units.InvalidInputException if a value is out of its range
     */
    public static IndividualsChart standardized(double limit, double rangeLimit) {
        return new IndividualsChart(0, 1, limit, rangeLimit);
    }

    /**
     * Three-sigma limits from the observations themselves: the center is their mean, the deviation their mean moving range ÷ d₂, and
     * the range's limit D₄ mean ranges (Montgomery, chapter 6).
     *
     * @param observations two or more that aren't all equal
     * @return the chart
     * @throws org.gritwright.units.InvalidInputException if there are fewer, or one is not finite, or they are all equal
     */
    public static IndividualsChart of(double... observations) {
        int n = Objects.requireNonNull(observations, "observations").length;
        Require.that(n >= 2, "observations", "two or more", n);
        double sum = Require.finite("observation", observations[0]);
        double ranges = 0;
        for (int i = 1; i < n; i++) {
            sum += Require.finite("observation", observations[i]);
            ranges += Math.abs(observations[i] - observations[i - 1]);
        }
        return new IndividualsChart(sum / n, ranges / (n - 1) / d2(), COMMON, d4() * d2());
    }

    /**
     * The mean range of two standardized observations: their difference is normal with the variance 2, and its size has the mean
     * 2/√π.
     *
     * @return d₂ = 1.128…
     */
    public static double d2() {
        return 2 / Math.sqrt(Math.PI);
    }

    /**
     * The upper three-sigma limit of the range of two observations as a multiple of its mean, 1 + 3·d₃/d₂, where d₃ = √(2 − d₂²)
     * is the range's own standard deviation.
     *
     * @return D₄ = 3.266…
     */
    public static double d4() {
        return 1 + COMMON * Math.sqrt(2 - d2() * d2()) / d2();
    }

    /**
     * The lower limit.
     *
     * @return center − limit·deviation
     */
    public double lower() {
        return center - limit * deviation;
    }

    /**
     * The upper limit.
     *
     * @return center + limit·deviation
     */
    public double upper() {
        return center + limit * deviation;
    }

    /**
     * The highest range.
     *
     * @return rangeLimit·deviation
     */
    public double highestRange() {
        return rangeLimit * deviation;
    }

    /**
     * Runs the chart.
     *
     * @param observations as they are
     * @return a point for each
     * @throws org.gritwright.units.InvalidInputException if one is not finite
     */
    public List<Point> run(double... observations) {
        List<Point> points = new ArrayList<>();
        for (double x : Objects.requireNonNull(observations, "observations")) {
            points.add(points.isEmpty() ? point(1, x, 0) : after(points.get(points.size() - 1), x));
        }
        return List.copyOf(points);
    }

    /**
     * Runs the chart on.
     *
     * @param last where it was
     * @param observations those that follow, as they are
     * @return a point for each
     * @throws org.gritwright.units.InvalidInputException if one is not finite
     */
    public List<Point> runFrom(Point last, double... observations) {
        Point point = Objects.requireNonNull(last, "last");
        List<Point> points = new ArrayList<>();
        for (double x : Objects.requireNonNull(observations, "observations")) {
            point = after(point, x);
            points.add(point);
        }
        return List.copyOf(points);
    }

    private Point after(Point last, double x) {
        return point(last.number() + 1, x, Math.abs(x - last.value()));
    }

    private Point point(long number, double x, double range) {
        return new Point(number, x, range, x > upper() || x < lower(), range > highestRange());
    }

    @Override
    public IndividualsChart scaled(double factor) {
        Require.positive("factor", factor);
        return new IndividualsChart(center, deviation, limit * factor, rangeLimit * factor);
    }

    MovingRangeChain chain() {
        return new MovingRangeChain(limit, rangeLimit);
    }
}
