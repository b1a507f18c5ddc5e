package org.gritwright.core.metering;

import java.util.OptionalDouble;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;

/**
 * The pulses of a flow meter, which count volume and no shaft: one pulse stands where one revolution stands otherwise.
 */
public record MeterPulses() implements DriveFeedback {
    @Override
    public Quantity<Dimensionless> gearRatio() {
        return Amounts.of(1, SpreadingUnits.ONE);
    }

    @Override
    public OptionalDouble pulsesPerTurn() {
        return OptionalDouble.of(1);
    }

    /**
     * What it is.
     *
     * @return "flow meter"
     */
    @Override
    public String toString() {
        return "flow meter";
    }
}
