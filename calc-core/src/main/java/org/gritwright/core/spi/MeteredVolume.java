package org.gritwright.core.spi;

import java.io.Serializable;

/**
 * What volume flows through a flow meter per pulse, as a plain function: pure, thread-safe and serializable, so that it can be
 * compiled into evaluators and shipped.
 */
@FunctionalInterface
public interface MeteredVolume extends Serializable {
    /**
     * The metered volume.
     *
     * @param cubicMetersPerSecond the flow, in m³/s, never outside the limits of the meter's output
     * @return the volume per pulse, in m³/pulse, finite and more than 0; the flow divided by it, pulses per second, never falls
     *     as the flow grows
     */
    double cubicMetersPerPulse(double cubicMetersPerSecond);
}
