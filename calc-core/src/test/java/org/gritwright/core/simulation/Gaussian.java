package org.gritwright.core.simulation;

/** A joint normal distribution of several numbers, by its covariance; textbook formulas, by Cholesky's decomposition. */
final class Gaussian {
    /** The lower triangle L with covariance = L·Lᵀ. */
    private final double[][] lower;

    Gaussian(double[][] covariance) {
        int n = covariance.length;
        lower = new double[n][n];
        for (int i = 0; i < n; i++) {
            for (int j = 0; j <= i; j++) {
                double sum = covariance[i][j];
                for (int k = 0; k < j; k++) {
                    sum -= lower[i][k] * lower[j][k];
                }
                if (i == j && !(sum > 0)) {
                    throw new IllegalArgumentException("covariance is not positive definite");
                }
                lower[i][j] = i == j ? Math.sqrt(sum) : sum / lower[j][j];
            }
        }
    }

    /** Solves L·y = x. */
    private double[] whitened(double[] x) {
        double[] y = new double[x.length];
        for (int i = 0; i < x.length; i++) {
            double sum = x[i];
            for (int k = 0; k < i; k++) {
                sum -= lower[i][k] * y[k];
            }
            y[i] = sum / lower[i][i];
        }
        return y;
    }

    /** Of deviations from the mean: −½·(xᵀ·C⁻¹·x + ln det C + n·ln 2π). */
    double logDensity(double[] deviations) {
        double log = 0;
        double[] y = whitened(deviations);
        for (int i = 0; i < y.length; i++) {
            log -= y[i] * y[i] / 2 + Math.log(lower[i][i]) + Math.log(2 * Math.PI) / 2;
        }
        return log;
    }

    /** aᵀ·C⁻¹·b. */
    double product(double[] a, double[] b) {
        double sum = 0;
        double[] x = whitened(a);
        double[] y = whitened(b);
        for (int i = 0; i < x.length; i++) {
            sum += x[i] * y[i];
        }
        return sum;
    }

    static double logDensity(double deviation, double standardDeviation) {
        double z = deviation / standardDeviation;
        return -z * z / 2 - Math.log(standardDeviation) - Math.log(2 * Math.PI) / 2;
    }
}
