package org.gritwright.core.spi;

import java.io.Serializable;

/**
 * What cross-section a gate leaves at a setting, as a plain function: pure, thread-safe and serializable.
 */
@FunctionalInterface
public interface OpenArea extends Serializable {
    /**
     * The cross-section.
     *
     * @param setting the gate's setting, never outside the gate's limits: in m where it is a height, the number at a
     *     painted mark, or a percentage as a ratio, 0.4 for 40 %
     * @return the open area, in m², finite, 0 or more, never falling as the setting grows
     */
    double squareMeters(double setting);
}
