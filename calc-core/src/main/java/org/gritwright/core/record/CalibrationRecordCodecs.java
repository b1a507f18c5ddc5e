package org.gritwright.core.record;

import static org.gritwright.core.json.Codecs.ANY_QUANTITY;
import static org.gritwright.core.json.Codecs.ANY_TEXT;
import static org.gritwright.core.json.Codecs.NAME;
import static org.gritwright.core.json.Codecs.TEXT;
import static org.gritwright.core.json.Codecs.choice;
import static org.gritwright.core.json.Field.optional;
import static org.gritwright.core.json.Field.required;
import static org.gritwright.core.record.ValueCodecs.FACTOR;
import static org.gritwright.core.record.ValueCodecs.SETTING;

import org.gritwright.core.fleet.assessment.MassProof;
import org.gritwright.core.fleet.assessment.Refusal;
import org.gritwright.core.fleet.assessment.RoadProof;
import org.gritwright.core.json.CodecBook;
import org.gritwright.core.json.ObjectCodec;

/** The definition of format "gritwright/calibration-record", from its smallest parts to the whole. */
final class CalibrationRecordCodecs {
    /** What every record of a result is made of. */
    static final CodecBook OF_RESULTS = FleetDayCodecs.BOOK
            .with(ANY_QUANTITY, TEXT, new FindingCodec())
            .with(
                    "refusal",
                    Refusal.class,
                    required("pointer", ANY_TEXT),
                    required("subject", ANY_TEXT),
                    required("value", ANY_TEXT));

    static final ObjectCodec<CalibrationRecord> CALIBRATION_RECORD = OF_RESULTS
            .with(FleetDayCodecs.FLEET_DAY)
            .with("budget-component", BudgetOutcome.Row.class)
            .with("uncertainty-budget", BudgetOutcome.class, required("components"))
            .with("calibration", CalibrationOutcome.class)
            // The name that it had while there were only grains.
            .with(
                    "judgement",
                    JudgementOutcome.class,
                    optional("furtherMass", ANY_QUANTITY).component("furtherAmount"))
            .with("correction-step", CorrectionOutcome.Step.class, required("value", FACTOR))
            .with("curve-point", CurveOutcome.Point.class, required("setting", SETTING))
            .with(
                    "curve",
                    CurveOutcome.class,
                    optional("deadOpening", SETTING),
                    optional("deadOpeningUncertainty", SETTING),
                    required("points"))
            .with("verification", VerificationOutcome.class, required("inForce", FACTOR))
            .with(
                    "correction",
                    CorrectionOutcome.class,
                    required("asFound", FACTOR),
                    required("computed", FACTOR),
                    required("toEnter", FACTOR),
                    optional("asLeft", FACTOR))
            .with("start-up", StartUpOutcome.class)
            .with(
                    "point",
                    PointOutcome.class,
                    optional("setting", SETTING),
                    optional("massPerRevolution", choice(MassProof.class)).component("proof"))
            .with("to-do", ToDoOutcome.class, optional("setting", SETTING))
            .with("road-speed-check", RoadSpeedOutcome.class)
            .with("boom-nozzle", BoomOutcome.Nozzle.class)
            .with("boom-review", BoomOutcome.Review.class, required("nozzles"))
            .with("boom-section", BoomOutcome.Section.class)
            .with("boom-pressure", BoomOutcome.Pressure.class)
            .with("boom-outcome", BoomOutcome.class)
            .with("sign-off", SignOff.class, required("name", NAME), optional("role", NAME))
            .object(
                    "calibration-record",
                    CalibrationRecord.class,
                    required("massPerRevolution", choice(MassProof.class)).component("massProof"),
                    required("roadSpeedValue", choice(RoadProof.class)).component("roadProof"));

    private CalibrationRecordCodecs() {}
}
