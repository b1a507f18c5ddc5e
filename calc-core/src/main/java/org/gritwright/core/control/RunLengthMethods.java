package org.gritwright.core.control;

import java.util.Arrays;
import org.gritwright.units.check.Require;

/** How a chart's run lengths are computed: by an integral equation or observation by observation. */
final class RunLengthMethods {
    /** Beyond it rounding tells more than the equations. */
    private static final double LONGEST = 1e10;

    private static final long MOST_OBSERVATIONS = 1_000_000;

    /** So many observations in a row must leave the same part. */
    private static final int STEADY_FOR = 5;

    private static final double STEADY = 1e-11;
    private static final double ROUNDING = 4e-16;

    /** What is lost so slowly, for so many observations in a row, is never lost. */
    private static final double NOTHING = 1e-13;

    private static final int NOTHING_FOR = 2000;

    /** What all later observations may add to the average, as a part of it. */
    private static final double NEGLIGIBLE = 1e-13;

    private RunLengthMethods() {}

    static double averageWithin(ControlChart chart, Change change) {
        double average = average(chart, change);
        Require.that(average <= LONGEST, "average run length", "at most " + LONGEST, average);
        return average;
    }

    /** The average run length, infinite beyond the longest that can be computed. */
    static double average(ControlChart chart, Change change) {
        double average = Double.NaN;
        if (change.isSteady()) {
            average = byEquation(chart, change.first());
        }
        if (Double.isNaN(average)) {
            average = byObservation(chart, change, MOST_OBSERVATIONS).average();
        }
        return average <= LONGEST ? average : Double.POSITIVE_INFINITY;
    }

    /** By the integral equation; infinite where its solution has no meaning, not a number where there is none. */
    private static double byEquation(ControlChart chart, double mean) {
        double average = Double.NaN;
        if (chart instanceof EwmaChart ewma && ewma.limits() == EwmaChart.Limits.FIXED) {
            average = meaningful(ewma.chain().average(ewma.sides().seen(mean)));
        } else if (chart instanceof IndividualsChart individuals) {
            average = meaningful(individuals.chain().average(mean));
        } else if (chart instanceof CusumChart cusum) {
            average = cusum.sides() == Sides.BOTH
                    ? bothSides(cusum, mean)
                    : meaningful(
                            cusum.side(cusum.headstart()).average(cusum.sides().seen(mean)));
        }
        return average;
    }

    private static double meaningful(double average) {
        return average >= 1 && average <= LONGEST ? average : Double.POSITIVE_INFINITY;
    }

    /**
     * From the averages of the sides, with the headstart and without (J. M. Lucas and R. B. Crosier, 1982). Where that of a side
     * has no meaning, the observations tell.
     */
    private static double bothSides(CusumChart chart, double mean) {
        chart.requireSidesApart();
        double above = chart.side(0).average(mean);
        double below = chart.side(0).average(-mean);
        if (Double.isInfinite(meaningful(above)) || Double.isInfinite(meaningful(below))) {
            return Double.NaN;
        }
        double fromStartAbove = chart.side(chart.headstart()).average(mean);
        double fromStartBelow = chart.side(chart.headstart()).average(-mean);
        return meaningful((fromStartAbove * below + fromStartBelow * above - above * below) / (above + below));
    }

    static RunLengths distribution(ControlChart chart, Change change) {
        RunLengths all = byObservation(chart, change, MOST_OBSERVATIONS);
        Require.that(all.average() <= LONGEST, "average run length", "at most " + LONGEST, all.average());
        return all;
    }

    private static Stepper stepper(ControlChart chart) {
        if (chart instanceof EwmaChart ewma) {
            return ewma.chain();
        }
        if (chart instanceof CusumChart cusum) {
            FilterChain side = cusum.side(cusum.headstart());
            if (cusum.sides() == Sides.BOTH) {
                cusum.requireSidesApart();
                return new TwoSidedCusumChain(side, cusum.side(cusum.headstart()));
            }
            return side;
        }
        if (chart instanceof IndividualsChart individuals) {
            return individuals.chain();
        }
        return new RuleChain(((RunRulesChart) chart).rules());
    }

    private static Sides sides(ControlChart chart) {
        if (chart instanceof EwmaChart ewma) {
            return ewma.sides();
        }
        return chart instanceof CusumChart cusum ? cusum.sides() : Sides.BOTH;
    }

    /**
     * Observation by observation, until what each one leaves is steady, or what is left adds nothing; at most so many as are asked for.
     */
    static RunLengths byObservation(ControlChart chart, Change change, long most) {
        Sides sides = sides(chart);
        Require.that(
                sides.see(change.step()),
                "drift per observation",
                "toward a side that the chart looks at",
                change.step());
        Stepper stepper = stepper(chart);
        double[] survivals = new double[256];
        survivals[0] = 1;
        double sum = 1;
        double loss = 0;
        int steady = 0;
        int nothing = 0;
        int n = 0;
        while (n < most) {
            n++;
            if (n == survivals.length) {
                survivals = Arrays.copyOf(survivals, 2 * n);
            }
            double before = survivals[n - 1];
            // Rounding may leave a little less than nothing.
            double now = Math.max(0, Math.min(stepper.advance(sides.seen(change.mean(n))), before));
            survivals[n] = now;
            sum += now;
            double newLoss = 1 - now / before;
            boolean isSettled = change.isSteady() && stepper.isSettled();
            boolean isSteady =
                    isSettled && newLoss > NOTHING && Math.abs(newLoss - loss) <= STEADY * newLoss + ROUNDING;
            steady = isSteady ? steady + 1 : 0;
            nothing = isSettled && newLoss <= NOTHING ? nothing + 1 : 0;
            loss = newLoss;
            if (steady >= STEADY_FOR || nothing >= NOTHING_FOR || now <= NEGLIGIBLE * sum * loss) {
                break;
            }
        }
        Require.that(
                n < MOST_OBSERVATIONS,
                "run lengths",
                "such that hardly any is beyond " + MOST_OBSERVATIONS
                        + " observations, or all observations alike in the end",
                chart + ", " + change);
        return new RunLengths(Arrays.copyOf(survivals, n + 1), 1 - loss);
    }
}
