package org.gritwright.core.fleet.assessment;

import static org.gritwright.core.finding.Argument.refusal;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.gritwright.core.calibration.Calibration;
import org.gritwright.core.calibration.CalibrationCatch;
import org.gritwright.core.curve.CurveModel;
import org.gritwright.core.curve.DischargeCurve;
import org.gritwright.core.finding.Finding;
import org.gritwright.core.finding.FindingCode;
import org.gritwright.core.fleet.day.TruckDay;
import org.gritwright.core.observation.CatchLimits;
import org.gritwright.core.statistics.RatioEstimator;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.RefusalCode;

/**
 * The discharge curves of a truck, one for each material that was caught at several gate openings.
 *
 * @param curves the curves
 * @param findings what they show, and for which materials there is none
 */
record Curves(List<DischargeCurve> curves, List<Finding> findings) {

    static Curves of(TruckDay truck, List<Calibration> calibrations, RatioEstimator estimator, CatchLimits limits) {
        Map<String, List<Calibration>> byMaterial = new LinkedHashMap<>();
        calibrations.stream()
                .filter(calibration -> calibration.point().metering().isMeteredBySetting())
                // A curve can't subtract what each start loses from its catches.
                .filter(calibration -> calibration.estimator() != RatioEstimator.LINE_WITH_INTERCEPT)
                .forEach(calibration -> byMaterial
                        .computeIfAbsent(calibration.point().material().name(), material -> new ArrayList<>())
                        .add(calibration));
        List<DischargeCurve> curves = new ArrayList<>();
        List<Finding> findings = new ArrayList<>();
        byMaterial.values().stream().filter(several -> several.size() > 1).forEach(several -> {
            try {
                DischargeCurve curve = curve(truck, several, estimator, limits);
                curves.add(curve);
                findings.addAll(curve.findings());
            } catch (InvalidInputException e) {
                if (e.code() == RefusalCode.TYPE_FAILED) {
                    throw e;
                }
                findings.add(Finding.of(
                        FindingCode.CURVE_IMPOSSIBLE,
                        Map.of(
                                "model",
                                truck.curveModel()
                                        .orElse(CurveModel.DEAD_OPENING)
                                        .term(),
                                "reason",
                                refusal(e))));
            }
        });
        return new Curves(curves, findings);
    }

    /** Without repeats to test with, a dead opening is allowed for: a line forced through zero has to be requested. */
    private static DischargeCurve curve(
            TruckDay truck, List<Calibration> several, RatioEstimator estimator, CatchLimits limits) {
        List<CalibrationCatch> catches =
                several.stream().flatMap(c -> c.catches().stream()).toList();
        return truck.curveModel().isPresent()
                ? DischargeCurve.fit(catches, truck.curveModel().get(), estimator, limits)
                : DischargeCurve.chosenByTest(catches, CurveModel.DEAD_OPENING, estimator, limits);
    }
}
