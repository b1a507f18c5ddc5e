package org.gritwright.core.fleet.day;

import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Temperature;
import org.gritwright.core.range.Command;
import org.gritwright.core.range.DrivePoint;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.check.Require;
import org.gritwright.units.quantity.RotationalSpeed;

/**
 * The steady shaft speed at one command, as it was written down. Nothing but presence and the readings is checked here. Immutable, thread-safe, a
 * value.
 *
 * @param command what the valve was told: a percentage, a current or a bare number
 * @param shaftSpeed the steady speed of the sensed or watched shaft; 0 where it stood still
 * @param readings of how many readings that is the mean; none for one
 * @param slowest the lowest reading, where the speed swung; only with the highest
 * @param fastest the highest reading
 * @param oilTemperature the temperature of the oil, if it was noted
 * @param engineSpeed the speed of the engine, if it was noted
 */
public record DrivePointEntry(
        Quantity<?> command,
        Quantity<RotationalSpeed> shaftSpeed,
        Optional<Integer> readings,
        Optional<Quantity<RotationalSpeed>> slowest,
        Optional<Quantity<RotationalSpeed>> fastest,
        Optional<Quantity<Temperature>> oilTemperature,
        Optional<Quantity<RotationalSpeed>> engineSpeed) {
    private static final int MOST_READINGS = 9999;

    /**
     * Checks that nothing is null.
     *
     * @throws InvalidInputException if there are no readings, or more than 9999
     */
    public DrivePointEntry {
        Require.given(
                DrivePointEntry.class, command, shaftSpeed, readings, slowest, fastest, oilTemperature, engineSpeed);
        readings.ifPresent(
                n -> Require.that(n >= 1 && n <= MOST_READINGS, "readings", "from 1 to " + MOST_READINGS, n));
    }

    /**
     * One reading of which only command and speed are written down.
     *
     * @param command what the valve was told
     * @param shaftSpeed the steady shaft speed
     * @return the entry
     */
    public static DrivePointEntry of(Quantity<?> command, Quantity<RotationalSpeed> shaftSpeed) {
        return new DrivePointEntry(
                command,
                shaftSpeed,
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty());
    }

    /**
     * The point to compute with.
     *
     * @return the point
     * @throws InvalidInputException if a value is out of its range, or one end of a swing is missing
     */
    public DrivePoint point() {
        if (slowest.isPresent() != fastest.isPresent()) {
            throw new InvalidInputException(
                    "swing of the shaft speed",
                    "given as the slowest and the fastest reading",
                    slowest.isPresent() ? "the slowest only" : "the fastest only");
        }
        DrivePoint bare = new DrivePoint(
                Command.of(command), shaftSpeed, readings.orElse(1), Optional.empty(), oilTemperature, engineSpeed);
        return slowest.map(low -> bare.withSwing(swing(low, fastest.orElseThrow())))
                .orElse(bare);
    }

    private static Quantity<RotationalSpeed> swing(Quantity<RotationalSpeed> low, Quantity<RotationalSpeed> high) {
        Require.notNegative("slowest reading", RotationalSpeed.class, low);
        Require.atLeast("fastest reading", RotationalSpeed.class, high, low);
        return Amounts.ofSi(
                Amounts.si(RotationalSpeed.class, high) - Amounts.si(RotationalSpeed.class, low), high.getUnit());
    }
}
