package org.gritwright.core.record;

import static org.gritwright.core.json.Codecs.ANY_QUANTITY;
import static org.gritwright.core.json.Codecs.ANY_TEXT;
import static org.gritwright.core.json.Codecs.DATE;
import static org.gritwright.core.json.Codecs.DATE_AND_TIME;
import static org.gritwright.core.json.Codecs.TEXT;
import static org.gritwright.core.json.Codecs.choice;
import static org.gritwright.core.json.Codecs.listOf;
import static org.gritwright.core.json.Codecs.quantity;
import static org.gritwright.core.json.Field.list;
import static org.gritwright.core.json.Field.optional;
import static org.gritwright.core.json.Field.required;
import static org.gritwright.core.json.ObjectCodec.object;
import static org.gritwright.core.record.ValueCodecs.FACTOR;
import static org.gritwright.core.record.ValueCodecs.LENGTH;
import static org.gritwright.core.record.ValueCodecs.MASS;
import static org.gritwright.core.record.ValueCodecs.RATIO;
import static org.gritwright.core.record.ValueCodecs.SETTING;
import static org.gritwright.core.record.ValueCodecs.TIME;

import javax.measure.Quantity;
import org.gritwright.core.curve.CurveModel;
import org.gritwright.core.fleet.assessment.MassProof;
import org.gritwright.core.fleet.assessment.NextStep;
import org.gritwright.core.fleet.assessment.Refusal;
import org.gritwright.core.fleet.assessment.RoadProof;
import org.gritwright.core.json.Codec;
import org.gritwright.core.json.ObjectCodec;
import org.gritwright.core.judgement.Verdict;
import org.gritwright.core.statistics.RatioEstimator;
import org.gritwright.core.uncertainty.Component;
import org.gritwright.core.uncertainty.Distribution;
import org.gritwright.core.verification.Advice;
import org.gritwright.core.verification.Correction;
import org.gritwright.units.quantity.ApplicationRate;
import org.gritwright.units.quantity.BulkDensity;
import org.gritwright.units.quantity.DischargePerRevolution;
import org.gritwright.units.quantity.PulsesPerDistance;

/** The definition of format "gritwright/calibration-record", from its smallest parts to the whole. */
final class CalibrationRecordCodecs {
    private static final Codec<Quantity<DischargePerRevolution>> DISCHARGE = quantity(DischargePerRevolution.class);
    private static final Codec<Quantity<BulkDensity>> DENSITY = quantity(BulkDensity.class);
    private static final Codec<Quantity<PulsesPerDistance>> PER_DISTANCE = quantity(PulsesPerDistance.class);
    private static final Codec<Verdict> VERDICT = choice(Verdict.class);

    private static final ObjectCodec<BudgetOutcome.Row> BUDGET_COMPONENT = object(
            "budget-component",
            BudgetOutcome.Row.class,
            required("name", TEXT),
            required("evaluation", choice(Component.Evaluation.class)),
            required("distribution", choice(Distribution.class)),
            required("standardUncertainty", ANY_QUANTITY),
            required("contribution", ANY_QUANTITY),
            optional("degreesOfFreedom", RATIO),
            optional("group", TEXT),
            required("share", RATIO));

    private static final ObjectCodec<BudgetOutcome> BUDGET = object(
            "uncertainty-budget",
            BudgetOutcome.class,
            required("components", listOf(BUDGET_COMPONENT)),
            required("combined", ANY_QUANTITY),
            optional("degreesOfFreedom", RATIO),
            required("expanded", ANY_QUANTITY),
            optional("dominant", TEXT));

    private static final ObjectCodec<CalibrationOutcome> CALIBRATION = object(
            "calibration",
            CalibrationOutcome.class,
            required("catches", RATIO),
            required("estimator", choice(RatioEstimator.class)),
            required("dischargePerRevolution", DISCHARGE),
            optional("standardUncertainty", DISCHARGE),
            optional("sampleDeviation", DISCHARGE),
            required("apparentFill", RATIO),
            optional("massPerStart", MASS),
            optional("massPerStartUncertainty", MASS),
            optional("budget", BUDGET));

    private static final ObjectCodec<JudgementOutcome> JUDGEMENT = object(
            "judgement",
            JudgementOutcome.class,
            required("catches", RATIO),
            required("error", RATIO),
            required("verdict", VERDICT),
            optional("risk", RATIO),
            required("guardBand", RATIO),
            required("probabilityBelow", RATIO),
            required("probabilityWithin", RATIO),
            required("probabilityAbove", RATIO),
            required("advice", choice(Advice.class)),
            optional("furtherCatches", RATIO),
            optional("furtherMass", MASS),
            required("budget", BUDGET));

    private static final ObjectCodec<CorrectionOutcome.Step> CORRECTION_STEP = object(
            "correction-step",
            CorrectionOutcome.Step.class,
            optional("on", DATE),
            required("action", choice(Correction.Action.class)),
            required("value", FACTOR),
            optional("error", RATIO),
            optional("expandedUncertainty", RATIO),
            optional("verdict", VERDICT));

    private static final ObjectCodec<CurveOutcome.Point> CURVE_POINT = object(
            "curve-point",
            CurveOutcome.Point.class,
            required("setting", SETTING),
            required("dischargePerRevolution", DISCHARGE),
            optional("standardUncertainty", DISCHARGE));

    private static final ObjectCodec<CurveOutcome> CURVE = object(
            "curve",
            CurveOutcome.class,
            required("material", TEXT),
            required("model", choice(CurveModel.class)),
            required("catches", RATIO),
            optional("effectiveBulkDensity", DENSITY),
            optional("effectiveBulkDensityUncertainty", DENSITY),
            optional("deadOpening", SETTING),
            optional("deadOpeningUncertainty", SETTING),
            optional("misfitChance", RATIO),
            required("points", listOf(CURVE_POINT)));

    private static final ObjectCodec<VerificationOutcome> VERIFICATION = object(
            "verification",
            VerificationOutcome.class,
            optional("at", DATE_AND_TIME),
            required("inForce", FACTOR),
            required("testDistance", LENGTH),
            required("expected", MASS),
            optional("indicated", MASS),
            required("caught", MASS),
            optional("calibrationError", RATIO),
            required("deliveryError", RATIO),
            optional("equivalentLostTime", TIME),
            required("deliveredRate", quantity(ApplicationRate.class)),
            required("verdict", VERDICT),
            optional("judgement", JUDGEMENT),
            optional("together", JUDGEMENT));

    private static final ObjectCodec<CorrectionOutcome> CORRECTION = object(
            "correction",
            CorrectionOutcome.class,
            required("asFound", FACTOR),
            required("computed", FACTOR),
            required("toEnter", FACTOR),
            optional("asLeft", FACTOR),
            required("status", choice(Correction.Status.class)),
            optional("basis", choice(Correction.Basis.class)),
            list("history", CORRECTION_STEP));

    private static final ObjectCodec<StartUpOutcome> START_UP = object(
            "start-up",
            StartUpOutcome.class,
            required("lostMassPerStart", MASS),
            required("lostTimePerStart", TIME),
            required("steadyError", RATIO),
            optional("steadyErrorUncertainty", RATIO));

    private static final ObjectCodec<PointOutcome> POINT = object(
            "point",
            PointOutcome.class,
            required("material", TEXT),
            optional("setting", SETTING),
            optional("massPerRevolution", choice(MassProof.class)).component("proof"),
            optional("calibration", CALIBRATION),
            list("verifications", VERIFICATION),
            optional("correction", CORRECTION),
            optional("startUp", START_UP),
            list("held", FleetDayCodecs.IN_FORCE));

    private static final ObjectCodec<Refusal> REFUSAL = object(
            "refusal",
            Refusal.class,
            required("pointer", ANY_TEXT),
            required("subject", ANY_TEXT),
            required("field", TEXT),
            required("accepted", TEXT),
            required("value", ANY_TEXT));

    private static final ObjectCodec<ToDoOutcome> TO_DO = object(
            "to-do",
            ToDoOutcome.class,
            required("step", choice(NextStep.class)),
            optional("material", TEXT),
            optional("setting", SETTING));

    private static final ObjectCodec<RoadSpeedOutcome> ROAD_SPEED = object(
            "road-speed-check",
            RoadSpeedOutcome.class,
            required("inForce", PER_DISTANCE),
            required("measured", PER_DISTANCE),
            required("standardUncertainty", PER_DISTANCE),
            required("error", RATIO),
            required("effectOnRate", RATIO),
            required("verdict", VERDICT));

    private static final ObjectCodec<SignOff> SIGN_OFF =
            object("sign-off", SignOff.class, required("name", TEXT), optional("role", TEXT), required("on", DATE));

    static final ObjectCodec<CalibrationRecord> CALIBRATION_RECORD = object(
            "calibration-record",
            CalibrationRecord.class,
            required("entered", FleetDayCodecs.FLEET_DAY),
            list("refusals", REFUSAL),
            list("points", POINT),
            list("curves", CURVE),
            optional("roadSpeed", ROAD_SPEED),
            required("massPerRevolution", choice(MassProof.class)).component("massProof"),
            required("roadSpeedValue", choice(RoadProof.class)).component("roadProof"),
            list("toDo", TO_DO),
            list("findings", new FindingCodec()),
            optional("signOff", SIGN_OFF));

    private CalibrationRecordCodecs() {}
}
