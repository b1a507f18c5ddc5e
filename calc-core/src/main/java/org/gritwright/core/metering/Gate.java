package org.gritwright.core.metering;

import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Area;
import javax.measure.quantity.Length;
import org.gritwright.core.spi.GateShape;
import org.gritwright.core.spi.GateType;
import org.gritwright.core.spi.Parameters;
import org.gritwright.core.spi.TypeId;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.check.Require;

/**
 * A gate of some type with its parameters. Immutable, thread-safe; equal when type id and parameters are.
 */
public final class Gate {
    private final GateType type;
    private final TypeId id;
    private final Parameters parameters;
    private final GateShape shape;
    private final GateShape shapeAgain;

    private Gate(GateType type, Map<String, ?> given) {
        this.type = type;
        this.id = Border.id(type);
        this.parameters = Border.parameters(type, given);
        this.shape = Border.given(type, "shape", type.shape(parameters));
        this.shapeAgain = Border.given(type, "shape", type.shape(parameters));
        if (!isSame(shape, shapeAgain)) {
            throw new InvalidInputException(
                    "shape of type " + id, "the same whenever asked", "another the second time");
        }
    }

    /** All but the open areas, which are compared where they are asked for. */
    private static boolean isSame(GateShape one, GateShape other) {
        if (one instanceof GateShape.Adjustable<?> first && other instanceof GateShape.Adjustable<?> second) {
            return first.kind().equals(second.kind())
                    && first.lowest().equals(second.lowest())
                    && first.highest().equals(second.highest())
                    && first.closed().equals(second.closed());
        }
        return one.equals(other);
    }

    /**
     * A gate.
     *
     * @param type its type
     * @param given the type's parameters by name: a quantity, or a list of quantities where the parameter is a list
     * @return the gate
     * @throws InvalidInputException if the type doesn't accept the parameters, or doesn't give a stable id and shape
     */
    public static Gate of(GateType type, Map<String, ?> given) {
        return new Gate(type, given);
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
     * The type's id.
     *
     * @return the id that the type gave when this gate was made
     */
    public TypeId id() {
        return id;
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
        return shape instanceof GateShape.Adjustable<?>;
    }

    /**
     * Whether there is a gate at all.
     *
     * @return false for a trough that fills itself
     */
    public boolean exists() {
        return !(shape instanceof GateShape.None);
    }

    /**
     * The adjustable shape.
     *
     * @return limits, closed position and open area; none for a gate that can't be set
     */
    public Optional<GateShape.Adjustable<?>> adjustable() {
        return shape instanceof GateShape.Adjustable<?> adjustable ? Optional.of(adjustable) : Optional.empty();
    }

    /**
     * Whether an opening can be set at all on this gate.
     *
     * @param opening an opening
     * @return true if the gate is adjustable and the opening of its kind and within its limits
     */
    public boolean accepts(Quantity<?> opening) {
        try {
            return isAdjustable() && squareMetres(Optional.of(opening)) >= 0;
        } catch (InvalidInputException e) {
            return false;
        }
    }

    /**
     * The cross-section at an opening.
     *
     * @param opening the opening; none for a gate that can't be set
     * @return m², 0 or more; 0 where there is no gate
     * @throws InvalidInputException if the opening is missing, out of place, of another kind or out of limits, or the
     *     type returns something impossible
     */
    double squareMetres(Optional<Quantity<?>> opening) {
        if (shape instanceof GateShape.Adjustable<?> adjustable) {
            Quantity<?> given = opening.orElseThrow(
                    () -> new InvalidInputException("gate opening", "given for gate type " + id, "nothing"));
            return squareMetres(within(adjustable, given));
        }
        if (opening.isPresent()) {
            throw new InvalidInputException(
                    "gate opening", "left out for gate type " + id, Amounts.format(opening.get()));
        }
        return shape instanceof GateShape.Fixed fixed ? Amounts.si(Area.class, fixed.area()) : 0;
    }

    /** The cross-section of an adjustable gate at an opening within its limits: in m, or a setting. */
    double squareMetres(double openingWithinLimits) {
        return Border.number(
                id,
                "open area",
                "m²",
                (GateShape.Adjustable<?>) shape,
                (GateShape.Adjustable<?>) shapeAgain,
                adjustable -> adjustable.area().squareMetres(openingWithinLimits));
    }

    /** The opening in m, or the setting, checked for its kind and the limits. */
    static <Q extends Quantity<Q>> double within(GateShape.Adjustable<Q> adjustable, Quantity<?> opening) {
        boolean byLength = adjustable.kind().equals(Length.class);
        if (OpeningReading.isLength(opening) != byLength) {
            throw new InvalidInputException(
                    "gate opening",
                    byLength ? "a length" : "the setting of a painted mark, a bare number",
                    Amounts.format(opening));
        }
        @SuppressWarnings("unchecked") // compared just now
        Quantity<Q> typed = (Quantity<Q>) opening;
        return Amounts.si(
                adjustable.kind(),
                Require.within("gate opening", adjustable.kind(), typed, adjustable.lowest(), adjustable.highest()));
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Gate that && id.equals(that.id) && parameters.equals(that.parameters);
    }

    @Override
    public int hashCode() {
        return Objects.hash(id, parameters);
    }

    /**
     * Type and parameters.
     *
     * @return for example "sliding-gate, version 1 {deadOpening=0 mm, highestOpening=1 m, width=22 in}"
     */
    @Override
    public String toString() {
        return id + " " + parameters;
    }
}
