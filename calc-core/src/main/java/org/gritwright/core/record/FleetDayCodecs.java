package org.gritwright.core.record;

import static org.gritwright.core.json.Codecs.BOOLEAN;
import static org.gritwright.core.json.Codecs.DATE;
import static org.gritwright.core.json.Codecs.DATE_AND_TIME;
import static org.gritwright.core.json.Codecs.TEXT;
import static org.gritwright.core.json.Codecs.VERSION;
import static org.gritwright.core.json.Codecs.choice;
import static org.gritwright.core.json.Codecs.listOf;
import static org.gritwright.core.json.Codecs.mapped;
import static org.gritwright.core.json.Codecs.quantity;
import static org.gritwright.core.json.Codecs.uniqueListOf;
import static org.gritwright.core.json.Field.inlined;
import static org.gritwright.core.json.Field.list;
import static org.gritwright.core.json.Field.optional;
import static org.gritwright.core.json.Field.required;
import static org.gritwright.core.json.Field.withDefault;
import static org.gritwright.core.json.ObjectCodec.object;
import static org.gritwright.core.record.ValueCodecs.FACTOR;
import static org.gritwright.core.record.ValueCodecs.LENGTH;
import static org.gritwright.core.record.ValueCodecs.MASS;
import static org.gritwright.core.record.ValueCodecs.PARAMETERS;
import static org.gritwright.core.record.ValueCodecs.PART;
import static org.gritwright.core.record.ValueCodecs.RATIO;
import static org.gritwright.core.record.ValueCodecs.ROTATION;
import static org.gritwright.core.record.ValueCodecs.SCALE_ACCURACY;
import static org.gritwright.core.record.ValueCodecs.SETTING;
import static org.gritwright.core.record.ValueCodecs.SINCE;
import static org.gritwright.core.record.ValueCodecs.TIME;
import static org.gritwright.core.record.ValueCodecs.TOLERANCE;

import java.util.Map;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Speed;
import javax.measure.quantity.Temperature;
import org.gritwright.core.calibration.Change;
import org.gritwright.core.curve.CurveModel;
import org.gritwright.core.fleet.day.CalibrationCatchEntry;
import org.gritwright.core.fleet.day.CatchEntry;
import org.gritwright.core.fleet.day.ChangeEntry;
import org.gritwright.core.fleet.day.CountEntry;
import org.gritwright.core.fleet.day.CourseRunEntry;
import org.gritwright.core.fleet.day.FleetDay;
import org.gritwright.core.fleet.day.InForceEntry;
import org.gritwright.core.fleet.day.RoadSpeedEntry;
import org.gritwright.core.fleet.day.SpreaderEntry;
import org.gritwright.core.fleet.day.TargetEntry;
import org.gritwright.core.fleet.day.TruckDay;
import org.gritwright.core.fleet.day.TypedEntry;
import org.gritwright.core.fleet.day.VerificationCatchEntry;
import org.gritwright.core.fleet.day.WeighingEntry;
import org.gritwright.core.json.Codec;
import org.gritwright.core.json.ObjectCodec;
import org.gritwright.core.judgement.DecisionRule;
import org.gritwright.core.metering.OpenLoop;
import org.gritwright.core.observation.CatchAllowances;
import org.gritwright.core.observation.Coasting;
import org.gritwright.core.observation.Conditions;
import org.gritwright.core.observation.Material;
import org.gritwright.core.observation.Moisture;
import org.gritwright.core.observation.Repeatability;
import org.gritwright.core.weighing.Scale;
import org.gritwright.core.weighing.ScaleCheck;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.quantity.ApplicationRate;
import org.gritwright.units.quantity.BulkDensity;
import org.gritwright.units.quantity.LaneApplicationRate;
import org.gritwright.units.quantity.LaneCount;
import org.gritwright.units.quantity.PulseCount;
import org.gritwright.units.quantity.PulsesPerDistance;
import org.gritwright.units.quantity.PulsesPerRevolution;
import org.gritwright.units.quantity.RevolutionCount;

/** The definition of format "gritwright/fleet-day", from its smallest parts to the whole: one line for each field. */
final class FleetDayCodecs {
    private static final Codec<Quantity<PulseCount>> PULSES = quantity(PulseCount.class);

    private static final ObjectCodec<ScaleCheck> SCALE_CHECK = object(
            "scale-check",
            ScaleCheck.class,
            required("on", DATE),
            required("testWeight", MASS),
            required("reading", MASS));

    private static final ObjectCodec<Scale> SCALE = object(
            "scale",
            Scale.class,
            required("id", TEXT),
            required("capacity", MASS),
            required("division", MASS),
            optional("accuracy", SCALE_ACCURACY),
            list("checks", SCALE_CHECK));

    private static final ObjectCodec<Material> MATERIAL = object(
            "material",
            Material.class,
            required("name", TEXT),
            required("looseBulkDensity", quantity(BulkDensity.class)),
            optional("grainDiameter", LENGTH));

    private static final ObjectCodec<WeighingEntry> WEIGHING = object(
            "weighing",
            WeighingEntry.class,
            required("container", TEXT),
            required("gross", MASS),
            required("tare", MASS));

    private static final ObjectCodec<CountEntry> COUNT = object(
            "count",
            CountEntry.class,
            optional("pulses", PULSES),
            optional("start", PULSES),
            optional("stop", PULSES),
            optional("modulus", PULSES),
            optional("revolutions", quantity(RevolutionCount.class)),
            optional("standardUncertainty", quantity(RevolutionCount.class)),
            optional("shaftSpeed", ROTATION),
            optional("setting", RATIO),
            optional("time", TIME));

    private static final ObjectCodec<Conditions> CONDITIONS = object(
            "conditions",
            Conditions.class,
            optional("engineSpeed", ROTATION),
            optional("oilTemperature", quantity(Temperature.class)),
            optional("hopperLevel", PART),
            optional("moisture", PART),
            optional("moistureBasis", choice(Moisture.Basis.class)));

    /** What catches of both purposes share, written on the level of the catch itself. */
    private static final ObjectCodec<CatchEntry> CATCH = object(
            "catch",
            CatchEntry.class,
            required("at", DATE_AND_TIME),
            optional("operator", TEXT),
            required("material", TEXT),
            optional("setting", SETTING),
            required("scale", TEXT),
            required("containers", listOf(WEIGHING)),
            optional("counted", COUNT),
            optional("conditions", CONDITIONS).last(),
            optional("notes", TEXT).last());

    private static final ObjectCodec<CalibrationCatchEntry> CALIBRATION_CATCH = object(
            "calibration-catch",
            CalibrationCatchEntry.class,
            inlined("entry", CATCH),
            required("primed", BOOLEAN),
            required("coasting", choice(Coasting.class)));

    private static final ObjectCodec<TargetEntry> TARGET = object(
            "target",
            TargetEntry.class,
            optional("targetRate", quantity(ApplicationRate.class)).component("rate"),
            optional("targetLaneRate", quantity(LaneApplicationRate.class)).component("laneRate"),
            optional("lanes", quantity(LaneCount.class)));

    private static final ObjectCodec<VerificationCatchEntry> VERIFICATION_CATCH = object(
            "verification-catch",
            VerificationCatchEntry.class,
            inlined("entry", CATCH),
            required("inForce", FACTOR),
            optional("slot", TEXT),
            inlined("target", TARGET),
            required("testSpeed", quantity(Speed.class)),
            optional("runTime", TIME),
            optional("testDistance", LENGTH),
            optional("indicated", MASS),
            optional("indicatedStep", MASS));

    static final ObjectCodec<TypedEntry> TYPED = object(
            "type-and-parameters",
            TypedEntry.class,
            required("type", TEXT),
            required("version", VERSION),
            withDefault("parameters", PARAMETERS, Map.of()));

    static final ObjectCodec<InForceEntry> IN_FORCE = object(
            "in-force",
            InForceEntry.class,
            required("value", FACTOR),
            optional("displayStep", FACTOR),
            required("since", SINCE),
            required("material", TEXT),
            optional("setting", SETTING),
            optional("slot", TEXT));

    private static final ObjectCodec<ChangeEntry> CHANGE = object(
            "change",
            ChangeEntry.class,
            required("on", DATE),
            required("part", choice(Change.Part.class)),
            optional("notes", TEXT));

    private static final ObjectCodec<CourseRunEntry> COURSE_RUN =
            object("course-run", CourseRunEntry.class, required("course", LENGTH), required("pulses", PULSES));

    private static final ObjectCodec<RoadSpeedEntry> ROAD_SPEED = object(
            "road-speed",
            RoadSpeedEntry.class,
            required("on", DATE),
            required("inForce", quantity(PulsesPerDistance.class)),
            required("runs", listOf(COURSE_RUN)));

    private static final ObjectCodec<OpenLoop.Row> CONTROL_SETTING =
            object("control-setting", OpenLoop.Row.class, required("setting", RATIO), required("shaftSpeed", ROTATION));

    /** The equipment on a truck, written on the level of the truck itself. */
    private static final ObjectCodec<SpreaderEntry> SPREADER = object(
            "spreader",
            SpreaderEntry.class,
            required("conveyor", TYPED),
            required("gate", TYPED),
            optional("pulsesPerRevolution", quantity(PulsesPerRevolution.class)),
            required("gearRatio", RATIO),
            list("controlSettings", CONTROL_SETTING),
            optional("gateReading", SETTING));

    private static final ObjectCodec<TruckDay> TRUCK = object(
            "truck",
            TruckDay.class,
            required("id", TEXT),
            inlined("spreader", SPREADER),
            optional("curveModel", choice(CurveModel.class)),
            list("inForce", IN_FORCE),
            list("changes", CHANGE),
            list("calibrationCatches", CALIBRATION_CATCH),
            list("verificationCatches", VERIFICATION_CATCH),
            optional("roadSpeed", ROAD_SPEED),
            optional("notes", TEXT));

    private enum RuleName {
        SIMPLE,
        GUARDED
    }

    /** A decision rule as it is written: the word says whether a risk belongs to it. */
    private record NamedRule(RuleName rule, Optional<Quantity<Dimensionless>> risk) {
        NamedRule {
            if ((rule == RuleName.GUARDED) != risk.isPresent()) {
                throw new InvalidInputException(
                        "risk of a decision",
                        "given with the guarded rule, and only with it",
                        risk.map(Amounts::format).orElse("nothing"));
            }
        }

        static NamedRule of(DecisionRule rule) {
            return new NamedRule(rule.risk().isPresent() ? RuleName.GUARDED : RuleName.SIMPLE, rule.risk());
        }
    }

    private static final Codec<DecisionRule> DECISION_RULE = mapped(
            DecisionRule.class.getName(),
            object(
                    "decision-rule",
                    NamedRule.class,
                    required("rule", choice(RuleName.class)),
                    optional("risk", TOLERANCE)),
            named -> new DecisionRule(named.risk()),
            NamedRule::of);

    private static final ObjectCodec<Moisture> MOISTURE = object(
            "moisture",
            Moisture.class,
            required("content", PART),
            required("halfWidth", PART),
            required("basis", choice(Moisture.Basis.class)));

    private static final Codec<Double> DEGREES_OF_FREEDOM = mapped(
            Double.class.getName(),
            RATIO,
            written -> Amounts.si(Dimensionless.class, written),
            degrees -> Amounts.of(degrees, SpreadingUnits.ONE));

    private static final ObjectCodec<Repeatability> REPEATABILITY = object(
            "repeatability",
            Repeatability.class,
            required("relativeDeviation", PART),
            withDefault("degreesOfFreedom", DEGREES_OF_FREEDOM, Double.POSITIVE_INFINITY));

    private static final Quantity<Dimensionless> NOTHING = Amounts.of(0, SpreadingUnits.PERCENT);

    private static final ObjectCodec<CatchAllowances> ALLOWANCES = object(
            "allowances",
            CatchAllowances.class,
            withDefault("greatestSpillage", PART, NOTHING),
            withDefault("greatestTransient", PART, NOTHING),
            optional("moisture", MOISTURE),
            optional("repeatability", REPEATABILITY));

    static final ObjectCodec<FleetDay> FLEET_DAY = object(
            "fleet-day",
            FleetDay.class,
            required("day", DATE),
            required("seasonStart", DATE),
            required("tolerance", TOLERANCE),
            withDefault("decisionRule", DECISION_RULE, DecisionRule.SIMPLE),
            withDefault("allowances", ALLOWANCES, CatchAllowances.NONE),
            optional("site", TEXT),
            optional("technician", TEXT),
            required("scales", uniqueListOf(SCALE, "scale id", Scale::id, "id")),
            required("materials", uniqueListOf(MATERIAL, "material name", Material::name, "name")),
            optional("plan", PlanCodecs.PLAN),
            required("trucks", uniqueListOf(TRUCK, "truck id", TruckDay::id, "id")));

    private FleetDayCodecs() {}
}
