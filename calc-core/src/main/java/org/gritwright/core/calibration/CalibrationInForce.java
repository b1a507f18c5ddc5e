package org.gritwright.core.calibration;

import java.util.Objects;
import java.util.Optional;
import javax.measure.Quantity;
import org.gritwright.core.metering.Spreader;
import org.gritwright.core.observation.Material;

/**
 * The calibration that the truck works with: for which spreader, material and gate opening, and its value. Immutable,
 * thread-safe, a value.
 *
 * @param spreader the spreader
 * @param material the material
 * @param opening the gate opening; none for a spreader without a gate to set
 * @param factor the value that the display holds
 * @param displayStep the step in which the display takes that value, in its own unit; none if it takes any
 */
public record CalibrationInForce(
        Spreader spreader,
        Material material,
        Optional<Quantity<?>> opening,
        CalibrationFactor factor,
        Optional<Quantity<?>> displayStep) {
    /**
     * Checks that value, drive and gate go together.
     *
     * @throws org.gritwright.units.InvalidInputException if the factor needs a sensor that isn't there, the opening is
     *     missing, out of place or out of limits, or the display's step is in another unit than the factor
     */
    public CalibrationInForce {
        Objects.requireNonNull(material, "material");
        factor.kilogramsPerRevolution(spreader.feedback());
        spreader.sweptCubicMetresPerRevolution(opening);
        displayStep.ifPresent(factor::roundedTo);
    }

    /**
     * The discharge per revolution that the truck believes in.
     *
     * @return kilograms per revolution of the sensed shaft
     */
    public double kilogramsPerRevolution() {
        return factor.kilogramsPerRevolution(spreader.feedback());
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
        return new CalibrationInForce(spreader, material, opening, entered, displayStep);
    }
}
