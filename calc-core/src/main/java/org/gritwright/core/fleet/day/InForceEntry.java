package org.gritwright.core.fleet.day;

import java.time.LocalDate;
import java.util.Optional;
import javax.measure.Quantity;

/**
 * The calibration in force when the day began, as it was written down.
 *
 * @param value the value that the display held
 * @param displayStep the step in which the display takes that value
 * @param dated the day the value was found
 * @param material the name of the material it holds for
 * @param opening the gate opening it holds for
 * @param slot where the controller keeps it
 */
public record InForceEntry(
        Quantity<?> value,
        Optional<Quantity<?>> displayStep,
        LocalDate dated,
        String material,
        Optional<Quantity<?>> opening,
        Optional<String> slot) {}
