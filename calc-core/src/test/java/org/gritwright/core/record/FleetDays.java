package org.gritwright.core.record;

import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Length;
import javax.measure.quantity.Mass;
import javax.measure.quantity.Speed;
import javax.measure.quantity.Temperature;
import javax.measure.quantity.Time;
import javax.measure.quantity.Volume;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import org.gritwright.core.calibration.Change;
import org.gritwright.core.calibration.FactorForm;
import org.gritwright.core.calibration.Since;
import org.gritwright.core.curve.CurveModel;
import org.gritwright.core.fleet.day.BoomControl;
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
import org.gritwright.core.fleet.day.FlowMeterEntry;
import org.gritwright.core.fleet.day.InForceEntry;
import org.gritwright.core.fleet.day.MeteringEntry;
import org.gritwright.core.fleet.day.NozzleEntry;
import org.gritwright.core.fleet.day.PlanEntry;
import org.gritwright.core.fleet.day.PumpEntry;
import org.gritwright.core.fleet.day.ReadEntry;
import org.gritwright.core.fleet.day.ReadingMethodEntry;
import org.gritwright.core.fleet.day.RoadSpeedEntry;
import org.gritwright.core.fleet.day.RouteEntry;
import org.gritwright.core.fleet.day.SaltAtHandEntry;
import org.gritwright.core.fleet.day.SpreaderEntry;
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
import org.gritwright.core.judgement.DecisionRule;
import org.gritwright.core.metering.OpenLoop;
import org.gritwright.core.observation.CatchAllowances;
import org.gritwright.core.observation.Coasting;
import org.gritwright.core.observation.Conditions;
import org.gritwright.core.observation.Material;
import org.gritwright.core.observation.Moisture;
import org.gritwright.core.observation.Repeatability;
import org.gritwright.core.planning.Containers;
import org.gritwright.core.range.AtWork;
import org.gritwright.core.range.Direction;
import org.gritwright.core.range.DriveConditions;
import org.gritwright.core.range.RangeSource;
import org.gritwright.core.solution.Salt;
import org.gritwright.core.weighing.AccuracyClass;
import org.gritwright.core.weighing.Graduate;
import org.gritwright.core.weighing.Scale;
import org.gritwright.core.weighing.ScaleAccuracy;
import org.gritwright.core.weighing.ScaleCheck;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.UnitSymbol;
import org.gritwright.units.quantity.ApplicationRate;
import org.gritwright.units.quantity.BulkDensity;
import org.gritwright.units.quantity.LaneApplicationRate;
import org.gritwright.units.quantity.LaneCount;
import org.gritwright.units.quantity.LiquidApplicationRate;
import org.gritwright.units.quantity.LiquidLaneApplicationRate;
import org.gritwright.units.quantity.PrewetRate;
import org.gritwright.units.quantity.PulseCount;
import org.gritwright.units.quantity.PulsesPerDistance;
import org.gritwright.units.quantity.PulsesPerRevolution;
import org.gritwright.units.quantity.RevolutionCount;
import org.gritwright.units.quantity.RotationalSpeed;

/** Any fleet day that can be written down, sensible or not: every unit, any finite number, any text. */
final class FleetDays {

    private FleetDays() {}

    static Arbitrary<FleetDay> any() {
        Arbitrary<List<Scale>> scales = scale().list().ofMaxSize(3).uniqueElements(Scale::id);
        Arbitrary<List<Material>> materials = material().list().ofMaxSize(3).uniqueElements(Material::name);
        Arbitrary<List<TruckDay>> trucks =
                truck().list().ofMinSize(1).ofMaxSize(3).uniqueElements(TruckDay::id);
        return Combinators.combine(
                        dates(),
                        dates(),
                        percentages(0.001, 99.999),
                        judging(),
                        texts().list().ofSize(2),
                        Combinators.combine(
                                        scales, graduate().list().ofMaxSize(2).uniqueElements(Graduate::id))
                                .as(Map::entry),
                        materials,
                        Combinators.combine(
                                        plan().optional(0.5),
                                        trucks,
                                        route().list().ofMaxSize(2).uniqueElements(RouteEntry::name),
                                        tank().list().ofMaxSize(2).uniqueElements(TankEntry::name))
                                .as(Rest::new))
                .as((day, season, tolerance, judging, who, allScales, allMaterials, rest) -> new FleetDay(
                        day,
                        season,
                        tolerance,
                        judging.getKey(),
                        judging.getValue(),
                        Optional.of(who.get(0)),
                        Optional.of(who.get(1)),
                        allScales.getKey(),
                        allScales.getValue(),
                        allMaterials,
                        rest.plan(),
                        rest.routes(allMaterials),
                        rest.tanks(allMaterials),
                        rest.trucks()));
    }

    /** What comes last in a day. */
    private record Rest(
            Optional<PlanEntry> plan, List<TruckDay> trucks, List<RouteEntry> any, List<TankEntry> anyTanks) {
        /** Of materials that are there. */
        List<TankEntry> tanks(List<Material> materials) {
            return materials.isEmpty()
                    ? List.of()
                    : anyTanks.stream()
                            .map(tank -> new TankEntry(
                                    tank.name(),
                                    materials
                                            .get(tank.name().length() % materials.size())
                                            .name(),
                                    tank.salt(),
                                    tank.reading(),
                                    tank.temperature(),
                                    tank.capacity(),
                                    tank.level(),
                                    tank.target(),
                                    tank.tolerance(),
                                    tank.saltAtHand()))
                            .toList();
        }

        /** For one of the trucks or for all, with materials that are there. */
        List<RouteEntry> routes(List<Material> materials) {
            return materials.isEmpty()
                    ? List.of()
                    : any.stream()
                            .map(route -> new RouteEntry(
                                    route.name(),
                                    materials
                                            .get(route.name().length() % materials.size())
                                            .name(),
                                    route.target(),
                                    route.lowestSpeed(),
                                    route.highestSpeed(),
                                    route.name().length() % 2 == 0
                                            ? List.of()
                                            : List.of(trucks.get(trucks.size() - 1)
                                                    .id())))
                            .toList();
        }
    }

    private static Arbitrary<TankEntry> tank() {
        Arbitrary<TankReadingEntry> reading = Combinators.combine(
                        quantities(Dimensionless.class).optional(),
                        quantities(Dimensionless.class).optional(),
                        quantities(Temperature.class).optional(),
                        percentages(0, 100).optional(),
                        quantities(Dimensionless.class),
                        quantities(Temperature.class).optional())
                .as(TankReadingEntry::new);
        Arbitrary<SaltAtHandEntry> salt = Combinators.combine(
                        percentages(0, 100),
                        percentages(0, 100),
                        Arbitraries.of(SaltAtHandEntry.Assayed.class).optional(),
                        percentages(0, 100).optional())
                .as(SaltAtHandEntry::new);
        return Combinators.combine(
                        texts(),
                        Arbitraries.of(Salt.class),
                        reading,
                        quantities(Temperature.class),
                        quantities(Volume.class).list().ofSize(2),
                        percentages(0.001, 99.999).optional(),
                        percentages(0.001, 99.999).optional(),
                        salt.optional())
                .as((name, dissolved, read, temperature, volumes, target, tolerance, atHand) -> new TankEntry(
                        name,
                        "any",
                        dissolved,
                        read,
                        temperature,
                        volumes.get(0),
                        volumes.get(1),
                        target,
                        tolerance,
                        atHand));
    }

    private static Arbitrary<BoomEntry> boom() {
        Arbitrary<NozzleEntry> nozzle = Combinators.combine(
                        texts(),
                        texts(),
                        quantities(Volume.class),
                        quantities(Volume.class),
                        quantities(Time.class),
                        quantities(Time.class),
                        texts().optional())
                .as(NozzleEntry::new);
        return Combinators.combine(
                        Arbitraries.of(BoomControl.class),
                        quantities(BulkDensity.class).optional(),
                        nozzle.list().ofMaxSize(3))
                .as(BoomEntry::new);
    }

    private static Arbitrary<RouteEntry> route() {
        Arbitrary<TargetEntry> perDistance = positive(ApplicationRate.class)
                .map(rate -> new TargetEntry(Optional.of(rate), Optional.empty(), Optional.empty(), Optional.empty()));
        Arbitrary<TargetEntry> perLane = Combinators.combine(
                        positive(LaneApplicationRate.class), positive(LaneCount.class))
                .as((rate, lanes) ->
                        new TargetEntry(Optional.empty(), Optional.of(rate), Optional.of(lanes), Optional.empty()));
        return Combinators.combine(
                        texts(),
                        Arbitraries.oneOf(perDistance, perLane),
                        positive(Speed.class),
                        Arbitraries.doubles().between(1, 100))
                .as((name, target, lowest, times) -> new RouteEntry(
                        name,
                        "any",
                        target,
                        lowest,
                        Amounts.of(times * lowest.getValue().doubleValue(), lowest.getUnit()),
                        List.of()));
    }

    /** What a valve may be told: any percentage, current or number. */
    private static Arbitrary<Quantity<?>> commands() {
        return Combinators.combine(
                        numbers(),
                        Arbitraries.of(SpreadingUnits.PERCENT, SpreadingUnits.MILLIAMPERE, SpreadingUnits.ONE))
                .as(Amounts::of);
    }

    private static Arbitrary<DriveEntry> drive() {
        Arbitrary<AtWork> atWork = Arbitraries.of(AtWork.class);
        Arbitrary<DriveConditions> conditions =
                Combinators.combine(atWork, atWork, atWork, atWork, atWork).as(DriveConditions::new);
        Arbitrary<DrivePointEntry> point = Combinators.combine(
                        commands(),
                        quantities(RotationalSpeed.class),
                        Arbitraries.integers().between(1, 9999).optional(),
                        quantities(RotationalSpeed.class).optional(),
                        quantities(RotationalSpeed.class).optional(),
                        quantities(Temperature.class).optional(),
                        quantities(RotationalSpeed.class).optional())
                .as(DrivePointEntry::new);
        Arbitrary<DriveRunEntry> run = Combinators.combine(
                        Arbitraries.of(Direction.class), point.list().ofMaxSize(3))
                .as(DriveRunEntry::new);
        Arbitrary<StatedRangeEntry> stated = Combinators.combine(
                        quantities(RotationalSpeed.class),
                        quantities(RotationalSpeed.class),
                        Arbitraries.of(RangeSource.class),
                        dates().optional())
                .as(StatedRangeEntry::new);
        return Combinators.combine(
                        commands().optional(),
                        commands().optional(),
                        commands().optional(),
                        quantities(RotationalSpeed.class).optional(),
                        conditions,
                        run.list().ofMaxSize(2),
                        stated.optional())
                .as(DriveEntry::new);
    }

    /** A decision rule and allowances. */
    private static Arbitrary<Map.Entry<DecisionRule, CatchAllowances>> judging() {
        Arbitrary<DecisionRule> rule = percentages(0.001, 49.999).optional().map(DecisionRule::new);
        Arbitrary<Moisture> moisture = Combinators.combine(
                        percentages(0, 49), percentages(0, 49), Arbitraries.of(Moisture.Basis.class))
                .as(Moisture::new);
        Arbitrary<Double> degrees = Arbitraries.oneOf(
                Arbitraries.just(Double.POSITIVE_INFINITY),
                Arbitraries.doubles().between(1, 1000));
        Arbitrary<Repeatability> repeatability =
                Combinators.combine(percentages(0, 99), degrees).as(Repeatability::new);
        return Combinators.combine(
                        rule, percentages(0, 99), percentages(0, 99), moisture.optional(), repeatability.optional())
                .as((how, spillage, startUp, wet, scatter) ->
                        Map.entry(how, new CatchAllowances(spillage, startUp, wet, scatter)));
    }

    static Arbitrary<String> texts() {
        return Arbitraries.strings()
                .withCharRange('\u0000', '\ud7ff')
                .withChars('"', '\\', '/', '~', '{', '\n', '\u2028', ' ')
                .ofMinLength(1)
                .ofMaxLength(12)
                .filter(text -> !text.isBlank());
    }

    static Arbitrary<LocalDate> dates() {
        return Arbitraries.integers().between(-20_000, 40_000).map(LocalDate::ofEpochDay);
    }

    static Arbitrary<OffsetDateTime> times() {
        return Combinators.combine(
                        dates(),
                        Arbitraries.longs().between(0, 86_399_999_999_999L),
                        Arbitraries.integers().between(-18 * 60, 18 * 60))
                .as((date, nanos, minutes) ->
                        date.atStartOfDay().plusNanos(nanos).atOffset(ZoneOffset.ofTotalSeconds(minutes * 60)));
    }

    /** Numbers as people write them, and any finite double at all. */
    private static Arbitrary<Double> numbers() {
        return Arbitraries.oneOf(
                Arbitraries.doubles().between(-10_000, 10_000),
                Arbitraries.longs().map(Double::longBitsToDouble).filter(Double::isFinite));
    }

    static <Q extends Quantity<Q>> Arbitrary<Quantity<Q>> quantities(Class<Q> kind) {
        return Combinators.combine(numbers(), Arbitraries.of(UnitSymbol.ofKind(kind)))
                .as((value, row) -> Amounts.of(value, row.unit()));
    }

    static Arbitrary<Quantity<?>> anyQuantities() {
        return Combinators.combine(numbers(), Arbitraries.of(UnitSymbol.all()))
                .as((value, row) -> quantity(value, row));
    }

    private static Arbitrary<Quantity<Dimensionless>> percentages(double lowest, double highest) {
        return Arbitraries.doubles()
                .between(lowest, highest)
                .ofScale(3)
                .map(value -> Amounts.of(value, SpreadingUnits.PERCENT));
    }

    /** A calibration value: any number in a unit of one of the four forms. */
    static Arbitrary<Quantity<?>> factors() {
        List<UnitSymbol<?>> rows = UnitSymbol.all().stream()
                .filter(row -> Arrays.stream(FactorForm.values())
                        .anyMatch(form -> form.kind().equals(row.kind())))
                .toList();
        return Combinators.combine(numbers(), Arbitraries.of(rows)).as((value, row) -> quantity(value, row));
    }

    /** Where a gate stands: any length, any number as that of a painted mark, or any percentage. */
    static Arbitrary<Quantity<?>> settings() {
        return Arbitraries.oneOf(
                quantities(Length.class),
                numbers().map(value -> Amounts.of(value, SpreadingUnits.ONE)),
                numbers().map(value -> Amounts.of(value, SpreadingUnits.PERCENT)));
    }

    private static <Q extends Quantity<Q>> Quantity<Q> quantity(double value, UnitSymbol<Q> row) {
        return Amounts.of(value, row.unit());
    }

    private static <Q extends Quantity<Q>> Arbitrary<Quantity<Q>> positive(Class<Q> kind) {
        return Combinators.combine(
                        Arbitraries.doubles().between(0.001, 1e6).ofScale(3), Arbitraries.of(UnitSymbol.ofKind(kind)))
                .as((value, row) -> Amounts.of(value, row.unit()));
    }

    private static Arbitrary<Scale> scale() {
        Arbitrary<ScaleCheck> check = Combinators.combine(dates(), positive(Mass.class), positive(Mass.class))
                .as(ScaleCheck::new);
        return Combinators.combine(
                        texts(),
                        positive(Mass.class),
                        accuracy().optional(),
                        check.list().ofMaxSize(2))
                .as((id, division, accuracy, checks) -> new Scale(
                        id,
                        Amounts.of(division.getValue().doubleValue() * 1000, division.getUnit()),
                        division,
                        accuracy,
                        checks));
    }

    private static Arbitrary<ScaleAccuracy> accuracy() {
        Arbitrary<ScaleAccuracy> stated = Arbitraries.doubles()
                .between(0.01, 99)
                .ofScale(2)
                .map(percent -> new ScaleAccuracy.Stated(Amounts.of(percent, SpreadingUnits.PERCENT)));
        Arbitrary<ScaleAccuracy> ofClass = Combinators.combine(
                        Arbitraries.of(AccuracyClass.class), Arbitraries.of(AccuracyClass.Stage.class))
                .as(ScaleAccuracy.OfClass::new);
        return Arbitraries.oneOf(stated, ofClass);
    }

    private static Arbitrary<Material> material() {
        Arbitrary<Material> grains = Combinators.combine(
                        texts(),
                        positive(BulkDensity.class),
                        positive(Length.class).optional())
                .as((name, density, diameter) ->
                        new Material(name, Material.Form.GRANULAR, density, diameter, Optional.empty()));
        Arbitrary<Material> liquids =
                Combinators.combine(texts(), positive(BulkDensity.class)).as(Material::liquid);
        return Combinators.combine(
                        Arbitraries.oneOf(grains, liquids), percentages(0, 100).optional())
                .as((material, part) -> part.map(material::withChemical).orElse(material));
    }

    private static Arbitrary<CountEntry> count() {
        return Combinators.combine(
                        quantities(PulseCount.class).optional(),
                        quantities(PulseCount.class).optional(),
                        quantities(PulseCount.class).optional(),
                        quantities(PulseCount.class).optional(),
                        quantities(RevolutionCount.class).optional(),
                        quantities(RevolutionCount.class).optional(),
                        quantities(RotationalSpeed.class).optional(),
                        Combinators.combine(
                                        quantities(Dimensionless.class).optional(),
                                        quantities(Time.class).optional())
                                .as(Map::entry))
                .as((pulses, start, stop, modulus, revolutions, uncertainty, speed, last) -> new CountEntry(
                        pulses, start, stop, modulus, revolutions, uncertainty, speed, last.getKey(), last.getValue()));
    }

    private static Arbitrary<Conditions> conditions() {
        return Combinators.combine(
                        quantities(RotationalSpeed.class).optional(),
                        quantities(Temperature.class).optional(),
                        percentages(0, 100).optional(),
                        percentages(0, 100),
                        Arbitraries.of(Moisture.Basis.class).optional(),
                        Arbitraries.of(true, false))
                .as((engine, oil, level, moisture, basis, zeroed) ->
                        new Conditions(engine, oil, level, basis.map(b -> moisture), basis, zeroed));
    }

    /** What else may stand in a catch. */
    private record Noted(
            Optional<Conditions> conditions,
            Optional<String> notes,
            Optional<ReadEntry> read,
            Optional<DensityEntry> density) {}

    private static Arbitrary<DensityEntry> density() {
        return Combinators.combine(quantities(BulkDensity.class), quantities(BulkDensity.class))
                .as(DensityEntry::new);
    }

    private static Arbitrary<Graduate> graduate() {
        return Combinators.combine(
                        texts(), positive(Volume.class), Arbitraries.doubles().between(0, 0.9))
                .as((id, division, part) -> new Graduate(
                        id,
                        division,
                        division,
                        Optional.of(Amounts.of(part * division.getValue().doubleValue(), division.getUnit()))));
    }

    private static Arbitrary<CatchEntry> catchEntry() {
        Arbitrary<WeighingEntry> weighing = Combinators.combine(texts(), quantities(Mass.class), quantities(Mass.class))
                .as(WeighingEntry::new);
        Arbitrary<Optional<Conditions>> conditions = conditions().optional();
        Arbitrary<Optional<String>> notes = texts().optional();
        Arbitrary<ReadEntry> read = Combinators.combine(
                        texts(), quantities(Volume.class).list().ofMaxSize(3))
                .as(ReadEntry::new);
        Arbitrary<Optional<DensityEntry>> density = density().optional();
        return Combinators.combine(
                        times(),
                        texts().optional(),
                        texts().optional(),
                        weighing.list().ofMaxSize(3),
                        count().optional(),
                        settings().optional(),
                        texts(),
                        Combinators.combine(conditions, notes, read.optional(0.3), density)
                                .as(Noted::new))
                .as((at, operator, scale, containers, counted, opening, material, rest) -> new CatchEntry(
                        at,
                        operator,
                        scale,
                        containers,
                        rest.read(),
                        rest.density(),
                        counted,
                        opening,
                        material,
                        rest.conditions(),
                        rest.notes()));
    }

    static <A extends Quantity<A>, B extends Quantity<B>> Arbitrary<Quantity<?>> either(Class<A> one, Class<B> other) {
        return Arbitraries.oneOf(
                quantities(one).map(q -> (Quantity<?>) q), quantities(other).map(q -> (Quantity<?>) q));
    }

    private static Arbitrary<VerificationCatchEntry> verification() {
        Arbitrary<TargetEntry> target = Combinators.combine(
                        either(ApplicationRate.class, LiquidApplicationRate.class)
                                .optional(),
                        either(LaneApplicationRate.class, LiquidLaneApplicationRate.class)
                                .optional(),
                        quantities(LaneCount.class).optional(),
                        quantities(PrewetRate.class).optional())
                .as(TargetEntry::new);
        return Combinators.combine(
                        catchEntry(),
                        Combinators.combine(factors(), texts().optional()).as(Map::entry),
                        target,
                        quantities(Speed.class),
                        quantities(Time.class).optional(),
                        quantities(Length.class).optional(),
                        either(Mass.class, Volume.class).optional(),
                        either(Mass.class, Volume.class).optional())
                .as((entry, display, aim, speed, time, distance, indicated, step) -> new VerificationCatchEntry(
                        entry, display.getKey(), display.getValue(), aim, speed, time, distance, indicated, step));
    }

    private static Arbitrary<TypedEntry> typed() {
        Arbitrary<Object> parameter =
                Arbitraries.oneOf(anyQuantities(), anyQuantities().list().ofMaxSize(3));
        return Combinators.combine(
                        texts(),
                        Arbitraries.integers().between(1, 999_999_999),
                        Arbitraries.maps(texts(), parameter).ofMaxSize(3))
                .as(TypedEntry::new);
    }

    static Arbitrary<InForceEntry> inForce() {
        return Combinators.combine(
                        factors(),
                        factors().optional(),
                        Arbitraries.oneOf(dates().map(Since::of), times().map(Since::of)),
                        texts(),
                        settings().optional(),
                        texts().optional())
                .as(InForceEntry::new);
    }

    private static Arbitrary<RoadSpeedEntry> roadSpeed() {
        Arbitrary<CourseRunEntry> run = Combinators.combine(quantities(Length.class), quantities(PulseCount.class))
                .as(CourseRunEntry::new);
        return Combinators.combine(
                        dates(), quantities(PulsesPerDistance.class), run.list().ofMaxSize(3))
                .as(RoadSpeedEntry::new);
    }

    private static Arbitrary<TruckDay> truck() {
        Arbitrary<ChangeEntry> change = Combinators.combine(
                        dates(), Arbitraries.of(Change.Part.class), texts().optional())
                .as(ChangeEntry::new);
        Arbitrary<CalibrationCatchEntry> calibration = Combinators.combine(
                        catchEntry(), Arbitraries.of(true, false), Arbitraries.of(Coasting.class))
                .as(CalibrationCatchEntry::new);
        Arbitrary<Map.Entry<Optional<RoadSpeedEntry>, Optional<String>>> rest =
                Combinators.combine(roadSpeed().optional(), texts().optional()).as(Map::entry);
        Arbitrary<OpenLoop.Row> row = Combinators.combine(
                        positive(Dimensionless.class), positive(RotationalSpeed.class))
                .as(OpenLoop.Row::new);
        Arbitrary<SpreaderEntry> spreader = Combinators.combine(
                        typed(),
                        typed(),
                        quantities(PulsesPerRevolution.class).optional(),
                        quantities(Dimensionless.class),
                        row.list().ofMaxSize(3),
                        settings().optional())
                .as(SpreaderEntry::new);
        Arbitrary<PumpEntry> pump = Combinators.combine(
                        typed(),
                        quantities(PulsesPerRevolution.class).optional(),
                        quantities(Dimensionless.class),
                        row.list().ofMaxSize(3))
                .as(PumpEntry::new);
        Arbitrary<MeteringEntry> metering =
                Arbitraries.oneOf(spreader, spreader, pump, typed().map(FlowMeterEntry::new));
        return Combinators.combine(
                        Combinators.combine(texts(), metering, boom().optional(0.7), drive().optional(0.5))
                                .as(Standing::new),
                        Arbitraries.of(CurveModel.class).optional(),
                        inForce().list().ofMaxSize(3),
                        change.list().ofMaxSize(2),
                        calibration.list().ofMaxSize(2),
                        verification().list().ofMaxSize(2),
                        rest)
                .as((truck, model, inForce, changes, calibrations, verifications, last) -> new TruckDay(
                        truck.id(),
                        truck.spreader(),
                        Optional.empty(),
                        truck.boom().filter(boom -> truck.spreader().isForLiquids()),
                        truck.drive(),
                        model,
                        inForce,
                        changes,
                        calibrations,
                        verifications,
                        last.getKey(),
                        last.getValue()));
    }

    /** What stands on a truck. */
    private record Standing(String id, MeteringEntry spreader, Optional<BoomEntry> boom, Optional<DriveEntry> drive) {}

    private static Arbitrary<StepTimes> stepTimes() {
        Arbitrary<Quantity<Time>> minutes = positive(Time.class);
        return Combinators.combine(minutes, minutes, minutes, minutes, minutes, daily(), daily())
                .as(StepTimes::new);
    }

    private static Arbitrary<ReadingMethodEntry> readingMethod() {
        return Combinators.combine(
                        texts().map(name -> name + ", read"),
                        texts(),
                        Arbitraries.integers().between(1, 10),
                        positive(Volume.class),
                        stepTimes())
                .as(ReadingMethodEntry::new);
    }

    private static Arbitrary<WeighingMethodEntry> method() {
        Arbitrary<StepTimes> times = stepTimes();
        Arbitrary<Containers> containers = Combinators.combine(
                        Arbitraries.integers().between(1, 10), positive(Mass.class), positive(Mass.class))
                .as(Containers::new);
        return Combinators.combine(texts(), texts(), containers, density().optional(), times)
                .as(WeighingMethodEntry::new);
    }

    /** Both together are shorter than the shortest working day below. */
    private static Arbitrary<Optional<Quantity<Time>>> daily() {
        return Arbitraries.integers()
                .between(0, 29)
                .<Quantity<Time>>map(minutes -> Amounts.of(minutes, SpreadingUnits.MINUTE))
                .optional();
    }

    private static Arbitrary<PlanEntry> plan() {
        Arbitrary<List<Quantity<RotationalSpeed>>> speeds = Combinators.combine(
                        positive(RotationalSpeed.class), Arbitraries.doubles().between(1, 1000))
                .as((lowest, times) ->
                        List.of(lowest, Amounts.of(times * lowest.getValue().doubleValue(), lowest.getUnit())));
        Arbitrary<PlanEntry> whole = Combinators.combine(
                        percentages(0.001, 99.999),
                        percentages(0.001, 99.999).optional(),
                        Arbitraries.integers().between(1, 20).optional(),
                        Arbitraries.integers().between(20, 1000).optional(),
                        speeds,
                        Combinators.combine(
                                        positive(Time.class),
                                        percentages(0.001, 99.999),
                                        positive(RevolutionCount.class),
                                        Arbitraries.integers().between(1, 100).optional(),
                                        Arbitraries.integers()
                                                .between(1, 24)
                                                .<Quantity<Time>>map(hours -> Amounts.of(hours, SpreadingUnits.HOUR))
                                                .optional())
                                .as(Others::new),
                        Combinators.combine(
                                        positive(ApplicationRate.class)
                                                .list()
                                                .ofMinSize(1)
                                                .ofMaxSize(2),
                                        positive(Speed.class)
                                                .list()
                                                .ofMinSize(1)
                                                .ofMaxSize(2))
                                .as(Map::entry),
                        Combinators.combine(
                                        method().list()
                                                .ofMinSize(1)
                                                .ofMaxSize(3)
                                                .uniqueElements(WeighingMethodEntry::name),
                                        readingMethod().list().ofMaxSize(2).uniqueElements(ReadingMethodEntry::name),
                                        positive(LiquidApplicationRate.class)
                                                .list()
                                                .ofMaxSize(2),
                                        positive(PrewetRate.class).list().ofMaxSize(2))
                                .as(Methods::new))
                .as((wanted, verification, fewest, most, range, others, runs, methods) -> new PlanEntry(
                        wanted,
                        verification,
                        fewest,
                        most,
                        Optional.of(range.get(0)),
                        Optional.of(range.get(0)),
                        Optional.of(range.get(1)),
                        Optional.of(others.start()),
                        Optional.of(others.loss()),
                        Optional.of(others.count()),
                        others.crews(),
                        others.workingDay(),
                        runs.getKey(),
                        runs.getValue(),
                        methods.weighing(),
                        methods.liquidRates(),
                        methods.prewetRates(),
                        methods.reading()));
        Arbitrary<PlanEntry> bare =
                whole.map(plan -> PlanEntry.of(plan.wantedUncertainty(), List.of(), List.of(), plan.weighingMethods()));
        return Arbitraries.oneOf(whole, bare);
    }

    /** By what a plan catches, and what of liquids. */
    private record Methods(
            List<WeighingMethodEntry> weighing,
            List<ReadingMethodEntry> reading,
            List<Quantity<LiquidApplicationRate>> liquidRates,
            List<Quantity<PrewetRate>> prewetRates) {}

    /** What a plan says of starts, counts and crews. */
    private record Others(
            Quantity<Time> start,
            Quantity<Dimensionless> loss,
            Quantity<RevolutionCount> count,
            Optional<Integer> crews,
            Optional<Quantity<Time>> workingDay) {}

    /** One small valid day for tests that change a single thing. */
    static FleetDay small() {
        SpreaderEntry spreader = SpreaderEntry.sensed(
                new TypedEntry(
                        "drag-chain",
                        1,
                        Map.of(
                                "teeth", Amounts.of(7, SpreadingUnits.ONE),
                                "chainPitch", Amounts.of(2.25, SpreadingUnits.INCH))),
                new TypedEntry("sliding-gate", 1, Map.of("width", Amounts.of(22, SpreadingUnits.INCH))),
                Amounts.of(60, SpreadingUnits.PULSE_PER_REVOLUTION),
                Amounts.of(1, SpreadingUnits.ONE));
        CatchEntry entry = CatchEntry.of(
                        OffsetDateTime.parse("2026-10-19T08:40:00-04:00"),
                        "road salt",
                        "platform",
                        new WeighingEntry(
                                "pail 1", Amounts.of(165.5, SpreadingUnits.POUND), Amounts.of(4, SpreadingUnits.POUND)))
                .counted(CountEntry.ofPulses(Amounts.of(356, SpreadingUnits.PULSE)))
                .at(Amounts.of(2, SpreadingUnits.INCH));
        return FleetDay.of(
                LocalDate.of(2026, 10, 19),
                LocalDate.of(2026, 11, 1),
                Amounts.of(4, SpreadingUnits.PERCENT),
                List.of(Scale.of(
                        "platform", Amounts.of(1000, SpreadingUnits.POUND), Amounts.of(0.5, SpreadingUnits.POUND))),
                List.of(Material.of("road salt", Amounts.of(78, SpreadingUnits.POUND_PER_CUBIC_FOOT))),
                List.of(TruckDay.of("T-01", spreader)
                        .calibrationCatches(List.of(new CalibrationCatchEntry(entry, true, Coasting.IN_BOTH)))));
    }
}
