package org.gritwright.core.observation;

import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Temperature;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.check.Require;
import org.gritwright.units.quantity.RotationalSpeed;

/**
 * What else was written down beside a catch. Only the moisture is computed with: where the mass of dry material
 * matters, it is that catch's moisture. Immutable, thread-safe, a value.
 *
 * @param engineSpeed engine speed
 * @param oilTemperature temperature of the hydraulic oil
 * @param hopperLevel how full the hopper was
 * @param moisture moisture of the material
 * @param moistureBasis what the moisture is a part of
 * @param scaleZeroed whether the scale was set to zero with the empty containers on it, so that tares of 0 are right
 */
public record Conditions(
        Optional<Quantity<RotationalSpeed>> engineSpeed,
        Optional<Quantity<Temperature>> oilTemperature,
        Optional<Quantity<Dimensionless>> hopperLevel,
        Optional<Quantity<Dimensionless>> moisture,
        Optional<Moisture.Basis> moistureBasis,
        boolean scaleZeroed) {

    /** Nothing else was written down. */
    public static final Conditions NONE = new Conditions(
            Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(), false);

    /**
     * Checks that a moisture has its basis.
     *
     * @throws InvalidInputException if one is given without the other
     */
    public Conditions {
        Require.given(Conditions.class, engineSpeed, oilTemperature, hopperLevel, moisture, moistureBasis);
        if (moisture.isPresent() != moistureBasis.isPresent()) {
            throw new InvalidInputException(
                    "moisture", "given together with its basis", moisture.isPresent() ? "without basis" : "missing");
        }
    }

    /**
     * The same conditions with an engine speed.
     *
     * @param speed engine speed
     * @return conditions with it
     */
    public Conditions withEngineSpeed(Quantity<RotationalSpeed> speed) {
        return new Conditions(Optional.of(speed), oilTemperature, hopperLevel, moisture, moistureBasis, scaleZeroed);
    }

    /**
     * The same conditions with a temperature of the oil.
     *
     * @param temperature temperature of the hydraulic oil
     * @return conditions with it
     */
    public Conditions withOilTemperature(Quantity<Temperature> temperature) {
        return new Conditions(engineSpeed, Optional.of(temperature), hopperLevel, moisture, moistureBasis, scaleZeroed);
    }

    /**
     * The same conditions with a hopper level.
     *
     * @param level how full the hopper was
     * @return conditions with it
     */
    public Conditions withHopperLevel(Quantity<Dimensionless> level) {
        return new Conditions(engineSpeed, oilTemperature, Optional.of(level), moisture, moistureBasis, scaleZeroed);
    }

    /**
     * The same conditions with a moisture.
     *
     * @param content moisture of the material
     * @param basis what it is a part of
     * @return conditions with it
     */
    public Conditions withMoisture(Quantity<Dimensionless> content, Moisture.Basis basis) {
        return new Conditions(
                engineSpeed, oilTemperature, hopperLevel, Optional.of(content), Optional.of(basis), scaleZeroed);
    }

    /**
     * The same conditions with a scale that was set to zero with the empty containers on it.
     *
     * @return conditions with it
     */
    public Conditions withScaleZeroed() {
        return new Conditions(engineSpeed, oilTemperature, hopperLevel, moisture, moistureBasis, true);
    }
}
