package org.gritwright.core.fleet.assessment;

import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import javax.measure.Quantity;
import org.gritwright.core.calibration.CalibrationInForce;
import org.gritwright.core.curve.DischargeCurve;
import org.gritwright.core.curve.DischargePrediction;
import org.gritwright.core.judgement.Tolerance;
import org.gritwright.core.observation.CalibrationPoint;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.RefusalCode;
import org.gritwright.units.quantity.DischargePerRevolution;

/**
 * What a discharge curve proves of values for settings at which no verification catch was made: the value agrees with the
 * curve, the curve's uncertainty included, within the tolerance; the setting lies among those that were caught; nothing about
 * the curve is doubted; and a verification catch has proven the value at one of its settings.
 */
final class CurveProof {
    private static final double COVERAGE = 0.95;

    private final Curves curves;
    private final Tolerance tolerance;
    private final Optional<Quantity<?>> gateReading;
    /** Materials for which a catch has proven the value at one of their points. */
    private final Set<String> proven = new HashSet<>();

    CurveProof(Curves curves, List<PointHistory> histories, Tolerance tolerance, Optional<Quantity<?>> gateReading) {
        this.curves = curves;
        this.tolerance = tolerance;
        this.gateReading = gateReading;
        boolean doubted = curves.findings().stream().anyMatch(f -> f.code().doubtsData());
        if (!doubted) {
            histories.stream()
                    .filter(h -> h.massProof() == MassProof.PROVEN)
                    .forEach(h -> proven.add(h.point().material().name()));
        }
    }

    /** The proof of a point: by its own catches, or else by a curve. */
    MassProof of(PointHistory history) {
        MassProof own = history.massProof();
        if (own != MassProof.NOT_CHECKED
                || history.isSetElsewhere()
                || history.inForce().isEmpty()) {
            return own;
        }
        return history.held().stream().allMatch(this::agreesWithCurve) ? MassProof.PROVEN_BY_CURVE : own;
    }

    private boolean agreesWithCurve(CalibrationInForce held) {
        CalibrationPoint point = held.point();
        return proven.contains(point.material().name())
                && curves.curves().stream()
                        .filter(curve ->
                                curve.material().name().equals(point.material().name()))
                        .anyMatch(curve -> agrees(curve, held));
    }

    private boolean agrees(DischargeCurve curve, CalibrationInForce held) {
        DischargePrediction prediction;
        try {
            prediction = gateReading.isPresent()
                    ? curve.predict(held.point().setting(), gateReading.get())
                    : curve.predict(held.point().setting());
        } catch (InvalidInputException e) {
            if (e.code() == RefusalCode.TYPE_FAILED) {
                throw e;
            }
            // A setting about which the curve says nothing.
            return false;
        }
        Measured<DischargePerRevolution> predicted = prediction.dischargePerRevolution();
        if (prediction.budget().isEmpty() || !prediction.findings().isEmpty()) {
            return false;
        }
        double value = Amounts.si(DischargePerRevolution.class, predicted.value());
        double uncertainty = Amounts.si(
                        DischargePerRevolution.class,
                        predicted.expandedUncertainty(COVERAGE).orElseThrow())
                / value;
        return tolerance.acceptsRatio(Math.abs(held.kilogramsPerRevolution() / value - 1) + uncertainty);
    }
}
