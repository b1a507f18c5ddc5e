package org.gritwright.core.control;

import org.gritwright.core.statistics.Student;

/** The standard normal distribution. */
final class Normal {
    private static final Student DISTRIBUTION = Student.of(Double.POSITIVE_INFINITY);
    private static final double HIGHEST_DENSITY = 1 / Math.sqrt(2 * Math.PI);

    private Normal() {}

    static double density(double x) {
        return HIGHEST_DENSITY * Math.exp(-x * x / 2);
    }

    /** Exact where it is small. */
    static double below(double x) {
        return DISTRIBUTION.probabilityBelow(x);
    }

    /** From the side on which it is small. */
    static double between(double low, double high) {
        return low > 0 ? below(-low) - below(-high) : below(high) - below(low);
    }

    static double exceededWith(double chance) {
        return DISTRIBUTION.factorExceededWith(chance);
    }
}
