package org.gritwright.core.spreader;

import java.util.Map;
import java.util.Objects;
import javax.measure.Quantity;
import org.gritwright.core.spi.ConveyorType;
import org.gritwright.core.spi.FillLimits;
import org.gritwright.core.spi.Parameters;
import org.gritwright.core.spi.SweptVolume;
import org.gritwright.units.InvalidInputException;

/**
 * A conveyor of some type with its parameters. Immutable, thread-safe; equal when type id and parameters are.
 */
public final class Conveyor {
    private final ConveyorType type;
    private final Parameters parameters;
    private final SweptVolume sweptVolume;

    private Conveyor(ConveyorType type, Parameters parameters) {
        this.type = type;
        this.parameters = parameters;
        this.sweptVolume = given("swept volume", type.sweptVolume(parameters));
    }

    private <T> T given(String what, T fromType) {
        if (fromType == null) {
            throw new InvalidInputException(what + " of conveyor type " + type.id(), "given by the type", "null");
        }
        return fromType;
    }

    /**
     * A conveyor.
     *
     * @param type its type
     * @param given the type's parameters by name
     * @return the conveyor
     * @throws InvalidInputException if the type doesn't accept the parameters, or gives no swept volume
     */
    public static Conveyor of(ConveyorType type, Map<String, ? extends Quantity<?>> given) {
        return new Conveyor(type, Parameters.of(type.parameters(), given));
    }

    /**
     * The type.
     *
     * @return the type
     */
    public ConveyorType type() {
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
     * The type's limits of the apparent fill.
     *
     * @return the limits
     * @throws InvalidInputException if the type gives none
     */
    public FillLimits fillLimits() {
        return given("fill limits", type.fillLimits());
    }

    /**
     * The swept volume per revolution of the drive shaft.
     *
     * @param openAreaSquareMetres the gate's open area, in m²
     * @return m³ per revolution, 0 or more
     * @throws InvalidInputException if the type returns anything else; it names the type
     */
    double cubicMetresPerRevolution(double openAreaSquareMetres) {
        double volume = sweptVolume.cubicMetresPerRevolution(openAreaSquareMetres);
        if (!(volume >= 0 && volume <= Double.MAX_VALUE)) {
            throw new InvalidInputException(
                    "swept volume of conveyor type " + type.id(), "finite and 0 or more", volume + " m³/rev");
        }
        return volume;
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Conveyor that && type.id().equals(that.type.id()) && parameters.equals(that.parameters);
    }

    @Override
    public int hashCode() {
        return Objects.hash(type.id(), parameters);
    }

    /**
     * Type and parameters.
     *
     * @return for example "drag-chain, version 1 {chainPitch=2.25 in, teeth=7}"
     */
    @Override
    public String toString() {
        return type.id() + " " + parameters;
    }
}
