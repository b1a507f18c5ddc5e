package org.gritwright.core.calibration;

import org.gritwright.core.metering.ShaftCount;
import org.gritwright.core.observation.CalibrationPoint;
import org.gritwright.core.observation.Coasting;
import org.gritwright.core.observation.Observation;
import org.gritwright.core.weighing.Caught;
import org.gritwright.units.check.Require;

/**
 * A catch made to find the mass per revolution. Immutable, thread-safe, a value.
 *
 * @param observation the catch, with its count
 * @param primed whether the conveyor was full of material up to its end before the count began
 * @param coasting what became of the run-down
 */
public record CalibrationCatch(Observation observation, boolean primed, Coasting coasting) {
    /**
     * Checks the values.
     *
     * @throws org.gritwright.units.InvalidInputException if nothing was counted
     */
    public CalibrationCatch {
        Require.given(CalibrationCatch.class, observation, coasting);
        Require.that(observation.counted().isPresent(), "count of a calibration catch", "given", "nothing");
    }

    /**
     * A catch from rest to rest with a primed conveyor.
     *
     * @param observation the catch, with its count
     * @return the catch
     * @throws org.gritwright.units.InvalidInputException if nothing was counted
     */
    public static CalibrationCatch of(Observation observation) {
        return new CalibrationCatch(observation, true, Coasting.IN_BOTH);
    }

    /**
     * The calibration point.
     *
     * @return material, metering and setting
     */
    public CalibrationPoint point() {
        return observation.point();
    }

    /**
     * What was caught.
     *
     * @return the amount
     */
    public Caught caught() {
        return observation.caught();
    }

    /**
     * What was counted meanwhile.
     *
     * @return the count
     */
    public ShaftCount counted() {
        return observation.counted().orElseThrow();
    }

    /**
     * The revolutions of the sensed or watched shaft.
     *
     * @return revolutions, greater than zero
     */
    public double revolutions() {
        return observation.revolutions().orElseThrow();
    }

    /**
     * What the rounding of scale and count contributes to the uncertainty of the mass per revolution.
     *
     * @return standard uncertainty, relative; an unknown count adds nothing
     */
    public double relativeResolution() {
        return Math.hypot(
                observation.roundingKilograms() / observation.kilograms(),
                observation.uncertaintyRevolutions().orElse(0) / revolutions());
    }
}
