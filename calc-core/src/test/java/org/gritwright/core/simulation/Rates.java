package org.gritwright.core.simulation;

import org.apache.commons.statistics.distribution.BetaDistribution;
import org.apache.commons.statistics.distribution.NormalDistribution;

/** Shares of trucks and what is proven of them. */
final class Rates {
    /** Of a one-sided bound. */
    static final double CONFIDENCE = 0.99;

    private Rates() {}

    static double normalBelow(double z) {
        return NormalDistribution.of(0, 1).cumulativeProbability(z);
    }

    /**
     * The greatest chance at which so few hits aren't surprising: Clopper and Pearson (1934), the quantile of a beta
     * distribution; from memory.
     */
    static double upperBound(int hits, int trials) {
        return hits >= trials
                ? 1
                : BetaDistribution.of(hits + 1.0, trials - hits).inverseCumulativeProbability(CONFIDENCE);
    }

    /** The smallest chance at which so many hits aren't surprising. */
    static double lowerBound(int hits, int trials) {
        return hits <= 0
                ? 0
                : BetaDistribution.of(hits, trials - hits + 1.0).inverseCumulativeProbability(1 - CONFIDENCE);
    }
}
