package org.gritwright.core.control;

import java.util.function.DoubleUnaryOperator;

/**
 * Where a rising function is 0: inverse quadratic interpolation where that is safe, else halving (T. R. Chandrupatla, A new
 * hybrid quadratic/bisection algorithm for finding the zero of a nonlinear function without using derivatives, Advances in
 * Engineering Software 28, 1997, 145–149; from memory).
 */
final class Root {
    private static final double RELATIVE = 1e-9;

    private Root() {}

    /**
     * The zero.
     *
     * @param function rising; it may be infinite
     * @param low where it is below 0
     * @param high where it is above 0
     */
    static double between(DoubleUnaryOperator function, double low, double high) {
        double newest = low;
        double ofNewest = function.applyAsDouble(low);
        double across = high;
        double ofAcross = function.applyAsDouble(high);
        double part = 0.5;
        while (true) {
            double x = newest + part * (across - newest);
            double ofX = function.applyAsDouble(x);
            double last;
            double ofLast;
            if (ofX < 0 == ofNewest < 0) {
                last = newest;
                ofLast = ofNewest;
            } else {
                last = across;
                ofLast = ofAcross;
                across = newest;
                ofAcross = ofNewest;
            }
            newest = x;
            ofNewest = ofX;
            double best = Math.abs(ofNewest) < Math.abs(ofAcross) ? newest : across;
            double least = RELATIVE * Math.abs(best) / Math.abs(across - newest);
            if (!(least <= 0.5) || ofNewest == 0) {
                return best;
            }
            part = Math.max(least, Math.min(next(newest, across, last, ofNewest, ofAcross, ofLast), 1 - least));
        }
    }

    private static double next(double a, double b, double c, double ofA, double ofB, double ofC) {
        double xi = (a - b) / (c - b);
        double phi = (ofA - ofB) / (ofC - ofB);
        // Not finite anywhere: not a number, so that it is halved.
        boolean isSafe = phi * phi < xi && (1 - phi) * (1 - phi) < 1 - xi;
        return isSafe
                ? ofA / (ofB - ofA) * ofC / (ofB - ofC) + (c - a) / (b - a) * ofA / (ofC - ofA) * ofB / (ofC - ofB)
                : 0.5;
    }
}
