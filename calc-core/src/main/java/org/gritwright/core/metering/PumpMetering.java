package org.gritwright.core.metering;

import java.util.Optional;
import javax.measure.quantity.Dimensionless;
import org.gritwright.core.spi.FillLimits;
import org.gritwright.core.spi.Setting;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.check.Comparison;
import org.gritwright.units.check.Require;
import org.gritwright.units.quantity.RotationalSpeed;

/**
 * A pump that meters a liquid by its turns, and how they become known. A drive without sensor and without flow meter is
 * open loop. Immutable, thread-safe, a value.
 *
 * @param pump the pump
 * @param feedback the drive's feedback; revolutions are those of the sensed or watched shaft, and the gear ratio leads to the
 *     pump's own
 */
public record PumpMetering(Pump pump, DriveFeedback feedback) implements Metering {
    /**
     * Checks the feedback.
     *
     * @throws InvalidInputException if it is a flow meter's, which meters by itself: {@link FlowMetering}
     */
    public PumpMetering {
        Require.given(PumpMetering.class, pump, feedback);
        Require.that(
                !(feedback instanceof MeterPulses),
                "feedback of a pump",
                "that of its shaft, as a flow meter meters by itself",
                "a flow meter's");
    }

    @Override
    public Kind kind() {
        return Kind.PUMP;
    }

    /**
     * The pump's displacement per revolution of the sensed or watched shaft: what it would move without slip.
     *
     * @param setting {@link Setting#none()}
     * @return m³ per revolution of that shaft, greater than zero
     * @throws InvalidInputException if there is a setting
     */
    @Override
    public double sweptCubicMetersPerRevolution(Setting setting) {
        NoSetting.require(setting, "a pump");
        return pump.cubicMetersPerRevolution() / Amounts.si(Dimensionless.class, feedback.gearRatio());
    }

    @Override
    public Optional<Boolean> isGoodFor(double cubicMetersPerSecond, double revolutionsPerSecond) {
        double turnsPerSecond = revolutionsPerSecond / Amounts.si(Dimensionless.class, feedback.gearRatio());
        double highest = pump.highestSpeed()
                .map(speed -> Amounts.si(RotationalSpeed.class, speed))
                .orElse(Double.POSITIVE_INFINITY);
        return Optional.of(!Comparison.isAbove(Amounts.si(RotationalSpeed.class, pump.lowestSpeed()), turnsPerSecond)
                && !Comparison.isAbove(turnsPerSecond, highest));
    }

    @Override
    public FillLimits fillLimits() {
        return pump.fillLimits();
    }

    /**
     * Pump and feedback.
     *
     * @return for example "gear-pump, version 1 {…}; sensor with 60 pulse/rev, gear ratio 1"
     */
    @Override
    public String toString() {
        return pump + "; " + feedback;
    }
}
