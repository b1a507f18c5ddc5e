package org.gritwright.core.observation;

import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Temperature;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.quantity.RotationalSpeed;

/**
 * What else was written down beside a catch. Of it only the moisture counts: where the mass of dry material matters, it is
 * that catch's moisture. Immutable, thread-safe, a value.
 *
 * @param engineSpeed engine speed
 * @param oilTemperature temperature of the hydraulic oil
 * @param hopperLevel how full the hopper was
 * @param moisture moisture of the material
 * @param moistureBasis what the moisture is a part of
 */
public record Conditions(
        Optional<Quantity<RotationalSpeed>> engineSpeed,
        Optional<Quantity<Temperature>> oilTemperature,
        Optional<Quantity<Dimensionless>> hopperLevel,
        Optional<Quantity<Dimensionless>> moisture,
        Optional<Moisture.Basis> moistureBasis) {

    /** Nothing else was written down. */
    public static final Conditions NONE =
            new Conditions(Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty());

    /**
     * Checks that a moisture has its basis.
     *
     * @throws InvalidInputException if one is given without the other
     */
    public Conditions {
        if (moisture.isPresent() != moistureBasis.isPresent()) {
            throw new InvalidInputException(
                    "moisture", "given together with its basis", moisture.isPresent() ? "without basis" : "missing");
        }
    }
}
