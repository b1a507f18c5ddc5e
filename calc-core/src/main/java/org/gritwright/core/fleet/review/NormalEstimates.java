package org.gritwright.core.fleet.review;

/**
 * Independent normal estimates of one number, summed up: their weighted mean, its variance, and how likely it is that they lie
 * as far apart as they do, whatever the number is. So a hierarchy of them costs one pass.
 *
 * <p>Σ (y − a)²/v = Σ (y − ȳ)²/v + (ȳ − a)²·Σ 1/v, so that the density of all is that of their mean times what {@link
 * #logDensityOfSpread} says (derived).
 */
final class NormalEstimates {
    private static final double LOG_TWO_PI = Math.log(2 * Math.PI);

    private int count;
    private double weights;
    private double weighted;
    private double squares;
    private double logVariances;

    void add(double estimate, double variance) {
        count++;
        weights += 1 / variance;
        weighted += estimate / variance;
        squares += estimate * estimate / variance;
        logVariances += Math.log(variance);
    }

    boolean isEmpty() {
        return count == 0;
    }

    double mean() {
        return weighted / weights;
    }

    double variance() {
        return 1 / weights;
    }

    double logDensityOfSpread() {
        double spread = Math.max(0, squares - weighted * weighted / weights);
        return -0.5 * ((count - 1) * LOG_TWO_PI + logVariances + Math.log(weights) + spread);
    }

    static double logDensity(double difference, double variance) {
        return -0.5 * (LOG_TWO_PI + Math.log(variance) + difference * difference / variance);
    }
}
