package org.gritwright.core.observation;

import java.util.Objects;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import org.gritwright.core.uncertainty.Distribution;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.check.Require;

/**
 * What a caller knows of a catch's errors that readings don't show. They are the same in every catch made in the same way,
 * so repeats don't shrink them. Immutable, thread-safe, a value.
 *
 * @param greatestSpillage the largest part of the discharge that may have missed the containers, 0 or more and below
 *     100 %; the caught mass is corrected for half of it, and uncertain by the other half
 * @param greatestTransient how far a start-up that is still in the catch may move its mass per revolution, either way, 0
 *     or more and below 100 %
 * @param moisture of the material, where the mass of dry material matters
 * @param repeatability how catches scatter, from experience; used where fewer than three catches tell
 */
public record CatchAllowances(
        Quantity<Dimensionless> greatestSpillage,
        Quantity<Dimensionless> greatestTransient,
        Optional<Moisture> moisture,
        Optional<Repeatability> repeatability) {

    /** Nothing but what the readings show. */
    public static final CatchAllowances NONE = new CatchAllowances(
            Amounts.of(0, SpreadingUnits.PERCENT),
            Amounts.of(0, SpreadingUnits.PERCENT),
            Optional.empty(),
            Optional.empty());

    /**
     * Checks the values.
     *
     * @throws org.gritwright.units.InvalidInputException if one is out of its range
     */
    public CatchAllowances {
        Require.share("greatest spillage", greatestSpillage);
        Require.share("greatest transient", greatestTransient);
        Objects.requireNonNull(moisture, "moisture");
        Objects.requireNonNull(repeatability, "repeatability");
    }

    /**
     * What a caught mass has to be multiplied by to be what was discharged, if half of the greatest spillage was lost.
     *
     * @return 1 or more: 1 ÷ (1 − p/2)
     */
    public double spillageFactor() {
        return 1 / (1 - Amounts.si(Dimensionless.class, greatestSpillage) / 2);
    }

    /**
     * The relative standard uncertainty of the discharged mass by the spillage: rectangular, half as wide as it.
     *
     * @return a ratio, 0 or more
     */
    public double spillageUncertainty() {
        double half = Amounts.si(Dimensionless.class, greatestSpillage) / 2;
        return Distribution.RECTANGULAR.standardUncertainty(half) * spillageFactor();
    }

    /**
     * The relative standard uncertainty of the mass per revolution by a transient: rectangular.
     *
     * @return a ratio, 0 or more
     */
    public double transientUncertainty() {
        return Distribution.RECTANGULAR.standardUncertainty(Amounts.si(Dimensionless.class, greatestTransient));
    }

    /**
     * The relative standard uncertainty of the dry mass by the moisture: rectangular.
     *
     * @return a ratio, 0 or more
     */
    public double moistureUncertainty() {
        return Distribution.RECTANGULAR.standardUncertainty(
                moisture.map(Moisture::relativeHalfWidth).orElse(0.0));
    }
}
