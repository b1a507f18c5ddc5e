package org.gritwright.core.fleet;

import java.util.List;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import org.gritwright.core.calibration.CurveModel;
import org.gritwright.core.spreader.OpenLoop;
import org.gritwright.units.quantity.PulsesPerRevolution;

/**
 * One truck's day as it was written down. Nothing but presence is checked here: what can't be computed makes this
 * one truck's assessment a refusal and doesn't stop the others.
 *
 * @param id the truck's id, unique in the fleet
 * @param conveyor the conveyor
 * @param gate the gate
 * @param pulsesPerRevolution pulses per revolution of the sensed shaft; none without a sensor
 * @param gearRatio revolutions of the sensed or watched shaft per revolution of the conveyor's drive shaft
 * @param controlSettings the table of control settings and loaded shaft speeds of a drive without feedback; empty without
 * @param curveModel the model of the discharge curve over several gate openings; none to have it chosen by test
 * @param inForce the calibration in force when the day began
 * @param changes repairs and other changes
 * @param calibrationCatches calibration catches
 * @param verificationCatches verification catches
 * @param roadSpeed the check of the road speed
 * @param notes remarks
 */
public record TruckDay(
        String id,
        TypedEntry conveyor,
        TypedEntry gate,
        Optional<Quantity<PulsesPerRevolution>> pulsesPerRevolution,
        Quantity<Dimensionless> gearRatio,
        List<OpenLoop.Row> controlSettings,
        Optional<CurveModel> curveModel,
        Optional<InForceEntry> inForce,
        List<ChangeEntry> changes,
        List<CalibrationCatchEntry> calibrationCatches,
        List<VerificationCatchEntry> verificationCatches,
        Optional<RoadSpeedEntry> roadSpeed,
        Optional<String> notes) {

    /** Copies the lists. */
    public TruckDay {
        controlSettings = List.copyOf(controlSettings);
        changes = List.copyOf(changes);
        calibrationCatches = List.copyOf(calibrationCatches);
        verificationCatches = List.copyOf(verificationCatches);
    }
}
