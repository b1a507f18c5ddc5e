package org.gritwright.core.control;

import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.gritwright.units.check.Require;

/**
 * The exponentially weighted moving average of standardized observations: z₀ = 0, zᵢ = λ·xᵢ + (1 − λ)·zᵢ₋₁, and a signal where |zᵢ| is
 * greater than the limit (S. W. Roberts, 1959; D. C. Montgomery, Introduction to Statistical Quality Control, chapter 9). The
 * fixed limit is L·√(λ/(2 − λ)); the exact one, which is nearer at first, L·√(λ/(2 − λ)·(1 − (1 − λ)²ⁱ)). A one-sided
 * chart keeps z at 0 where it would fall on the other side, with the same limits (as S. V. Crowder and M. D. Hamilton, 1992, do for a
 * deviation; from memory). Immutable, thread-safe, a value.
 *
 * @param lambda λ, how much of the newest observation is taken, greater than 0, at most 1
 * @param limit L, the limit in standard deviations of z, greater than 0
 * @param limits whether the limits are fixed or exact
 * @param sides on which side it looks
 */
public record EwmaChart(double lambda, double limit, Limits limits, Sides sides) implements ControlChart {
    private static final double MOST_LIMIT = 1000;
    private static final double USUAL = 2.5;
    private static final double FIRST_STEP = 1.25;
    private static final double SMALL_STEP = 1.02;

    /** How far out the limits are at first. */
    public enum Limits {
        /** As far as in the end. */
        FIXED,
        /** L standard deviations that z has after so many observations. */
        EXACT
    }

    /**
     * A point of the chart.
     *
     * @param number the observation's number, 0 for the start
     * @param value z
     * @param limit how far from 0 it may be
     */
    public record Point(long number, double value, double limit) implements Serializable {
        /**
         * Checks the values.
         *
         * @throws org.gritwright.units.InvalidInputException if one is not finite or negative where it can't be
         */
        public Point {
            Require.that(number >= 0, "number of the observation", "0 or more", number);
            Require.finite("EWMA", value);
            Require.notNegative("limit", limit);
        }

        /**
         * Whether and where it is beyond its limit.
         *
         * @return the side, or empty if it is within
         */
        public Optional<Sides> signal() {
            return value > limit
                    ? Optional.of(Sides.UPPER)
                    : value < -limit ? Optional.of(Sides.LOWER) : Optional.empty();
        }
    }

    /**
     * Checks the values.
     *
     * @throws org.gritwright.units.InvalidInputException if one is out of its range
     */
    public EwmaChart {
        Require.given(EwmaChart.class, limits, sides);
        Require.that(lambda > 0 && lambda <= 1, "lambda", "greater than 0, at most 1", lambda);
        Require.that(limit > 0 && limit <= MOST_LIMIT, "limit", "greater than 0, at most " + MOST_LIMIT, limit);
    }

    /**
     * A two-sided chart with fixed limits.
     *
     * @param lambda λ
     * @param limit L
     * @return the chart
     * @throws org.gritwright.units.InvalidInputException if a value is out of its range
     */
    public static EwmaChart fixed(double lambda, double limit) {
        return new EwmaChart(lambda, limit, Limits.FIXED, Sides.BOTH);
    }

    /**
     * The chart that keeps a promise on false alarms.
     *
     * @param lambda λ
     * @param limits whether the limits are fixed or exact
     * @param sides on which side it looks
     * @param goal what is wanted in control
     * @return the chart with the limit that meets it
     * @throws org.gritwright.units.InvalidInputException if a value is out of its range, or no limit meets the goal
     */
    public static EwmaChart designed(double lambda, Limits limits, Sides sides, Goal goal) {
        Objects.requireNonNull(goal, "goal");
        EwmaChart one = new EwmaChart(lambda, 1, limits, sides);
        if (limits == Limits.FIXED) {
            return one.withLimit(Design.find(one::withLimit, goal, USUAL, FIRST_STEP));
        }
        // Fixed limits are computed much faster, and nearly as far out.
        double near = designed(lambda, Limits.FIXED, sides, goal).limit();
        return one.withLimit(Design.find(one::withLimit, goal, near, SMALL_STEP));
    }

    private EwmaChart withLimit(double newLimit) {
        return new EwmaChart(lambda, newLimit, limits, sides);
    }

    /**
     * The limit of an observation's z.
     *
     * @param number the observation's number, from 1
     * @return how far from 0 it may be
     * @throws org.gritwright.units.InvalidInputException if the number is less than 1
     */
    public double limitAt(long number) {
        Require.that(number >= 1, "number of the observation", "1 or more", number);
        if (limits == Limits.FIXED) {
            return settledLimit();
        }
        // 1 − (1 − λ)²ⁱ without a difference of nearly equal numbers; λ = 1 gives 1.
        double grown = -Math.expm1(2 * number * Math.log1p(-lambda));
        return settledLimit() * Math.sqrt(grown);
    }

    private double settledLimit() {
        return limit * Math.sqrt(lambda / (2 - lambda));
    }

    /**
     * Where the chart begins.
     *
     * @return a point of no observation, at 0
     */
    public Point start() {
        return new Point(0, 0, limitAt(1));
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
            double next = lambda * Require.finite("observation", x) + (1 - lambda) * point.value();
            double kept = sides == Sides.BOTH ? next : sides == Sides.UPPER ? Math.max(0, next) : Math.min(0, next);
            point = new Point(point.number() + 1, kept, limitAt(point.number() + 1));
            points.add(point);
        }
        return List.copyOf(points);
    }

    @Override
    public EwmaChart scaled(double factor) {
        return withLimit(limit * Require.positive("factor", factor));
    }

    FilterChain chain() {
        return new FilterChain(1 - lambda, lambda, 0, sides != Sides.BOTH, 0, this::limitAt, settledLimit());
    }
}
