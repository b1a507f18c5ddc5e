package org.gritwright.core.metering;

import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Area;
import javax.measure.quantity.Dimensionless;
import org.gritwright.core.spi.FillLimits;
import org.gritwright.core.spi.Setting;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.check.Require;

/**
 * The equipment on the truck: a conveyor, a gate, and how the drive's revolutions become known. Immutable, thread-safe,
 * a value.
 *
 * <p>Serializable, so that a data engine can ship it to its workers. The serial form is promised within one version of this
 * library only; to keep a spreader, write a document. The functions of its types go with it, so where a type comes from a
 * plug-in, the plug-in's jar must be there on both sides.
 *
 * @param conveyor the conveyor
 * @param gate the gate
 * @param feedback the drive's feedback
 */
public record Spreader(Conveyor conveyor, Gate gate, DriveFeedback feedback) implements Metering {
    /**
     * Checks that the parts fit.
     *
     * @throws InvalidInputException if a gate meters this type of conveyor and there is none
     */
    public Spreader {
        Require.given(Spreader.class, conveyor, gate, feedback);
        Require.that(
                !conveyor.isMeteredByGate() || gate.exists(),
                "gate type",
                "one with an opening, as a gate meters conveyor type " + conveyor.id(),
                gate.id());
    }

    /**
     * The cross-section that the gate leaves.
     *
     * @param setting the gate's setting; {@link Setting#none()} for a gate that can't be set
     * @return the open area, 0 or more; 0 where there is no gate
     * @throws InvalidInputException if the setting is missing, out of place, on another scale or out of limits, or the
     *     type returns something impossible
     */
    public Quantity<Area> openArea(Setting setting) {
        return Amounts.of(gate.squareMeters(setting), SpreadingUnits.SQUARE_METER);
    }

    /**
     * The volume swept per revolution of the sensed or watched shaft.
     *
     * @param setting the gate's setting; {@link Setting#none()} for a gate that can't be set
     * @return m³ per revolution of that shaft, greater than zero
     * @throws InvalidInputException if the setting is missing, out of place, on another scale or out of limits, or a type
     *     returns something impossible
     */
    @Override
    public double sweptCubicMetersPerRevolution(Setting setting) {
        double swept = conveyor.cubicMetersPerRevolution(gate.squareMeters(setting));
        if (!(swept > 0)) {
            throw setting.quantity()
                    .map(given -> new InvalidInputException(
                            Setting.FIELD, "one at which the conveyor sweeps a volume", Amounts.format(given)))
                    .orElseGet(() -> new InvalidInputException(
                            "swept volume of type " + conveyor.id(), "greater than 0", swept + " m³/rev"));
        }
        return swept / Amounts.si(Dimensionless.class, feedback.gearRatio());
    }

    @Override
    public Kind kind() {
        return Kind.CONVEYOR;
    }

    @Override
    public boolean accepts(Setting setting) {
        return gate.accepts(setting);
    }

    @Override
    public boolean isSettable() {
        return gate.isAdjustable();
    }

    @Override
    public FillLimits fillLimits() {
        return conveyor.fillLimits();
    }

    @Override
    public Optional<Quantity<Area>> meteringArea(Setting setting) {
        return conveyor.isMeteredByGate() ? Optional.of(openArea(setting)) : Optional.empty();
    }

    @Override
    public boolean isMeteredBySetting() {
        return conveyor.isMeteredByGate() && gate.isAdjustable();
    }

    /**
     * The geometry over the gate's settings.
     *
     * @return the compiled function from setting to swept volume
     * @throws InvalidInputException if there is no adjustable gate, or none meters the conveyor
     */
    @Override
    public SweptByOpening sweptByOpening() {
        return SweptByOpening.of(this);
    }

    /**
     * Conveyor, gate and feedback.
     *
     * @return for example "auger, version 1 {…}; no-gate, version 1 {}; sensor with 60 pulse/rev, gear ratio 1"
     */
    @Override
    public String toString() {
        return conveyor + "; " + gate + "; " + feedback;
    }
}
