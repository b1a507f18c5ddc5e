package org.gritwright.examples.telemetry;

import java.io.Serializable;
import org.gritwright.core.telemetry.AppliedTotal;

/**
 * What wetted the material that a truck laid.
 *
 * @param isMetered whether a record calibrates it
 * @param laid what ran, with its uncertainty
 * @param wetted how much of both, where both were counted
 */
record Liquid(boolean isMetered, AppliedTotal laid, Wetting.Sums wetted) implements Serializable {
    private static final long serialVersionUID = 1L;

    Liquid plus(Liquid other) {
        return new Liquid(isMetered || other.isMetered, laid.plus(other.laid), wetted.plus(other.wetted));
    }
}
