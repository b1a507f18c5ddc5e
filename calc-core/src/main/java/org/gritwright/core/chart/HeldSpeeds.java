package org.gritwright.core.chart;

import java.util.Optional;
import java.util.function.DoubleUnaryOperator;
import javax.measure.Quantity;
import javax.measure.quantity.Speed;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.units.Amounts;
import org.gritwright.units.check.Comparison;
import org.gritwright.units.check.Require;

/**
 * The road speeds that a card promises, rounded inward so that it never promises more than can be held: the lowest is rounded up,
 * the highest down, to the step of {@link CellValue} and, of a spreader that follows the truck, to whole miles or kilometers per hour,
 * because nobody reads a speedometer more finely (common practice, no source). Immutable, thread-safe, a value.
 *
 * @param lowest from which speed on; none where there is no lower limit
 * @param highest up to which speed, greater than zero and not below the lowest
 */
public record HeldSpeeds(Optional<Quantity<Speed>> lowest, Quantity<Speed> highest) {
    /**
     * Checks the speeds.
     *
     * @throws org.gritwright.units.InvalidInputException if one is out of its range
     */
    public HeldSpeeds {
        Require.given(HeldSpeeds.class, lowest, highest);
        Require.positive("highest road speed", Speed.class, highest);
        lowest.ifPresent(speed -> Require.atLeast("highest road speed", Speed.class, highest, speed));
    }

    /** None where rounding leaves nothing. */
    static Optional<HeldSpeeds> within(Optional<Measured<Speed>> lowest, Measured<Speed> highest) {
        return of(lowest.map(speed -> new CellValue<>(speed).up()), new CellValue<>(highest).down());
    }

    /** Inward to whole miles or kilometers per hour, as speedometers are read; none where that leaves nothing. */
    Optional<HeldSpeeds> whole() {
        return of(lowest.map(speed -> whole(speed, Math::ceil)), whole(highest, Math::floor));
    }

    private static Quantity<Speed> whole(Quantity<Speed> speed, DoubleUnaryOperator inward) {
        return Amounts.of(inward.applyAsDouble(speed.getValue().doubleValue()), speed.getUnit());
    }

    private static Optional<HeldSpeeds> of(Optional<Quantity<Speed>> from, Quantity<Speed> to) {
        double meters = Amounts.si(Speed.class, to);
        boolean isLeft = meters > 0
                && from.stream().noneMatch(speed -> Comparison.isAbove(Amounts.si(Speed.class, speed), meters));
        return isLeft ? Optional.of(new HeldSpeeds(from, to)) : Optional.empty();
    }

    /**
     * From where to where.
     *
     * @return for example "3 mi/h to 31 mi/h", or "up to 31 mi/h"
     */
    @Override
    public String toString() {
        return lowest.map(speed -> Amounts.format(speed) + " to ").orElse("up to ") + Amounts.format(highest);
    }
}
