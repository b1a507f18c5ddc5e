package org.gritwright.core.fleet.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.gritwright.core.Samples.assertNamesWhatIsMissing;
import static org.gritwright.core.Samples.assertRefused;
import static org.gritwright.core.Samples.pounds;
import static org.gritwright.core.fleet.day.Trucks.calibrationCatch;
import static org.gritwright.core.fleet.day.Trucks.idle;
import static org.gritwright.core.fleet.day.Trucks.inForce;
import static org.gritwright.core.fleet.day.Trucks.with;
import static org.gritwright.core.fleet.day.Trucks.withNothingInForce;

import java.time.LocalDate;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Speed;
import javax.measure.quantity.Time;
import org.gritwright.core.calibration.Since;
import org.gritwright.core.finding.Finding;
import org.gritwright.core.fleet.day.CalibrationCatchEntry;
import org.gritwright.core.fleet.day.DriveEntry;
import org.gritwright.core.fleet.day.DrivePointEntry;
import org.gritwright.core.fleet.day.DriveRunEntry;
import org.gritwright.core.fleet.day.FleetDay;
import org.gritwright.core.fleet.day.PlanEntry;
import org.gritwright.core.fleet.day.SpreaderEntry;
import org.gritwright.core.fleet.day.StatedRangeEntry;
import org.gritwright.core.fleet.day.StepTimes;
import org.gritwright.core.fleet.day.TruckDay;
import org.gritwright.core.fleet.day.Trucks;
import org.gritwright.core.fleet.day.TypedEntry;
import org.gritwright.core.fleet.day.WeighingMethodEntry;
import org.gritwright.core.metering.BuiltInTypes;
import org.gritwright.core.observation.CatchAllowances;
import org.gritwright.core.observation.Material;
import org.gritwright.core.observation.Repeatability;
import org.gritwright.core.planning.CatchPlanner;
import org.gritwright.core.planning.CatchSeries;
import org.gritwright.core.planning.Cause;
import org.gritwright.core.planning.Containers;
import org.gritwright.core.planning.PlanResult;
import org.gritwright.core.planning.PlannedCount;
import org.gritwright.core.range.Direction;
import org.gritwright.core.range.DriveConditions;
import org.gritwright.core.range.RangeSource;
import org.gritwright.core.spi.Setting;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.quantity.RotationalSpeed;
import org.junit.jupiter.api.Test;

/** On a scale of 1000 lb by 0.5 lb; 5.2 lb/rev expected. */
class FleetPlannerTest {
    private static final FleetPlanner PLANNER = FleetPlanner.of(BuiltInTypes.registry());

    /** A day on which nothing is known about how catches scatter. */
    private static FleetDay day(TruckDay... trucks) {
        return Trucks.day(trucks).withAllowances(CatchAllowances.NONE);
    }

    static Quantity<Time> minutes(double minutes) {
        return Amounts.of(minutes, SpreadingUnits.MINUTE);
    }

    static Quantity<Dimensionless> percent(double percent) {
        return Amounts.of(percent, SpreadingUnits.PERCENT);
    }

    static WeighingMethodEntry method(String name, String scale, int containers, double holds, double tare) {
        return new WeighingMethodEntry(
                name,
                scale,
                new Containers(containers, pounds(holds), pounds(tare)),
                new StepTimes(minutes(20), minutes(5), minutes(3), minutes(6), minutes(10)));
    }

    static final WeighingMethodEntry PAILS = method("pails", "platform", 4, 60, 4);
    static final WeighingMethodEntry TARP = method("tarp", "platform", 1, 500, 10);
    static final WeighingMethodEntry CUPS = method("cups", "platform", 3, 10, 1);

    /** 30 rev/min, 400 lb/mi at 15 and 22.5 mi/h; 6 % wanted of a verification catch. */
    static PlanEntry plan(double wantedPercent, WeighingMethodEntry... methods) {
        return new PlanEntry(
                percent(wantedPercent),
                Optional.of(percent(6)),
                Optional.empty(),
                Optional.empty(),
                Optional.of(Amounts.of(30, SpreadingUnits.REVOLUTION_PER_MINUTE)),
                Optional.of(Amounts.of(10, SpreadingUnits.REVOLUTION_PER_MINUTE)),
                Optional.of(Amounts.of(25, SpreadingUnits.REVOLUTION_PER_MINUTE)),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                List.of(Amounts.of(400, SpreadingUnits.POUND_PER_MILE)),
                List.of(Amounts.of(15, SpreadingUnits.MILE_PER_HOUR), Amounts.of(22.5, SpreadingUnits.MILE_PER_HOUR)),
                List.of(methods),
                List.of(),
                List.of(),
                List.of());
    }

    private static PointPlan only(FleetPlan plan) {
        assertThat(plan.trucks()).hasSize(1);
        assertThat(plan.trucks().get(0).refusal()).isEmpty();
        assertThat(plan.trucks().get(0).points()).hasSize(1);
        return plan.trucks().get(0).points().get(0);
    }

    private static StatedRangeEntry range(double lowest, double highest, RangeSource source) {
        return new StatedRangeEntry(
                Amounts.of(lowest, SpreadingUnits.REVOLUTION_PER_MINUTE),
                Amounts.of(highest, SpreadingUnits.REVOLUTION_PER_MINUTE),
                source,
                Optional.empty());
    }

    @Test
    void aTruckWithMoreThanATruckHasIsRefusedAndNoOther() {
        TruckDay many = with(
                idle("T-1"), Collections.nCopies(1001, calibrationCatch(7, 1)).toArray(CalibrationCatchEntry[]::new));
        List<TruckPlan> trucks =
                PLANNER.plan(Trucks.day(many, idle("T-2")), plan(3, PAILS)).trucks();

        assertThat(trucks.get(0).refusal()).get().asString().contains("calibration catches must be at most 1000: 1001");
        assertThat(trucks.get(1).refusal()).isEmpty();
    }

    @Test
    void aTruckIsPlannedWithItsOwnRange() {
        // 400 lb/mi at 15 and 22.5 mi/h by 5.2 lb/rev are 19.2 and 28.8 rev/min; the plan has 10 to 25.
        TruckDay own = idle("T-1").drive(DriveEntry.stated(range(2, 32, RangeSource.FROM_MAKER)));
        TruckPlan planned =
                PLANNER.plan(day(own, idle("T-2")), plan(3, PAILS)).trucks().get(0);
        assertThat(planned.range())
                .contains(range(2, 32, RangeSource.FROM_MAKER).range().range());
        assertThat(planned.points().get(0).methods().get(0).runs())
                .extracting(run -> run.withinRange().orElseThrow())
                .containsExactly(true, true);
        assertThat(planned.findings())
                .extracting(Finding::sentence)
                .containsExactly(
                        "The plan says that the drives hold 10 rev/min to 25 rev/min, but this truck's holds 2 rev/min"
                                + " to 32 rev/min: its own range is planned with.");

        TruckPlan other =
                PLANNER.plan(day(own, idle("T-2")), plan(3, PAILS)).trucks().get(1);
        assertThat(other.range()).isEqualTo(other.plan().range());
        assertThat(other.findings()).isEmpty();
    }

    @Test
    void aShaftSpeedOfThePlanThatTheTruckDoesNotHoldIsSaid() {
        TruckDay slow = idle("T-1").drive(DriveEntry.stated(range(10.2, 25.5, RangeSource.FROM_MAKER)));
        assertThat(PLANNER.plan(day(slow), plan(3, PAILS)).trucks().get(0).findings())
                .extracting(Finding::sentence)
                .containsExactly(
                        "The plan runs the shaft at 30 rev/min in calibration catches, but this truck's drive holds 10.2"
                                + " rev/min to 25.5 rev/min: choose a speed within.");
    }

    @Test
    void aMeasuredRangeWinsOverAStatedOne() {
        DriveEntry measured = new DriveEntry(
                        Optional.of(Amounts.of(0, SpreadingUnits.PERCENT)),
                        Optional.of(Amounts.of(100, SpreadingUnits.PERCENT)),
                        Optional.of(Amounts.of(1, SpreadingUnits.PERCENT)),
                        Optional.empty(),
                        DriveConditions.AS_AT_WORK,
                        List.of(new DriveRunEntry(
                                Direction.RISING, List.of(point(20, 0), point(21, 3), point(60, 20), point(100, 36)))),
                        Optional.empty())
                .with(range(2, 32, RangeSource.FROM_MAKER));
        TruckPlan planned = PLANNER.plan(day(idle("T-1").drive(measured)), plan(3, PAILS))
                .trucks()
                .get(0);
        assertThat(Amounts.in(planned.range().orElseThrow().highest(), SpreadingUnits.REVOLUTION_PER_MINUTE))
                .isCloseTo(36, within(1e-9));
    }

    private static DrivePointEntry point(double percent, double revolutionsPerMinute) {
        return DrivePointEntry.of(
                percent(percent), Amounts.of(revolutionsPerMinute, SpreadingUnits.REVOLUTION_PER_MINUTE));
    }

    @Test
    void aDriveThatCanNotBeComputedRefusesItsTruckOnly() {
        TruckDay upsideDown = idle("T-1").drive(DriveEntry.stated(range(28, 2, RangeSource.BY_EYE)));
        FleetPlan planned = PLANNER.plan(day(upsideDown, idle("T-2")), plan(3, PAILS));
        assertThat(planned.trucks().get(0).refusal())
                .contains("drive: highest steady shaft speed must be at least 28 rev/min: 2 rev/min");
        assertThat(planned.trucks().get(1).refusal()).isEmpty();
    }

    @Test
    void aTruckIsPlannedForItsCalibrationInForce() {
        PointPlan point = only(PLANNER.plan(day(idle("T-1")), plan(3, PAILS)));
        assertThat(point.point()).hasToString("salt at 2 in");
        assertThat(Amounts.in(point.expected(), SpreadingUnits.POUND_PER_REVOLUTION))
                .isCloseTo(5.2, within(1e-12));
        assertThat(point.source()).isEqualTo(PointPlan.Source.IN_FORCE);
        assertThat(point.count()).isInstanceOf(PlannedCount.Pulses.class);
        CatchSeries series = point.methods().get(0).calibration().orElseThrow().series();
        // Five turns of the conveyor's shaft are 26 of the sensed one, geared 5.2 : 1; t for 4 degrees of freedom,
        // 2.776,
        // × 1 % ÷ √3 is far below 3 %.
        assertThat(series.repeats()).isEqualTo(3);
        assertThat(Amounts.format(series.revolutions())).isEqualTo("26 rev");
        assertThat(point.methods().get(0).table()).hasSize(CatchPlanner.USUAL.size());
    }

    /** 7 teeth × 2.25 in × 22 in × 2 in are 693 in³ a turn of the drive shaft, 5.2 turns of the sensed one. */
    @Test
    void withoutACalibrationTheGeometryGivesAnEstimate() {
        TruckDay truck = with(withNothingInForce(idle("T-1")), calibrationCatch(8, 2), calibrationCatch(9, 4));
        TruckPlan plan = PLANNER.plan(day(truck), plan(3, PAILS)).trucks().get(0);
        assertThat(plan.points()).extracting(PointPlan::source).containsOnly(PointPlan.Source.GEOMETRY);
        assertThat(plan.points()).extracting(p -> p.point().toString()).containsExactly("salt at 2 in", "salt at 4 in");
        double poundsPerRevolution = 693.0 / 1728 * 78 * (0.5 + 1.15) / 2 / 5.2;
        assertThat(Amounts.in(plan.points().get(0).expected(), SpreadingUnits.POUND_PER_REVOLUTION))
                .isCloseTo(poundsPerRevolution, within(1e-9));
        assertThat(Amounts.in(plan.points().get(1).expected(), SpreadingUnits.POUND_PER_REVOLUTION))
                .isCloseTo(2 * poundsPerRevolution, within(1e-9));
    }

    @Test
    void anUngatedTruckIsPlannedForTheOnlyMaterial() {
        SpreaderEntry ungated = SpreaderEntry.watched(
                new TypedEntry(
                        "auger",
                        1,
                        Map.of(
                                "screwDiameter", Amounts.of(6, SpreadingUnits.INCH),
                                "shaftDiameter", Amounts.of(2, SpreadingUnits.INCH),
                                "pitch", Amounts.of(6, SpreadingUnits.INCH))),
                new TypedEntry("no-gate", 1, Map.of()),
                Amounts.of(1, SpreadingUnits.ONE));
        TruckDay auger = TruckDay.of("A", ungated);
        PointPlan point = only(PLANNER.plan(day(auger), plan(3, PAILS)));
        assertThat(point.point().material().name()).isEqualTo("salt");
        assertThat(point.point().setting()).isEqualTo(Setting.none());
        assertThat(point.count()).isInstanceOf(PlannedCount.Timed.class);
        FleetDay twoMaterials = day(auger);
        FleetDay more = new FleetDay(
                twoMaterials.day(),
                twoMaterials.seasonStart(),
                twoMaterials.tolerance(),
                twoMaterials.decisionRule(),
                twoMaterials.allowances(),
                Optional.empty(),
                Optional.empty(),
                twoMaterials.scales(),
                List.of(),
                List.of(
                        twoMaterials.materials().get(0),
                        Material.of("sand", Amounts.of(95, SpreadingUnits.POUND_PER_CUBIC_FOOT))),
                Optional.empty(),
                List.of(),
                twoMaterials.trucks());
        assertThat(PLANNER.plan(more, plan(3, PAILS)).trucks().get(0).refusal())
                .hasValue(
                        "material to plan for must be known from a calibration in force or a catch, or the only one of"
                                + " the day: 2 materials");
    }

    @Test
    void aTruckThatCantBePlannedDoesntStopTheOthers() {
        TruckDay nothingKnown = withNothingInForce(idle("T-1"));
        TruckDay wrongGate = with(idle("T-2"), inForce("5 lb/rev", 90, Since.of(LocalDate.of(2026, 10, 1))));
        TruckDay unknownType = TruckDay.of(
                "T-3",
                SpreaderEntry.watched(
                        new TypedEntry("escalator", 1, Map.of()),
                        new TypedEntry("no-gate", 1, Map.of()),
                        Amounts.of(1, SpreadingUnits.ONE)));
        FleetPlan plan = PLANNER.plan(day(nothingKnown, wrongGate, unknownType, idle("T-4")), plan(3, PAILS));
        assertThat(plan.trucks().get(0).refusal())
                .hasValue("gate setting to plan for must be known from a calibration in force or a catch: nothing");
        assertThat(plan.trucks().get(1).refusal())
                .hasValueSatisfying(r -> assertThat(r).startsWith("calibration in force: gate setting must be within"));
        assertThat(plan.trucks().get(2).refusal())
                .hasValueSatisfying(r -> assertThat(r).contains("escalator"));
        assertThat(plan.trucks().get(3).refusal()).isEmpty();
        assertThat(plan.outOfReach(0)).isEmpty();
        assertThat(plan.trucks().get(0).time(0)).isEmpty();
        assertThat(Amounts.in(plan.schedule(0).work(), SpreadingUnits.MINUTE))
                .isCloseTo(Amounts.in(plan.trucks().get(3).time(0).orElseThrow(), SpreadingUnits.MINUTE), within(1e-9));
    }

    /**
     * By hand: 20 + 10 min; three catches of 26 rev, 52 s each, 5 min and three pails of 3 min each; the verification 6 min
     * and three pails. At 15 mi/h 1.667 lb/s fall: the smallest sensible catch of 135.2 lb takes 82 s. Its scatter of 1 % is
     * then known with 2 degrees of freedom and 2 of the three catches, t = 2.776: with rounding and span U is below 6 %.
     */
    @Test
    void theTimeIsTheSumOfTheSteps() {
        FleetPlan plan = PLANNER.plan(day(idle("T-1"), idle("T-2")), plan(3, PAILS));
        MethodPlan method = plan.trucks().get(0).points().get(0).methods().get(0);
        assertThat(method.runs()).hasSize(2);
        assertThat(method.verifications())
                .extracting(run -> Amounts.format(run.runTime()))
                .containsExactly("82 s");
        double expected = 30 + 3 * (52 / 60.0 + 5 + 9) + 82 / 60.0 + 6 + 9;
        assertThat(Amounts.in(plan.trucks().get(0).time(0).orElseThrow(), SpreadingUnits.MINUTE))
                .isCloseTo(expected, within(1e-9));
        assertThat(Amounts.in(plan.schedule(0).work(), SpreadingUnits.MINUTE)).isCloseTo(2 * expected, within(1e-9));
    }

    /** 400 lb/mi at 22.5 mi/h are 28.8 rev/min, above the 25 that the drive holds. */
    @Test
    void aSpeedThatTheDriveCantHoldIsNotChosen() {
        MethodPlan method =
                only(PLANNER.plan(day(idle("T-1")), plan(3, PAILS))).methods().get(0);
        assertThat(method.runs())
                .extracting(run -> run.withinRange().orElseThrow())
                .containsExactly(true, false);
        assertThat(method.verifications())
                .extracting(run -> Amounts.format(run.testSpeed()))
                .containsExactly("15 mi/h");
    }

    /** 1 % is below 2.776 × 1 %. */
    @Test
    void whatIsPlannedIsRunEvenWhereItDoesntTellEnough() {
        PlanEntry plan = plan(3, PAILS);
        PlanEntry finer = new PlanEntry(
                plan.wantedUncertainty(),
                Optional.of(percent(1)),
                Optional.empty(),
                Optional.empty(),
                plan.shaftSpeed(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                plan.targetRates(),
                plan.testSpeeds(),
                plan.weighingMethods(),
                List.of(),
                List.of(),
                List.of());
        MethodPlan method =
                only(PLANNER.plan(day(idle("T-1")), finer)).methods().get(0);
        assertThat(method.runs())
                .hasSize(2)
                .allSatisfy(run -> assertThat(run.result()).isInstanceOf(PlanResult.OutOfReach.class));
        assertThat(method.verifications()).isEqualTo(method.runs());
        assertThat(method.isReached()).isTrue();
    }

    @Test
    void whatIsMissingIsNamed() throws ReflectiveOperationException {
        FleetPlan plan = PLANNER.plan(day(idle("T-1")), plan(3, PAILS));
        assertNamesWhatIsMissing(PLANNER);
        assertNamesWhatIsMissing(plan);
        assertNamesWhatIsMissing(plan.trucks().get(0));
        assertNamesWhatIsMissing(only(plan));
        assertNamesWhatIsMissing(only(plan).methods().get(0));
    }

    @Test
    void aSourceIsSaidInWords() {
        assertThat(PointPlan.Source.IN_FORCE.words()).isEqualTo("the calibration in force");
        assertThat(PointPlan.Source.GEOMETRY.words())
                .isEqualTo("an estimate: geometry, loose bulk density and a usual fill");
    }

    @Test
    void aWayThatCantTakeTheSmallestCatchIsAnAnswerToo() {
        FleetPlan plan = PLANNER.plan(day(idle("T-1")), plan(3, CUPS, PAILS, TARP));
        TruckPlan truck = plan.trucks().get(0);
        assertThat(truck.points().get(0).methods().get(0).refusal())
                .hasValue("containers must be able to hold the smallest sensible catch, 26 rev (5 rev of the conveyor"
                        + " shaft) or 135 lb: 30 lb in all");
        assertThat(truck.isReachedBy(0)).isFalse();
        assertThat(truck.time(0)).isEmpty();
        assertThat(plan.outOfReach(0)).containsExactly(truck);
        assertThat(truck.isReachedBy(1)).isTrue();
        // One tarp is weighed sooner than three pails.
        assertThat(truck.quickest()).hasValue(2);
    }

    /** Of ten catches, with 2 + 9 degrees of freedom, t = 2.201: 0.696 % and no less. */
    @Test
    void whatIsOutOfReachSaysTheMainCause() {
        FleetPlan plan = PLANNER.plan(day(idle("T-1")), plan(0.69, PAILS));
        assertThat(only(plan).methods().get(0).calibration())
                .hasValueSatisfying(result -> assertThat(result)
                        .isInstanceOfSatisfying(
                                PlanResult.OutOfReach.class,
                                out -> assertThat(out.mainCause()).isEqualTo(Cause.SCATTER)));
        assertThat(plan.trucks().get(0).quickest()).isEmpty();
        assertThat(Amounts.in(plan.schedule(0).work(), SpreadingUnits.MINUTE)).isZero();
    }

    @Test
    void whatIsKnownOfTheCatchesScatterIsPlannedWith() {
        CatchAllowances allowances = new CatchAllowances(
                percent(0), percent(0), Optional.empty(), Optional.of(Repeatability.assumed(percent(0.5))));
        assertThat(only(PLANNER.plan(Trucks.day(idle("T-1")).withAllowances(allowances), plan(3, PAILS)))
                        .methods()
                        .get(0)
                        .calibration()
                        .orElseThrow()
                        .series()
                        .repeats())
                .isEqualTo(3);
    }

    @Test
    void aWayWithAnUnknownScaleIsRefusedForTheWholeDay() {
        assertRefused(
                "weighing method \"pit\": scale must be one of [platform]: \"weighbridge\"",
                () -> PLANNER.plan(day(idle("T-1")), plan(3, method("pit", "weighbridge", 1, 500, 0))));
    }

    @Test
    void badPlansAreRefused() {
        assertRefused("wanted uncertainty must be greater than 0: 0 %", () -> plan(0, PAILS));
        assertRefused("wanted uncertainty must be below 100 %: 120 %", () -> plan(120, PAILS));
        assertRefused("weighing methods must be one or more: none", () -> plan(3));
        assertRefused("weighing method must be listed once: \"pails\"", () -> plan(3, PAILS, PAILS));
        assertRefused("containers must be one or more: 0", () -> method("none", "platform", 0, 60, 4));
        assertRefused(
                "time per container must be 0 or more: -1 min",
                () -> new StepTimes(minutes(1), minutes(1), minutes(-1), minutes(1), minutes(1)));
        PlanEntry good = plan(3, PAILS);
        assertRefused(
                "most repeats must be from 5 to 1000: 4",
                () -> changed(good, Optional.of(5), Optional.of(4), good.highestShaftSpeed(), good.testSpeeds()));
        assertRefused(
                "steady shaft speeds must be given as the lowest and the highest: the lowest only",
                () -> changed(good, Optional.empty(), Optional.empty(), Optional.empty(), good.testSpeeds()));
        assertRefused(
                "verification catches must be planned with target rates and test speeds: target rates only",
                () -> changed(good, Optional.empty(), Optional.empty(), good.highestShaftSpeed(), List.of()));
    }

    private static PlanEntry changed(
            PlanEntry plan,
            Optional<Integer> fewest,
            Optional<Integer> most,
            Optional<Quantity<RotationalSpeed>> highest,
            List<Quantity<Speed>> speeds) {
        return new PlanEntry(
                plan.wantedUncertainty(),
                plan.wantedVerificationUncertainty(),
                fewest,
                most,
                plan.shaftSpeed(),
                plan.lowestShaftSpeed(),
                highest,
                plan.startTimeConstant(),
                plan.greatestStartLoss(),
                plan.countUncertainty(),
                plan.crews(),
                plan.workingDay(),
                plan.targetRates(),
                speeds,
                plan.weighingMethods(),
                List.of(),
                List.of(),
                List.of());
    }

    @Test
    void aPlanThatNobodyCouldCarryOutIsRefused() {
        PlanEntry usual = plan(3, PAILS);
        WeighingMethodEntry thimbles = method("thimbles", "platform", 9999, 1, 0.1);
        assertRefused(
                "repeats × containers of weighing method thimbles must be at most 10000: 9999000",
                () -> new PlanEntry(
                        usual.wantedUncertainty(),
                        usual.wantedVerificationUncertainty(),
                        Optional.empty(),
                        Optional.of(1000),
                        usual.shaftSpeed(),
                        usual.lowestShaftSpeed(),
                        usual.highestShaftSpeed(),
                        usual.startTimeConstant(),
                        usual.greatestStartLoss(),
                        usual.countUncertainty(),
                        usual.crews(),
                        usual.workingDay(),
                        usual.targetRates(),
                        usual.testSpeeds(),
                        List.of(thimbles),
                        List.of(),
                        List.of(),
                        List.of()));
        assertRefused(
                "target rates × test speeds × weighing methods must be at most 1000: 1200",
                () -> PlanEntry.of(
                        usual.wantedUncertainty(),
                        Collections.nCopies(30, usual.targetRates().get(0)),
                        Collections.nCopies(40, usual.testSpeeds().get(0)),
                        usual.weighingMethods()));
    }

    @Test
    void numbersThatCanNotBeRefuseThePlanOrTheirTruck() {
        assertRefused(
                "/plan/weighingMethods/0/holds: holds must be within 0.001 g to 1000 t: 1e200 lb",
                () -> PLANNER.plan(day(idle("T-1")), plan(3, method("huge", "platform", 1, 1e200, 0))));
        FleetPlan plan = PLANNER.plan(
                day(with(idle("T-1"), inForce("1e200 lb/rev", 2, Since.of(Trucks.DAY))), idle("T-2")), plan(3, PAILS));
        assertThat(plan.trucks().get(0).refusal())
                .contains("/inForce/0/value: value must be within 0.000001 kg/rev to 100000 kg/rev: 1e200 lb/rev");
        assertThat(plan.trucks().get(1).refusal()).isEmpty();
    }
}
