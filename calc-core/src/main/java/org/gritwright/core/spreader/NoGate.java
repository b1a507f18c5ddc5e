package org.gritwright.core.spreader;

import java.util.List;
import java.util.Optional;
import org.gritwright.core.spi.GateOpening;
import org.gritwright.core.spi.GateType;
import org.gritwright.core.spi.Parameter;
import org.gritwright.core.spi.Parameters;
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
    public List<Parameter<?>> parameters() {
        return List.of();
    }

    @Override
    public Optional<GateOpening> opening(Parameters given) {
        return Optional.empty();
    }
}
