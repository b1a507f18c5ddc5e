package org.gritwright.core.metering;

import java.util.Objects;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Area;
import javax.measure.quantity.Dimensionless;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.SpreadingUnits;

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
     * @throws InvalidInputException if a gate meters this type of conveyor and there is none
     */
    public Spreader {
        Objects.requireNonNull(feedback, "feedback");
        if (conveyor.isMeteredByGate() && !gate.exists()) {
            throw new InvalidInputException(
                    "gate type",
                    "one with an opening, as a gate meters conveyor type " + conveyor.id(),
                    gate.id().toString());
        }
    }

    /**
     * The cross-section that the gate leaves.
     *
     * @param opening the gate opening; none for a gate that can't be set
     * @return the open area, 0 or more; 0 where there is no gate
     * @throws InvalidInputException if the opening is missing, out of place or out of limits, or the type returns
     *     something impossible
     */
    public Quantity<Area> openArea(Optional<Quantity<?>> opening) {
        return Amounts.of(gate.squareMetres(opening), SpreadingUnits.SQUARE_METRE);
    }

    /**
     * The volume swept per revolution of the sensed or watched shaft.
     *
     * @param opening the gate opening; none for a gate that can't be set
     * @return m³ per revolution of that shaft, greater than zero
     * @throws InvalidInputException if the opening is missing, out of place or out of limits, or a type returns
     *     something impossible
     */
    public double sweptCubicMetresPerRevolution(Optional<Quantity<?>> opening) {
        double swept = conveyor.cubicMetresPerRevolution(gate.squareMetres(opening));
        if (!(swept > 0)) {
            throw opening.map(o -> new InvalidInputException(
                            "gate opening", "one at which the conveyor sweeps a volume", Amounts.format(o)))
                    .orElseGet(() -> new InvalidInputException(
                            "swept volume of type " + conveyor.id(), "greater than 0", swept + " m³/rev"));
        }
        return swept / Amounts.si(Dimensionless.class, feedback.gearRatio());
    }

    /**
     * The geometry over the gate's openings.
     *
     * @return the compiled function from opening to swept volume
     * @throws InvalidInputException if there is no adjustable gate, or none meters the conveyor
     */
    public SweptByOpening sweptByOpening() {
        return SweptByOpening.of(this);
    }
}
