package org.gritwright.core.spi;

import java.util.List;
import java.util.Optional;

/**
 * A type of gate: what cross-section an opening leaves above the conveyor.
 *
 * <p>Implementations are stateless and thread-safe. What they return is checked where it is used.
 */
public interface GateType {
    /**
     * The stable name and version.
     *
     * @return the id
     */
    TypeId id();

    /**
     * The parameters, in the order in which a form should ask for them.
     *
     * @return the parameters, names unique
     */
    List<Parameter<?>> parameters();

    /**
     * The opening for a set of parameters: its limits and the cross-section it leaves.
     *
     * @param given values of {@link #parameters()}, already checked against their limits
     * @return the opening, or empty for a gate type that has none to set (an auger's trough)
     */
    Optional<GateOpening> opening(Parameters given);
}
