package org.gritwright.core.calibration;

import java.util.Optional;
import javax.measure.Quantity;
import org.gritwright.core.observation.CalibrationPoint;
import org.gritwright.units.check.Require;

/**
 * A calibration in force: the value that a display holds for a calibration point, since when, and in which of the controller's
 * slots. A truck has any number of them. Immutable, thread-safe, a value.
 *
 * @param point the calibration point it is for
 * @param factor the value that the display holds
 * @param displayStep the step in which the display takes that value, in its own unit; none if it takes any
 * @param since since when the display holds it; none if nobody says
 * @param slot where the controller keeps it; none if nobody says
 */
public record CalibrationInForce(
        CalibrationPoint point,
        CalibrationFactor factor,
        Optional<Quantity<?>> displayStep,
        Optional<Since> since,
        Optional<String> slot) {
    /**
     * Checks that value and drive go together.
     *
     * @throws org.gritwright.units.InvalidInputException if the factor doesn't go with drive or material, or the display's
     *     step is in another unit than the factor
     */
    public CalibrationInForce {
        Require.given(CalibrationInForce.class, point, factor, displayStep, since, slot);
        factor.kilogramsPerRevolution(point);
        displayStep.ifPresent(factor::roundedTo);
    }

    /**
     * A value in a display.
     *
     * @param point the calibration point it is for
     * @param factor the value
     * @param displayStep the step in which the display takes it; none if it takes any
     * @return the calibration in force; nobody says since when and in which slot
     * @throws org.gritwright.units.InvalidInputException if value, drive and step don't go together
     */
    public static CalibrationInForce of(
            CalibrationPoint point, CalibrationFactor factor, Optional<Quantity<?>> displayStep) {
        return new CalibrationInForce(point, factor, displayStep, Optional.empty(), Optional.empty());
    }

    /**
     * The discharge per revolution that the truck believes in.
     *
     * @return kilograms per revolution of the sensed shaft
     */
    public double kilogramsPerRevolution() {
        return factor.kilogramsPerRevolution(point);
    }

    /**
     * The same with another value.
     *
     * @param entered the value that the display holds now
     * @return the calibration in force
     * @throws org.gritwright.units.InvalidInputException if it needs a sensor that isn't there or is in another unit
     *     than the display's step
     */
    public CalibrationInForce withFactor(CalibrationFactor entered) {
        return new CalibrationInForce(point, entered, displayStep, since, slot);
    }

    /**
     * The same since another time.
     *
     * @param entered since when the display holds the value
     * @return the calibration in force
     */
    public CalibrationInForce since(Since entered) {
        return new CalibrationInForce(point, factor, displayStep, Optional.of(entered), slot);
    }

    /**
     * The same in a slot.
     *
     * @param name where the controller keeps it
     * @return the calibration in force
     */
    public CalibrationInForce inSlot(String name) {
        return new CalibrationInForce(point, factor, displayStep, since, Optional.of(name));
    }
}
