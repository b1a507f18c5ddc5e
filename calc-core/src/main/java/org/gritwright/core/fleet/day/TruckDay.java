package org.gritwright.core.fleet.day;

import java.util.List;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import org.gritwright.core.curve.CurveModel;
import org.gritwright.core.metering.Conveyor;
import org.gritwright.core.metering.DriveFeedback;
import org.gritwright.core.metering.Gate;
import org.gritwright.core.metering.NoSensor;
import org.gritwright.core.metering.OpenLoop;
import org.gritwright.core.metering.ShaftSensor;
import org.gritwright.core.metering.Spreader;
import org.gritwright.core.spi.ConveyorType;
import org.gritwright.core.spi.GateType;
import org.gritwright.core.spi.TypeId;
import org.gritwright.core.spi.TypeRegistry;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.check.Require;
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
 * @param gateReading how far a gate opening that is set by reading it may be off, either way; none if nobody knows
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
        Optional<Quantity<?>> gateReading,
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

    /**
     * A truck on which nothing is written down yet but what stands on it.
     *
     * @param id the truck's id
     * @param conveyor the conveyor
     * @param gate the gate
     * @param pulsesPerRevolution pulses per revolution of the sensed shaft; none without a sensor
     * @param gearRatio revolutions of the sensed or watched shaft per revolution of the conveyor's drive shaft
     * @return the truck's day, everything else empty
     */
    public static TruckDay of(
            String id,
            TypedEntry conveyor,
            TypedEntry gate,
            Optional<Quantity<PulsesPerRevolution>> pulsesPerRevolution,
            Quantity<Dimensionless> gearRatio) {
        return new TruckDay(
                id,
                conveyor,
                gate,
                pulsesPerRevolution,
                gearRatio,
                List.of(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                List.of(),
                List.of(),
                List.of(),
                Optional.empty(),
                Optional.empty());
    }

    /**
     * What stands on the truck.
     *
     * @param types the conveyor and gate types that are known
     * @return the spreader
     * @throws InvalidInputException if a type is not known or doesn't accept its parameters, or the parts don't go
     *     together
     */
    public Spreader spreader(TypeRegistry types) {
        ConveyorType conveyorType = types.conveyor(TypeId.of(conveyor.type(), conveyor.version()));
        GateType gateType = types.gate(TypeId.of(gate.type(), gate.version()));
        return new Spreader(
                Require.naming("conveyor", () -> Conveyor.of(conveyorType, conveyor.parameters())),
                Require.naming("gate", () -> Gate.of(gateType, gate.parameters())),
                feedback());
    }

    private DriveFeedback feedback() {
        boolean openLoop = !controlSettings.isEmpty();
        if (pulsesPerRevolution.isPresent()) {
            if (openLoop) {
                throw new InvalidInputException(
                        "control settings", "left out for a drive with a shaft sensor", "a table");
            }
            return new ShaftSensor(pulsesPerRevolution.get(), gearRatio);
        }
        return openLoop ? new OpenLoop(gearRatio, controlSettings) : new NoSensor(gearRatio);
    }

    /**
     * The same day of a truck with another id.
     *
     * @param other the id
     * @return the truck's day
     */
    public TruckDay withId(String other) {
        Draft draft = new Draft();
        draft.id = other;
        return draft.finished();
    }

    /**
     * The same truck with the table of control settings.
     *
     * @param table the rows
     * @return the truck's day
     */
    public TruckDay withControlSettings(List<OpenLoop.Row> table) {
        Draft draft = new Draft();
        draft.controlSettings = table;
        return draft.finished();
    }

    /**
     * The same truck with a gate that is read as closely as stated.
     *
     * @param reading how far a set opening may be off, either way
     * @return the truck's day
     */
    public TruckDay withGateReading(Quantity<?> reading) {
        Draft draft = new Draft();
        draft.gateReading = Optional.of(reading);
        return draft.finished();
    }

    /**
     * The same truck with a given model of the discharge curve.
     *
     * @param model the model
     * @return the truck's day
     */
    public TruckDay withCurveModel(CurveModel model) {
        Draft draft = new Draft();
        draft.curveModel = Optional.of(model);
        return draft.finished();
    }

    /**
     * The same truck with another calibration in force, or none.
     *
     * @param entry the calibration in force
     * @return the truck's day
     */
    public TruckDay withInForce(Optional<InForceEntry> entry) {
        Draft draft = new Draft();
        draft.inForce = entry;
        return draft.finished();
    }

    /**
     * The same truck with other changes.
     *
     * @param entries the changes
     * @return the truck's day
     */
    public TruckDay withChanges(List<ChangeEntry> entries) {
        Draft draft = new Draft();
        draft.changes = entries;
        return draft.finished();
    }

    /**
     * The same truck with other calibration catches.
     *
     * @param catches the catches
     * @return the truck's day
     */
    public TruckDay withCalibrationCatches(List<CalibrationCatchEntry> catches) {
        Draft draft = new Draft();
        draft.calibrationCatches = catches;
        return draft.finished();
    }

    /**
     * The same truck with other verification catches.
     *
     * @param catches the catches
     * @return the truck's day
     */
    public TruckDay withVerificationCatches(List<VerificationCatchEntry> catches) {
        Draft draft = new Draft();
        draft.verificationCatches = catches;
        return draft.finished();
    }

    /**
     * The same truck with a check of the road speed.
     *
     * @param check the check
     * @return the truck's day
     */
    public TruckDay withRoadSpeed(RoadSpeedEntry check) {
        Draft draft = new Draft();
        draft.roadSpeed = Optional.of(check);
        return draft.finished();
    }

    /**
     * The same truck with remarks.
     *
     * @param text the remarks
     * @return the truck's day
     */
    public TruckDay withNotes(String text) {
        Draft draft = new Draft();
        draft.notes = Optional.of(text);
        return draft.finished();
    }

    /** What may be changed, so that all components are listed here only. */
    private final class Draft {
        private String id = TruckDay.this.id;
        private List<OpenLoop.Row> controlSettings = TruckDay.this.controlSettings;
        private Optional<Quantity<?>> gateReading = TruckDay.this.gateReading;
        private Optional<CurveModel> curveModel = TruckDay.this.curveModel;
        private Optional<InForceEntry> inForce = TruckDay.this.inForce;
        private List<ChangeEntry> changes = TruckDay.this.changes;
        private List<CalibrationCatchEntry> calibrationCatches = TruckDay.this.calibrationCatches;
        private List<VerificationCatchEntry> verificationCatches = TruckDay.this.verificationCatches;
        private Optional<RoadSpeedEntry> roadSpeed = TruckDay.this.roadSpeed;
        private Optional<String> notes = TruckDay.this.notes;

        private TruckDay finished() {
            return new TruckDay(
                    id,
                    conveyor,
                    gate,
                    pulsesPerRevolution,
                    gearRatio,
                    controlSettings,
                    gateReading,
                    curveModel,
                    inForce,
                    changes,
                    calibrationCatches,
                    verificationCatches,
                    roadSpeed,
                    notes);
        }
    }
}
