package org.gritwright.core.fleet.plan;

import java.util.List;
import javax.measure.Quantity;
import org.gritwright.core.observation.CalibrationPoint;
import org.gritwright.core.planning.PlannedCount;
import org.gritwright.units.check.Require;
import org.gritwright.units.quantity.DischargePerRevolution;

/**
 * The plan for one calibration point of a truck.
 *
 * @param point the calibration point
 * @param expected the discharge per revolution that is planned with
 * @param source where that comes from
 * @param count how the revolutions become known
 * @param methods a plan for each weighing method
 */
public record PointPlan(
        CalibrationPoint point,
        Quantity<DischargePerRevolution> expected,
        Source source,
        PlannedCount count,
        List<MethodPlan> methods) {

    /** Where an expected discharge comes from. */
    public enum Source {
        /** The calibration in force. */
        IN_FORCE("the calibration in force"),
        /** Geometry × loose bulk density × the middle of the usual apparent fill. */
        GEOMETRY("an estimate: geometry, loose bulk density and a usual fill");

        private final String words;

        Source(String words) {
            this.words = words;
        }

        /**
         * In words.
         *
         * @return for example "the calibration in force"
         */
        public String words() {
            return words;
        }
    }

    /** Copies the list. */
    public PointPlan {
        Require.given(PointPlan.class, point, expected, source, count, methods);
        methods = List.copyOf(methods);
    }
}
