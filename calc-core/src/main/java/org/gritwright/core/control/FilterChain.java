package org.gritwright.core.control;

import java.util.Arrays;
import java.util.function.LongToDoubleFunction;
import org.gritwright.units.check.Require;

/**
 * The law of a value that each observation x moves by y ← memory·y + gain·(x − allowance), until it is beyond a limit: of an EWMA, and of
 * one side of a CUSUM. A value that would fall below 0 stays at 0 if it is reflected there.
 *
 * <p>The density of the value of charts that haven't signaled is carried along at Gauss–Legendre nodes; at 0, a reflected
 * value also has a mass. With a constant mean the sum of all such densities solves the integral equation of the
 * average run length (E. S. Page, Biometrika 41, 1954, for CUSUM; S. V. Crowder, Technometrics 29, 1987, for EWMA).
 */
final class FilterChain implements Stepper {
    /** Nodes for each standard deviation of one step, and some more: run lengths then have ten digits (tried). */
    private static final double NODES_PER_DEVIATION = 1.6;

    private static final int LEAST_NODES = 12;
    /** In standard deviations of one step; 1500 nodes. */
    private static final double MOST_WIDTH = 930;

    /** A limit that is so near the one it approaches is taken for that. */
    private static final double SETTLED = 1e-8;

    private final double memory;
    private final double gain;
    private final double allowance;
    private final boolean isReflected;
    private final double start;
    private final LongToDoubleFunction limits;
    private final double settled;
    private final GaussLegendre rule;

    /** Where values may be, with the 0 of a reflected value at the end; of the last observation. */
    private final double[] places;
    /** How much of all charts is there. */
    private final double[] masses;

    private final double[] before;
    private final double[] kernel;
    private long number;
    private double limit = Double.NaN;
    /** From which limit to which, at which mean. */
    private double[] kernelOf = {};

    private boolean isSymmetric;

    /**
     * The law before the first observation. What isn't reflected starts at 0 and has no allowance.
     *
     * @param limits the limit by the number of the observation
     * @param settled the limit that they approach
     */
    FilterChain(
            double memory,
            double gain,
            double allowance,
            boolean isReflected,
            double start,
            LongToDoubleFunction limits,
            double settled) {
        this.memory = memory;
        this.gain = gain;
        this.allowance = allowance;
        this.isReflected = isReflected;
        this.start = start;
        this.limits = limits;
        this.settled = settled;
        double width = (isReflected ? settled : 2 * settled) / gain;
        Require.that(
                width <= MOST_WIDTH,
                "distance of the limits",
                "at most " + MOST_WIDTH + " standard deviations of what one observation moves",
                width);
        this.isSymmetric = !isReflected;
        this.rule = GaussLegendre.of(LEAST_NODES + (int) Math.ceil(NODES_PER_DEVIATION * width));
        int places = rule.size() + (isReflected ? 1 : 0);
        this.places = new double[places];
        this.masses = new double[places];
        this.before = new double[places];
        this.kernel = new double[rule.size() * places];
    }

    @Override
    public boolean isSettled() {
        return limit == settled;
    }

    @Override
    public double advance(double mean) {
        number++;
        isSymmetric &= mean == 0;
        double last = limit;
        System.arraycopy(masses, 0, before, 0, masses.length);
        double exact = limits.applyAsDouble(number);
        moveTo(settled - exact <= SETTLED * settled ? settled : exact);
        if (number == 1) {
            fromStart(mean);
        } else {
            prepare(last, mean);
            fromLast(last, mean);
        }
        return mass();
    }

    double mass() {
        return Arrays.stream(masses).sum();
    }

    /** Takes away charts that are at 0. */
    void removeAtZero(double mass) {
        masses[rule.size()] -= mass;
    }

    private double lowest(double highest) {
        return isReflected ? 0 : -highest;
    }

    /** Of how many places the masses are computed; those of the others are the same, mirrored. */
    private int rows() {
        return isSymmetric ? (rule.size() + 1) / 2 : rule.size();
    }

    private void moveTo(double newLimit) {
        limit = newLimit;
        for (int i = 0; i < rule.size(); i++) {
            places[i] = place(i, newLimit);
        }
    }

    private double place(int i, double highest) {
        double lowest = lowest(highest);
        return i == rule.size() ? 0 : lowest + (highest - lowest) * (rule.node(i) + 1) / 2;
    }

    private double weight(int i) {
        return (limit - lowest(limit)) / 2 * rule.weight(i) / gain;
    }

    /** From a place to a place, in standard deviations of an observation whose mean is 0. */
    private double observation(double from, double to) {
        return (to - memory * from) / gain + allowance;
    }

    private void fromStart(double mean) {
        for (int i = 0; i < rule.size(); i++) {
            masses[i] = weight(i) * Normal.density(observation(start, places[i]) - mean);
        }
        if (isReflected) {
            masses[rule.size()] = Normal.below(observation(start, 0) - mean);
        }
    }

    private void fromLast(double last, double mean) {
        int at = 0;
        for (int j = 0; j < rows(); j++) {
            double sum = 0;
            for (double mass : before) {
                sum += kernel[at++] * mass;
            }
            masses[j] = weight(j) * sum;
        }
        for (int j = rows(); j < rule.size(); j++) {
            masses[j] = masses[rule.size() - 1 - j];
        }
        if (isReflected) {
            double sum = 0;
            for (int i = 0; i < before.length; i++) {
                sum += before[i] * Normal.below(observation(place(i, last), 0) - mean);
            }
            masses[rule.size()] = sum;
        }
    }

    private void prepare(double from, double mean) {
        double[] now = {from, limit, mean};
        if (Arrays.equals(kernelOf, now)) {
            return;
        }
        kernelOf = now;
        int at = 0;
        for (int j = 0; j < rows(); j++) {
            for (int i = 0; i < before.length; i++) {
                kernel[at++] = Normal.density(observation(place(i, from), places[j]) - mean);
            }
        }
    }

    /**
     * The average run length where mean and limit are constant.
     *
     * @return the average; without a meaning if it is beyond 10¹² or so
     */
    double average(double mean) {
        moveTo(settled);
        fromStart(mean);
        int n = masses.length;
        double[][] equations = new double[n][n];
        for (int j = 0; j < rule.size(); j++) {
            for (int i = 0; i < n; i++) {
                equations[j][i] = -weight(j) * Normal.density(observation(places[i], places[j]) - mean);
            }
        }
        for (int i = 0; isReflected && i < n; i++) {
            equations[rule.size()][i] = -Normal.below(observation(places[i], 0) - mean);
        }
        for (int i = 0; i < n; i++) {
            equations[i][i] += 1;
        }
        return 1
                + Arrays.stream(LinearEquations.solve(equations, masses.clone()))
                        .sum();
    }
}
