package org.gritwright.examples.telemetry;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javax.measure.Quantity;
import org.gritwright.core.calibration.Calibration;
import org.gritwright.core.calibration.CalibrationInForce;
import org.gritwright.core.fleet.assessment.PointAssessment;
import org.gritwright.core.fleet.assessment.TruckAssessment;
import org.gritwright.core.telemetry.SharedError;
import org.gritwright.core.uncertainty.Component;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.quantity.DischargePerRevolution;

/**
 * The errors that all rows share which were evaluated with a calibration: the span of the scale that it was weighed on, which other
 * trucks' rows share too, and all that is its own. A value without catches of that day has none that anybody knows.
 */
final class SharedErrors {
    private final TruckAssessment assessment;

    SharedErrors(TruckAssessment assessment) {
        this.assessment = assessment;
    }

    List<SharedError> of(CalibrationInForce held) {
        return assessment.points().stream()
                .filter(point -> point.point().equals(held.point()))
                .map(PointAssessment::calibration)
                .flatMap(Optional::stream)
                .findFirst()
                .map(calibration -> of(held, calibration))
                .orElseGet(List::of);
    }

    private List<SharedError> of(CalibrationInForce held, Calibration calibration) {
        List<SharedError> errors = new ArrayList<>();
        double value = kilograms(calibration.budget().result().value());
        double own = 0;
        for (Component<DischargePerRevolution> component : calibration.budget().components()) {
            double relative = Math.abs(kilograms(component.contribution())) / value;
            if (calibration.instruments().contains(component.key())) {
                errors.add(error(component.name(), relative));
            } else {
                own += relative * relative;
            }
        }
        String slot = held.slot().map(name -> ", slot " + name).orElse("");
        errors.add(error(
                "calibration of " + assessment.truck().id() + slot + ", since "
                        + held.since().orElseThrow(),
                Math.sqrt(own)));
        return errors;
    }

    private static SharedError error(String id, double relative) {
        return new SharedError(id, Amounts.ofSi(relative, SpreadingUnits.PERCENT));
    }

    private static double kilograms(Quantity<DischargePerRevolution> discharge) {
        return Amounts.si(DischargePerRevolution.class, discharge);
    }
}
