package org.gritwright.core.metering;

import java.io.Serializable;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Area;
import org.gritwright.core.spi.FillLimits;
import org.gritwright.core.spi.Setting;
import org.gritwright.units.InvalidInputException;

/**
 * What doses a material on a truck: a conveyor with its gate, a pump, a flow meter. Use it wherever a calibration, a catch or a
 * prediction doesn't care which kind it is; what differs between kinds is behavior of theirs. Pumps and flow meters have nothing
 * to set.
 *
 * <p>Implementations are immutable values, thread-safe if the types behind them are.
 */
public sealed interface Metering extends Serializable permits Spreader, PumpMetering, FlowMetering {
    /**
     * How the drive's revolutions become known.
     *
     * @return the drive's feedback
     */
    DriveFeedback feedback();

    /** What can meter a material. */
    enum Kind {
        /** A conveyor, with a gate or without. */
        CONVEYOR,
        /** A pump, whose turns are counted. */
        PUMP,
        /** A flow meter, whose pulses are counted in the place of turns. */
        FLOW_METER
    }

    /**
     * What it is.
     *
     * @return the kind
     */
    Kind kind();

    /**
     * Whether it meters a liquid.
     *
     * @return true for pumps and flow meters
     */
    default boolean isForLiquids() {
        return kind() != Kind.CONVEYOR;
    }

    /**
     * Whether what is counted are turns of a shaft.
     *
     * @return false for a flow meter, whose pulses stand in the place of revolutions
     */
    default boolean hasShaft() {
        return kind() != Kind.FLOW_METER;
    }

    /**
     * The volume swept per revolution of the sensed or watched shaft; of a flow meter, the volume that a pulse stands for.
     *
     * @param setting where the gate stands; {@link Setting#none()} where there is nothing to set
     * @return m³ per revolution of that shaft, greater than zero
     * @throws org.gritwright.units.InvalidInputException if the setting is missing, out of place, on another scale, out of
     *     limits or closed, or a type returns something impossible
     */
    double sweptCubicMetersPerRevolution(Setting setting);

    /**
     * Whether a setting can be set.
     *
     * @param setting a setting
     * @return true if there is something to set, on this scale and within its limits
     */
    default boolean accepts(Setting setting) {
        return false;
    }

    /**
     * Whether there is something to set, so that every catch has to say where it stood.
     *
     * @return true for an adjustable gate
     */
    default boolean isSettable() {
        return false;
    }

    /**
     * Whether a pump or a flow meter is good for a steady flow: within the speeds or flows at which its volume is known.
     *
     * @param cubicMetersPerSecond the flow
     * @param revolutionsPerSecond the speed of the sensed or watched shaft that goes with it; a flow meter doesn't ask for it
     * @return whether it is within them, limits included; none of a conveyor, which has none
     */
    default Optional<Boolean> isGoodFor(double cubicMetersPerSecond, double revolutionsPerSecond) {
        return Optional.empty();
    }

    /**
     * The usual and the possible apparent fill.
     *
     * @return the limits of the type
     */
    FillLimits fillLimits();

    /**
     * The cross-section of the gate that meters the material.
     *
     * @param setting where the gate stands
     * @return the open area; none where no gate meters
     * @throws org.gritwright.units.InvalidInputException if the setting is missing, out of place or out of limits
     */
    default Optional<Quantity<Area>> meteringArea(Setting setting) {
        return Optional.empty();
    }

    /**
     * Whether the discharge depends on the setting, so that a curve over settings makes sense.
     *
     * @return true for a conveyor that an adjustable gate meters
     */
    default boolean isMeteredBySetting() {
        return false;
    }

    /**
     * The geometry over the settings.
     *
     * @return the compiled function from setting to swept volume
     * @throws org.gritwright.units.InvalidInputException if the discharge doesn't depend on a setting
     */
    default SweptByOpening sweptByOpening() {
        throw new InvalidInputException("metering", "one with a conveyor that an adjustable gate meters", toString());
    }
}
