package org.gritwright.core.spi;

import java.io.Serializable;

/**
 * What volume a pump gives per revolution of its shaft, as a plain function: pure, thread-safe and serializable, so that it can
 * be compiled into evaluators and shipped.
 */
@FunctionalInterface
public interface PumpedVolume extends Serializable {
    /**
     * The pumped volume.
     *
     * @param revolutionsPerSecond the speed of the pump's shaft, in rev/s, never outside the limits of the pump's output
     * @return the volume per revolution, in m³/rev, finite and more than 0; times the speed it never falls as the speed grows
     */
    double cubicMetersPerRevolution(double revolutionsPerSecond);
}
