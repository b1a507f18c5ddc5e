package org.gritwright.core.lateral;

import java.util.List;

/**
 * The rate across the road as a line from pan to pan, and level from the middle of an outermost pan to its outer edge; nothing
 * beyond. So every integral is a sum of the pans' rates times weights that depend on where the pans lie only, which is what
 * carries the uncertainties.
 */
final class Profile {
    private final double[] x;
    private final double[] rates;
    private final double left;
    private final double right;

    private Profile(double[] x, double[] rates, double left, double right) {
        this.x = x;
        this.rates = rates;
        this.left = left;
        this.right = right;
    }

    /** Of three pans or more, from the left to the right; meters and kilograms per square meter and pass. */
    static Profile of(List<Pan> pans, int passes) {
        Pan last = pans.get(pans.size() - 1);
        return new Profile(
                pans.stream().mapToDouble(Pan::meters).toArray(),
                pans.stream()
                        .mapToDouble(pan -> pan.kilograms() / pan.squareMeters() / passes)
                        .toArray(),
                pans.get(0).meters() - pans.get(0).halfWidth(),
                last.meters() + last.halfWidth());
    }

    double left() {
        return left;
    }

    double right() {
        return right;
    }

    int size() {
        return x.length;
    }

    double middle(int pan) {
        return x[pan];
    }

    double rate(int pan) {
        return rates[pan];
    }

    double at(double position) {
        if (position < left || position > right) {
            return 0;
        }
        int after = 0;
        while (after < x.length && x[after] < position) {
            after++;
        }
        if (after == 0) {
            return rates[0];
        }
        return after == x.length ? rates[after - 1] : between(after, (position - x[after - 1]) / gap(after));
    }

    private double gap(int after) {
        return x[after] - x[after - 1];
    }

    private double between(int after, double part) {
        return rates[after - 1] * (1 - part) + rates[after] * part;
    }

    /** What each pan's rate counts in the integral over a strip, in meters. */
    double[] weights(double from, double to) {
        double[] weights = new double[x.length];
        int last = x.length - 1;
        weights[0] += overlap(left, x[0], from, to);
        weights[last] += overlap(x[last], right, from, to);
        for (int i = 1; i < x.length; i++) {
            double begin = Math.max(x[i - 1], from);
            double end = Math.min(x[i], to);
            if (begin < end) {
                double middle = ((begin + end) / 2 - x[i - 1]) / gap(i);
                weights[i - 1] += (end - begin) * (1 - middle);
                weights[i] += (end - begin) * middle;
            }
        }
        return weights;
    }

    private static double overlap(double begin, double end, double from, double to) {
        return Math.max(0, Math.min(end, to) - Math.max(begin, from));
    }

    /** The same over everything. */
    double[] weights() {
        return weights(left, right);
    }

    /** What each pan's rate counts in the first moment about the truck's center line, in square meters. */
    double[] moments() {
        double[] moments = new double[x.length];
        int last = x.length - 1;
        moments[0] += (x[0] - left) * (left + x[0]) / 2;
        moments[last] += (right - x[last]) * (x[last] + right) / 2;
        for (int i = 1; i < x.length; i++) {
            moments[i - 1] += gap(i) * (2 * x[i - 1] + x[i]) / 6;
            moments[i] += gap(i) * (x[i - 1] + 2 * x[i]) / 6;
        }
        return moments;
    }

    double sum(double[] weights) {
        double sum = 0;
        for (int i = 0; i < x.length; i++) {
            sum += weights[i] * rates[i];
        }
        return sum;
    }

    /** The first place from the left where the rate reaches a level that one pan has. */
    double reachesFromLeft(double level) {
        if (rates[0] >= level) {
            return left;
        }
        int i = 1;
        while (rates[i] < level) {
            i++;
        }
        return x[i - 1] + gap(i) * (level - rates[i - 1]) / (rates[i] - rates[i - 1]);
    }

    Profile mirrored() {
        int n = x.length;
        double[] positions = new double[n];
        double[] turned = new double[n];
        for (int i = 0; i < n; i++) {
            positions[i] = -x[n - 1 - i];
            turned[i] = rates[n - 1 - i];
        }
        return new Profile(positions, turned, -right, -left);
    }

    Profile shifted(double by) {
        double[] positions = new double[x.length];
        for (int i = 0; i < x.length; i++) {
            positions[i] = x[i] + by;
        }
        return new Profile(positions, rates, left + by, right + by);
    }

    /** Each pan's rate over the road that it stands for: half-way to its neighbors, and to the outer edge. */
    Steps steps() {
        double[] edges = new double[x.length + 1];
        edges[0] = left;
        edges[x.length] = right;
        for (int i = 1; i < x.length; i++) {
            edges[i] = (x[i - 1] + x[i]) / 2;
        }
        return new Steps(edges, rates);
    }
}
