package org.gritwright.core.spi;

/** The level of the interface between the library and types of conveyors, gates, pumps and flow meters. */
public final class Spi {
    /**
     * The level that this library understands, and every lower one from 1. A type returns the level it was written for:
     * as a compile-time constant, {@code return Spi.LEVEL;} is compiled to the number that held when the type was built,
     * so that an older library recognizes a newer type and leaves it out.
     */
    public static final int LEVEL = 1;

    /** The most parameters that a type may declare. No form asks for more. */
    public static final int MOST_PARAMETERS = 1000;

    private Spi() {}
}
