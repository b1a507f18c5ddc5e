package org.gritwright.core.spi;

import java.util.List;

/**
 * What conveyor, gate, pump and flow-meter types have in common: a name, a level and parameters.
 *
 * <p>Whatever a type throws, wherever it is asked, is an {@link org.gritwright.units.InvalidInputException} to its caller, with
 * the code {@code TYPE_FAILED} and what was thrown as its cause; in a fleet's day it refuses that type's trucks and no others.
 * Only an {@link OutOfMemoryError} passes. A type that never answers can't be stopped: Java has no safe way to, so whoever runs
 * types that they don't trust runs them in a process of their own.
 */
public sealed interface SpreaderType permits ConveyorType, GateType, PumpType, FlowMeterType {
    /**
     * The stable name and version. A registry asks for it when it lets the type in, and knows it by that from then on.
     *
     * @return the id
     */
    TypeId id();

    /**
     * The level of the SPI that the type was written for.
     *
     * @return {@code Spi.LEVEL}, which the compiler turns into the number that holds when the type is compiled
     */
    int spiLevel();

    /**
     * The parameters, in the order in which a form should ask for them.
     *
     * @return the parameters, names unique, at most 1000
     */
    List<Parameter<?>> parameters();
}
