package org.gritwright.core.calibration;

import java.util.Objects;
import java.util.Optional;
import javax.measure.Quantity;
import org.gritwright.core.metering.DriveFeedback;
import org.gritwright.core.metering.OpeningReading;
import org.gritwright.core.metering.ShaftCount;
import org.gritwright.core.observation.Coasting;
import org.gritwright.core.weighing.CaughtMass;

/**
 * A catch made to find the mass per revolution. Immutable, thread-safe, a value.
 *
 * @param caught what was caught
 * @param counted what was counted meanwhile
 * @param opening the gate opening, a length or the setting of a painted mark; none for a spreader without a gate to set
 * @param primed whether the conveyor was full of material up to its end before the count began
 * @param coasting what became of the run-down
 */
public record CalibrationCatch(
        CaughtMass caught, ShaftCount counted, Optional<Quantity<?>> opening, boolean primed, Coasting coasting) {
    /**
     * Checks the values.
     *
     * @throws org.gritwright.units.InvalidInputException if the opening is negative, or neither a length nor a bare number
     */
    public CalibrationCatch {
        Objects.requireNonNull(caught, "caught");
        Objects.requireNonNull(counted, "counted");
        Objects.requireNonNull(coasting, "coasting");
        opening.ifPresent(OpeningReading::check);
    }

    /**
     * A catch from rest to rest with a primed conveyor, at a gate opening.
     *
     * @param caught what was caught
     * @param counted what was counted
     * @param opening the gate opening
     * @return the catch
     */
    public static CalibrationCatch at(Quantity<?> opening, CaughtMass caught, ShaftCount counted) {
        return new CalibrationCatch(caught, counted, Optional.of(opening), true, Coasting.IN_BOTH);
    }

    /**
     * A catch from rest to rest with a primed conveyor, on a spreader without a gate to set.
     *
     * @param caught what was caught
     * @param counted what was counted
     * @return the catch
     */
    public static CalibrationCatch ungated(CaughtMass caught, ShaftCount counted) {
        return new CalibrationCatch(caught, counted, Optional.empty(), true, Coasting.IN_BOTH);
    }

    /** What the rounding of scale and count makes of the mass per revolution, relative; an unknown count adds nothing. */
    public double relativeResolution(DriveFeedback feedback) {
        return Math.hypot(
                caught.roundingKilograms() / caught.kilograms(),
                counted.uncertaintyRevolutions(feedback).orElse(0) / counted.revolutions(feedback));
    }
}
