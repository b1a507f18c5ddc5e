package org.gritwright.core.spi;

import java.util.List;

/** A conveyor type with a name and nothing else, for others to spoil. */
public class PlainConveyor implements ConveyorType {
    private final String name;

    public PlainConveyor(String name) {
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
    public boolean meteredByGate() {
        return true;
    }

    @Override
    public SweptVolume sweptVolume(Parameters given) {
        return area -> area;
    }
}
