package org.gritwright.core.control;

import java.util.Arrays;

/**
 * The law of individuals with their moving range: an observation is compared with limits, and with the one before. The density of the last
 * observation of charts without a signal is carried along; its sum over all observations solves the integral equation of
 * S. V. Crowder, Computation of ARL for combined individual measurement and moving range charts, Journal of Quality
 * Technology 19, 1987, 98–102 (title and pages from memory).
 *
 * <p>The density has kinks at −limit + m·range and limit − m·range. These places are cut there, so that within each
 * piece everything is smooth, and a piece moved by the range is a piece again.
 */
final class MovingRangeChain implements Stepper {
    private static final int LEAST_NODES = 8;
    private static final double NODES_PER_DEVIATION = 5;
    /** A piece that is moved by the range is so many pieces farther on. */
    private static final int APART = 2;

    private final double[] places;
    private final double[] weights;
    /** Row j: weights of the integral over the last observations that are near enough to place j. */
    private final double[][] near;

    private double[] densities = new double[0];
    private boolean isFirst = true;

    MovingRangeChain(double limit, double range) {
        double[] ends = ends(limit, range);
        int pieces = ends.length - 1;
        double longest = 0;
        for (int p = 0; p < pieces; p++) {
            longest = Math.max(longest, ends[p + 1] - ends[p]);
        }
        GaussLegendre rule = GaussLegendre.of(LEAST_NODES + (int) Math.ceil(NODES_PER_DEVIATION * longest));
        double[][] partial = rule.partialWeights();
        int n = rule.size();
        places = new double[pieces * n];
        weights = new double[pieces * n];
        for (int i = 0; i < places.length; i++) {
            double half = (ends[i / n + 1] - ends[i / n]) / 2;
            places[i] = ends[i / n] + half * (rule.node(i % n) + 1);
            weights[i] = half * rule.weight(i % n);
        }
        near = new double[places.length][places.length];
        for (int j = 0; j < places.length; j++) {
            for (int i = 0; i < places.length; i++) {
                int distance = i / n - j / n;
                double half = (ends[i / n + 1] - ends[i / n]) / 2;
                double first = half * partial[j % n][i % n];
                near[j][i] = Math.abs(distance) < APART
                        ? weights[i]
                        : distance == APART ? first : distance == -APART ? weights[i] - first : 0;
            }
        }
    }

    /** Where the range fits a whole number of times, every other piece has no length. */
    private static double[] ends(double limit, double range) {
        int whole = (int) (2 * limit / range);
        double rest = 2 * limit - whole * range;
        double[] ends = new double[2 * whole + 2];
        for (int m = 0; m <= whole; m++) {
            ends[2 * m] = -limit + m * range;
            ends[2 * m + 1] = ends[2 * m] + rest;
        }
        ends[ends.length - 1] = limit;
        return ends;
    }

    private double[] first(double mean) {
        return Arrays.stream(places).map(x -> Normal.density(x - mean)).toArray();
    }

    @Override
    public double advance(double mean) {
        double[] next = first(mean);
        for (int j = 0; !isFirst && j < next.length; j++) {
            double sum = 0;
            for (int i = 0; i < next.length; i++) {
                sum += near[j][i] * densities[i];
            }
            next[j] *= sum;
        }
        isFirst = false;
        densities = next;
        return integral(next);
    }

    private double integral(double[] at) {
        double sum = 0;
        for (int i = 0; i < at.length; i++) {
            sum += weights[i] * at[i];
        }
        return sum;
    }

    /** The average run length where the mean is constant; without a meaning if it is beyond 10¹² or so. */
    double average(double mean) {
        double[] first = first(mean);
        int n = first.length;
        double[][] equations = new double[n][n];
        for (int j = 0; j < n; j++) {
            for (int i = 0; i < n; i++) {
                equations[j][i] = (i == j ? 1 : 0) - first[j] * near[j][i];
            }
        }
        return 1 + integral(LinearEquations.solve(equations, first));
    }
}
