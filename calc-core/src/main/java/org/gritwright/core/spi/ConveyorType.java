package org.gritwright.core.spi;

import java.util.List;

/**
 * A type of conveyor: what it needs to know about itself and what volume it sweeps per revolution.
 *
 * <p>Implementations are stateless and thread-safe. What they return is checked where it is used: a value that is not
 * finite or is negative becomes a named error, not a wrong number.
 */
public interface ConveyorType {
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
     * Whether a gate meters the conveyor: a chain or belt carries what the gate lets through, an auger in a trough
     * fills itself.
     *
     * @return true if the swept volume depends on the gate's open area
     */
    boolean meteredByGate();

    /**
     * The swept volume for a set of parameters.
     *
     * @param given values of {@link #parameters()}, already checked against their limits
     * @return the function from open area to swept volume per revolution of the conveyor's drive shaft
     */
    SweptVolume sweptVolume(Parameters given);

    /**
     * The range of apparent fill that is usual and possible for this type.
     *
     * @return the limits; {@link FillLimits#COMMON} unless the type knows better
     */
    default FillLimits fillLimits() {
        return FillLimits.COMMON;
    }
}
