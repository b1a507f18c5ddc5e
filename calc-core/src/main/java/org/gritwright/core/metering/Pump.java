package org.gritwright.core.metering;

import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import javax.measure.Quantity;
import org.gritwright.core.spi.FillLimits;
import org.gritwright.core.spi.PumpOutput;
import org.gritwright.core.spi.PumpType;
import org.gritwright.core.spi.TypeId;
import org.gritwright.core.spi.TypeRegistry;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.UnitSymbol;
import org.gritwright.units.check.Require;
import org.gritwright.units.quantity.FlowRate;
import org.gritwright.units.quantity.RotationalSpeed;
import org.gritwright.units.quantity.VolumePerRevolution;

/**
 * A pump of some type with its parameters, which doses a liquid by the turns of its shaft. It keeps what the type answered when
 * it was made, and not the type. Immutable, thread-safe; equal when type id and parameters are; serializable as a {@link
 * Spreader} is.
 */
public final class Pump extends Equipment {
    private static final long serialVersionUID = 1L;

    private final FillLimits fillLimits;
    private final PumpOutput output;
    private final double displacement;
    private final double lowest;
    private final double highest;

    private Pump(PumpType type, TypeId id, Map<String, ?> given) {
        super(type, id, given);
        this.fillLimits = Border.given(id, "fill limits", type::fillLimits);
        this.output = Border.same(id, "output", () -> type.output(parameters()), Pump::isSame);
        this.displacement = Amounts.si(VolumePerRevolution.class, output.displacement());
        this.lowest = Amounts.si(RotationalSpeed.class, output.lowestSpeed());
        this.highest = output.highestSpeed()
                .map(speed -> Amounts.si(RotationalSpeed.class, speed))
                .orElse(Double.POSITIVE_INFINITY);
    }

    /** All but the volumes: whether a function answers the same whenever asked is for the conformance kit to see. */
    private static boolean isSame(PumpOutput one, PumpOutput other) {
        return one.displacement().equals(other.displacement())
                && one.lowestSpeed().equals(other.lowestSpeed())
                && one.highestSpeed().equals(other.highestSpeed());
    }

    /**
     * A pump.
     *
     * @param type its type
     * @param given the type's parameters by name: a quantity, or a list of quantities where the parameter is a list
     * @return the pump
     * @throws InvalidInputException if the type doesn't accept the parameters, or doesn't give a stable id, fill limits and a
     *     stable output; whatever else the type throws is the exception's cause
     */
    public static Pump of(PumpType type, Map<String, ?> given) {
        return new Pump(type, Border.id(type), given);
    }

    /**
     * A pump of a registered type, which isn't asked for its id again.
     *
     * @param types the types that are known
     * @param id the id of one of them
     * @param given the type's parameters by name: a quantity, or a list of quantities where the parameter is a list
     * @return the pump
     * @throws InvalidInputException if the type is not known, and as for {@link #of(PumpType, Map)}
     */
    public static Pump of(TypeRegistry types, TypeId id, Map<String, ?> given) {
        Objects.requireNonNull(given, "given");
        PumpType type = types.pump(Objects.requireNonNull(id, "id"));
        return Require.naming("pump", () -> new Pump(type, id, given));
    }

    /**
     * The type's limits of the volumetric efficiency.
     *
     * @return the limits
     */
    public FillLimits fillLimits() {
        return fillLimits;
    }

    /**
     * What a revolution of the pump's shaft would give if nothing slipped back.
     *
     * @return the displacement, as the type gives it
     */
    public Quantity<VolumePerRevolution> displacement() {
        return output.displacement();
    }

    /**
     * The lowest speed of the pump's shaft at which its volume is known.
     *
     * @return 0 or more
     */
    public Quantity<RotationalSpeed> lowestSpeed() {
        return output.lowestSpeed();
    }

    /**
     * The highest speed of the pump's shaft at which its volume is known.
     *
     * @return the speed; none if the type knows none
     */
    public Optional<Quantity<RotationalSpeed>> highestSpeed() {
        return output.highestSpeed();
    }

    /**
     * The displacement as a number.
     *
     * @return m³ per revolution of the pump's shaft, more than 0
     */
    public double cubicMetersPerRevolution() {
        return displacement;
    }

    /**
     * The volume per revolution of the pump's shaft at a speed.
     *
     * @param revolutionsPerSecond the speed of the pump's shaft, in rev/s
     * @return m³ per revolution, more than 0
     * @throws InvalidInputException if the speed is not within the limits, or the type returns anything else or throws; it
     *     names the type
     */
    public double cubicMetersPerRevolution(double revolutionsPerSecond) {
        boolean isWithin = revolutionsPerSecond >= lowest && revolutionsPerSecond <= highest;
        return Border.positive(
                id(),
                "pumped volume",
                "m³/rev",
                output.volume()::cubicMetersPerRevolution,
                isWithin ? revolutionsPerSecond : output.number(revolutionsPerSecond));
    }

    /**
     * The flow at a speed of the pump's shaft.
     *
     * @param speed the speed, within the limits
     * @return speed × volume per revolution, in the unit system of the displacement
     * @throws InvalidInputException if the speed is not within the limits, or the type returns something impossible or throws
     */
    public Quantity<FlowRate> flow(Quantity<RotationalSpeed> speed) {
        double revolutionsPerSecond = output.number(speed);
        return Amounts.ofSi(
                revolutionsPerSecond * cubicMetersPerRevolution(revolutionsPerSecond),
                UnitSymbol.tradeUnit(FlowRate.class, output.displacement()));
    }
}
