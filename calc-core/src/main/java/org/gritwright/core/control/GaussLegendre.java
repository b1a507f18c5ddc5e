package org.gritwright.core.control;

/**
 * Nodes and weights of Gauss–Legendre quadrature from −1 to 1. A node is a zero of the Legendre polynomial Pₙ, found by Newton's
 * method from cos(π·(i − ¼)/(n + ½)); its weight is 2/((1 − x²)·Pₙ′(x)²) (M. Abramowitz and I. A. Stegun, Handbook of
 * Mathematical Functions, 1964, 25.4.29 and 22.16.6; from memory).
 */
final class GaussLegendre {
    /** Each doubles the digits, of which there are two or more to begin with. */
    private static final int ROUNDS = 5;

    private final double[] nodes;
    private final double[] weights;

    private GaussLegendre(double[] nodes, double[] weights) {
        this.nodes = nodes;
        this.weights = weights;
    }

    static GaussLegendre of(int n) {
        double[] nodes = new double[n];
        double[] weights = new double[n];
        for (int i = 0; i < (n + 1) / 2; i++) {
            double x = Math.cos(Math.PI * (i + 0.75) / (n + 0.5));
            for (int round = 0; round < ROUNDS; round++) {
                x -= polynomials(n, x)[n] / slope(n, x);
            }
            double slope = slope(n, x);
            double weight = 2 / ((1 - x * x) * slope * slope);
            nodes[i] = -x;
            nodes[n - 1 - i] = x;
            weights[i] = weight;
            weights[n - 1 - i] = weight;
        }
        return new GaussLegendre(nodes, weights);
    }

    /** P₀(x) to Pₙ(x) by their recurrence. */
    private static double[] polynomials(int n, double x) {
        double[] p = new double[n + 1];
        p[0] = 1;
        p[1] = x;
        for (int k = 2; k <= n; k++) {
            p[k] = ((2 * k - 1) * x * p[k - 1] - (k - 1) * p[k - 2]) / k;
        }
        return p;
    }

    private static double slope(int n, double x) {
        double[] p = polynomials(n, x);
        return n * (x * p[n] - p[n - 1]) / (x * x - 1);
    }

    int size() {
        return nodes.length;
    }

    double node(int i) {
        return nodes[i];
    }

    double weight(int i) {
        return weights[i];
    }

    /**
     * Weights of the integral from −1 to each node: row j has those of ∫₋₁^{x_j}. What is integrated is the polynomial through all
     * nodes, expanded in Legendre polynomials, of which ∫₋₁^t P_k = (P_{k+1}(t) − P_{k−1}(t))/(2k + 1).
     */
    double[][] partialWeights() {
        int n = size();
        double[][] at = new double[n][];
        for (int j = 0; j < n; j++) {
            at[j] = polynomials(n, nodes[j]);
        }
        double[][] partial = new double[n][n];
        for (int j = 0; j < n; j++) {
            for (int i = 0; i < n; i++) {
                double sum = nodes[j] + 1;
                for (int k = 1; k < n; k++) {
                    sum += at[i][k] * (at[j][k + 1] - at[j][k - 1]);
                }
                partial[j][i] = weights[i] / 2 * sum;
            }
        }
        return partial;
    }
}
