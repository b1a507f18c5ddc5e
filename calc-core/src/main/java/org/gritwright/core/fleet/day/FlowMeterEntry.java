package org.gritwright.core.fleet.day;

import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import org.gritwright.core.metering.DriveFeedback;
import org.gritwright.core.metering.FlowMeter;
import org.gritwright.core.metering.FlowMetering;
import org.gritwright.core.metering.MeterPulses;
import org.gritwright.core.metering.Metering;
import org.gritwright.core.spi.TypeId;
import org.gritwright.core.spi.TypeRegistry;
import org.gritwright.units.check.Require;

/**
 * A flow meter whose pulses meter a liquid, whatever pump moves it, as it was written down. Immutable, thread-safe, a value.
 *
 * @param flowMeter the flow meter
 */
public record FlowMeterEntry(TypedEntry flowMeter) implements MeteringEntry {
    /** Checks that there is one. */
    public FlowMeterEntry {
        Require.given(FlowMeterEntry.class, flowMeter);
    }

    /** The flow meter. */
    @Override
    public TypedEntry machine() {
        return flowMeter;
    }

    @Override
    public FlowMeterEntry withMachine(TypedEntry other) {
        return new FlowMeterEntry(other);
    }

    /**
     * The flow meter.
     *
     * @param types the types that are known
     * @return the flow meter
     * @throws org.gritwright.units.InvalidInputException if the type is not known or doesn't accept the parameters
     */
    public FlowMeter flowMeter(TypeRegistry types) {
        return FlowMeter.of(types, TypeId.of(flowMeter.type(), flowMeter.version()), flowMeter.parameters());
    }

    @Override
    public Metering.Kind kind() {
        return Metering.Kind.FLOW_METER;
    }

    @Override
    public FlowMetering metering(TypeRegistry types) {
        return new FlowMetering(flowMeter(types));
    }

    @Override
    public DriveFeedback feedback() {
        return new MeterPulses();
    }

    @Override
    public Quantity<Dimensionless> gearRatio() {
        return feedback().gearRatio();
    }
}
