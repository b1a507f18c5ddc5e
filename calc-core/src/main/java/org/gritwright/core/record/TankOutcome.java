package org.gritwright.core.record;

import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Mass;
import javax.measure.quantity.Temperature;
import javax.measure.quantity.Volume;
import org.gritwright.core.fleet.assessment.Refusal;
import org.gritwright.core.fleet.assessment.TankAssessment;
import org.gritwright.core.judgement.Verdict;
import org.gritwright.core.solution.FreezingPoint;
import org.gritwright.core.solution.Side;
import org.gritwright.core.solution.Solution;
import org.gritwright.core.solution.TankCorrection;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.quantity.BulkDensity;

/**
 * What a day showed of what is in a tank, as it stands in a record. What couldn't be computed isn't there.
 *
 * @param share the salt's part of the mass
 * @param shareUncertainty its standard uncertainty
 * @param density the density at the temperature of the tank
 * @param densityUncertainty its standard uncertainty
 * @param side on which side of the eutectic it is
 * @param freezingPoint where it begins to freeze
 * @param freezingPointUncertainty the standard uncertainty of that, in K, since it is a difference of temperatures
 * @param verdict whether it is as strong as was wanted; none without a target
 * @param correction what to add to it; none where it isn't shown to be off, or nobody can say
 * @param obstacle why nobody can say what to add, though it is off
 */
public record TankOutcome(
        Optional<Quantity<Dimensionless>> share,
        Optional<Quantity<Dimensionless>> shareUncertainty,
        Optional<Quantity<BulkDensity>> density,
        Optional<Quantity<BulkDensity>> densityUncertainty,
        Optional<Side> side,
        Optional<Quantity<Temperature>> freezingPoint,
        Optional<Quantity<Temperature>> freezingPointUncertainty,
        Optional<Verdict> verdict,
        Optional<Correction> correction,
        Optional<Refusal> obstacle) {
    /**
     * What to add.
     *
     * @param salt salt as it lies
     * @param saltUncertainty its standard uncertainty
     * @param water water
     * @param waterUncertainty its standard uncertainty
     * @param filled what the tank then holds
     * @param rest what of the salt doesn't dissolve
     */
    public record Correction(
            Optional<Quantity<Mass>> salt,
            Optional<Quantity<Mass>> saltUncertainty,
            Optional<Quantity<Volume>> water,
            Optional<Quantity<Volume>> waterUncertainty,
            Quantity<Volume> filled,
            Quantity<Mass> rest) {
        private static Correction of(TankCorrection correction) {
            return new Correction(
                    correction.salt().map(Measured::value),
                    correction.salt().flatMap(Measured::standardUncertainty),
                    correction.water().map(Measured::value),
                    correction.water().flatMap(Measured::standardUncertainty),
                    correction.filled(),
                    correction.rest());
        }
    }

    static TankOutcome of(TankAssessment tank) {
        Optional<Measured<Dimensionless>> share = tank.solution().map(Solution::share);
        Optional<Measured<Temperature>> freezes = tank.freezingPoint().flatMap(FreezingPoint::temperature);
        return new TankOutcome(
                share.map(Measured::value),
                share.flatMap(Measured::standardUncertainty),
                tank.density().map(Measured::value),
                tank.density().flatMap(Measured::standardUncertainty),
                tank.freezingPoint().map(FreezingPoint::side),
                freezes.map(Measured::value),
                freezes.flatMap(Measured::standardUncertainty)
                        // Of °C, whose degrees are as large as kelvins.
                        .map(u -> Amounts.of(u.getValue().doubleValue(), SpreadingUnits.KELVIN)),
                tank.verdict(),
                tank.correction().map(Correction::of),
                tank.obstacle());
    }
}
