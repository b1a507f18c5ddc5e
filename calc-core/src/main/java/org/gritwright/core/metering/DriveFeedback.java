package org.gritwright.core.metering;

import java.io.Serializable;
import java.util.OptionalDouble;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;

/** How the revolutions of the conveyor's drive become known. Implementations are immutable, serializable values. */
public sealed interface DriveFeedback extends Serializable permits ShaftSensor, NoSensor, OpenLoop, MeterPulses {
    /**
     * Revolutions of the sensed (or watched) shaft per revolution of the conveyor's drive shaft.
     *
     * @return the gear ratio, greater than zero
     */
    Quantity<Dimensionless> gearRatio();

    /**
     * How many pulses are one revolution of the sensed shaft.
     *
     * @return pulses per revolution, greater than zero; none where nothing gives pulses
     */
    default OptionalDouble pulsesPerTurn() {
        return OptionalDouble.empty();
    }
}
