package org.gritwright.core.curve;

import static org.gritwright.core.Samples.CHAIN;
import static org.gritwright.core.Samples.SALT;
import static org.gritwright.core.Samples.SCALE;
import static org.gritwright.core.Samples.SENSOR;
import static org.gritwright.core.Samples.catchAt;
import static org.gritwright.core.Samples.caught;
import static org.gritwright.core.Samples.chainAt;
import static org.gritwright.core.Samples.height;
import static org.gritwright.core.Samples.inches;
import static org.gritwright.core.Samples.pulses;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Length;
import org.gritwright.core.calibration.CalibrationCatch;
import org.gritwright.core.metering.Gate;
import org.gritwright.core.metering.Metering;
import org.gritwright.core.metering.RoundGate;
import org.gritwright.core.metering.SlidingGate;
import org.gritwright.core.metering.Spreader;
import org.gritwright.core.metering.TableGate;
import org.gritwright.core.observation.CalibrationPoint;
import org.gritwright.core.observation.ErrorSource;
import org.gritwright.core.observation.Material;
import org.gritwright.core.spi.Setting;
import org.gritwright.core.uncertainty.Budget;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.core.weighing.CaughtMass;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.quantity.DischargePerRevolution;

/** Catches for curves, all with the drag chain, which sweeps 375.696 in³ per revolution and inch of its sliding gate. */
final class DischargeCurveSamples {
    /** 16 lb/rev per inch of gate opening, as a density: 16 ÷ 375.696 in³, of which 1728 are a cubic foot. */
    static final double SIXTEEN_PER_INCH = 16 * 1728 / 375.696;

    /** 26 lb/rev at 2 in and 58 lb/rev at 4 in: k = 16 lb/rev per inch, h₀ = 0.375 in. */
    static final List<CalibrationCatch> DEAD_OPENING_EXAMPLE = List.of(at(2, 26), at(4, 58));

    /** 10, 20 and 30 in² at marks 1, 3 and 5; in proportion to the mark. */
    static final Spreader MARKED = chainWith(Gate.of(
            TableGate.bySetting(),
            Map.of("settings", List.of(mark(1), mark(3), mark(5)), "areas", List.of(area(20), area(60), area(100)))));

    private DischargeCurveSamples() {}

    /** A catch of 10 revolutions. */
    static CalibrationCatch at(CalibrationPoint point, double poundsPerRevolution) {
        return catchAt(point, caught(10 * poundsPerRevolution), pulses(1000));
    }

    static CalibrationCatch at(Quantity<Length> opening, double poundsPerRevolution) {
        return at(chainAt(opening), poundsPerRevolution);
    }

    static CalibrationCatch at(double inches, double poundsPerRevolution) {
        return at(chainAt(inches), poundsPerRevolution);
    }

    /** A catch of the spreader with painted marks. */
    static CalibrationCatch atMark(double mark, double poundsPerRevolution) {
        return at(CalibrationPoint.of(SALT, MARKED, Setting.mark(mark)), poundsPerRevolution);
    }

    /** The same catches, as if they had been made by another metering or with another material. */
    static List<CalibrationCatch> by(Metering metering, Material material, List<CalibrationCatch> catches) {
        return catches.stream()
                .map(one -> catchAt(
                        CalibrationPoint.of(material, metering, one.point().setting()),
                        (CaughtMass) one.caught(),
                        one.counted()))
                .toList();
    }

    static List<CalibrationCatch> by(Metering metering, CalibrationCatch... catches) {
        return by(metering, SALT, List.of(catches));
    }

    /** A catch at each opening, repeated with each factor. */
    static List<CalibrationCatch> repeated(double[] inches, double[] poundsPerRevolution, double... factors) {
        List<CalibrationCatch> catches = new ArrayList<>();
        for (int i = 0; i < inches.length; i++) {
            for (double factor : factors) {
                catches.add(at(inches[i], poundsPerRevolution[i] * factor));
            }
        }
        return catches;
    }

    static Quantity<Length> millimeters(double millimeters) {
        return Amounts.of(millimeters, SpreadingUnits.MILLIMETER);
    }

    static Quantity<Dimensionless> mark(double mark) {
        return Amounts.of(mark, SpreadingUnits.ONE);
    }

    private static Quantity<?> area(double squareInches) {
        return Amounts.of(squareInches * 0.0254 * 0.0254, SpreadingUnits.SQUARE_METER);
    }

    static Spreader chainWith(Gate gate) {
        return new Spreader(CHAIN.conveyor(), gate, SENSOR);
    }

    /** The sample's gate, 24 in wide, but no higher than stated. */
    static Spreader noHigherThan(double inches) {
        return chainWith(Gate.of(new SlidingGate(), Map.of("width", inches(24), "highestOpening", inches(inches))));
    }

    static Spreader roundGate(double inches) {
        return chainWith(Gate.of(new RoundGate(), Map.of("diameter", inches(inches))));
    }

    static DischargeCurve fit(CurveModel model, List<CalibrationCatch> catches) {
        return DischargeCurve.fit(catches, model);
    }

    static DischargeCurve fit(CurveModel model, CalibrationCatch... catches) {
        return fit(model, List.of(catches));
    }

    static DischargeCurve chosen(List<CalibrationCatch> catches) {
        return DischargeCurve.chosenByTest(catches, CurveModel.DEAD_OPENING);
    }

    static double pounds(DischargeCurve curve, double inches) {
        return pounds(curve.predict(height(inches)).dischargePerRevolution().value());
    }

    static Optional<Double> uncertainty(DischargeCurve curve, double inches) {
        return byCurve(curve.predict(height(inches))).standardUncertainty().map(DischargeCurveSamples::pounds);
    }

    /** What the curve alone says, without the span of the scale. */
    static Measured<DischargePerRevolution> byCurve(DischargePrediction prediction) {
        return prediction.budget().map(DischargeCurveSamples::withoutSpan).orElse(prediction.dischargePerRevolution());
    }

    static Measured<DischargePerRevolution> withoutSpan(Budget<DischargePerRevolution> budget) {
        return budget.without(Set.of(ErrorSource.spanOf(SCALE))).result();
    }

    static double pounds(Quantity<DischargePerRevolution> discharge) {
        return Amounts.in(discharge, SpreadingUnits.POUND_PER_REVOLUTION);
    }

    static double density(DischargeCurve curve) {
        return Amounts.in(curve.effectiveBulkDensity().orElseThrow().value(), SpreadingUnits.POUND_PER_CUBIC_FOOT);
    }

    static double deadOpening(DischargeCurve curve) {
        return curve.deadOpening().orElseThrow().value().getValue().doubleValue();
    }
}
