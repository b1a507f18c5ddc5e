package org.gritwright.core.record;

import static org.gritwright.core.json.Codecs.VERSION;
import static org.gritwright.core.json.Codecs.choice;
import static org.gritwright.core.json.Codecs.listOf;
import static org.gritwright.core.json.Codecs.mapped;
import static org.gritwright.core.json.Codecs.notEmpty;
import static org.gritwright.core.json.Codecs.uniqueListOf;
import static org.gritwright.core.json.Field.inlined;
import static org.gritwright.core.json.Field.optional;
import static org.gritwright.core.json.Field.required;
import static org.gritwright.core.json.Field.withDefault;
import static org.gritwright.core.record.ValueCodecs.AMOUNT;
import static org.gritwright.core.record.ValueCodecs.COMMAND;
import static org.gritwright.core.record.ValueCodecs.FACTOR;
import static org.gritwright.core.record.ValueCodecs.PARAMETERS;
import static org.gritwright.core.record.ValueCodecs.PART;
import static org.gritwright.core.record.ValueCodecs.SETTING;
import static org.gritwright.core.record.ValueCodecs.TARGET_LANE_RATE;
import static org.gritwright.core.record.ValueCodecs.TARGET_RATE;
import static org.gritwright.core.record.ValueCodecs.TOLERANCE;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Length;
import org.gritwright.core.fleet.day.BoomEntry;
import org.gritwright.core.fleet.day.CalibrationCatchEntry;
import org.gritwright.core.fleet.day.CatchEntry;
import org.gritwright.core.fleet.day.ChangeEntry;
import org.gritwright.core.fleet.day.CountEntry;
import org.gritwright.core.fleet.day.CourseRunEntry;
import org.gritwright.core.fleet.day.DensityEntry;
import org.gritwright.core.fleet.day.DriveEntry;
import org.gritwright.core.fleet.day.DrivePointEntry;
import org.gritwright.core.fleet.day.DriveRunEntry;
import org.gritwright.core.fleet.day.FleetDay;
import org.gritwright.core.fleet.day.InForceEntry;
import org.gritwright.core.fleet.day.NozzleEntry;
import org.gritwright.core.fleet.day.PlanEntry;
import org.gritwright.core.fleet.day.ReadEntry;
import org.gritwright.core.fleet.day.ReadingMethodEntry;
import org.gritwright.core.fleet.day.RoadSpeedEntry;
import org.gritwright.core.fleet.day.RouteEntry;
import org.gritwright.core.fleet.day.SaltAtHandEntry;
import org.gritwright.core.fleet.day.StatedRangeEntry;
import org.gritwright.core.fleet.day.StepTimes;
import org.gritwright.core.fleet.day.TankEntry;
import org.gritwright.core.fleet.day.TankReadingEntry;
import org.gritwright.core.fleet.day.TargetEntry;
import org.gritwright.core.fleet.day.TruckDay;
import org.gritwright.core.fleet.day.TypedEntry;
import org.gritwright.core.fleet.day.VerificationCatchEntry;
import org.gritwright.core.fleet.day.WeighingEntry;
import org.gritwright.core.fleet.day.WeighingMethodEntry;
import org.gritwright.core.json.Codec;
import org.gritwright.core.json.CodecBook;
import org.gritwright.core.json.Codecs;
import org.gritwright.core.json.Field;
import org.gritwright.core.json.ObjectCodec;
import org.gritwright.core.json.Pointer;
import org.gritwright.core.json.Problems;
import org.gritwright.core.judgement.DecisionRule;
import org.gritwright.core.metering.OpenLoop;
import org.gritwright.core.observation.CatchAllowances;
import org.gritwright.core.observation.Conditions;
import org.gritwright.core.observation.Material;
import org.gritwright.core.observation.Moisture;
import org.gritwright.core.observation.Repeatability;
import org.gritwright.core.planning.Containers;
import org.gritwright.core.range.AtWork;
import org.gritwright.core.range.DriveConditions;
import org.gritwright.core.weighing.Graduate;
import org.gritwright.core.weighing.Scale;
import org.gritwright.core.weighing.ScaleCheck;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.check.Require;
import org.gritwright.units.quantity.BulkDensity;
import org.gritwright.units.quantity.LiquidApplicationRate;

/**
 * The definition of format "gritwright/fleet-day", from its smallest parts to the whole. A field is named after its component
 * and follows from its type; a line of its own stands where it doesn't.
 */
final class FleetDayCodecs {
    private static final CodecBook OF_CATCHES = CodecBook.of(
                    Codecs.NAME,
                    Codecs.DATE,
                    Codecs.DATE_AND_TIME,
                    Codecs.COUNT,
                    Codecs.BOOLEAN,
                    ValueCodecs.SINCE,
                    ValueCodecs.SCALE_ACCURACY)
            .with("scale-check", ScaleCheck.class)
            .with("scale", Scale.class)
            .with("graduate", Graduate.class)
            .with("material", MaterialEntry.class, optional("chemical", PART))
            .with("weighing", WeighingEntry.class)
            .with("count", CountEntry.class)
            .with(
                    "conditions",
                    Conditions.class,
                    optional("hopperLevel", PART),
                    optional("moisture", PART),
                    withDefault("scaleZeroed", Codecs.BOOLEAN, false))
            .with(
                    "target",
                    TargetEntry.class,
                    optional("targetRate", TARGET_RATE).component("rate"),
                    optional("targetLaneRate", TARGET_LANE_RATE).component("laneRate"))
            .with("read", ReadEntry.class, required("fills"))
            .with("density", DensityEntry.class);

    /** What catches of both purposes share, written on the level of the catch itself, in an order of its own. */
    private static final ObjectCodec<CatchEntry> CATCH = ObjectCodec.object(
            "catch",
            CatchEntry.class,
            required("at", Codecs.DATE_AND_TIME),
            optional("operator", Codecs.NAME),
            required("material", Codecs.NAME),
            optional("setting", SETTING),
            optional("scale", Codecs.NAME),
            Field.list("containers", OF_CATCHES.get(WeighingEntry.class)),
            optional("read", OF_CATCHES.get(ReadEntry.class)),
            optional("density", OF_CATCHES.get(DensityEntry.class)),
            optional("counted", OF_CATCHES.get(CountEntry.class)),
            optional("conditions", OF_CATCHES.get(Conditions.class)).last(),
            optional("notes", Codecs.TEXT).last());

    /** A material as it is written: grains have a loose bulk density, a liquid has a density. */
    private record MaterialEntry(
            String name,
            Optional<Quantity<BulkDensity>> looseBulkDensity,
            Optional<Quantity<Length>> grainDiameter,
            Optional<Quantity<BulkDensity>> density,
            Optional<Quantity<Dimensionless>> chemical) {
        static MaterialEntry of(Material material) {
            Optional<Quantity<BulkDensity>> stated = Optional.of(material.looseBulkDensity());
            return material.isLiquid()
                    ? new MaterialEntry(
                            material.name(), Optional.empty(), material.grainDiameter(), stated, material.chemical())
                    : new MaterialEntry(
                            material.name(), stated, material.grainDiameter(), Optional.empty(), material.chemical());
        }

        Material material() {
            Require.that(
                    looseBulkDensity.isPresent() != density.isPresent(),
                    "material " + name,
                    "one with looseBulkDensity, or a liquid with density",
                    density.isPresent() ? "both" : "neither");
            return new Material(
                    name,
                    density.isPresent() ? Material.Form.LIQUID : Material.Form.GRANULAR,
                    looseBulkDensity.or(() -> density).orElseThrow(),
                    grainDiameter,
                    chemical);
        }
    }

    static final Codec<Material> MATERIAL = mapped(
            Material.class.getName(),
            OF_CATCHES.get(MaterialEntry.class).checked((written, pointer, problems) -> {
                if (written.looseBulkDensity().isEmpty() && written.density().isEmpty()) {
                    problems.missing(
                            pointer.at("looseBulkDensity"),
                            Codecs.quantity(BulkDensity.class).expected() + ", or density of a liquid");
                }
            }),
            written -> written.looseBulkDensity().isEmpty() && written.density().isEmpty() ? null : written.material(),
            MaterialEntry::of);

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

    static final Codec<DecisionRule> DECISION_RULE = mapped(
            DecisionRule.class.getName(),
            OF_CATCHES.object("decision-rule", NamedRule.class, optional("risk", TOLERANCE)),
            named -> new DecisionRule(named.risk()),
            NamedRule::of);

    private static final Codec<Double> DEGREES_OF_FREEDOM = mapped(
            Double.class.getName(),
            Codecs.quantity(Dimensionless.class),
            written -> Amounts.si(Dimensionless.class, written),
            degrees -> Amounts.of(degrees, SpreadingUnits.ONE));

    private static final Quantity<Dimensionless> NOTHING = Amounts.of(0, SpreadingUnits.PERCENT);

    private static final CodecBook OF_DRIVES = OF_CATCHES
            .with(
                    "drive-conditions",
                    DriveConditions.class,
                    atWork("loaded"),
                    atWork("lowestEngineSpeed"),
                    atWork("spinner"),
                    atWork("prewet"),
                    atWork("plow"))
            .with("drive-point", DrivePointEntry.class, required("command", COMMAND))
            .with("drive-run", DriveRunEntry.class, required("points"))
            .with("stated-range", StatedRangeEntry.class);

    private static Field atWork(String what) {
        return withDefault(what, choice(AtWork.class), AtWork.NOT_SAID);
    }

    /** What liquids leave through, and where they are kept. */
    private static final CodecBook OF_TANKS = OF_CATCHES
            .with("nozzle", NozzleEntry.class)
            .with("boom", BoomEntry.class)
            .with("tank-reading", TankReadingEntry.class, optional("concentration", PART))
            .with(
                    "salt-at-hand",
                    SaltAtHandEntry.class,
                    required("assay", PART),
                    required("assayUncertainty", PART),
                    optional("moisture", PART))
            .with("tank", TankEntry.class, optional("target", TOLERANCE), optional("tolerance", TOLERANCE));

    static final CodecBook BOOK = OF_DRIVES
            .with(CATCH, DECISION_RULE)
            .with(
                    "drive",
                    DriveEntry.class,
                    optional("lowestCommand", COMMAND),
                    optional("highestCommand", COMMAND),
                    optional("commandStep", COMMAND),
                    withDefault("atWork", OF_DRIVES.get(DriveConditions.class), DriveConditions.NOT_SAID))
            .with(
                    "route",
                    RouteEntry.class,
                    inlined("target"),
                    // Whoever has crossed out the last truck of a route doesn't mean all.
                    withDefault(
                            "trucks",
                            notEmpty(listOf(Codecs.TEXT), "one truck or more, or no field for all trucks"),
                            List.of()))
            .with("calibration-catch", CalibrationCatchEntry.class, inlined("entry"))
            .with(
                    "verification-catch",
                    VerificationCatchEntry.class,
                    inlined("entry"),
                    required("inForce", FACTOR),
                    inlined("target"),
                    optional("indicated", AMOUNT),
                    optional("indicatedStep", AMOUNT))
            .with(
                    "type-and-parameters",
                    TypedEntry.class,
                    required("version", VERSION),
                    withDefault("parameters", PARAMETERS, Map.of()))
            .with(
                    "in-force",
                    InForceEntry.class,
                    required("value", FACTOR),
                    optional("displayStep", FACTOR),
                    optional("setting", SETTING))
            .with("change", ChangeEntry.class, optional("notes", Codecs.TEXT))
            .with("course-run", CourseRunEntry.class)
            .with("road-speed", RoadSpeedEntry.class, required("runs"))
            .with("control-setting", OpenLoop.Row.class)
            .with(OF_TANKS.get(BoomEntry.class), OF_TANKS.get(TankEntry.class))
            .with(
                    "truck",
                    WrittenTruck.class,
                    optional("wets", Codecs.TEXT),
                    optional("gateReading", SETTING),
                    optional("notes", Codecs.TEXT))
            .with("moisture", Moisture.class, required("content", PART), required("halfWidth", PART))
            .with(
                    "repeatability",
                    Repeatability.class,
                    required("relativeDeviation", PART),
                    withDefault("degreesOfFreedom", DEGREES_OF_FREEDOM, Double.POSITIVE_INFINITY))
            .with(
                    "allowances",
                    CatchAllowances.class,
                    withDefault("greatestSpillage", PART, NOTHING),
                    withDefault("greatestTransient", PART, NOTHING))
            .with("step-times", StepTimes.class)
            .with(
                    "containers",
                    Containers.class,
                    required("containers", Codecs.COUNT).component("howMany"))
            .with("weighing-method", WeighingMethodEntry.class, inlined("containers"))
            .with("reading-method", ReadingMethodEntry.class, required("fills", Codecs.COUNT))
            .with(
                    "plan",
                    PlanEntry.class,
                    required("wantedUncertainty", TOLERANCE),
                    optional("wantedVerificationUncertainty", TOLERANCE),
                    optional("greatestStartLoss", TOLERANCE),
                    required("weighingMethods"),
                    Field.list("liquidTargetRates", Codecs.quantity(LiquidApplicationRate.class))
                            .component("liquidRates"));

    private static final Codec<TruckDay> TRUCK = mapped(
            TruckDay.class.getName(),
            BOOK.get(WrittenTruck.class).checked(WrittenTruck::check),
            WrittenTruck::truck,
            WrittenTruck::of);

    static final ObjectCodec<FleetDay> FLEET_DAY = BOOK.object(
                    "fleet-day",
                    FleetDay.class,
                    required("tolerance", TOLERANCE),
                    withDefault("decisionRule", DECISION_RULE, DecisionRule.SIMPLE),
                    withDefault("allowances", BOOK.get(CatchAllowances.class), CatchAllowances.NONE),
                    required("scales", uniqueListOf(BOOK.get(Scale.class), "scale id", Scale::id, "id")),
                    withDefault(
                            "graduates",
                            uniqueListOf(BOOK.get(Graduate.class), "container id", Graduate::id, "id"),
                            List.of()),
                    required("materials", uniqueListOf(MATERIAL, "material name", Material::name, "name")),
                    withDefault(
                            "routes",
                            uniqueListOf(BOOK.get(RouteEntry.class), "route name", RouteEntry::name, "name"),
                            List.of()),
                    withDefault(
                            "tanks",
                            uniqueListOf(BOOK.get(TankEntry.class), "tank name", TankEntry::name, "name"),
                            List.of()),
                    required(
                            "trucks",
                            notEmpty(uniqueListOf(TRUCK, "truck id", TruckDay::id, "id"), "one truck or more")))
            .checked(FleetDayCodecs::checkNames);

    /** What names something that isn't there is nobody's: it is a matter of the day. */
    private static void checkNames(FleetDay day, Pointer pointer, Problems problems) {
        checkWetted(day, pointer, problems);
        if (day.routes().isEmpty() && day.tanks().isEmpty()) {
            return;
        }
        NameCheck materials = new NameCheck(day.materials().stream().map(Material::name), problems);
        NameCheck trucks = new NameCheck(day.trucks().stream().map(TruckDay::id), problems);
        for (int i = 0; i < day.routes().size(); i++) {
            RouteEntry route = day.routes().get(i);
            Pointer at = pointer.at("routes").at(i);
            materials.check(at.at("material"), route.material());
            for (int j = 0; j < route.trucks().size(); j++) {
                trucks.check(at.at("trucks").at(j), route.trucks().get(j));
            }
        }
        for (int i = 0; i < day.tanks().size(); i++) {
            materials.check(
                    pointer.at("tanks").at(i).at("material"), day.tanks().get(i).material());
        }
    }

    /** A record holds one truck only, whose partner has a record of its own. */
    private static void checkWetted(FleetDay day, Pointer pointer, Problems problems) {
        if (day.trucks().size() == 1
                || day.trucks().stream().allMatch(one -> one.wets().isEmpty())) {
            return;
        }
        NameCheck spreaders = new NameCheck(
                day.trucks().stream()
                        .filter(one -> !one.spreader().isForLiquids())
                        .map(TruckDay::id),
                problems);
        for (int i = 0; i < day.trucks().size(); i++) {
            Pointer at = pointer.at("trucks").at(i).at("wets");
            day.trucks().get(i).wets().ifPresent(id -> spreaders.check(at, id));
        }
    }

    private FleetDayCodecs() {}
}
