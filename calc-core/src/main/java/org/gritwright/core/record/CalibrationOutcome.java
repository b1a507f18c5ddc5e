package org.gritwright.core.record;

import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Mass;
import org.gritwright.core.calibration.Calibration;
import org.gritwright.core.observation.CalibrationPoint;
import org.gritwright.core.statistics.RatioEstimator;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;

/**
 * A calibration as it stands in a record.
 *
 * @param catches the number of catches
 * @param estimator how they became one ratio
 * @param dischargePerRevolution mass per revolution of the sensed shaft; of a liquid, volume per revolution of its pump or per pulse of
 *     its flow meter
 * @param standardUncertainty its combined standard uncertainty; none without a degree of freedom, and in records from
 *     before there were budgets
 * @param sampleDeviation the sample deviation of the single ratios; none without a degree of freedom
 * @param apparentFill effective bulk density over loose bulk density
 * @param massPerStart what a start adds to the catch, negative for a loss, of a liquid at its stated density; none by an estimator without an intercept
 * @param massPerStartUncertainty its standard uncertainty; none without a degree of freedom
 * @param budget where the uncertainty comes from; none in older records
 */
public record CalibrationOutcome(
        Quantity<Dimensionless> catches,
        RatioEstimator estimator,
        Quantity<?> dischargePerRevolution,
        Optional<Quantity<?>> standardUncertainty,
        Optional<Quantity<?>> sampleDeviation,
        Quantity<Dimensionless> apparentFill,
        Optional<Quantity<Mass>> massPerStart,
        Optional<Quantity<Mass>> massPerStartUncertainty,
        Optional<BudgetOutcome> budget) {
    static CalibrationOutcome of(Calibration calibration) {
        CalibrationPoint point = calibration.point();
        return new CalibrationOutcome(
                Amounts.of(calibration.catches().size(), SpreadingUnits.ONE),
                calibration.estimator(),
                point.asMetered(calibration.dischargePerRevolution().value()),
                calibration.dischargePerRevolution().standardUncertainty().map(point::asMetered),
                calibration.sampleDeviation().map(point::asMetered),
                calibration.apparentFill().quantity(),
                calibration.massPerStart().map(Measured::value),
                calibration.massPerStart().flatMap(Measured::standardUncertainty),
                Optional.of(BudgetOutcome.of(calibration.budget(), point::asMetered)));
    }
}
