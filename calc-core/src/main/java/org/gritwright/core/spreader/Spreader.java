package org.gritwright.core.spreader;

import java.util.Objects;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Length;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;

/**
 * What stands on the truck: a conveyor, a gate, and how the drive's turning becomes known. Immutable, thread-safe, a
 * value.
 *
 * @param conveyor the conveyor
 * @param gate the gate
 * @param feedback the drive's feedback
 */
public record Spreader(Conveyor conveyor, Gate gate, DriveFeedback feedback) {
    /**
     * Checks that the parts fit.
     *
     * @throws InvalidInputException if a gate meters this type of conveyor and there is no opening to set
     */
    public Spreader {
        Objects.requireNonNull(feedback, "feedback");
        if (conveyor.type().meteredByGate() && !gate.isAdjustable()) {
            throw new InvalidInputException(
                    "gate type",
                    "one with an opening, as a gate meters conveyor type "
                            + conveyor.type().id(),
                    gate.type().id().toString());
        }
    }

    /**
     * The volume swept per revolution of the sensed or watched shaft.
     *
     * @param opening the gate opening; none for a gate that can't be set
     * @return m³ per revolution of that shaft, greater than zero
     * @throws InvalidInputException if the opening is missing, out of place or out of limits, or a type returns
     *     something impossible
     */
    public double sweptCubicMetresPerRevolution(Optional<Quantity<Length>> opening) {
        double swept = conveyor.cubicMetresPerRevolution(gate.squareMetres(opening));
        if (!(swept > 0)) {
            throw opening.map(o -> new InvalidInputException(
                            "gate opening", "one at which the conveyor sweeps a volume", Amounts.format(o)))
                    .orElseGet(() -> new InvalidInputException(
                            "swept volume of conveyor type " + conveyor.type().id(),
                            "greater than 0",
                            swept + " m³/rev"));
        }
        return swept / Amounts.si(Dimensionless.class, feedback.gearRatio());
    }
}
