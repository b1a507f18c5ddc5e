package org.gritwright.core.spreader;

import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Length;
import org.gritwright.core.measurement.Comparison;
import org.gritwright.core.measurement.Require;
import org.gritwright.core.spi.GateOpening;
import org.gritwright.core.spi.GateType;
import org.gritwright.core.spi.Parameters;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;

/**
 * A gate of some type with its parameters. Immutable, thread-safe; equal when type id and parameters are.
 */
public final class Gate {
    private final GateType type;
    private final Parameters parameters;
    private final Optional<GateOpening> opening;

    private Gate(GateType type, Parameters parameters) {
        this.type = type;
        this.parameters = parameters;
        this.opening = type.opening(parameters);
        // A foreign type may return anything.
        if (opening == null) {
            throw new InvalidInputException("opening of gate type " + type.id(), "given by the type", "null");
        }
    }

    /**
     * A gate.
     *
     * @param type its type
     * @param given the type's parameters by name
     * @return the gate
     * @throws InvalidInputException if the type doesn't accept the parameters, or gives no opening
     */
    public static Gate of(GateType type, Map<String, ? extends Quantity<?>> given) {
        return new Gate(type, Parameters.of(type.parameters(), given));
    }

    /**
     * The type.
     *
     * @return the type
     */
    public GateType type() {
        return type;
    }

    /**
     * The checked parameters.
     *
     * @return the parameters, defaults filled in
     */
    public Parameters parameters() {
        return parameters;
    }

    /**
     * Whether there is an opening to set.
     *
     * @return true if catches must state the gate opening
     */
    public boolean isAdjustable() {
        return opening.isPresent();
    }

    /**
     * Whether an opening can be set at all on this gate.
     *
     * @param gateOpening an opening
     * @return true if the gate is adjustable and the opening within its limits
     */
    public boolean accepts(Quantity<Length> gateOpening) {
        double metres = Amounts.si(Length.class, gateOpening);
        return opening.isPresent()
                && !Comparison.isAbove(Amounts.si(Length.class, opening.get().lowest()), metres)
                && !Comparison.isAbove(
                        metres, Amounts.si(Length.class, opening.get().highest()));
    }

    /**
     * The cross-section at an opening.
     *
     * @param gateOpening the opening; none for a gate that can't be set
     * @return m², 0 or more; 0 for a gate that can't be set
     * @throws InvalidInputException if the opening is missing, out of place or out of limits, or the type returns
     *     something impossible
     */
    double squareMetres(Optional<Quantity<Length>> gateOpening) {
        if (opening.isEmpty()) {
            if (gateOpening.isPresent()) {
                throw new InvalidInputException(
                        "gate opening", "left out for gate type " + type.id(), Amounts.format(gateOpening.get()));
            }
            return 0;
        }
        Quantity<Length> given = gateOpening.orElseThrow(
                () -> new InvalidInputException("gate opening", "given for gate type " + type.id(), "nothing"));
        Require.within(
                "gate opening",
                Length.class,
                given,
                opening.get().lowest(),
                opening.get().highest());
        double area = opening.get().area().squareMetres(Amounts.si(Length.class, given));
        if (!(area >= 0 && area <= Double.MAX_VALUE)) {
            throw new InvalidInputException(
                    "open area of gate type " + type.id(), "finite and 0 or more", area + " m²");
        }
        return area;
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Gate that && type.id().equals(that.type.id()) && parameters.equals(that.parameters);
    }

    @Override
    public int hashCode() {
        return Objects.hash(type.id(), parameters);
    }

    /**
     * Type and parameters.
     *
     * @return for example "sliding-gate, version 1 {highestOpening=1 m, width=22 in}"
     */
    @Override
    public String toString() {
        return type.id() + " " + parameters;
    }
}
