package org.gritwright.core.control;

import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.function.DoubleFunction;
import org.gritwright.units.check.Require;

/**
 * The tabular CUSUM of standardized observations: C⁺ᵢ = max(0, xᵢ − k + C⁺ᵢ₋₁), C⁻ᵢ = max(0, −xᵢ − k + C⁻ᵢ₋₁), and a
 * signal where one of them is greater than h (D. C. Montgomery, Introduction to Statistical Quality Control, chapter 9). With
 * a headstart both begin there instead of at 0, so that a chart that starts off target signals sooner (J. M. Lucas and R. B. Crosier,
 * Technometrics 24, 1982, with h/2). Immutable, thread-safe, a value.
 *
 * @param allowance k, 0 or more: half the shift, in standard deviations, that the chart is to notice soonest
 * @param limit h, greater than 0
 * @param headstart where it begins, 0 to h
 * @param sides on which side it looks
 */
public record CusumChart(double allowance, double limit, double headstart, Sides sides) implements ControlChart {
    private static final double MOST_LIMIT = 10_000;
    private static final double FIRST_STEP = 1.25;
    private static final double USUAL = 4;

    /**
     * A point of the chart. The sum of a side that isn't looked at is 0.
     *
     * @param number the observation's number, 0 for the start
     * @param above C⁺
     * @param below C⁻
     * @param sinceAbove N⁺, for how many observations C⁺ has been greater than 0
     * @param sinceBelow N⁻, for how many observations C⁻ has been greater than 0
     * @param limit h
     */
    public record Point(long number, double above, double below, long sinceAbove, long sinceBelow, double limit)
            implements Serializable {
        /**
         * Checks the values.
         *
         * @throws org.gritwright.units.InvalidInputException if one is not finite or negative, or a sum has been greater than 0 for
         *     longer than there are observations
         */
        public Point {
            Require.that(number >= 0, "number of the observation", "0 or more", number);
            Require.notNegative("CUSUM above", above);
            Require.notNegative("CUSUM below", below);
            Require.that(sinceAbove >= 0 && sinceAbove <= number, "N above", "0 to " + number, sinceAbove);
            Require.that(sinceBelow >= 0 && sinceBelow <= number, "N below", "0 to " + number, sinceBelow);
            Require.positive("limit", limit);
        }

        /**
         * Whether and where it is beyond the limit.
         *
         * @return the side, both if both sums are, or empty if none is
         */
        public Optional<Sides> signal() {
            boolean isAbove = above > limit;
            boolean isBelow = below > limit;
            return isAbove && isBelow
                    ? Optional.of(Sides.BOTH)
                    : isAbove ? Optional.of(Sides.UPPER) : isBelow ? Optional.of(Sides.LOWER) : Optional.empty();
        }
    }

    /**
     * What a signal says of the change behind it.
     *
     * @param firstChanged number of the first observation after the change
     * @param mean the mean since, in standard deviations
     */
    public record EstimatedChange(long firstChanged, double mean) implements Serializable {}

    /**
     * Checks the values.
     *
     * @throws org.gritwright.units.InvalidInputException if one is out of its range
     */
    public CusumChart {
        Require.given(CusumChart.class, sides);
        Require.notNegative("allowance", allowance);
        Require.that(limit > 0 && limit <= MOST_LIMIT, "limit", "greater than 0, at most " + MOST_LIMIT, limit);
        Require.that(headstart >= 0 && headstart <= limit, "headstart", "0 to " + limit, headstart);
    }

    /**
     * A two-sided chart without a headstart.
     *
     * @param allowance k
     * @param limit h
     * @return the chart
     * @throws org.gritwright.units.InvalidInputException if a value is out of its range
     */
    public static CusumChart twoSided(double allowance, double limit) {
        return new CusumChart(allowance, limit, 0, Sides.BOTH);
    }

    /**
     * The chart that keeps a promise on false alarms.
     *
     * @param allowance k
     * @param headstartPart the headstart as a part of h, 0 to 1
     * @param sides on which side it looks
     * @param goal what is wanted in control
     * @return the chart with the limit that meets it
     * @throws org.gritwright.units.InvalidInputException if a value is out of its range, or no limit meets the goal
     */
    public static CusumChart designed(double allowance, double headstartPart, Sides sides, Goal goal) {
        Require.that(
                headstartPart >= 0 && headstartPart <= 1, "headstart as a part of the limit", "0 to 1", headstartPart);
        DoubleFunction<CusumChart> charts = h -> new CusumChart(allowance, h, headstartPart * h, sides);
        return charts.apply(Design.find(charts, Objects.requireNonNull(goal, "goal"), USUAL, FIRST_STEP));
    }

    /**
     * Where the chart begins.
     *
     * @return a point of no observation, with the headstart
     */
    public Point start() {
        return new Point(0, sides == Sides.LOWER ? 0 : headstart, sides == Sides.UPPER ? 0 : headstart, 0, 0, limit);
    }

    /**
     * Runs the chart from its start.
     *
     * @param observations standardized
     * @return a point for each
     * @throws org.gritwright.units.InvalidInputException if one is not finite
     */
    public List<Point> run(double... observations) {
        return runFrom(start(), observations);
    }

    /**
     * Runs the chart on.
     *
     * @param last where it was
     * @param observations standardized, those that follow
     * @return a point for each
     * @throws org.gritwright.units.InvalidInputException if one is not finite
     */
    public List<Point> runFrom(Point last, double... observations) {
        Point point = Objects.requireNonNull(last, "last");
        List<Point> points = new ArrayList<>();
        for (double x : Objects.requireNonNull(observations, "observations")) {
            Require.finite("observation", x);
            double above = sides == Sides.LOWER ? 0 : Math.max(0, x - allowance + point.above());
            double below = sides == Sides.UPPER ? 0 : Math.max(0, -x - allowance + point.below());
            point = new Point(
                    point.number() + 1,
                    above,
                    below,
                    above > 0 ? point.sinceAbove() + 1 : 0,
                    below > 0 ? point.sinceBelow() + 1 : 0,
                    limit);
            points.add(point);
        }
        return List.copyOf(points);
    }

    /**
     * What a signal says of the change: it began after the last observation at which the sum was 0, and the mean since is
     * k + C⁺/N⁺, or −k − C⁻/N⁻ (Montgomery, chapter 9). A headstart that is still in the sum is taken off it, so that this is the average
     * of the observations since (derived, no source).
     *
     * @param signal a point of this chart
     * @return the estimate, of the upper side if both signal; empty if the point is within the limit
     */
    public Optional<EstimatedChange> changeAt(Point signal) {
        return signal.signal()
                .map(side -> side == Sides.LOWER
                        ? estimate(-1, signal.number(), signal.below(), signal.sinceBelow())
                        : estimate(1, signal.number(), signal.above(), signal.sinceAbove()));
    }

    private EstimatedChange estimate(int sign, long number, double sum, long since) {
        double grown = since == number ? sum - headstart : sum;
        return new EstimatedChange(number - since + 1, sign * (allowance + grown / since));
    }

    @Override
    public CusumChart scaled(double factor) {
        Require.positive("factor", factor);
        double newLimit = limit * factor;
        // Rounding must not put a headstart of h beyond h.
        return new CusumChart(allowance * factor, newLimit, Math.min(headstart * factor, newLimit), sides);
    }

    FilterChain side(double from) {
        return new FilterChain(1, 1, allowance, true, from, number -> limit, limit);
    }

    /** What computes run lengths of two sides needs one of them at 0 whenever the other signals. */
    void requireSidesApart() {
        Require.that(
                headstart <= limit / 2 + allowance,
                "headstart of a two-sided chart whose run lengths are asked for",
                "at most h/2 + k = " + (limit / 2 + allowance),
                headstart);
    }
}
