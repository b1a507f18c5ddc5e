package org.gritwright.core.observation;

import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import org.gritwright.core.spi.FillLimits;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.check.Require;
import org.gritwright.units.quantity.PulseCount;
import org.gritwright.units.quantity.RevolutionCount;

/**
 * What a catch is compared with: thresholds beyond which it is flagged, and allowances for errors that its readings
 * don't show. No standard gives these; the defaults are common practice, no source. Immutable, thread-safe, a value.
 *
 * @param fill limits of the apparent fill; none for those of the conveyor's type
 * @param fewestPulses a catch with fewer pulses gets a finding
 * @param fewestRevolutions a catch with fewer turns of the conveyor's own drive shaft gets a finding, however many
 *     revolutions and pulses a geared sensor counts: a few bars or pockets don't repeat
 * @param fewestDivisions a catch of fewer divisions of its scale or container gets a finding
 * @param greatestScatter catches that are shown (95 %) to scatter by a larger part of their mean get a finding
 * @param greatestCountUncertainty a count by eye that is relatively less certain gets a finding
 * @param allowances errors that the readings don't show
 */
public record CatchLimits(
        Optional<FillLimits> fill,
        Quantity<PulseCount> fewestPulses,
        Quantity<RevolutionCount> fewestRevolutions,
        double fewestDivisions,
        Quantity<Dimensionless> greatestScatter,
        Quantity<Dimensionless> greatestCountUncertainty,
        CatchAllowances allowances) {

    /**
     * The defaults: the conveyor type's fill; 100 pulses; 5 turns of the conveyor's shaft; 100 divisions; 5 %
     * scatter; 2 % of a count by eye; no allowances. Common practice, no source.
     */
    public static final CatchLimits COMMON = new CatchLimits(
            Optional.empty(),
            Amounts.of(100, SpreadingUnits.PULSE),
            Amounts.of(5, SpreadingUnits.REVOLUTION),
            100,
            Amounts.of(5, SpreadingUnits.PERCENT),
            Amounts.of(2, SpreadingUnits.PERCENT),
            CatchAllowances.NONE);

    /**
     * Checks the values.
     *
     * @throws org.gritwright.units.InvalidInputException if one is negative
     */
    public CatchLimits {
        Require.given(
                CatchLimits.class,
                fill,
                fewestPulses,
                fewestRevolutions,
                greatestScatter,
                greatestCountUncertainty,
                allowances);
        Require.notNegative("fewest pulses", PulseCount.class, fewestPulses);
        Require.notNegative("fewest revolutions", RevolutionCount.class, fewestRevolutions);
        Require.notNegative("fewest divisions", Dimensionless.class, Amounts.of(fewestDivisions, SpreadingUnits.ONE));
        Require.notNegative("greatest scatter", Dimensionless.class, greatestScatter);
        Require.notNegative("greatest count uncertainty", Dimensionless.class, greatestCountUncertainty);
    }

    /**
     * The same limits with another range of apparent fill.
     *
     * @param limits the caller's limits of the fill
     * @return the limits
     */
    public CatchLimits withFill(FillLimits limits) {
        return new CatchLimits(
                Optional.of(limits),
                fewestPulses,
                fewestRevolutions,
                fewestDivisions,
                greatestScatter,
                greatestCountUncertainty,
                allowances);
    }

    /**
     * The same limits with other allowances.
     *
     * @param allowed errors that the readings don't show
     * @return the limits
     */
    public CatchLimits withAllowances(CatchAllowances allowed) {
        return new CatchLimits(
                fill,
                fewestPulses,
                fewestRevolutions,
                fewestDivisions,
                greatestScatter,
                greatestCountUncertainty,
                allowed);
    }
}
