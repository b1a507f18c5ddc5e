package org.gritwright.core.metering;

import java.io.Serializable;
import java.util.function.DoubleUnaryOperator;
import javax.measure.quantity.Dimensionless;
import org.gritwright.core.spi.GateShape;
import org.gritwright.core.spi.Setting;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;

/**
 * The geometry g(h) of a spreader with an adjustable gate, compiled once: the volume swept per revolution of the sensed
 * shaft as a function of the gate's setting. Immutable, thread-safe if the types behind it are, serializable as a
 * {@link Spreader} is.
 */
public final class SweptByOpening implements DoubleUnaryOperator, Serializable {
    private static final long serialVersionUID = 1L;

    private final Conveyor conveyor;
    private final Gate gate;
    private final double gearRatio;
    private final GateShape.Adjustable limits;

    private SweptByOpening(Spreader spreader, GateShape.Adjustable adjustable) {
        this.conveyor = spreader.conveyor();
        this.gate = spreader.gate();
        this.gearRatio = Amounts.si(Dimensionless.class, spreader.feedback().gearRatio());
        this.limits = adjustable;
    }

    static SweptByOpening of(Spreader spreader) {
        GateShape.Adjustable adjustable = spreader.gate()
                .adjustable()
                .filter(shape -> spreader.conveyor().isMeteredByGate())
                .orElseThrow(() -> new InvalidInputException(
                        "spreader",
                        "one with a conveyor that an adjustable gate meters",
                        spreader.conveyor().id() + " with " + spreader.gate().id()));
        return new SweptByOpening(spreader, adjustable);
    }

    /**
     * The smallest opening that can be set.
     *
     * @return a setting on the gate's scale
     */
    public Setting lowest() {
        return limits.lowest();
    }

    /**
     * The largest opening that can be set.
     *
     * @return a setting on the gate's scale
     */
    public Setting highest() {
        return limits.highest();
    }

    /**
     * A setting of the gate as the number that this function takes.
     *
     * @param setting a setting
     * @return the height in m, the mark's number, or the percentage as a ratio
     * @throws InvalidInputException if it is on another scale than the gate's, or outside the gate's limits
     */
    public double number(Setting setting) {
        return limits.number(setting);
    }

    /**
     * The swept volume.
     *
     * @param number the height in m, the mark's number, or the percentage as a ratio, within the limits
     * @return m³ per revolution of the sensed shaft, 0 or more
     * @throws InvalidInputException if the number is out of limits, or a type returns something impossible
     */
    @Override
    public double applyAsDouble(double number) {
        return conveyor.cubicMetersPerRevolution(gate.squareMeters(limits, limits.number(number))) / gearRatio;
    }
}
