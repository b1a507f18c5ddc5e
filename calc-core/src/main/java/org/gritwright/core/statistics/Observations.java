package org.gritwright.core.statistics;

import java.util.Arrays;
import java.util.TreeMap;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.check.Require;

/**
 * Pairs of x and y with weights, checked: what curves are fitted to. The scatter of y is taken to be relative, its
 * variance y²·s²/w: a catch of twice the mass scatters by twice as much.
 */
final class Observations {
    final int n;
    final double[] x;
    final double[] y;
    /** Scaled to a mean of 1, so that s is the relative deviation of an observation of average weight. */
    final double[] weights;

    Observations(double[] x, double[] y, double[] weights) {
        this.n = x.length;
        if (n == 0 || y.length != n || weights.length != n) {
            throw new InvalidInputException(
                    "observations", "one or more, whole", n + " x, " + y.length + " y, " + weights.length + " weights");
        }
        for (int i = 0; i < n; i++) {
            Require.finite("x", x[i]);
            requirePositive("y", y[i]);
            requirePositive("weight", weights[i]);
        }
        this.x = x.clone();
        this.y = y.clone();
        double mean = Arrays.stream(weights).sum() / n;
        this.weights = Arrays.stream(weights).map(w -> w / mean).toArray();
    }

    private static void requirePositive(String field, double value) {
        if (!(Require.finite(field, value) > 0)) {
            throw new InvalidInputException(field, "greater than 0", String.valueOf(value));
        }
    }

    /**
     * All y of one x, as one.
     *
     * @param x the common x
     * @param weight the sum of the weights
     * @param mean the weighted mean of y
     * @param squares the weighted sum of squared relative deviations from the mean
     */
    record Group(double x, double weight, double mean, double squares) {}

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
            Group group = sums.get(x[i]);
            double deviation = y[i] / group.mean - 1;
            double squares = group.squares + weights[i] * deviation * deviation;
            sums.put(x[i], new Group(group.x, group.weight, group.mean, squares));
        }
        return sums.values().toArray(Group[]::new);
    }
}
