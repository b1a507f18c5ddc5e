package org.gritwright.core.control;

/**
 * The law of a two-sided CUSUM from those of its two sides. While neither has signaled, the two sums together are at most limit + 2·allowance,
 * and so the observation that takes one of them beyond the limit takes the other one to 0 (the idea of J. M. Lucas and R. B. Crosier,
 * Technometrics 24, 1982). Hence the charts that a signal of the other side ends are at 0 on this side, and are taken away there: exact at any mean
 * of each observation (derived, no source).
 */
final class TwoSidedCusumChain implements Stepper {
    private final FilterChain upper;
    private final FilterChain lower;
    private double survival = 1;

    TwoSidedCusumChain(FilterChain upper, FilterChain lower) {
        this.upper = upper;
        this.lower = lower;
    }

    @Override
    public double advance(double mean) {
        double aboveLimit = survival - upper.advance(mean);
        double belowLimit = survival - lower.advance(-mean);
        upper.removeAtZero(belowLimit);
        lower.removeAtZero(aboveLimit);
        survival = upper.mass();
        return survival;
    }
}
