package org.gritwright.core.metering;

import java.util.Map;
import java.util.Optional;
import javax.measure.quantity.Area;
import org.gritwright.core.spi.GateShape;
import org.gritwright.core.spi.GateType;
import org.gritwright.core.spi.Setting;
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

    private Gate(GateType type, Map<String, ?> given) {
        super(type, given);
        this.shape = Border.given(type, "shape", type.shape(parameters()));
        Require.that(
                isSame(shape, Border.given(type, "shape", type.shape(parameters()))),
                "shape of type " + id(),
                "the same whenever asked",
                "a different one the second time");
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
     * @throws InvalidInputException if the type doesn't accept the parameters, or doesn't give a stable id and shape
     */
    public static Gate of(GateType type, Map<String, ?> given) {
        return new Gate(type, given);
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
            return squareMeters(setting) >= 0;
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
     *     type returns something impossible
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
        return Border.number(id(), "open area", "m²", adjustable.area().squareMeters(number));
    }
}
