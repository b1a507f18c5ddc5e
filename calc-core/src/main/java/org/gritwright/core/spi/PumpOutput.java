package org.gritwright.core.spi;

import java.io.Serializable;
import java.util.Optional;
import javax.measure.Quantity;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.check.Require;
import org.gritwright.units.check.SerialForm;
import org.gritwright.units.quantity.RotationalSpeed;
import org.gritwright.units.quantity.VolumePerRevolution;

/**
 * What a pump gives: its displacement, from which to which shaft speed it is known, and the volume per revolution there.
 * Between rest and the lowest speed nothing is guessed. Immutable, thread-safe.
 *
 * @param displacement what a revolution would give if nothing slipped back; catches are plausible or not by this
 * @param lowestSpeed the lowest shaft speed at which the volume is known, 0 or more
 * @param highestSpeed the highest one, greater than 0 and not below the lowest; none if the type knows none
 * @param volume the volume per revolution as a function of the speed of the pump's shaft
 */
public record PumpOutput(
        Quantity<VolumePerRevolution> displacement,
        Quantity<RotationalSpeed> lowestSpeed,
        Optional<Quantity<RotationalSpeed>> highestSpeed,
        PumpedVolume volume)
        implements Serializable {
    /**
     * Checks displacement and limits.
     *
     * @throws org.gritwright.units.InvalidInputException if the displacement is not greater than zero, or the limits are
     *     negative or the wrong way round
     */
    public PumpOutput {
        Require.given(PumpOutput.class, displacement, lowestSpeed, highestSpeed, volume);
        displacement = Limits.copy(Require.positive("displacement", VolumePerRevolution.class, displacement));
        Limits<RotationalSpeed> limits = limits(lowestSpeed, highestSpeed);
        lowestSpeed = limits.lowest();
        highestSpeed = limits.highest();
    }

    /**
     * A pump that gives its displacement at any speed.
     *
     * @param displacement the volume per revolution
     * @return the output, without limits
     * @throws org.gritwright.units.InvalidInputException if it is not greater than zero
     */
    public static PumpOutput constant(Quantity<VolumePerRevolution> displacement) {
        double cubicMetersPerRevolution = Amounts.si(
                VolumePerRevolution.class, Require.positive("displacement", VolumePerRevolution.class, displacement));
        return of(displacement, revolutionsPerSecond -> cubicMetersPerRevolution);
    }

    /**
     * A pump whose volume per revolution is known at any speed.
     *
     * @param displacement what a revolution would give if nothing slipped back
     * @param volume the volume per revolution as a function of the speed in rev/s
     * @return the output, without limits
     * @throws org.gritwright.units.InvalidInputException if the displacement is not greater than zero
     */
    public static PumpOutput of(Quantity<VolumePerRevolution> displacement, PumpedVolume volume) {
        return new PumpOutput(
                displacement, Amounts.of(0, SpreadingUnits.REVOLUTION_PER_MINUTE), Optional.empty(), volume);
    }

    /**
     * The same output, known from a speed on.
     *
     * @param lowest the lowest shaft speed, 0 or more
     * @return the output
     * @throws org.gritwright.units.InvalidInputException if the speed is negative or above the highest
     */
    public PumpOutput from(Quantity<RotationalSpeed> lowest) {
        return new PumpOutput(displacement, lowest, highestSpeed, volume);
    }

    /**
     * The same output, known between two speeds only.
     *
     * @param lowest the lowest shaft speed, 0 or more
     * @param highest the highest shaft speed, greater than 0 and not below the lowest
     * @return the output
     * @throws org.gritwright.units.InvalidInputException if the speeds are negative or the wrong way round
     */
    public PumpOutput within(Quantity<RotationalSpeed> lowest, Quantity<RotationalSpeed> highest) {
        return new PumpOutput(displacement, lowest, Optional.of(highest), volume);
    }

    /**
     * A shaft speed as the number that {@link #volume()} takes.
     *
     * @param speed a speed within the limits
     * @return rev/s; never outside the limits, not even by the rounding of a unit's conversion
     * @throws org.gritwright.units.InvalidInputException if the speed is not within the limits
     */
    public double number(Quantity<RotationalSpeed> speed) {
        return limits(lowestSpeed, highestSpeed).number(speed);
    }

    /**
     * A number within the limits, or off them by no more than rounding, brought within.
     *
     * @param revolutionsPerSecond a shaft speed, in rev/s
     * @return the number, never outside the limits
     * @throws org.gritwright.units.InvalidInputException if it is farther outside than by rounding, or not finite
     */
    public double number(double revolutionsPerSecond) {
        return limits(lowestSpeed, highestSpeed).number(revolutionsPerSecond);
    }

    private static Limits<RotationalSpeed> limits(
            Quantity<RotationalSpeed> lowest, Optional<Quantity<RotationalSpeed>> highest) {
        return new Limits<>("shaft speed", RotationalSpeed.class, lowest, highest);
    }

    private Object writeReplace() {
        return SerialForm.of(this);
    }

    /**
     * Displacement and limits.
     *
     * @return for example "16.9 mL/rev from 60 rev/min to 600 rev/min"
     */
    @Override
    public String toString() {
        return Amounts.format(displacement) + " " + limits(lowestSpeed, highestSpeed);
    }
}
