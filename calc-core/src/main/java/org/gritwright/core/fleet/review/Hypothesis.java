package org.gritwright.core.fleet.review;

import java.util.List;
import org.gritwright.core.finding.Slip;

/**
 * A slip that people are known to make, and what the day would be without it.
 *
 * @param slip the slip
 * @param repaired the day as it would be; several where the slip doesn't say by how much
 * @param places in how many places such a slip could have been made: any of them is so many times less likely
 */
record Hypothesis(Slip slip, List<Sketch> repaired, int places) {
    double logLikelihood() {
        double best = Double.NEGATIVE_INFINITY;
        for (Sketch one : repaired) {
            best = Math.max(best, one.logLikelihood());
        }
        return best - Math.log(places);
    }
}
