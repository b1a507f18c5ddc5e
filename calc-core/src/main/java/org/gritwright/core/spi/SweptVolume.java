package org.gritwright.core.spi;

import java.io.Serializable;

/**
 * What volume a conveyor sweeps per revolution of its drive shaft, as a plain function: pure, thread-safe and
 * serializable, so that it can be compiled into evaluators and shipped.
 */
@FunctionalInterface
public interface SweptVolume extends Serializable {
    /**
     * The swept volume.
     *
     * @param openAreaSquareMeters the cross-section that the gate leaves, in m², 0 or more; 0 for a conveyor that no
     *     gate meters
     * @return the volume per revolution, in m³/rev, finite and 0 or more
     */
    double cubicMetersPerRevolution(double openAreaSquareMeters);
}
