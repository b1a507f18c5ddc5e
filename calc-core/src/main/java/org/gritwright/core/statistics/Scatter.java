package org.gritwright.core.statistics;

/** How observations scatter about the curve they observe. A fit and a test of it must take the same. */
public enum Scatter {
    /**
     * By the same amount at every size: the variance of y is s²/w. A {@link StraightLine} takes its observations to scatter
     * so.
     */
    ABSOLUTE,
    /**
     * In proportion to the size: the variance of y is (s · y)²/w, with every y greater than 0. A catch of twice the mass
     * scatters by twice as much. A {@link CurveFit} and a {@link MonotoneTable} take their observations to scatter so.
     */
    RELATIVE;

    /** How far y is from what it observes, in the terms of s. */
    double deviation(double y, double about) {
        return this == ABSOLUTE ? y - about : y / about - 1;
    }
}
