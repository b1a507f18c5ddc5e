package org.gritwright.core.metering;

import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import javax.measure.quantity.Area;
import org.gritwright.core.spi.GateShape;
import org.gritwright.core.spi.GateType;
import org.gritwright.core.spi.Setting;
import org.gritwright.core.spi.TypeId;
import org.gritwright.core.spi.TypeRegistry;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.check.Require;

/**
 * A gate of some type with its parameters. It keeps what the type answered when it was made, and not the type. Immutable,
 * thread-safe; equal when type id and parameters are; serializable as a {@link Spreader} is.
 */
public final class Gate extends Equipment {
    private static final long serialVersionUID = 1L;

    private final GateShape shape;

    private Gate(GateType type, TypeId id, Map<String, ?> given) {
        super(type, id, given);
        this.shape = Border.same(id, "shape", () -> type.shape(parameters()), Gate::isSame);
    }

    /** All but the open areas: whether a function answers the same whenever asked is for the conformance kit to see. */
    private static boolean isSame(GateShape one, GateShape other) {
        if (one instanceof GateShape.Adjustable first && other instanceof GateShape.Adjustable second) {
            return first.lowest().equals(second.lowest())
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
     * @throws InvalidInputException if the type doesn't accept the parameters, or doesn't give a stable id and shape; whatever
     *     else the type throws is the exception's cause
     */
    public static Gate of(GateType type, Map<String, ?> given) {
        return new Gate(type, Border.id(type), given);
    }

    /**
     * A gate of a registered type, which isn't asked for its id again.
     *
     * @param types the types that are known
     * @param id the id of one of them
     * @param given the type's parameters by name: a quantity, or a list of quantities where the parameter is a list
     * @return the gate
     * @throws InvalidInputException if the type is not known, and as for {@link #of(GateType, Map)}
     */
    public static Gate of(TypeRegistry types, TypeId id, Map<String, ?> given) {
        Objects.requireNonNull(given, "given");
        GateType type = types.gate(Objects.requireNonNull(id, "id"));
        return Require.naming("gate", () -> new Gate(type, id, given));
    }

    /**
     * Whether there is an opening to set.
     *
     * @return true if catches must state the gate opening
     */
    public boolean isAdjustable() {
        return shape instanceof GateShape.Adjustable;
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
    public Optional<GateShape.Adjustable> adjustable() {
        return shape instanceof GateShape.Adjustable adjustable ? Optional.of(adjustable) : Optional.empty();
    }

    /**
     * Whether this gate can be set so.
     *
     * @param setting a setting
     * @return true if it is on the gate's scale and within its limits; for a gate that can't be set, true if there is
     *     nothing to set
     */
    public boolean accepts(Setting setting) {
        try {
            squareMeters(setting);
            return true;
        } catch (InvalidInputException e) {
            return false;
        }
    }

    /**
     * The cross-section at a setting.
     *
     * @param setting the setting; {@link Setting#none()} for a gate that can't be set
     * @return m², 0 or more; 0 where there is no gate
     * @throws InvalidInputException if the setting is missing, out of place, on another scale or out of limits, or the
     *     type returns something impossible or throws
     */
    double squareMeters(Setting setting) {
        boolean isGiven = setting.scale() != Setting.Scale.NONE;
        if (shape instanceof GateShape.Adjustable adjustable) {
            if (!isGiven) {
                throw new InvalidInputException(Setting.FIELD, "given for gate type " + id(), "nothing");
            }
            return squareMeters(adjustable, adjustable.number(setting));
        }
        if (isGiven) {
            throw new InvalidInputException(
                    Setting.FIELD,
                    "left out for gate type " + id(),
                    setting.quantity().map(Amounts::format).orElseThrow());
        }
        return shape instanceof GateShape.Fixed fixed ? Amounts.si(Area.class, fixed.area()) : 0;
    }

    /** The cross-section of this gate's adjustable shape at a number within its limits. */
    double squareMeters(GateShape.Adjustable adjustable, double number) {
        return Border.number(id(), "open area", "m²", adjustable.area()::squareMeters, number);
    }
}
