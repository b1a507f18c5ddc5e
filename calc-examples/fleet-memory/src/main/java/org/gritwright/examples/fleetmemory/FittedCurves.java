package org.gritwright.examples.fleetmemory;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.gritwright.core.curve.DischargeCurve;
import org.gritwright.core.history.Event;
import org.gritwright.core.observation.CalibrationPoint;

/**
 * The curves over gate openings that were fitted to the catches of kept records.
 *
 * @param byRecord by the records' names, which their events state as their source
 */
record FittedCurves(Map<String, List<DischargeCurve>> byRecord) {
    static final FittedCurves NONE = new FittedCurves(Map.of());

    /** The curve to which a calibration belongs; none where its record has none. */
    Optional<DischargeCurve> of(Event calibrated) {
        CalibrationPoint point = calibrated.what().point().orElseThrow();
        return byRecord.getOrDefault(calibrated.source(), List.of()).stream()
                .filter(curve -> curve.material().name().equals(point.material().name())
                        && curve.metering().equals(point.metering())
                        && curve.lowestCaught().scale() == point.setting().scale())
                .findFirst();
    }
}
