package org.gritwright.core.fleet.assessment;

import static org.assertj.core.api.Assertions.assertThat;
import static org.gritwright.core.fleet.assessment.Driven.first;
import static org.gritwright.core.fleet.assessment.Driven.measured;
import static org.gritwright.core.fleet.assessment.Driven.range;
import static org.gritwright.core.fleet.assessment.Driven.run;
import static org.gritwright.core.fleet.assessment.Driven.sentences;
import static org.gritwright.core.fleet.assessment.Driven.speed;
import static org.gritwright.core.fleet.assessment.Driven.stated;
import static org.gritwright.core.fleet.assessment.Driven.steps;
import static org.gritwright.core.fleet.assessment.Driven.twoToTwentyEight;
import static org.gritwright.core.fleet.day.Trucks.conveyor;
import static org.gritwright.core.fleet.day.Trucks.day;
import static org.gritwright.core.fleet.day.Trucks.entry;
import static org.gritwright.core.fleet.day.Trucks.gate;
import static org.gritwright.core.fleet.day.Trucks.idle;
import static org.gritwright.core.fleet.day.Trucks.verificationCatch;
import static org.gritwright.core.fleet.day.Trucks.with;
import static org.gritwright.units.SpreadingUnits.MILE;
import static org.gritwright.units.SpreadingUnits.ONE;
import static org.gritwright.units.SpreadingUnits.PERCENT;
import static org.gritwright.units.SpreadingUnits.REVOLUTION_PER_MINUTE;
import static org.gritwright.units.SpreadingUnits.SECOND;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.gritwright.core.calibration.Change;
import org.gritwright.core.finding.FindingCode;
import org.gritwright.core.fleet.day.CalibrationCatchEntry;
import org.gritwright.core.fleet.day.CountEntry;
import org.gritwright.core.fleet.day.DriveEntry;
import org.gritwright.core.fleet.day.DrivePointEntry;
import org.gritwright.core.fleet.day.DriveRunEntry;
import org.gritwright.core.fleet.day.SpreaderEntry;
import org.gritwright.core.fleet.day.StatedRangeEntry;
import org.gritwright.core.fleet.day.TruckDay;
import org.gritwright.core.fleet.day.VerificationCatchEntry;
import org.gritwright.core.metering.BuiltInTypes;
import org.gritwright.core.metering.OpenLoop;
import org.gritwright.core.observation.Coasting;
import org.gritwright.core.range.Direction;
import org.gritwright.core.range.DriveConditions;
import org.gritwright.core.range.RangeSource;
import org.gritwright.units.Amounts;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What is said of a drive in one place and can't be right by another. */
class DriveContradictionsTest {
    private static final List<OpenLoop.Row> TABLE = List.of(row(1, 5), row(3, 15), row(5, 25));

    private static OpenLoop.Row row(double setting, double revolutionsPerMinute) {
        return new OpenLoop.Row(Amounts.of(setting, ONE), speed(revolutionsPerMinute));
    }

    /** Its shaft is the conveyor's own, so that a turn discharges 27.04 lb; each ran for a minute. */
    private static TruckDay watched(CountEntry... counts) {
        return with(
                idle("T-1").spreader(SpreaderEntry.watched(conveyor(), gate(), Amounts.of(1, ONE))),
                Stream.of(counts)
                        .map(count -> new CalibrationCatchEntry(
                                entry(8, 2, 27.04 * turns(count), Optional.of(count)), true, Coasting.IN_BOTH))
                        .toArray(CalibrationCatchEntry[]::new));
    }

    private static double turns(CountEntry count) {
        return count.shaftSpeed()
                .map(speed -> Amounts.in(speed, REVOLUTION_PER_MINUTE))
                .orElseGet(() -> 5 * Amounts.in(count.setting().orElseThrow(), ONE));
    }

    private static CountEntry at(double revolutionsPerMinute) {
        return CountEntry.atShaftSpeed(speed(revolutionsPerMinute), Amounts.of(60, SECOND));
    }

    @Test
    void aShaftThatTurnedFasterThanTheDriveHoldsIsAContradiction() {
        TruckAssessment assessed = first(day(watched(at(30)).drive(stated(2, 28))));
        assertThat(sentences(assessed, FindingCode.CATCH_ABOVE_RANGE))
                .containsExactly(
                        "In the catch of 2026-10-19 08:00 the shaft turned at 30 rev/min, but the drive is said to hold"
                                + " 28 rev/min at most: find out which is right, the range, the count or the run time.");
        assertThat(assessed.nextStep()).isEqualTo(NextStep.CHECK_ENTRIES);
    }

    @Test
    void whatARangeMayBeOffByIsNone() {
        // 5 % of 28 rev/min by the maker, 10 % by eye.
        assertThat(sentences(first(day(watched(at(29.3)).drive(stated(2, 28)))), FindingCode.CATCH_ABOVE_RANGE))
                .isEmpty();
        DriveEntry byEye = DriveEntry.stated(range(2, 28, RangeSource.BY_EYE));
        assertThat(sentences(first(day(watched(at(30)).drive(byEye))), FindingCode.CATCH_ABOVE_RANGE))
                .isEmpty();
        assertThat(sentences(first(day(watched(at(31)).drive(byEye))), FindingCode.CATCH_ABOVE_RANGE))
                .hasSize(1);
    }

    @Test
    void aShaftThatTurnedSlowerThanItHoldsSteadilyIsOneToo() {
        TruckAssessment assessed = first(day(watched(at(4), at(1.5)).drive(stated(2, 28))));
        assertThat(sentences(assessed, FindingCode.CATCH_BELOW_RANGE))
                .containsExactly(
                        "In the catch of 2026-10-19 08:00 the shaft turned at 1.5 rev/min, but the drive is said to hold"
                                + " no less than 2 rev/min steadily, and a calibration is right only while the shaft turns"
                                + " steadily: find out which is right, or catch again within the range.");
        assertThat(assessed.nextStep()).isEqualTo(NextStep.CHECK_ENTRIES);
    }

    @Test
    void aMeanSpeedComesFromCountAndRunTime() {
        // 57.7 rev in 120 s are 28.85 rev/min; 4 % less are 27.7.
        TruckDay counted = with(idle("T-1"), verificationCatch(9, "5.2 lb/rev", 120, 57.7));
        assertThat(sentences(first(day(counted.drive(stated(12, 26)))), FindingCode.CATCH_ABOVE_RANGE))
                .hasSize(1);
        assertThat(sentences(first(day(counted.drive(stated(12, 27)))), FindingCode.CATCH_ABOVE_RANGE))
                .isEmpty();
    }

    @Test
    void aRangeOfTheConveyorsOwnShaftIsRecognizedByTheGearRatio() {
        // 28.85 rev/min of the sensed shaft are 5.55 rev/min of the conveyor's, geared 5.2 : 1.
        TruckDay counted = with(idle("T-1"), verificationCatch(9, "5.2 lb/rev", 120, 57.7));
        TruckAssessment assessed = first(day(counted.drive(stated(0.4, 8))));
        assertThat(sentences(assessed, FindingCode.DRIVE_OF_OTHER_SHAFT))
                .containsExactly(
                        "In the catch of 2026-10-19 09:00 the shaft turned at 28.85 rev/min, but the drive is said to"
                                + " hold 0.4 rev/min to 8 rev/min. With the gear ratio of 5.2 they would agree: the range is"
                                + " probably that of the conveyor's own shaft, not of the sensed or watched one.");
        assertThat(sentences(assessed, FindingCode.CATCH_ABOVE_RANGE)).isEmpty();
        assertThat(steps(assessed)).contains(NextStep.CHECK_ENTRIES);
    }

    @Test
    void aCatchLittleBeyondARangeIsNotOfAnotherShaft() {
        // 28.85 rev/min are 1.44 times 20 rev/min; of the conveyor's shaft they would be within.
        TruckDay counted = with(idle("T-1"), verificationCatch(9, "5.2 lb/rev", 120, 57.7));
        TruckAssessment assessed = first(day(counted.drive(stated(2, 20))));
        assertThat(sentences(assessed, FindingCode.DRIVE_OF_OTHER_SHAFT)).isEmpty();
        assertThat(sentences(assessed, FindingCode.CATCH_ABOVE_RANGE)).hasSize(1);
    }

    @Test
    void aStatedRangeAGearRatioAwayIsProbablyOfTheOtherShaft() {
        TruckAssessment assessed =
                first(day(idle("T-1").drive(twoToTwentyEight().with(range(0.4, 5.4, RangeSource.MEASURED)))));
        assertThat(sentences(assessed, FindingCode.STATED_RANGE_OF_OTHER_SHAFT)).hasSize(1);
        assertThat(steps(assessed)).contains(NextStep.CHECK_ENTRIES);
    }

    @Test
    void aStatedRangeThatIsAnotherIsAContradictionAndANarrowerOneThanBeforeIsWear() {
        TruckAssessment disagrees =
                first(day(idle("T-1").drive(twoToTwentyEight().with(range(2, 34, RangeSource.FROM_MAKER)))));
        assertThat(sentences(disagrees, FindingCode.DRIVE_RANGE_DISAGREES)).hasSize(1);
        assertThat(disagrees.nextStep()).isEqualTo(NextStep.CHECK_ENTRIES);
        // What is measured wins.
        assertThat(disagrees.drive().orElseThrow().range().orElseThrow().highest())
                .isEqualTo(speed(28));

        TruckAssessment worn =
                first(day(idle("T-1").drive(twoToTwentyEight().with(range(2, 34, RangeSource.MEASURED)))));
        assertThat(sentences(worn, FindingCode.DRIVE_RANGE_NARROWER)).hasSize(1);
        assertThat(steps(worn)).contains(NextStep.CHECK_DELIVERY);
    }

    @Test
    void aDriveThatAgreesWithWhatIsStatedHasNothingAgainstIt() {
        TruckAssessment assessed =
                first(day(idle("T-1").drive(twoToTwentyEight().with(range(2, 28, RangeSource.FROM_MAKER)))));
        assertThat(assessed.drive().orElseThrow().findings()).isEmpty();
        assertThat(assessed.drive().orElseThrow().source()).contains(RangeSource.MEASURED);
        assertThat(steps(assessed)).doesNotContain(NextStep.CHECK_ENTRIES, NextStep.FIT_TO_DRIVE);
    }

    /** Control settings as commands, measured upward: 1 to 5, read to 0.1 rev/min. */
    private static DriveEntry dial(double... speeds) {
        List<DrivePointEntry> points = new ArrayList<>();
        for (int i = 0; i < speeds.length; i++) {
            points.add(DrivePointEntry.of(Amounts.of(i + 1, ONE), speed(speeds[i])));
        }
        return new DriveEntry(
                Optional.of(Amounts.of(0, ONE)),
                Optional.of(Amounts.of(5, ONE)),
                Optional.of(Amounts.of(1, ONE)),
                Optional.of(speed(0.1)),
                DriveConditions.AS_AT_WORK,
                List.of(new DriveRunEntry(Direction.RISING, points)),
                Optional.empty());
    }

    private static TruckDay openLoop(CountEntry count) {
        TruckDay truck = watched(count);
        return truck.spreader(((SpreaderEntry) truck.spreader()).withControlSettings(TABLE));
    }

    private static CountEntry setting(double setting) {
        return CountEntry.atControlSetting(Amounts.of(setting, ONE), Amounts.of(60, SECOND));
    }

    @Test
    void aTableOfControlSettingsMustAgreeWithWhatIsMeasuredAtTheSameCommand() {
        // 2 % of 15 rev/min and the reading's 0.1 rev/min.
        assertThat(sentences(
                        first(day(openLoop(setting(3)).drive(dial(5, 10, 15.3, 20, 25)))),
                        FindingCode.CONTROL_SETTING_DISAGREES))
                .isEmpty();
        TruckAssessment assessed = first(day(openLoop(setting(3)).drive(dial(5, 10, 17, 21, 25))));
        assertThat(sentences(assessed, FindingCode.CONTROL_SETTING_DISAGREES))
                .containsExactly(
                        "At control setting 3 the truck's table has 15 rev/min, but the drive was measured at 17 rev/min"
                                + " there: find out which is right.");
        assertThat(assessed.nextStep()).isEqualTo(NextStep.CHECK_ENTRIES);
        assertThat(assessed.massProof()).isEqualTo(MassProof.UNDECIDED);
    }

    @Test
    void aControlSettingThatTheDriveCanNotBeGivenIsAContradiction() {
        TruckDay truck = watched(setting(3));
        truck = truck.spreader(
                ((SpreaderEntry) truck.spreader()).withControlSettings(List.of(row(1, 5), row(3, 15), row(50, 25))));
        TruckAssessment assessed = first(day(truck.drive(dial(5, 10, 15, 20, 25))));
        assertThat(sentences(assessed, FindingCode.CONTROL_SETTING_OFF_SCALE))
                .containsExactly("The truck's table has 25 rev/min at control setting 50, but the drive is said to take"
                        + " commands from 0 to 5 only: find out which is right.");
        assertThat(assessed.nextStep()).isEqualTo(NextStep.CHECK_ENTRIES);
        // Commands in percent are of another kind.
        assertThat(sentences(first(day(truck.drive(twoToTwentyEight()))), FindingCode.CONTROL_SETTING_OFF_SCALE))
                .isEmpty();
    }

    private static TruckDay withTable(OpenLoop.Row... rows) {
        TruckDay truck = watched(setting(3));
        return truck.spreader(((SpreaderEntry) truck.spreader()).withControlSettings(List.of(rows)));
    }

    @Test
    void ofTwoControlSettingsTheOneThatIsFartherOffIsTold() {
        TruckAssessment beyond = first(
                day(withTable(row(1, 5), row(3, 15), row(8, 25), row(50, 30)).drive(dial(5, 10, 15, 20, 25))));
        assertThat(sentences(beyond, FindingCode.CONTROL_SETTING_OFF_SCALE))
                .singleElement()
                .satisfies(one -> assertThat(one).contains("at control setting 50"));

        TruckAssessment unlike =
                first(day(withTable(row(1, 5), row(3, 15), row(5, 25)).drive(dial(5, 10, 16, 24, 32))));
        assertThat(sentences(unlike, FindingCode.CONTROL_SETTING_DISAGREES))
                .singleElement()
                .satisfies(
                        one -> assertThat(one).contains("At control setting 5").contains("32 rev/min"));
    }

    @Test
    void aSettingOfTheDialIsNoPercentage() {
        TruckAssessment assessed =
                first(day(withTable(row(1, 5), row(3, 15), row(150, 25)).drive(twoToTwentyEight())));

        assertThat(assessed.refusals()).isEmpty();
        assertThat(sentences(assessed, FindingCode.CONTROL_SETTING_OFF_SCALE)).isEmpty();
    }

    @Test
    void theEndOfTheScaleIsOnIt() {
        TruckAssessment assessed =
                first(day(withTable(row(1, 5), row(3, 15), row(5, 25)).drive(dial(5, 10, 15, 20, 25))));
        assertThat(sentences(assessed, FindingCode.CONTROL_SETTING_OFF_SCALE)).isEmpty();
        assertThat(sentences(assessed, FindingCode.CONTROL_SETTING_DISAGREES)).isEmpty();
    }

    /** Nobody says from which side a control setting was reached: upward 13 rev/min, downward 17. */
    @ParameterizedTest
    @CsvSource({"13, false", "17, false", "15, true", "19, true"})
    void aControlSettingMayHaveTheSpeedOfEitherDirection(double table, boolean told) {
        DriveEntry dial = dial(5, 10, 13, 20, 25);
        List<DrivePointEntry> down = new ArrayList<>();
        double[] speeds = {25, 22, 17, 11, 5};
        for (int i = 0; i < speeds.length; i++) {
            down.add(DrivePointEntry.of(Amounts.of(5 - i, ONE), speed(speeds[i])));
        }
        DriveEntry both = new DriveEntry(
                dial.lowestCommand(),
                dial.highestCommand(),
                dial.commandStep(),
                dial.speedStep(),
                dial.atWork(),
                List.of(dial.runs().get(0), new DriveRunEntry(Direction.FALLING, down)),
                Optional.empty());
        TruckAssessment assessed =
                first(day(withTable(row(1, 5), row(3, table), row(5, 25)).drive(both)));

        assertThat(sentences(assessed, FindingCode.CONTROL_SETTING_DISAGREES)).hasSize(told ? 1 : 0);
    }

    @Test
    void aRangeIsOfAnotherShaftOnlyIfAllCatchesWouldFitIt() {
        // By the gear ratio of 5.2, 28.85 rev/min are 5.55 rev/min; but 62.5 rev/min are 12, beyond 8 as well.
        TruckDay counted = with(
                idle("T-1"),
                verificationCatch(9, "5.2 lb/rev", 120, 57.7),
                verificationCatch(10, "5.2 lb/rev", 120, 125));
        TruckAssessment assessed = first(day(counted.drive(stated(0.4, 8))));

        assertThat(sentences(assessed, FindingCode.DRIVE_OF_OTHER_SHAFT)).isEmpty();
        assertThat(sentences(assessed, FindingCode.CATCH_ABOVE_RANGE))
                .singleElement()
                .satisfies(one -> assertThat(one).contains("10:00"));
    }

    /** 57.7 rev over 0.8333 mi at 25 mi/h, which take 120 s. */
    @Test
    void aMeanSpeedComesFromTheCourseWhereNobodyTookTheTime() {
        VerificationCatchEntry timed = verificationCatch(9, "5.2 lb/rev", 120, 57.7);
        VerificationCatchEntry driven = new VerificationCatchEntry(
                timed.entry(),
                timed.inForce(),
                timed.slot(),
                timed.target(),
                timed.testSpeed(),
                Optional.empty(),
                Optional.of(Amounts.of(25 / 30.0, MILE)),
                timed.indicated(),
                timed.indicatedStep());

        assertThat(sentences(
                        first(day(with(idle("T-1"), driven).drive(stated(12, 26)))), FindingCode.CATCH_ABOVE_RANGE))
                .singleElement()
                .satisfies(one -> assertThat(one).contains("28.85 rev/min"));
    }

    @Test
    void aCatchAtAControlSettingHasTheSpeedOfTheTable() {
        assertThat(sentences(first(day(openLoop(setting(5)).drive(stated(2, 20)))), FindingCode.CATCH_ABOVE_RANGE))
                .containsExactly(
                        "In the catch of 2026-10-19 08:00 the shaft turned at 25 rev/min, but the drive is said to hold"
                                + " 20 rev/min at most: find out which is right, the range, the count or the run time.");
    }

    @Test
    void aReversalOfTheSpeedHasItsEntriesChecked() {
        TruckAssessment assessed = first(day(idle("T-1")
                .drive(measured(run(
                        Direction.RISING, 29, 0, 30, 2, 30, 2, 40, 20, 40, 20, 50, 12, 50, 12, 100, 28, 100, 28)))));
        assertThat(sentences(assessed, FindingCode.DRIVE_REVERSAL)).hasSize(1);
        assertThat(steps(assessed)).contains(NextStep.CHECK_ENTRIES);
    }

    @Test
    void whatCanNotBeComputedIsRefusedWithItsPlaceAndNoOtherTruckIs() {
        DriveEntry upsideDown = new DriveEntry(
                Optional.of(Amounts.of(100, PERCENT)),
                Optional.of(Amounts.of(0, PERCENT)),
                Optional.of(Amounts.of(1, PERCENT)),
                Optional.empty(),
                DriveConditions.NOT_SAID,
                List.of(run(Direction.RISING, 30, 2)),
                Optional.of(range(28, 2, RangeSource.BY_EYE)));
        List<TruckAssessment> trucks = FleetAssessor.of(BuiltInTypes.registry())
                .assess(day(
                        idle("T-1").drive(upsideDown),
                        idle("T-2").drive(measured(run(Direction.RISING, 30, 2, 50, 12, 40, 8))),
                        idle("T-3").drive(measured(run(Direction.RISING, 30, 2, 150, 12))),
                        idle("T-4").drive(measured()),
                        idle("T-5")));
        assertThat(Assessments.reasons(trucks.get(0)))
                .containsExactly(
                        "/trucks/0/drive: drive: highest command must be greater than 100 %: 0 %",
                        "/trucks/0/drive/statedRange: drive: highest steady shaft speed must be at least 28 rev/min: 2"
                                + " rev/min");
        assertThat(Assessments.reasons(trucks.get(1)))
                .containsExactly(
                        "/trucks/1/drive/runs/0: drive: command 3 of a rising run must be a percentage, at least 50 %:"
                                + " 40 %");
        assertThat(Assessments.reasons(trucks.get(2)))
                .containsExactly("/trucks/2/drive/runs/0/points/1: drive: command must be within 0 % to 100 %: 150 %");
        assertThat(Assessments.reasons(trucks.get(3)))
                .containsExactly("/trucks/3/drive: drive: drive must be given with runs or with statedRange: nothing");
        assertThat(trucks.get(4).isRefused()).isFalse();
    }

    @Test
    void aDriveThatNeverTurnedAndACatchAreAContradiction() {
        DriveEntry still = measured(run(Direction.RISING, 30, 0, 60, 0, 100, 0));
        TruckAssessment assessed = first(day(watched(at(20)).drive(still)));
        assertThat(sentences(assessed, FindingCode.DRIVE_NEVER_TURNED))
                .containsExactly("The shaft stood still at every command at which the drive was measured, but in the"
                        + " catch of 2026-10-19 08:00 it turned: find out which is right.");
        assertThat(assessed.nextStep()).isEqualTo(NextStep.CHECK_ENTRIES);
        // Nobody caught anything; and one that turned at last.
        assertThat(sentences(first(day(idle("T-1").drive(still))), FindingCode.DRIVE_NEVER_TURNED))
                .isEmpty();
        assertThat(sentences(
                        first(day(watched(at(20)).drive(measured(run(Direction.RISING, 60, 0, 100, 20))))),
                        FindingCode.DRIVE_NEVER_TURNED))
                .isEmpty();
    }

    @Test
    void aSlipOfTheDecimalPointHasItsEntriesChecked() {
        TruckAssessment apart = first(day(idle("T-1")
                .drive(measured(
                        run(Direction.RISING, 29, 0, 30, 2, 40, 7, 50, 12, 80, 280),
                        run(Direction.FALLING, 80, 28, 50, 12, 40, 7, 30, 2, 29, 0)))));
        assertThat(sentences(apart, FindingCode.DRIVE_READINGS_APART)).hasSize(1);
        assertThat(apart.nextStep()).isEqualTo(NextStep.CHECK_ENTRIES);
        TruckAssessment leaps =
                first(day(idle("T-1").drive(measured(run(Direction.RISING, 29, 0, 30, 2, 40, 7, 50, 12, 80, 280)))));
        assertThat(sentences(leaps, FindingCode.DRIVE_SPEED_LEAPS)).hasSize(1);
        assertThat(leaps.nextStep()).isEqualTo(NextStep.CHECK_ENTRIES);
    }

    private static TruckDay changed(Optional<LocalDate> rangeOn, Change.Part part) {
        return with(idle("T-1"), LocalDate.of(2026, 8, 12), part)
                .drive(DriveEntry.stated(new StatedRangeEntry(speed(2), speed(28), RangeSource.MEASURED, rangeOn)));
    }

    @Test
    void aRangeFromBeforeAChangeOfTheHydraulicsOrTheSensorIsMeasuredAgain() {
        TruckAssessment assessed = first(day(changed(Optional.of(LocalDate.of(2026, 8, 11)), Change.Part.HYDRAULIC)));
        assertThat(sentences(assessed, FindingCode.DRIVE_RANGE_BEFORE_CHANGE))
                .containsExactly(
                        "No range of the drive is known from after the hydraulic change of 2026-08-12, so it may"
                                + " hold other shaft speeds now: measure it again.");
        assertThat(steps(assessed)).contains(NextStep.MEASURE_RANGE);
        assertThat(isOutOfDate(changed(Optional.of(LocalDate.of(2026, 8, 11)), Change.Part.SENSOR)))
                .isTrue();
        // Nobody says when.
        assertThat(isOutOfDate(changed(Optional.empty(), Change.Part.HYDRAULIC)))
                .isTrue();
    }

    @Test
    void aRangeFromAfterAChangeOrOfNoMatterToItIsNot() {
        assertThat(isOutOfDate(changed(Optional.of(LocalDate.of(2026, 8, 12)), Change.Part.HYDRAULIC)))
                .isFalse();
        assertThat(isOutOfDate(changed(Optional.of(LocalDate.of(2026, 8, 11)), Change.Part.TIRE)))
                .isFalse();
        assertThat(isOutOfDate(changed(Optional.empty(), Change.Part.SENSOR))).isFalse();
        // It was measured today.
        TruckDay measured = changed(Optional.of(LocalDate.of(2026, 8, 11)), Change.Part.HYDRAULIC);
        assertThat(isOutOfDate(measured.drive(twoToTwentyEight()
                        .with(measured.drive().orElseThrow().statedRange().orElseThrow()))))
                .isFalse();
    }

    private static boolean isOutOfDate(TruckDay truck) {
        TruckAssessment assessed = first(day(truck));
        boolean outOfDate =
                !sentences(assessed, FindingCode.DRIVE_RANGE_BEFORE_CHANGE).isEmpty();
        assertThat(steps(assessed).contains(NextStep.MEASURE_RANGE)).isEqualTo(outOfDate);
        return outOfDate;
    }

    @Test
    void aRangeOfADayToComeIsASlip() {
        DriveEntry later = DriveEntry.stated(new StatedRangeEntry(
                speed(2), speed(28), RangeSource.MEASURED, Optional.of(LocalDate.of(2026, 10, 20))));
        assertThat(Assessments.reasons(first(day(idle("T-1").drive(later)))))
                .containsExactly("/trucks/0/drive/statedRange/on: drive: date of a stated range must be not after the"
                        + " document's own day, 2026-10-19: 2026-10-20");
    }
}
