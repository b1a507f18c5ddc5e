package org.gritwright.core.statistics;

import java.util.Arrays;
import java.util.Objects;
import java.util.TreeMap;
import org.gritwright.units.check.Require;

/** Pairs of x and y with weights, checked: what curves are fitted to and tested with. */
final class Observations {
    /** The square of the rounding of a few operations on numbers near 1. */
    private static final double ROUNDING = 1e-24;

    private final Scatter scatter;
    final int n;
    final double[] x;
    final double[] y;
    /** Scaled to a mean of 1, so that s is the deviation of an observation of average weight. */
    final double[] weights;

    /** y of any size where the scatter is absolute, greater than 0 where it is relative. */
    Observations(Scatter scatter, double[] x, double[] y, double[] weights) {
        this.scatter = Objects.requireNonNull(scatter, "scatter");
        Objects.requireNonNull(x, "x");
        Objects.requireNonNull(y, "y");
        Objects.requireNonNull(weights, "weights");
        this.n = x.length;
        Require.that(
                n != 0 && y.length == n && weights.length == n,
                "observations",
                "one or more, with an x, a y and a weight each",
                () -> n + " x, " + y.length + " y, " + weights.length + " weights");
        for (int i = 0; i < n; i++) {
            Require.finite("x", x[i]);
            if (scatter == Scatter.RELATIVE) {
                Require.positive("y", y[i]);
            } else {
                Require.finite("y", y[i]);
            }
            Require.positive("weight", weights[i]);
        }
        this.x = x.clone();
        this.y = y.clone();
        double mean = Arrays.stream(weights).sum() / n;
        this.weights = Arrays.stream(weights).map(w -> w / mean).toArray();
    }

    /**
     * All y of one x, as one.
     *
     * @param x the common x
     * @param weight the sum of the weights
     * @param mean the weighted mean of y
     * @param squares the weighted sum of squared deviations from the mean
     */
    record Group(double x, double weight, double mean, double squares) {}

    /** A sum of squares of deviations below this is the rounding of doubles. */
    double rounding() {
        double greatest = scatter == Scatter.RELATIVE
                ? 1
                : Arrays.stream(y).map(Math::abs).max().orElseThrow();
        return ROUNDING * greatest * greatest;
    }

    /** The groups in rising order of x. */
    Group[] groups() {
        TreeMap<Double, Group> sums = new TreeMap<>();
        for (int i = 0; i < n; i++) {
            sums.merge(
                    x[i],
                    new Group(x[i], weights[i], weights[i] * y[i], 0),
                    (a, b) -> new Group(a.x, a.weight + b.weight, a.mean + b.mean, 0));
        }
        sums.replaceAll((at, sum) -> new Group(at, sum.weight, sum.mean / sum.weight, 0));
        for (int i = 0; i < n; i++) {
            Group group = Objects.requireNonNull(sums.get(x[i]), "made above");
            double deviation = scatter.deviation(y[i], group.mean);
            double squares = group.squares + weights[i] * deviation * deviation;
            sums.put(x[i], new Group(group.x, group.weight, group.mean, squares));
        }
        return sums.values().toArray(Group[]::new);
    }
}
