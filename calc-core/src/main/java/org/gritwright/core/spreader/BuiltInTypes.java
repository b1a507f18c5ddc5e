package org.gritwright.core.spreader;

import java.util.List;
import org.gritwright.core.spi.TypeRegistry;

/** The types that come with the library. They use the SPI exactly as an outsider's would. */
public final class BuiltInTypes {

    private BuiltInTypes() {}

    /**
     * A registry of the built-in types: drag chain and auger; sliding gate and no gate.
     *
     * @return the registry
     */
    public static TypeRegistry registry() {
        return TypeRegistry.of(List.of(new DragChain(), new Auger()), List.of(new SlidingGate(), new NoGate()));
    }
}
