package org.gritwright.core.metering;

import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.check.Require;

/**
 * No pulse sensor: revolutions of a shaft in view are counted by eye, or known from its speed and the time.
 *
 * @param gearRatio revolutions of the watched shaft per revolution of the conveyor's drive shaft, greater than zero
 */
public record NoSensor(Quantity<Dimensionless> gearRatio) implements DriveFeedback {
    /**
     * Checks the value.
     *
     * @throws org.gritwright.units.InvalidInputException if it is not greater than zero
     */
    public NoSensor {
        Require.positive("gear ratio", Dimensionless.class, gearRatio);
    }

    /**
     * The conveyor's own drive shaft is watched.
     *
     * @return no sensor, with gear ratio 1
     */
    public static NoSensor onDriveShaft() {
        return new NoSensor(Amounts.of(1, SpreadingUnits.ONE));
    }

    /**
     * The gear ratio.
     *
     * @return for example "no sensor, gear ratio 1"
     */
    @Override
    public String toString() {
        return "no sensor, gear ratio " + Amounts.format(gearRatio);
    }
}
