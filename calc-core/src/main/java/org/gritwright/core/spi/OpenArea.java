package org.gritwright.core.spi;

import java.io.Serializable;

/**
 * What cross-section a gate leaves at an opening, as a plain function: pure, thread-safe and serializable.
 */
@FunctionalInterface
public interface OpenArea extends Serializable {
    /**
     * The cross-section.
     *
     * @param openingMetres the gate opening, in m, within the gate's limits
     * @return the open area, in m², finite, 0 or more, never falling as the opening grows
     */
    double squareMetres(double openingMetres);
}
