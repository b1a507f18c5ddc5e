package org.gritwright.examples.telemetry;

import java.io.Serializable;
import org.gritwright.core.telemetry.RowStatus;

/**
 * How much liquid went with how much of the dry material, where both were counted: what one counter passes over waits for the row in
 * which it is counted, and where one of them lost something the other isn't taken either. For one thread.
 */
final class Wetting {
    private long milligrams;
    private long microliters;
    private long waitingMilligrams;
    private long waitingMicroliters;
    private boolean isLost;

    /**
     * Both, where both were counted.
     *
     * @param milligrams of the dry material
     * @param microliters of the liquid
     */
    record Sums(long milligrams, long microliters) implements Serializable {
        private static final long serialVersionUID = 1L;

        static final Sums NONE = new Sums(0, 0);

        Sums plus(Sums other) {
            return new Sums(milligrams + other.milligrams, microliters + other.microliters);
        }
    }

    void add(RowStatus dry, long laidMilligrams, RowStatus liquid, long laidMicroliters) {
        waitingMilligrams += laidMilligrams;
        waitingMicroliters += laidMicroliters;
        boolean dryWaits = TruckPass.isPassedOver(dry);
        boolean liquidWaits = TruckPass.isPassedOver(liquid);
        isLost |= (!dryWaits && !dry.isCounted()) || (!liquidWaits && !liquid.isCounted());
        if (!dryWaits && !liquidWaits) {
            if (!isLost) {
                milligrams += waitingMilligrams;
                microliters += waitingMicroliters;
            }
            waitingMilligrams = 0;
            waitingMicroliters = 0;
            isLost = false;
        }
    }

    /** What it came to since it was asked for the last time. */
    Sums taken() {
        Sums sums = new Sums(milligrams, microliters);
        milligrams = 0;
        microliters = 0;
        return sums;
    }
}
