package org.gritwright.core.lateral;

import java.util.stream.DoubleStream;

/**
 * A rate that is constant from edge to edge and zero outside. Evenness is judged by it, each pan standing for its own part of
 * the road: lines between pans would be evener than what was caught.
 */
final class Steps {
    /** Two edges nearer than this part of the whole are one that rounding has split. */
    private static final double SLIVER = 1e-9;

    private final double[] edges;
    private final double[] rates;

    /** One edge more than rates, rising. */
    Steps(double[] edges, double[] rates) {
        this.edges = edges;
        this.rates = rates;
    }

    private double at(double position) {
        int i = 0;
        while (i < edges.length && edges[i] <= position) {
            i++;
        }
        return i == 0 || i == edges.length ? 0 : rates[i - 1];
    }

    Steps plus(Steps other) {
        double[] all = DoubleStream.concat(DoubleStream.of(edges), DoubleStream.of(other.edges))
                .sorted()
                .toArray();
        double[] sums = new double[all.length - 1];
        for (int i = 0; i < sums.length; i++) {
            double middle = (all[i] + all[i + 1]) / 2;
            sums[i] = at(middle) + other.at(middle);
        }
        return new Steps(all, sums);
    }

    /** The integral over everything. */
    double total() {
        double sum = 0;
        for (int i = 0; i < rates.length; i++) {
            sum += rates[i] * (edges[i + 1] - edges[i]);
        }
        return sum;
    }

    /** This between two places, with the zeros where it doesn't reach so far. */
    Steps within(double from, double to) {
        Steps frame = new Steps(new double[] {from, to}, new double[] {0});
        double[] inside = DoubleStream.of(plus(frame).edges)
                .filter(edge -> edge >= from && edge <= to)
                .toArray();
        double[] taken = new double[inside.length - 1];
        for (int i = 0; i < taken.length; i++) {
            taken[i] = at((inside[i] + inside[i + 1]) / 2);
        }
        return new Steps(inside, taken);
    }

    private double width() {
        return edges[edges.length - 1] - edges[0];
    }

    /** Standard deviation over all of it ÷ mean; not a number where the mean is zero. */
    double variation() {
        double mean = total() / width();
        double squares = 0;
        for (int i = 0; i < rates.length; i++) {
            squares += (rates[i] - mean) * (rates[i] - mean) * (edges[i + 1] - edges[i]);
        }
        return Math.sqrt(squares / width()) / mean;
    }

    /** The rates of all parts that have a width. */
    DoubleStream rates() {
        DoubleStream.Builder kept = DoubleStream.builder();
        for (int i = 0; i < rates.length; i++) {
            if (edges[i + 1] - edges[i] > SLIVER * width()) {
                kept.add(rates[i]);
            }
        }
        return kept.build();
    }
}
