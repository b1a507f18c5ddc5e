package org.gritwright.core.fleet.day;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import org.gritwright.core.metering.Conveyor;
import org.gritwright.core.metering.DriveFeedback;
import org.gritwright.core.metering.Gate;
import org.gritwright.core.metering.Metering;
import org.gritwright.core.metering.OpenLoop;
import org.gritwright.core.metering.Spreader;
import org.gritwright.core.spi.TypeId;
import org.gritwright.core.spi.TypeRegistry;
import org.gritwright.units.check.Require;
import org.gritwright.units.quantity.PulsesPerRevolution;

/**
 * A conveyor and what meters with it, as they were written down. Nothing but presence is checked here. Immutable, thread-safe, a
 * value.
 *
 * @param conveyor the conveyor
 * @param gate the gate
 * @param pulsesPerRevolution pulses per revolution of the sensed shaft; none without a sensor
 * @param gearRatio revolutions of the sensed or watched shaft per revolution of the conveyor's drive shaft
 * @param controlSettings the table of control settings and loaded shaft speeds of a drive without feedback; empty if
 *     there is none
 * @param gateReading how far a gate that is set by reading it may be off, either way; none if nobody knows
 */
public record SpreaderEntry(
        TypedEntry conveyor,
        TypedEntry gate,
        Optional<Quantity<PulsesPerRevolution>> pulsesPerRevolution,
        Quantity<Dimensionless> gearRatio,
        List<OpenLoop.Row> controlSettings,
        Optional<Quantity<?>> gateReading)
        implements MeteringEntry {

    /** Copies the list. */
    public SpreaderEntry {
        Require.given(
                SpreaderEntry.class, conveyor, gate, pulsesPerRevolution, gearRatio, controlSettings, gateReading);
        controlSettings = List.copyOf(controlSettings);
    }

    /**
     * A spreader with a shaft sensor.
     *
     * @param conveyor the conveyor
     * @param gate the gate
     * @param pulsesPerRevolution pulses per revolution of the sensed shaft
     * @param gearRatio revolutions of the sensed shaft per revolution of the conveyor's drive shaft
     * @return the spreader
     */
    public static SpreaderEntry sensed(
            TypedEntry conveyor,
            TypedEntry gate,
            Quantity<PulsesPerRevolution> pulsesPerRevolution,
            Quantity<Dimensionless> gearRatio) {
        return new SpreaderEntry(
                conveyor,
                gate,
                Optional.of(Objects.requireNonNull(pulsesPerRevolution, "pulsesPerRevolution")),
                gearRatio,
                List.of(),
                Optional.empty());
    }

    /**
     * A spreader without a sensor, whose shaft is watched.
     *
     * @param conveyor the conveyor
     * @param gate the gate
     * @param gearRatio revolutions of the watched shaft per revolution of the conveyor's drive shaft
     * @return the spreader
     */
    public static SpreaderEntry watched(TypedEntry conveyor, TypedEntry gate, Quantity<Dimensionless> gearRatio) {
        return new SpreaderEntry(conveyor, gate, Optional.empty(), gearRatio, List.of(), Optional.empty());
    }

    /**
     * The same spreader with a table of control settings.
     *
     * @param table the rows
     * @return the spreader
     */
    public SpreaderEntry withControlSettings(List<OpenLoop.Row> table) {
        return new SpreaderEntry(conveyor, gate, pulsesPerRevolution, gearRatio, table, gateReading);
    }

    /**
     * The same spreader with a gate that is read as closely as stated.
     *
     * @param reading how far the gate may be off, either way
     * @return the spreader
     */
    public SpreaderEntry withGateReading(Quantity<?> reading) {
        return new SpreaderEntry(conveyor, gate, pulsesPerRevolution, gearRatio, controlSettings, Optional.of(reading));
    }

    /**
     * The conveyor.
     *
     * @param types the types that are known
     * @return the conveyor
     * @throws org.gritwright.units.InvalidInputException if the type is not known or doesn't accept the parameters
     */
    public Conveyor conveyor(TypeRegistry types) {
        return Conveyor.of(types, TypeId.of(conveyor.type(), conveyor.version()), conveyor.parameters());
    }

    /**
     * The gate.
     *
     * @param types the types that are known
     * @return the gate
     * @throws org.gritwright.units.InvalidInputException if the type is not known or doesn't accept the parameters
     */
    public Gate gate(TypeRegistry types) {
        return Gate.of(types, TypeId.of(gate.type(), gate.version()), gate.parameters());
    }

    /** The conveyor. */
    @Override
    public TypedEntry machine() {
        return conveyor;
    }

    @Override
    public SpreaderEntry withMachine(TypedEntry other) {
        return new SpreaderEntry(other, gate, pulsesPerRevolution, gearRatio, controlSettings, gateReading);
    }

    @Override
    public Metering.Kind kind() {
        return Metering.Kind.CONVEYOR;
    }

    @Override
    public Spreader metering(TypeRegistry types) {
        return new Spreader(conveyor(types), gate(types), feedback());
    }

    @Override
    public DriveFeedback feedback() {
        return ShaftFeedback.of(pulsesPerRevolution, gearRatio, controlSettings);
    }
}
