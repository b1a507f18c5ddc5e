package org.gritwright.core.curve;

import java.util.Objects;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Time;
import org.gritwright.core.calibration.CalibrationCatch;
import org.gritwright.core.metering.ShaftCount;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.check.Comparison;
import org.gritwright.units.check.Require;
import org.gritwright.units.quantity.RotationalSpeed;

/**
 * A calibration catch whose shaft speed is known, because its time is. Immutable, thread-safe, a value.
 *
 * @param made the catch
 * @param runTime how long the shaft turned at a steady speed, greater than zero
 */
public record TimedCatch(CalibrationCatch made, Quantity<Time> runTime) {
    /**
     * Checks the time.
     *
     * @throws InvalidInputException if it isn't greater than zero, or is another than the time that the count states
     */
    public TimedCatch {
        Require.given(TimedCatch.class, made, runTime);
        double seconds = Amounts.si(Time.class, Require.positive("run time", Time.class, runTime));
        timeOf(made.counted()).ifPresent(stated -> {
            double counted = Amounts.si(Time.class, stated);
            Require.that(
                    !Comparison.isAbove(seconds, counted) && !Comparison.isAbove(counted, seconds),
                    "run time",
                    "that of the count, " + Amounts.format(stated),
                    runTime);
        });
    }

    /**
     * A catch whose count states a time: a shaft speed or a control setting, and how long.
     *
     * @param made the catch
     * @return the same with that time
     * @throws InvalidInputException if turns or pulses were counted, which say nothing of the time
     */
    public static TimedCatch of(CalibrationCatch made) {
        return new TimedCatch(
                made,
                timeOf(Objects.requireNonNull(made, "made").counted())
                        .orElseThrow(() -> new InvalidInputException(
                                "run time",
                                "given, as the count doesn't state it",
                                made.counted().toString())));
    }

    private static Optional<Quantity<Time>> timeOf(ShaftCount counted) {
        if (counted instanceof ShaftCount.SpeedTimesTime known) {
            return Optional.of(known.time());
        }
        return counted instanceof ShaftCount.SettingTimesTime known ? Optional.of(known.time()) : Optional.empty();
    }

    /**
     * The speed of the sensed or watched shaft.
     *
     * @return revolutions ÷ time, in revolutions per minute
     */
    public Quantity<RotationalSpeed> shaftSpeed() {
        return Amounts.ofSi(revolutionsPerSecond(), SpreadingUnits.REVOLUTION_PER_MINUTE);
    }

    double revolutionsPerSecond() {
        return made.revolutions() / Amounts.si(Time.class, runTime);
    }
}
