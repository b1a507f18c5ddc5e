package org.gritwright.core.fleet.day;

import java.util.List;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import org.gritwright.core.metering.DriveFeedback;
import org.gritwright.core.metering.Metering;
import org.gritwright.core.metering.OpenLoop;
import org.gritwright.core.spi.TypeRegistry;
import org.gritwright.units.quantity.PulsesPerRevolution;

/**
 * What meters a material on a truck, as it was written down: a conveyor with its gate, a pump, or a flow meter. Nothing but presence
 * is checked here. Implementations are immutable, thread-safe values.
 */
public sealed interface MeteringEntry permits SpreaderEntry, PumpEntry, FlowMeterEntry {
    /**
     * What meters: machines of one type are compared with each other.
     *
     * @return the conveyor, pump or flow meter
     */
    TypedEntry machine();

    /**
     * The same with another machine.
     *
     * @param other the conveyor, pump or flow meter
     * @return the entry
     */
    MeteringEntry withMachine(TypedEntry other);

    /**
     * Whether it meters a liquid.
     *
     * @return true for a pump and a flow meter
     */
    default boolean isForLiquids() {
        return kind() != Metering.Kind.CONVEYOR;
    }

    /**
     * What it is.
     *
     * @return the kind
     */
    Metering.Kind kind();

    /**
     * The whole.
     *
     * @param types the types that are known
     * @return what meters the material
     * @throws org.gritwright.units.InvalidInputException if a part can't be made, or the parts don't go together
     */
    Metering metering(TypeRegistry types);

    /**
     * How the drive's revolutions become known.
     *
     * @return a sensor, a table of control settings, or neither; of a flow meter, its pulses
     * @throws org.gritwright.units.InvalidInputException if there are both, or a number is out of its range
     */
    DriveFeedback feedback();

    /**
     * The gear ratio.
     *
     * @return revolutions of the sensed or watched shaft per revolution of the drive shaft of the conveyor or pump; 1 for a flow meter
     */
    Quantity<Dimensionless> gearRatio();

    /**
     * The sensor of the shaft.
     *
     * @return pulses per revolution of the sensed shaft; none without a sensor, and of a flow meter
     */
    default Optional<Quantity<PulsesPerRevolution>> pulsesPerRevolution() {
        return Optional.empty();
    }

    /**
     * The table of a drive without feedback.
     *
     * @return control settings and loaded shaft speeds; empty if there is none
     */
    default List<OpenLoop.Row> controlSettings() {
        return List.of();
    }

    /**
     * How far a gate that is set by reading it may be off, either way.
     *
     * @return the reading; none if nobody knows, or there is no gate
     */
    default Optional<Quantity<?>> gateReading() {
        return Optional.empty();
    }
}
