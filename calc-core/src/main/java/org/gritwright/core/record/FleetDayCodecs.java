package org.gritwright.core.record;

import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Stream;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Length;
import javax.measure.quantity.Mass;
import javax.measure.quantity.Speed;
import javax.measure.quantity.Temperature;
import javax.measure.quantity.Time;
import org.gritwright.core.calibration.Change;
import org.gritwright.core.curve.CurveModel;
import org.gritwright.core.fleet.day.CalibrationCatchEntry;
import org.gritwright.core.fleet.day.CatchEntry;
import org.gritwright.core.fleet.day.ChangeEntry;
import org.gritwright.core.fleet.day.Conditions;
import org.gritwright.core.fleet.day.CountEntry;
import org.gritwright.core.fleet.day.CourseRunEntry;
import org.gritwright.core.fleet.day.FleetDay;
import org.gritwright.core.fleet.day.InForceEntry;
import org.gritwright.core.fleet.day.PlanEntry;
import org.gritwright.core.fleet.day.RoadSpeedEntry;
import org.gritwright.core.fleet.day.TargetEntry;
import org.gritwright.core.fleet.day.TruckDay;
import org.gritwright.core.fleet.day.TypedEntry;
import org.gritwright.core.fleet.day.VerificationCatchEntry;
import org.gritwright.core.fleet.day.WeighingEntry;
import org.gritwright.core.judgement.DecisionRule;
import org.gritwright.core.metering.OpenLoop;
import org.gritwright.core.observation.CatchAllowances;
import org.gritwright.core.observation.Coasting;
import org.gritwright.core.observation.Material;
import org.gritwright.core.observation.Moisture;
import org.gritwright.core.observation.Repeatability;
import org.gritwright.core.weighing.Scale;
import org.gritwright.core.weighing.ScaleAccuracy;
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
import org.gritwright.units.quantity.RotationalSpeed;

/** The definition of format "gritwright/fleet-day", from its smallest parts to the whole. */
final class FleetDayCodecs {
    private static final Codec<Quantity<Mass>> MASS = Codecs.quantity(Mass.class);
    private static final Codec<Quantity<Length>> LENGTH = Codecs.quantity(Length.class);
    private static final Codec<Quantity<Time>> TIME = Codecs.quantity(Time.class);
    private static final Codec<Quantity<Dimensionless>> RATIO = Codecs.quantity(Dimensionless.class);
    private static final Codec<Quantity<PulseCount>> PULSES = Codecs.quantity(PulseCount.class);
    private static final Codec<Quantity<RotationalSpeed>> ROTATION = Codecs.quantity(RotationalSpeed.class);

    static final ObjectCodec<TypedEntry> TYPED = typed();

    static final ObjectCodec<FleetDay> FLEET_DAY = fleetDay();

    private FleetDayCodecs() {}

    private static ObjectCodec<ScaleCheck> scaleCheck() {
        Field<ScaleCheck, LocalDate> on = Field.required("on", Codecs.DATE, ScaleCheck::on);
        Field<ScaleCheck, Quantity<Mass>> testWeight = Field.required("testWeight", MASS, ScaleCheck::testWeight);
        Field<ScaleCheck, Quantity<Mass>> reading = Field.required("reading", MASS, ScaleCheck::reading);
        return new ObjectCodec<>(
                "scale-check",
                List.of(on, testWeight, reading),
                v -> new ScaleCheck(v.get(on), v.get(testWeight), v.get(reading)));
    }

    private static ObjectCodec<Scale> scale() {
        Field<Scale, String> id = Field.required("id", Codecs.TEXT, Scale::id);
        Field<Scale, Quantity<Mass>> capacity = Field.required("capacity", MASS, Scale::capacity);
        Field<Scale, Quantity<Mass>> division = Field.required("division", MASS, Scale::division);
        Field<Scale, Optional<ScaleAccuracy>> accuracy =
                Field.optional("accuracy", Codecs.SCALE_ACCURACY, Scale::accuracy);
        Field<Scale, List<ScaleCheck>> checks = Field.list("checks", scaleCheck(), Scale::checks);
        return new ObjectCodec<>(
                "scale",
                List.of(id, capacity, division, accuracy, checks),
                v -> new Scale(v.get(id), v.get(capacity), v.get(division), v.get(accuracy), v.get(checks)));
    }

    private static ObjectCodec<Material> material() {
        Field<Material, String> name = Field.required("name", Codecs.TEXT, Material::name);
        Field<Material, Quantity<BulkDensity>> density =
                Field.required("looseBulkDensity", Codecs.quantity(BulkDensity.class), Material::looseBulkDensity);
        Field<Material, Optional<Quantity<Length>>> grains =
                Field.optional("grainDiameter", LENGTH, Material::grainDiameter);
        return new ObjectCodec<>(
                "material",
                List.of(name, density, grains),
                v -> new Material(v.get(name), v.get(density), v.get(grains)));
    }

    private static ObjectCodec<WeighingEntry> weighing() {
        Field<WeighingEntry, String> container = Field.required("container", Codecs.TEXT, WeighingEntry::container);
        Field<WeighingEntry, Quantity<Mass>> gross = Field.required("gross", MASS, WeighingEntry::gross);
        Field<WeighingEntry, Quantity<Mass>> tare = Field.required("tare", MASS, WeighingEntry::tare);
        return new ObjectCodec<>(
                "weighing",
                List.of(container, gross, tare),
                v -> new WeighingEntry(v.get(container), v.get(gross), v.get(tare)));
    }

    private static ObjectCodec<CountEntry> count() {
        Field<CountEntry, Optional<Quantity<PulseCount>>> pulses = Field.optional("pulses", PULSES, CountEntry::pulses);
        Field<CountEntry, Optional<Quantity<PulseCount>>> start = Field.optional("start", PULSES, CountEntry::start);
        Field<CountEntry, Optional<Quantity<PulseCount>>> stop = Field.optional("stop", PULSES, CountEntry::stop);
        Field<CountEntry, Optional<Quantity<PulseCount>>> modulus =
                Field.optional("modulus", PULSES, CountEntry::modulus);
        Codec<Quantity<RevolutionCount>> count = Codecs.quantity(RevolutionCount.class);
        Field<CountEntry, Optional<Quantity<RevolutionCount>>> revolutions =
                Field.optional("revolutions", count, CountEntry::revolutions);
        Field<CountEntry, Optional<Quantity<RevolutionCount>>> uncertainty =
                Field.optional("standardUncertainty", count, CountEntry::standardUncertainty);
        Field<CountEntry, Optional<Quantity<RotationalSpeed>>> speed =
                Field.optional("shaftSpeed", ROTATION, CountEntry::shaftSpeed);
        Field<CountEntry, Optional<Quantity<Dimensionless>>> setting =
                Field.optional("setting", RATIO, CountEntry::setting);
        Field<CountEntry, Optional<Quantity<Time>>> time = Field.optional("time", TIME, CountEntry::time);
        return new ObjectCodec<>(
                "count",
                List.of(pulses, start, stop, modulus, revolutions, uncertainty, speed, setting, time),
                v -> new CountEntry(
                        v.get(pulses),
                        v.get(start),
                        v.get(stop),
                        v.get(modulus),
                        v.get(revolutions),
                        v.get(uncertainty),
                        v.get(speed),
                        v.get(setting),
                        v.get(time)));
    }

    private static ObjectCodec<Conditions> conditions() {
        Field<Conditions, Optional<Quantity<RotationalSpeed>>> engine =
                Field.optional("engineSpeed", ROTATION, Conditions::engineSpeed);
        Field<Conditions, Optional<Quantity<Temperature>>> oil =
                Field.optional("oilTemperature", Codecs.quantity(Temperature.class), Conditions::oilTemperature);
        Field<Conditions, Optional<Quantity<Dimensionless>>> level =
                Field.optional("hopperLevel", Codecs.PART, Conditions::hopperLevel);
        Field<Conditions, Optional<Quantity<Dimensionless>>> moisture =
                Field.optional("moisture", Codecs.PART, Conditions::moisture);
        Field<Conditions, Optional<Moisture.Basis>> basis =
                Field.optional("moistureBasis", Codecs.choice(Moisture.Basis.class), Conditions::moistureBasis);
        return new ObjectCodec<>(
                "conditions",
                List.of(engine, oil, level, moisture, basis),
                v -> new Conditions(v.get(engine), v.get(oil), v.get(level), v.get(moisture), v.get(basis)));
    }

    /** The fields that catches of both purposes share, written on the level of the catch itself. */
    private record CatchFields<T>(
            Field<T, OffsetDateTime> at,
            Field<T, Optional<String>> operator,
            Field<T, String> scale,
            Field<T, List<WeighingEntry>> containers,
            Field<T, Optional<CountEntry>> counted,
            Field<T, Optional<Quantity<?>>> opening,
            Field<T, String> material,
            Field<T, Optional<Conditions>> conditions,
            Field<T, Optional<String>> notes) {

        static <T> CatchFields<T> of(Function<T, CatchEntry> part) {
            return new CatchFields<>(
                    Field.required("at", Codecs.TIME, CatchEntry::at).within(part),
                    Field.optional("operator", Codecs.TEXT, CatchEntry::operator)
                            .within(part),
                    Field.required("scale", Codecs.TEXT, CatchEntry::scale).within(part),
                    Field.required("containers", Codecs.listOf(weighing()), CatchEntry::containers)
                            .within(part),
                    Field.optional("counted", count(), CatchEntry::counted).within(part),
                    Field.optional("opening", Codecs.OPENING, CatchEntry::opening)
                            .within(part),
                    Field.required("material", Codecs.TEXT, CatchEntry::material)
                            .within(part),
                    Field.optional("conditions", FleetDayCodecs.conditions(), CatchEntry::conditions)
                            .within(part),
                    Field.optional("notes", Codecs.TEXT, CatchEntry::notes).within(part));
        }

        /** The shared fields with the others of a catch between what was caught and the remarks. */
        List<Field<T, ?>> with(List<Field<T, ?>> others) {
            return Stream.of(
                            List.of(at, operator, material, opening, scale, containers, counted),
                            others,
                            List.of(conditions, notes))
                    .<Field<T, ?>>flatMap(List::stream)
                    .toList();
        }

        CatchEntry entry(ObjectCodec.Values<T> v) {
            return new CatchEntry(
                    v.get(at),
                    v.get(operator),
                    v.get(scale),
                    v.get(containers),
                    v.get(counted),
                    v.get(opening),
                    v.get(material),
                    v.get(conditions),
                    v.get(notes));
        }
    }

    private static ObjectCodec<CalibrationCatchEntry> calibrationCatch() {
        CatchFields<CalibrationCatchEntry> shared = CatchFields.of(CalibrationCatchEntry::entry);
        Field<CalibrationCatchEntry, Boolean> primed =
                Field.required("primed", Codecs.BOOLEAN, CalibrationCatchEntry::primed);
        Field<CalibrationCatchEntry, Coasting> coasting =
                Field.required("coasting", Codecs.choice(Coasting.class), CalibrationCatchEntry::coasting);
        return new ObjectCodec<>(
                "calibration-catch",
                shared.with(List.of(primed, coasting)),
                v -> new CalibrationCatchEntry(shared.entry(v), v.get(primed), v.get(coasting)));
    }

    private static ObjectCodec<VerificationCatchEntry> verificationCatch() {
        CatchFields<VerificationCatchEntry> shared = CatchFields.of(VerificationCatchEntry::entry);
        Field<VerificationCatchEntry, Quantity<?>> inForce =
                Field.required("inForce", Codecs.FACTOR, VerificationCatchEntry::inForce);
        Field<VerificationCatchEntry, Optional<Quantity<ApplicationRate>>> rate = Field.optional(
                        "targetRate", Codecs.quantity(ApplicationRate.class), TargetEntry::rate)
                .within(VerificationCatchEntry::target);
        Field<VerificationCatchEntry, Optional<Quantity<LaneApplicationRate>>> laneRate = Field.optional(
                        "targetLaneRate", Codecs.quantity(LaneApplicationRate.class), TargetEntry::laneRate)
                .within(VerificationCatchEntry::target);
        Field<VerificationCatchEntry, Optional<Quantity<LaneCount>>> lanes = Field.optional(
                        "lanes", Codecs.quantity(LaneCount.class), TargetEntry::lanes)
                .within(VerificationCatchEntry::target);
        Field<VerificationCatchEntry, Quantity<Speed>> speed =
                Field.required("testSpeed", Codecs.quantity(Speed.class), VerificationCatchEntry::testSpeed);
        Field<VerificationCatchEntry, Optional<Quantity<Time>>> time =
                Field.optional("runTime", TIME, VerificationCatchEntry::runTime);
        Field<VerificationCatchEntry, Optional<Quantity<Length>>> distance =
                Field.optional("testDistance", LENGTH, VerificationCatchEntry::testDistance);
        Field<VerificationCatchEntry, Optional<Quantity<Mass>>> indicated =
                Field.optional("indicated", MASS, VerificationCatchEntry::indicated);
        Field<VerificationCatchEntry, Optional<Quantity<Mass>>> step =
                Field.optional("indicatedStep", MASS, VerificationCatchEntry::indicatedStep);
        return new ObjectCodec<>(
                "verification-catch",
                shared.with(List.of(inForce, rate, laneRate, lanes, speed, time, distance, indicated, step)),
                v -> new VerificationCatchEntry(
                        shared.entry(v),
                        v.get(inForce),
                        new TargetEntry(v.get(rate), v.get(laneRate), v.get(lanes)),
                        v.get(speed),
                        v.get(time),
                        v.get(distance),
                        v.get(indicated),
                        v.get(step)));
    }

    private static ObjectCodec<TypedEntry> typed() {
        Field<TypedEntry, String> type = Field.required("type", Codecs.TEXT, TypedEntry::type);
        Field<TypedEntry, Integer> version = Field.required("version", Codecs.VERSION, TypedEntry::version);
        Field<TypedEntry, Map<String, ?>> parameters =
                new Field<>("parameters", Codecs.PARAMETERS, TypedEntry::parameters, Map.of(), Map::isEmpty);
        return new ObjectCodec<>(
                "type-and-parameters",
                List.of(type, version, parameters),
                v -> new TypedEntry(v.get(type), v.get(version), v.get(parameters)));
    }

    private static ObjectCodec<InForceEntry> inForce() {
        Field<InForceEntry, Quantity<?>> value = Field.required("value", Codecs.FACTOR, InForceEntry::value);
        Field<InForceEntry, Optional<Quantity<?>>> step =
                Field.optional("displayStep", Codecs.FACTOR, InForceEntry::displayStep);
        Field<InForceEntry, LocalDate> dated = Field.required("dated", Codecs.DATE, InForceEntry::dated);
        Field<InForceEntry, String> material = Field.required("material", Codecs.TEXT, InForceEntry::material);
        Field<InForceEntry, Optional<Quantity<?>>> opening =
                Field.optional("opening", Codecs.OPENING, InForceEntry::opening);
        Field<InForceEntry, Optional<String>> slot = Field.optional("slot", Codecs.TEXT, InForceEntry::slot);
        return new ObjectCodec<>(
                "in-force",
                List.of(value, step, dated, material, opening, slot),
                v -> new InForceEntry(
                        v.get(value), v.get(step), v.get(dated), v.get(material), v.get(opening), v.get(slot)));
    }

    private static ObjectCodec<ChangeEntry> change() {
        Field<ChangeEntry, LocalDate> on = Field.required("on", Codecs.DATE, ChangeEntry::on);
        Field<ChangeEntry, Change.Part> part =
                Field.required("part", Codecs.choice(Change.Part.class), ChangeEntry::part);
        Field<ChangeEntry, Optional<String>> notes = Field.optional("notes", Codecs.TEXT, ChangeEntry::notes);
        return new ObjectCodec<>(
                "change", List.of(on, part, notes), v -> new ChangeEntry(v.get(on), v.get(part), v.get(notes)));
    }

    private static ObjectCodec<RoadSpeedEntry> roadSpeed() {
        Field<CourseRunEntry, Quantity<Length>> course = Field.required("course", LENGTH, CourseRunEntry::course);
        Field<CourseRunEntry, Quantity<PulseCount>> pulses = Field.required("pulses", PULSES, CourseRunEntry::pulses);
        ObjectCodec<CourseRunEntry> run = new ObjectCodec<>(
                "course-run", List.of(course, pulses), v -> new CourseRunEntry(v.get(course), v.get(pulses)));
        Field<RoadSpeedEntry, LocalDate> on = Field.required("on", Codecs.DATE, RoadSpeedEntry::on);
        Field<RoadSpeedEntry, Quantity<PulsesPerDistance>> inForce =
                Field.required("inForce", Codecs.quantity(PulsesPerDistance.class), RoadSpeedEntry::inForce);
        Field<RoadSpeedEntry, List<CourseRunEntry>> runs =
                Field.required("runs", Codecs.listOf(run), RoadSpeedEntry::runs);
        return new ObjectCodec<>(
                "road-speed",
                List.of(on, inForce, runs),
                v -> new RoadSpeedEntry(v.get(on), v.get(inForce), v.get(runs)));
    }

    private static ObjectCodec<TruckDay> truck() {
        Field<TruckDay, String> id = Field.required("id", Codecs.TEXT, TruckDay::id);
        Field<TruckDay, TypedEntry> conveyor = Field.required("conveyor", TYPED, TruckDay::conveyor);
        Field<TruckDay, TypedEntry> gate = Field.required("gate", TYPED, TruckDay::gate);
        Field<TruckDay, Optional<Quantity<PulsesPerRevolution>>> sensor = Field.optional(
                "pulsesPerRevolution", Codecs.quantity(PulsesPerRevolution.class), TruckDay::pulsesPerRevolution);
        Field<TruckDay, Quantity<Dimensionless>> gearRatio = Field.required("gearRatio", RATIO, TruckDay::gearRatio);
        Field<OpenLoop.Row, Quantity<Dimensionless>> setting = Field.required("setting", RATIO, OpenLoop.Row::setting);
        Field<OpenLoop.Row, Quantity<RotationalSpeed>> speed =
                Field.required("shaftSpeed", ROTATION, OpenLoop.Row::shaftSpeed);
        ObjectCodec<OpenLoop.Row> row = new ObjectCodec<>(
                "control-setting", List.of(setting, speed), v -> new OpenLoop.Row(v.get(setting), v.get(speed)));
        Field<TruckDay, List<OpenLoop.Row>> controlSettings =
                Field.list("controlSettings", row, TruckDay::controlSettings);
        Field<TruckDay, Optional<Quantity<?>>> gateReading =
                Field.optional("gateReading", Codecs.OPENING, TruckDay::gateReading);
        Field<TruckDay, Optional<CurveModel>> curveModel =
                Field.optional("curveModel", Codecs.choice(CurveModel.class), TruckDay::curveModel);
        Field<TruckDay, Optional<InForceEntry>> inForce = Field.optional("inForce", inForce(), TruckDay::inForce);
        Field<TruckDay, List<ChangeEntry>> changes = Field.list("changes", change(), TruckDay::changes);
        Field<TruckDay, List<CalibrationCatchEntry>> calibrations =
                Field.list("calibrationCatches", calibrationCatch(), TruckDay::calibrationCatches);
        Field<TruckDay, List<VerificationCatchEntry>> verifications =
                Field.list("verificationCatches", verificationCatch(), TruckDay::verificationCatches);
        Field<TruckDay, Optional<RoadSpeedEntry>> roadSpeed =
                Field.optional("roadSpeed", roadSpeed(), TruckDay::roadSpeed);
        Field<TruckDay, Optional<String>> notes = Field.optional("notes", Codecs.TEXT, TruckDay::notes);
        return new ObjectCodec<>(
                "truck",
                List.of(
                        id,
                        conveyor,
                        gate,
                        sensor,
                        gearRatio,
                        controlSettings,
                        gateReading,
                        curveModel,
                        inForce,
                        changes,
                        calibrations,
                        verifications,
                        roadSpeed,
                        notes),
                v -> new TruckDay(
                        v.get(id),
                        v.get(conveyor),
                        v.get(gate),
                        v.get(sensor),
                        v.get(gearRatio),
                        v.get(controlSettings),
                        v.get(gateReading),
                        v.get(curveModel),
                        v.get(inForce),
                        v.get(changes),
                        v.get(calibrations),
                        v.get(verifications),
                        v.get(roadSpeed),
                        v.get(notes)));
    }

    private enum Rule {
        SIMPLE,
        GUARDED
    }

    private static ObjectCodec<DecisionRule> decisionRule() {
        Field<DecisionRule, Rule> rule = Field.required(
                "rule", Codecs.choice(Rule.class), r -> r.risk().isPresent() ? Rule.GUARDED : Rule.SIMPLE);
        Field<DecisionRule, Optional<Quantity<Dimensionless>>> risk =
                Field.optional("risk", Codecs.TOLERANCE, DecisionRule::risk);
        return new ObjectCodec<>("decision-rule", List.of(rule, risk), v -> {
            boolean guarded = v.get(rule) == Rule.GUARDED;
            if (guarded != v.get(risk).isPresent()) {
                throw new InvalidInputException(
                        "risk of a decision",
                        "given with the guarded rule, and only with it",
                        guarded ? "nothing" : Amounts.format(v.get(risk).get()));
            }
            return new DecisionRule(v.get(risk));
        });
    }

    private static ObjectCodec<CatchAllowances> allowances() {
        Field<Moisture, Quantity<Dimensionless>> content = Field.required("content", Codecs.PART, Moisture::content);
        Field<Moisture, Quantity<Dimensionless>> half = Field.required("halfWidth", Codecs.PART, Moisture::halfWidth);
        Field<Moisture, Moisture.Basis> basis =
                Field.required("basis", Codecs.choice(Moisture.Basis.class), Moisture::basis);
        ObjectCodec<Moisture> moistureCodec = new ObjectCodec<>(
                "moisture",
                List.of(content, half, basis),
                v -> new Moisture(v.get(content), v.get(half), v.get(basis)));
        Field<Repeatability, Quantity<Dimensionless>> deviation =
                Field.required("relativeDeviation", Codecs.PART, Repeatability::relativeDeviation);
        Field<Repeatability, Optional<Quantity<Dimensionless>>> degrees = Field.optional(
                "degreesOfFreedom",
                RATIO,
                r -> Double.isInfinite(r.degreesOfFreedom())
                        ? Optional.empty()
                        : Optional.of(Amounts.of(r.degreesOfFreedom(), SpreadingUnits.ONE)));
        ObjectCodec<Repeatability> repeatabilityCodec = new ObjectCodec<>(
                "repeatability",
                List.of(deviation, degrees),
                v -> new Repeatability(
                        v.get(deviation),
                        v.get(degrees)
                                .map(d -> Amounts.si(Dimensionless.class, d))
                                .orElse(Double.POSITIVE_INFINITY)));
        Field<CatchAllowances, Quantity<Dimensionless>> spillage =
                part("greatestSpillage", CatchAllowances::greatestSpillage);
        Field<CatchAllowances, Quantity<Dimensionless>> startUp =
                part("greatestTransient", CatchAllowances::greatestTransient);
        Field<CatchAllowances, Optional<Moisture>> moisture =
                Field.optional("moisture", moistureCodec, CatchAllowances::moisture);
        Field<CatchAllowances, Optional<Repeatability>> repeatability =
                Field.optional("repeatability", repeatabilityCodec, CatchAllowances::repeatability);
        return new ObjectCodec<>(
                "allowances",
                List.of(spillage, startUp, moisture, repeatability),
                v -> new CatchAllowances(v.get(spillage), v.get(startUp), v.get(moisture), v.get(repeatability)));
    }

    /** A percentage that is 0 where it is left out. */
    private static <T> Field<T, Quantity<Dimensionless>> part(
            String name, Function<T, Quantity<Dimensionless>> getter) {
        Quantity<Dimensionless> none = Amounts.of(0, SpreadingUnits.PERCENT);
        return new Field<>(name, Codecs.PART, getter, none, none::equals);
    }

    private static ObjectCodec<FleetDay> fleetDay() {
        Field<FleetDay, LocalDate> day = Field.required("day", Codecs.DATE, FleetDay::day);
        Field<FleetDay, LocalDate> season = Field.required("seasonStart", Codecs.DATE, FleetDay::seasonStart);
        Field<FleetDay, Quantity<Dimensionless>> tolerance =
                Field.required("tolerance", Codecs.TOLERANCE, FleetDay::tolerance);
        Field<FleetDay, DecisionRule> rule = new Field<>(
                "decisionRule",
                decisionRule(),
                FleetDay::decisionRule,
                DecisionRule.SIMPLE,
                DecisionRule.SIMPLE::equals);
        Field<FleetDay, CatchAllowances> allowances = new Field<>(
                "allowances", allowances(), FleetDay::allowances, CatchAllowances.NONE, CatchAllowances.NONE::equals);
        Field<FleetDay, Optional<String>> site = Field.optional("site", Codecs.TEXT, FleetDay::site);
        Field<FleetDay, Optional<String>> technician = Field.optional("technician", Codecs.TEXT, FleetDay::technician);
        Field<FleetDay, List<Scale>> scales =
                Field.required("scales", unique("scale id", scale(), Scale::id, "id"), FleetDay::scales);
        Field<FleetDay, List<Material>> materials = Field.required(
                "materials", unique("material name", material(), Material::name, "name"), FleetDay::materials);
        Field<FleetDay, Optional<PlanEntry>> plan = Field.optional("plan", PlanCodecs.PLAN, FleetDay::plan);
        Field<FleetDay, List<TruckDay>> trucks =
                Field.required("trucks", unique("truck id", truck(), TruckDay::id, "id"), FleetDay::trucks);
        return new ObjectCodec<>(
                "fleet-day",
                List.of(day, season, tolerance, rule, allowances, site, technician, scales, materials, plan, trucks),
                v -> new FleetDay(
                        v.get(day),
                        v.get(season),
                        v.get(tolerance),
                        v.get(rule),
                        v.get(allowances),
                        v.get(site),
                        v.get(technician),
                        v.get(scales),
                        v.get(materials),
                        v.get(plan),
                        v.get(trucks)));
    }

    /** A list whose items have names of their own: the same name twice is a problem at the second one. */
    private static <T> Codec<List<T>> unique(String what, Codec<T> item, Function<T, String> key, String field) {
        Codec<List<T>> list = Codecs.listOf(item);
        return new Codec<>() {
            @Override
            public List<T> read(JsonNode node, Pointer pointer, Problems problems) {
                List<T> values = list.read(node, pointer, problems);
                Set<String> seen = new HashSet<>();
                for (int i = 0; values != null && i < values.size(); i++) {
                    String name = key.apply(values.get(i));
                    if (!seen.add(name)) {
                        problems.add(pointer.at(i).at(field), "each " + what + " once", "\"" + name + "\" again");
                    }
                }
                return values;
            }

            @Override
            public JsonNode write(List<T> value) {
                return list.write(value);
            }

            @Override
            public JsonNode describe(Schema schema) {
                return list.describe(schema);
            }
        };
    }
}
