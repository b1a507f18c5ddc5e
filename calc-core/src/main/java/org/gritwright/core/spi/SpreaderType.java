package org.gritwright.core.spi;

import java.util.List;

/** What conveyor types and gate types have in common: a name, a level and parameters. */
public sealed interface SpreaderType permits ConveyorType, GateType {
    /**
     * The stable name and version.
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
     * @return the parameters, names unique
     */
    List<Parameter<?>> parameters();
}
