package org.gritwright.core.metering;

import java.util.OptionalDouble;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.check.Require;
import org.gritwright.units.quantity.PulsesPerRevolution;

/**
 * A pulse sensor on a shaft that turns with the conveyor.
 *
 * @param pulsesPerRevolution pulses per revolution of the sensed shaft, greater than zero
 * @param gearRatio revolutions of the sensed shaft per revolution of the conveyor's drive shaft, greater than zero
 */
public record ShaftSensor(Quantity<PulsesPerRevolution> pulsesPerRevolution, Quantity<Dimensionless> gearRatio)
        implements DriveFeedback {
    /**
     * Checks the values.
     *
     * @throws org.gritwright.units.InvalidInputException if one is not greater than zero
     */
    public ShaftSensor {
        Require.positive("pulses per revolution", PulsesPerRevolution.class, pulsesPerRevolution);
        Require.positive("gear ratio", Dimensionless.class, gearRatio);
    }

    /**
     * A sensor on the conveyor's own drive shaft.
     *
     * @param pulsesPerRevolution pulses per revolution
     * @return the sensor, with gear ratio 1
     */
    public static ShaftSensor of(Quantity<PulsesPerRevolution> pulsesPerRevolution) {
        return new ShaftSensor(pulsesPerRevolution, Amounts.of(1, SpreadingUnits.ONE));
    }

    @Override
    public OptionalDouble pulsesPerTurn() {
        return OptionalDouble.of(Amounts.si(PulsesPerRevolution.class, pulsesPerRevolution));
    }

    /**
     * Pulses and gear ratio.
     *
     * @return for example "sensor with 60 pulse/rev, gear ratio 1"
     */
    @Override
    public String toString() {
        return "sensor with " + Amounts.format(pulsesPerRevolution) + ", gear ratio " + Amounts.format(gearRatio);
    }
}
