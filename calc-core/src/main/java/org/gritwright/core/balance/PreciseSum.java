package org.gritwright.core.balance;

/** A sum of products in twice the precision: what almost cancels keeps its digits. */
final class PreciseSum {
    private double high;
    private double low;

    void add(double number) {
        double sum = high + number;
        double part = sum - high;
        low += (high - (sum - part)) + (number - part);
        high = sum;
    }

    void addProduct(double a, double b) {
        double product = a * b;
        add(product);
        low += Math.fma(a, b, -product);
    }

    double value() {
        return high + low;
    }
}
