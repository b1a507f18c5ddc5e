package org.gritwright.core.metering;

import java.util.List;
import org.gritwright.core.spi.GateShape;
import org.gritwright.core.spi.GateType;
import org.gritwright.core.spi.Parameter;
import org.gritwright.core.spi.Parameters;
import org.gritwright.core.spi.Spi;
import org.gritwright.core.spi.TypeId;

/** No gate at all: an auger's trough. */
public final class NoGate implements GateType {

    /** Made for a registry; all instances are alike. */
    public NoGate() {}

    @Override
    public TypeId id() {
        return TypeId.of("no-gate", 1);
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
