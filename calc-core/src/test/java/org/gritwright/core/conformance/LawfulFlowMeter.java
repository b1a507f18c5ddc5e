package org.gritwright.core.conformance;

import java.util.List;
import org.gritwright.core.spi.FlowMeterType;
import org.gritwright.core.spi.MeteredVolume;
import org.gritwright.core.spi.Parameter;
import org.gritwright.core.spi.Parameters;
import org.gritwright.core.spi.PulseOutput;
import org.gritwright.core.spi.Spi;
import org.gritwright.core.spi.TypeId;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.quantity.FlowRate;
import org.gritwright.units.quantity.VolumePerPulse;

/** A flow-meter type that obeys the laws: its pulses stand for a tenth more at the lowest flow than at large ones. */
class LawfulFlowMeter implements FlowMeterType {
    static final Parameter<VolumePerPulse> PULSE = Parameter.of(
            "pulse",
            VolumePerPulse.class,
            Amounts.of(0.5, SpreadingUnits.MILLILITER_PER_PULSE),
            Amounts.of(100, SpreadingUnits.MILLILITER_PER_PULSE));
    static final Parameter<FlowRate> CUTOFF = Parameter.of(
            "cutoff",
            FlowRate.class,
            Amounts.of(1, SpreadingUnits.LITER_PER_MINUTE),
            Amounts.of(20, SpreadingUnits.LITER_PER_MINUTE));

    @Override
    public TypeId id() {
        return TypeId.of("example.org/lawful-meter", 4);
    }

    @Override
    public int spiLevel() {
        return Spi.LEVEL;
    }

    @Override
    public List<Parameter<?>> parameters() {
        return List.of(PULSE, CUTOFF);
    }

    @Override
    public PulseOutput output(Parameters given) {
        return output(given, volume(given.si(PULSE), given.si(CUTOFF)));
    }

    /** Up to 240 L/min. */
    static PulseOutput output(Parameters given, MeteredVolume volume) {
        return PulseOutput.of(given.get(PULSE), volume)
                .within(given.get(CUTOFF), Amounts.of(240, SpreadingUnits.LITER_PER_MINUTE));
    }

    static MeteredVolume volume(double pulse, double cutoff) {
        return flow -> pulse * (1 + 0.1 * cutoff / flow);
    }
}
