package org.gritwright.core.range;

import java.io.Serializable;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Temperature;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.check.Require;
import org.gritwright.units.check.SerialForm;
import org.gritwright.units.quantity.RotationalSpeed;

/**
 * The steady shaft speed at one command. Immutable, thread-safe, a value.
 *
 * @param command the command
 * @param speed the speed of the sensed or watched shaft once it was steady; 0 where it stood still
 * @param readings of how many readings the speed is the mean, 1 or more: so much it weighs
 * @param swing how far the speed swung while it was read, highest less lowest reading, if that was noted
 * @param oilTemperature the temperature of the oil, if it was noted
 * @param engineSpeed the speed of the engine, if it was noted
 */
public record DrivePoint(
        Command command,
        Quantity<RotationalSpeed> speed,
        int readings,
        Optional<Quantity<RotationalSpeed>> swing,
        Optional<Quantity<Temperature>> oilTemperature,
        Optional<Quantity<RotationalSpeed>> engineSpeed)
        implements Serializable {
    private static final int MOST_READINGS = 1_000_000;

    /**
     * Checks the values.
     *
     * @throws InvalidInputException if one is out of its range
     */
    public DrivePoint {
        Require.given(DrivePoint.class, command, speed, swing, oilTemperature, engineSpeed);
        Require.notNegative("shaft speed", RotationalSpeed.class, speed);
        Require.that(readings >= 1 && readings <= MOST_READINGS, "readings", "within 1 to " + MOST_READINGS, readings);
        swing.ifPresent(s -> Require.notNegative("swing of the shaft speed", RotationalSpeed.class, s));
        oilTemperature.ifPresent(t -> Require.notNegative("oil temperature", Temperature.class, t));
        engineSpeed.ifPresent(s -> Require.notNegative("engine speed", RotationalSpeed.class, s));
    }

    /**
     * One reading.
     *
     * @param command the command
     * @param speed the steady shaft speed; 0 where it stood still
     * @return the point
     * @throws InvalidInputException if the speed is negative
     */
    public static DrivePoint of(Command command, Quantity<RotationalSpeed> speed) {
        return new DrivePoint(command, speed, 1, Optional.empty(), Optional.empty(), Optional.empty());
    }

    /**
     * The same point as the mean of several readings.
     *
     * @param count how many, 1 or more
     * @return the point
     * @throws InvalidInputException if there is none
     */
    public DrivePoint withReadings(int count) {
        return new DrivePoint(command, speed, count, swing, oilTemperature, engineSpeed);
    }

    /**
     * The same point with a swing of the speed.
     *
     * @param width highest less lowest reading
     * @return the point
     * @throws InvalidInputException if it is negative
     */
    public DrivePoint withSwing(Quantity<RotationalSpeed> width) {
        return new DrivePoint(command, speed, readings, Optional.of(width), oilTemperature, engineSpeed);
    }

    /**
     * The same point with a temperature of the oil.
     *
     * @param temperature the temperature
     * @return the point
     */
    public DrivePoint withOilTemperature(Quantity<Temperature> temperature) {
        return new DrivePoint(command, speed, readings, swing, Optional.of(temperature), engineSpeed);
    }

    /**
     * The same point with a speed of the engine.
     *
     * @param turning the engine's speed
     * @return the point
     * @throws InvalidInputException if it is negative
     */
    public DrivePoint withEngineSpeed(Quantity<RotationalSpeed> turning) {
        return new DrivePoint(command, speed, readings, swing, oilTemperature, Optional.of(turning));
    }

    /**
     * Whether the shaft turned.
     *
     * @return true but for a speed of 0
     */
    public boolean isTurning() {
        return revolutionsPerSecond() > 0;
    }

    double revolutionsPerSecond() {
        return Amounts.si(RotationalSpeed.class, speed);
    }

    private Object writeReplace() {
        return SerialForm.of(this);
    }
}
