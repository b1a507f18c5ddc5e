package org.gritwright.core.metering;

import java.util.Map;
import java.util.Objects;
import org.gritwright.core.spi.ConveyorType;
import org.gritwright.core.spi.FillLimits;
import org.gritwright.core.spi.SweptVolume;
import org.gritwright.core.spi.TypeId;
import org.gritwright.core.spi.TypeRegistry;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.check.Require;

/**
 * A conveyor of some type with its parameters. It keeps what the type answered when it was made, and not the type. Immutable,
 * thread-safe; equal when type id and parameters are; serializable as a {@link Spreader} is.
 */
public final class Conveyor extends Equipment {
    private static final long serialVersionUID = 1L;

    private final boolean meteredByGate;
    private final FillLimits fillLimits;
    private final SweptVolume sweptVolume;

    private Conveyor(ConveyorType type, TypeId id, Map<String, ?> given) {
        super(type, id, given);
        this.meteredByGate = Border.given(id, "metering by a gate", type::meteredByGate);
        this.fillLimits = Border.given(id, "fill limits", type::fillLimits);
        this.sweptVolume = Border.given(id, "swept volume", () -> type.sweptVolume(parameters()));
    }

    /**
     * A conveyor.
     *
     * @param type its type
     * @param given the type's parameters by name: a quantity, or a list of quantities where the parameter is a list
     * @return the conveyor
     * @throws InvalidInputException if the type doesn't accept the parameters, or doesn't give a stable id, fill limits and a
     *     swept volume; whatever else the type throws is the exception's cause
     */
    public static Conveyor of(ConveyorType type, Map<String, ?> given) {
        return new Conveyor(type, Border.id(type), given);
    }

    /**
     * A conveyor of a registered type, which isn't asked for its id again.
     *
     * @param types the types that are known
     * @param id the id of one of them
     * @param given the type's parameters by name: a quantity, or a list of quantities where the parameter is a list
     * @return the conveyor
     * @throws InvalidInputException if the type is not known, and as for {@link #of(ConveyorType, Map)}
     */
    public static Conveyor of(TypeRegistry types, TypeId id, Map<String, ?> given) {
        Objects.requireNonNull(given, "given");
        ConveyorType type = types.conveyor(Objects.requireNonNull(id, "id"));
        return Require.naming("conveyor", () -> new Conveyor(type, id, given));
    }

    /**
     * Whether a gate meters this conveyor.
     *
     * @return true if the swept volume depends on the gate's open area
     */
    public boolean isMeteredByGate() {
        return meteredByGate;
    }

    /**
     * The type's limits of the apparent fill.
     *
     * @return the limits
     */
    public FillLimits fillLimits() {
        return fillLimits;
    }

    /**
     * The swept volume per revolution of the drive shaft.
     *
     * @param openAreaSquareMeters the gate's open area, in m²
     * @return m³ per revolution, 0 or more
     * @throws InvalidInputException if the type returns anything else or throws; it names the type
     */
    double cubicMetersPerRevolution(double openAreaSquareMeters) {
        return Border.number(
                id(), "swept volume", "m³/rev", sweptVolume::cubicMetersPerRevolution, openAreaSquareMeters);
    }
}
