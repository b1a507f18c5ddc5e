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
     * @param opening the gate opening within the gate's limits: in m where it is a length, a bare number where it is a
     *     setting
     * @return the open area, in m², finite, 0 or more, never falling as the opening grows
     */
    double squareMetres(double opening);
}
