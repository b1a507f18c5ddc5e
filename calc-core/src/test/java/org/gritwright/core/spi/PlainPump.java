package org.gritwright.core.spi;

import java.util.List;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;

/** A pump type with a name and 10 mL/rev, for others to spoil. */
public class PlainPump implements PumpType {
    private final String name;

    public PlainPump(String name) {
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
    public PumpOutput output(Parameters given) {
        return PumpOutput.constant(Amounts.of(10, SpreadingUnits.MILLILITER_PER_REVOLUTION));
    }
}
