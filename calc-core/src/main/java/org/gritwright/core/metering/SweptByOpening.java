package org.gritwright.core.metering;

import java.util.function.DoubleUnaryOperator;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import org.gritwright.core.spi.GateShape;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.check.Comparison;

/**
 * The geometry g(h) of a spreader with an adjustable gate, compiled once: the volume swept per revolution of the sensed
 * shaft as a function of the gate opening. Immutable, as thread-safe as the types behind it.
 */
public final class SweptByOpening implements DoubleUnaryOperator {
    private final Conveyor conveyor;
    private final Gate gate;
    private final double gearRatio;
    private final GateShape.Adjustable<?> limits;
    private final double lowestSi;
    private final double highestSi;

    private SweptByOpening(Spreader spreader, GateShape.Adjustable<?> adjustable) {
        this.conveyor = spreader.conveyor();
        this.gate = spreader.gate();
        this.gearRatio = Amounts.si(Dimensionless.class, spreader.feedback().gearRatio());
        this.limits = adjustable;
        this.lowestSi = OpeningReading.si(adjustable.lowest());
        this.highestSi = OpeningReading.si(adjustable.highest());
    }

    static SweptByOpening of(Spreader spreader) {
        GateShape.Adjustable<?> adjustable = spreader.gate()
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
     * @return a length or a setting
     */
    public Quantity<?> lowest() {
        return limits.lowest();
    }

    /**
     * The largest opening that can be set.
     *
     * @return a length or a setting
     */
    public Quantity<?> highest() {
        return limits.highest();
    }

    /**
     * A gate opening as the number that this function takes.
     *
     * @param opening an opening
     * @return the opening in m, or the setting
     * @throws InvalidInputException if it is of another kind than the gate's, or outside the gate's limits
     */
    public double number(Quantity<?> opening) {
        return Gate.within(limits, opening);
    }

    /**
     * The swept volume.
     *
     * @param opening in m, or a setting, within the limits
     * @return m³ per revolution of the sensed shaft, 0 or more
     * @throws InvalidInputException if the opening is out of limits, or a type returns something impossible
     */
    @Override
    public double applyAsDouble(double opening) {
        if (Comparison.isAbove(lowestSi, opening) || Comparison.isAbove(opening, highestSi) || Double.isNaN(opening)) {
            throw new InvalidInputException(
                    "gate opening",
                    "within " + Amounts.format(lowest()) + " to " + Amounts.format(highest()),
                    String.valueOf(opening));
        }
        return conveyor.cubicMetresPerRevolution(gate.squareMetres(opening)) / gearRatio;
    }
}
