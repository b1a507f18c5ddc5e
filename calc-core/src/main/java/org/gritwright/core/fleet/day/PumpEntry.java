package org.gritwright.core.fleet.day;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import org.gritwright.core.metering.DriveFeedback;
import org.gritwright.core.metering.Metering;
import org.gritwright.core.metering.OpenLoop;
import org.gritwright.core.metering.Pump;
import org.gritwright.core.metering.PumpMetering;
import org.gritwright.core.spi.TypeId;
import org.gritwright.core.spi.TypeRegistry;
import org.gritwright.units.check.Require;
import org.gritwright.units.quantity.PulsesPerRevolution;

/**
 * A pump whose turns meter a liquid, as it was written down. Nothing but presence is checked here. Immutable, thread-safe, a value.
 *
 * @param pump the pump
 * @param pulsesPerRevolution pulses per revolution of the sensed shaft; none without a sensor
 * @param gearRatio revolutions of the sensed or watched shaft per revolution of the pump's drive shaft
 * @param controlSettings the table of control settings and loaded shaft speeds of a drive without feedback; empty if there is none
 */
public record PumpEntry(
        TypedEntry pump,
        Optional<Quantity<PulsesPerRevolution>> pulsesPerRevolution,
        Quantity<Dimensionless> gearRatio,
        List<OpenLoop.Row> controlSettings)
        implements MeteringEntry {

    /** Copies the list. */
    public PumpEntry {
        Require.given(PumpEntry.class, pump, pulsesPerRevolution, gearRatio, controlSettings);
        controlSettings = List.copyOf(controlSettings);
    }

    /**
     * A pump with a shaft sensor.
     *
     * @param pump the pump
     * @param pulsesPerRevolution pulses per revolution of the sensed shaft
     * @param gearRatio revolutions of the sensed shaft per revolution of the pump's drive shaft
     * @return the pump
     */
    public static PumpEntry sensed(
            TypedEntry pump, Quantity<PulsesPerRevolution> pulsesPerRevolution, Quantity<Dimensionless> gearRatio) {
        return new PumpEntry(
                pump,
                Optional.of(Objects.requireNonNull(pulsesPerRevolution, "pulsesPerRevolution")),
                gearRatio,
                List.of());
    }

    /** The pump. */
    @Override
    public TypedEntry machine() {
        return pump;
    }

    @Override
    public PumpEntry withMachine(TypedEntry other) {
        return new PumpEntry(other, pulsesPerRevolution, gearRatio, controlSettings);
    }

    /**
     * The pump.
     *
     * @param types the types that are known
     * @return the pump
     * @throws org.gritwright.units.InvalidInputException if the type is not known or doesn't accept the parameters
     */
    public Pump pump(TypeRegistry types) {
        return Pump.of(types, TypeId.of(pump.type(), pump.version()), pump.parameters());
    }

    @Override
    public Metering.Kind kind() {
        return Metering.Kind.PUMP;
    }

    @Override
    public PumpMetering metering(TypeRegistry types) {
        return new PumpMetering(pump(types), feedback());
    }

    @Override
    public DriveFeedback feedback() {
        return ShaftFeedback.of(pulsesPerRevolution, gearRatio, controlSettings);
    }
}
