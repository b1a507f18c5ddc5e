package org.gritwright.core.observation;

import static java.util.Optional.empty;

import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import org.gritwright.core.uncertainty.Distribution;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.check.Require;

/**
 * What a caller knows about errors of a catch that the readings don't show. They are the same in every catch made in
 * the same way, so repeats don't shrink them. Immutable, thread-safe, a value.
 *
 * @param greatestSpillage the largest part of the discharge that may have missed the containers, 0 or more and below
 *     100 %; the caught mass is corrected for half of it, and uncertain by the other half
 * @param greatestTransient how far a start-up that is still in the catch may move its mass per revolution, either way, 0
 *     or more and below 100 %
 * @param moisture of the material, where the mass of dry material matters; a catch's own measured moisture
 *     ({@link Conditions#moisture}) replaces its content
 * @param repeatability how catches scatter, from experience; pooled with what the catches show themselves
 */
public record CatchAllowances(
        Quantity<Dimensionless> greatestSpillage,
        Quantity<Dimensionless> greatestTransient,
        Optional<Moisture> moisture,
        Optional<Repeatability> repeatability) {

    /** Nothing but what the readings show. */
    public static final CatchAllowances NONE = new CatchAllowances(
            Amounts.of(0, SpreadingUnits.PERCENT), Amounts.of(0, SpreadingUnits.PERCENT), empty(), empty());

    /**
     * Checks the values.
     *
     * @throws org.gritwright.units.InvalidInputException if one is out of its range
     */
    public CatchAllowances {
        Require.given(CatchAllowances.class, greatestSpillage, greatestTransient, moisture, repeatability);
        Require.share("greatest spillage", greatestSpillage);
        Require.share("greatest transient", greatestTransient);
    }

    /**
     * How single catches scatter: as stated, or else as usual.
     *
     * @return the stated repeatability, or {@link Repeatability#COMMON}
     */
    public Repeatability scatter() {
        return repeatability.orElse(Repeatability.COMMON);
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
     * The relative standard uncertainty of the discharged mass due to spillage: rectangular, from no spillage to the
     * greatest.
     *
     * @return a ratio, 0 or more
     */
    public double spillageUncertainty() {
        double half = Amounts.si(Dimensionless.class, greatestSpillage) / 2;
        return Distribution.RECTANGULAR.standardUncertainty(half) * spillageFactor();
    }

    /**
     * The relative standard uncertainty of the mass per revolution due to a transient: rectangular.
     *
     * @return a ratio, 0 or more
     */
    public double transientUncertainty() {
        return Distribution.RECTANGULAR.standardUncertainty(Amounts.si(Dimensionless.class, greatestTransient));
    }

    /**
     * The relative standard uncertainty of the dry mass due to moisture: rectangular.
     *
     * @return a ratio, 0 or more
     */
    public double moistureUncertainty() {
        return moistureUncertainty(Conditions.NONE);
    }

    /**
     * The relative standard uncertainty of the dry mass of one catch by the moisture: rectangular.
     *
     * @param conditions the conditions of the catch; its own moisture, if measured, replaces the content allowed for
     * @return a ratio, 0 or more
     * @throws org.gritwright.units.InvalidInputException if the catch's own moisture might be water alone, given the
     *     uncertainty allowed for
     */
    public double moistureUncertainty(Conditions conditions) {
        Optional<Moisture> ofCatch = conditions.moisture().isPresent()
                ? moisture.map(m -> m.measured(
                        conditions.moisture().get(), conditions.moistureBasis().orElseThrow()))
                : moisture;
        return Distribution.RECTANGULAR.standardUncertainty(
                ofCatch.map(Moisture::relativeHalfWidth).orElse(0.0));
    }
}
