package org.gritwright.core.spi;

import java.util.List;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;

/** A flow-meter type with a name and 2 mL/pulse, for others to spoil. */
public class PlainFlowMeter implements FlowMeterType {
    private final String name;

    public PlainFlowMeter(String name) {
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
    public PulseOutput output(Parameters given) {
        return PulseOutput.constant(Amounts.of(2, SpreadingUnits.MILLILITER_PER_PULSE));
    }
}
