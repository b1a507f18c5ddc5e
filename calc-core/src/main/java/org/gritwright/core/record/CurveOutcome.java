package org.gritwright.core.record;

import java.util.List;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import org.gritwright.core.curve.CurveModel;
import org.gritwright.core.curve.DischargeCurve;
import org.gritwright.core.spi.Setting;
import org.gritwright.core.statistics.LackOfFit;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.quantity.BulkDensity;
import org.gritwright.units.quantity.DischargePerRevolution;

/**
 * A discharge curve over gate openings as it stands in a record.
 *
 * @param material the material's name
 * @param model the model
 * @param catches the number of catches
 * @param effectiveBulkDensity the factor k; none for a table
 * @param effectiveBulkDensityUncertainty its standard uncertainty, if known
 * @param deadOpening the gate opening at which discharge starts; none for another model
 * @param deadOpeningUncertainty its standard uncertainty, if known
 * @param misfitChance the p-value of the lack-of-fit test; none where none could be made
 * @param points what the curve gives at each caught setting
 */
public record CurveOutcome(
        String material,
        CurveModel model,
        Quantity<Dimensionless> catches,
        Optional<Quantity<BulkDensity>> effectiveBulkDensity,
        Optional<Quantity<BulkDensity>> effectiveBulkDensityUncertainty,
        Optional<Quantity<?>> deadOpening,
        Optional<Quantity<?>> deadOpeningUncertainty,
        Optional<Quantity<Dimensionless>> misfitChance,
        List<Point> points) {
    /**
     * What the curve gives at a setting.
     *
     * @param setting the setting
     * @param dischargePerRevolution mass per revolution of the sensed shaft by the curve
     * @param standardUncertainty its standard uncertainty, if known
     */
    public record Point(
            Quantity<?> setting,
            Quantity<DischargePerRevolution> dischargePerRevolution,
            Optional<Quantity<DischargePerRevolution>> standardUncertainty) {
        private static Point of(DischargeCurve curve, Setting setting) {
            Measured<DischargePerRevolution> discharge = curve.predict(setting).dischargePerRevolution();
            return new Point(setting.quantity().orElseThrow(), discharge.value(), discharge.standardUncertainty());
        }
    }

    /** Copies the list. */
    public CurveOutcome {
        points = List.copyOf(points);
    }

    static CurveOutcome of(DischargeCurve curve) {
        Optional<Measured<BulkDensity>> density = curve.effectiveBulkDensity();
        return new CurveOutcome(
                curve.material().name(),
                curve.model(),
                Amounts.of(curve.catches().size(), SpreadingUnits.ONE),
                density.map(Measured::value),
                density.flatMap(Measured::standardUncertainty),
                curve.deadOpening().map(Measured::value),
                curve.deadOpening().flatMap(Measured::standardUncertainty),
                curve.test().map(LackOfFit::chance).map(chance -> Amounts.of(chance, SpreadingUnits.ONE)),
                curve.settings().stream()
                        .map(setting -> Point.of(curve, setting))
                        .toList());
    }
}
