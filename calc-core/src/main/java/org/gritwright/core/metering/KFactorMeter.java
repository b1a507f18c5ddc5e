package org.gritwright.core.metering;

import static org.gritwright.units.SpreadingUnits.LITER_PER_MINUTE;
import static org.gritwright.units.SpreadingUnits.PULSE_PER_LITER;

import java.util.List;
import org.gritwright.core.spi.FlowMeterType;
import org.gritwright.core.spi.Parameter;
import org.gritwright.core.spi.Parameters;
import org.gritwright.core.spi.PulseOutput;
import org.gritwright.core.spi.Spi;
import org.gritwright.core.spi.TypeId;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.UnitSymbol;
import org.gritwright.units.check.Comparison;
import org.gritwright.units.quantity.FlowRate;
import org.gritwright.units.quantity.PulsesPerVolume;
import org.gritwright.units.quantity.VolumePerPulse;

/**
 * A flow meter of one K-factor, the pulses that it gives per volume, as on its plate.
 *
 * <p>V = 1 ÷ K per pulse; pulses per second = flow × K. Below the low-flow cut-off the meter gives no pulses.
 */
public final class KFactorMeter implements FlowMeterType {
    /** Pulses per volume. */
    public static final Parameter<PulsesPerVolume> K_FACTOR = Parameter.of(
            "kFactor", PulsesPerVolume.class, Amounts.of(0.01, PULSE_PER_LITER), Amounts.of(100_000, PULSE_PER_LITER));

    /** The lowest flow that gives pulses; 0 where none is known. */
    public static final Parameter<FlowRate> LOW_FLOW_CUTOFF = Parameter.of(
                    "lowFlowCutoff", FlowRate.class, Amounts.of(0, LITER_PER_MINUTE), Amounts.of(200, LITER_PER_MINUTE))
            .withDefault(Amounts.of(0, LITER_PER_MINUTE));

    /** The highest flow at which the K-factor holds; the default is more than any truck doses. */
    public static final Parameter<FlowRate> HIGHEST_FLOW = Parameter.of(
                    "highestFlow",
                    FlowRate.class,
                    Amounts.of(0.1, LITER_PER_MINUTE),
                    Amounts.of(5000, LITER_PER_MINUTE))
            .withDefault(Amounts.of(5000, LITER_PER_MINUTE));

    /** Made for a registry; all instances are alike. */
    public KFactorMeter() {}

    @Override
    public TypeId id() {
        return TypeId.of("k-factor", 1);
    }

    @Override
    public int spiLevel() {
        return Spi.LEVEL;
    }

    @Override
    public List<Parameter<?>> parameters() {
        return List.of(K_FACTOR, LOW_FLOW_CUTOFF, HIGHEST_FLOW);
    }

    @Override
    public PulseOutput output(Parameters given) {
        if (!Comparison.isAbove(given.si(HIGHEST_FLOW), given.si(LOW_FLOW_CUTOFF))) {
            throw new InvalidInputException(
                    HIGHEST_FLOW.name(),
                    "above " + LOW_FLOW_CUTOFF.name() + ", " + Amounts.format(given.get(LOW_FLOW_CUTOFF)),
                    Amounts.format(given.get(HIGHEST_FLOW)));
        }
        return PulseOutput.constant(Amounts.ofSi(
                        1 / given.si(K_FACTOR), UnitSymbol.tradeUnit(VolumePerPulse.class, given.get(K_FACTOR))))
                .within(given.get(LOW_FLOW_CUTOFF), given.get(HIGHEST_FLOW));
    }
}
