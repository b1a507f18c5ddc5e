package org.gritwright.core.spi;

import java.util.List;

/** A gate type with a name and nothing else, for others to spoil. */
public class PlainGate implements GateType {
    private final String name;

    public PlainGate(String name) {
        this.name = name;
    }

    @Override
    public TypeId id() {
        return TypeId.of("example.org/" + name, 1);
    }

    @Override
    public int spiLevel() {
        return Spi.LEVEL;
    }

    @Override
    public List<Parameter<?>> parameters() {
        return List.of();
    }

    @Override
    public GateShape shape(Parameters given) {
        return GateShape.none();
    }
}
