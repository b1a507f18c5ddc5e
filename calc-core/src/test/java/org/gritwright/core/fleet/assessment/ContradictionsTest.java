package org.gritwright.core.fleet.assessment;

import static org.assertj.core.api.Assertions.assertThat;
import static org.gritwright.core.fleet.day.Trucks.DAY;
import static org.gritwright.core.fleet.day.Trucks.entry;
import static org.gritwright.core.fleet.day.Trucks.idle;
import static org.gritwright.core.fleet.day.Trucks.listing;
import static org.gritwright.core.fleet.day.Trucks.pulses;
import static org.gritwright.core.fleet.day.Trucks.verificationCatch;
import static org.gritwright.core.fleet.day.Trucks.with;
import static org.gritwright.core.fleet.day.Trucks.withRoadSpeed;

import java.time.LocalTime;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import org.gritwright.core.finding.Finding;
import org.gritwright.core.finding.FindingCode;
import org.gritwright.core.fleet.day.CalibrationCatchEntry;
import org.gritwright.core.fleet.day.CatchEntry;
import org.gritwright.core.fleet.day.CountEntry;
import org.gritwright.core.fleet.day.FleetDay;
import org.gritwright.core.fleet.day.TargetEntry;
import org.gritwright.core.fleet.day.TruckDay;
import org.gritwright.core.fleet.day.Trucks;
import org.gritwright.core.fleet.day.VerificationCatchEntry;
import org.gritwright.core.fleet.day.WeighingEntry;
import org.gritwright.core.metering.BuiltInTypes;
import org.gritwright.core.observation.CatchAllowances;
import org.gritwright.core.observation.Coasting;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Entries that contradict each other, whatever the discharge is. */
class ContradictionsTest {
    private static List<TruckAssessment> assess(TruckDay... trucks) {
        FleetDay day = Trucks.day(trucks);
        // Without a stated repeatability.
        return FleetAssessor.of(BuiltInTypes.registry())
                .assess(new FleetDay(
                        day.day(),
                        day.seasonStart(),
                        day.tolerance(),
                        day.decisionRule(),
                        CatchAllowances.NONE,
                        day.site(),
                        day.technician(),
                        day.scales(),
                        List.of(),
                        day.materials(),
                        day.plan(),
                        day.routes(),
                        day.trucks()));
    }

    private static List<FindingCode> codes(TruckAssessment truck) {
        return truck.findings().stream().map(Finding::code).toList();
    }

    private static void assertToldFirst(TruckAssessment truck, String sentence) {
        assertThat(truck.nextStep()).isEqualTo(NextStep.CHECK_ENTRIES);
        assertThat(truck.findings().get(0).sentence()).isEqualTo(sentence);
    }

    private static CatchEntry at(CatchEntry entry, String time) {
        return new CatchEntry(
                OffsetDateTime.of(DAY, LocalTime.parse(time), ZoneOffset.ofHours(-5)),
                entry.operator(),
                entry.scale(),
                entry.containers(),
                Optional.empty(),
                Optional.empty(),
                entry.counted(),
                entry.setting(),
                entry.material(),
                entry.conditions(),
                entry.notes());
    }

    private static CalibrationCatchEntry calibration(String time, double pulses, double pounds) {
        return calibration(time, pulses(pulses), pounds);
    }

    private static CalibrationCatchEntry calibration(String time, CountEntry count, double pounds) {
        return new CalibrationCatchEntry(at(entry(8, 2, pounds, Optional.of(count)), time), true, Coasting.IN_BOTH);
    }

    private static VerificationCatchEntry verification(String time, String inForce, double seconds, double turns) {
        VerificationCatchEntry one = verificationCatch(8, inForce, seconds, turns);
        return verificationCatch(inForce, seconds, at(one.entry(), time));
    }

    private static TruckDay verified(TruckDay truck, String inForce, String... times) {
        return with(
                truck,
                List.of(times).stream()
                        .map(time -> verification(time, inForce, 120, 57.7))
                        .toArray(VerificationCatchEntry[]::new));
    }

    @Test
    void aCatchTwelveHoursOffIsTold() {
        TruckDay calibrated = with(idle("T-01"), calibration("08:10", 3000, 156));

        assertToldFirst(
                assess(verified(calibrated, "5.2 lb/rev", "20:35")).get(0),
                "The catch of 2026-10-19 20:35 was made in the night, but at 2026-10-19 08:35 it would be next to that of"
                        + " 2026-10-19 08:10: its time is probably 12 hours off.");
        assertThat(codes(assess(verified(calibrated, "5.2 lb/rev", "20:40")).get(0)))
                .as("half an hour from another")
                .contains(FindingCode.CATCH_HALF_A_DAY_OFF);
        assertThat(codes(assess(verified(calibrated, "5.2 lb/rev", "20:41")).get(0)))
                .as("more than half an hour from others")
                .doesNotContain(FindingCode.CATCH_HALF_A_DAY_OFF);
        TruckDay inTheEvening = with(idle("T-01"), calibration("17:10", 3000, 156));
        assertThat(codes(assess(verified(inTheEvening, "5.2 lb/rev", "04:59")).get(0)))
                .as("before five it is night")
                .contains(FindingCode.CATCH_HALF_A_DAY_OFF);
        assertThat(codes(assess(verified(inTheEvening, "5.2 lb/rev", "05:00")).get(0)))
                .as("at five the day begins")
                .doesNotContain(FindingCode.CATCH_HALF_A_DAY_OFF);
    }

    @Test
    void workAtNightIsNoContradiction() {
        TruckDay atNight = with(idle("T-01"), calibration("22:10", 3000, 156));

        assertThat(codes(assess(verified(atNight, "5.2 lb/rev", "22:30", "23:10"))
                        .get(0)))
                .doesNotContain(FindingCode.CATCH_HALF_A_DAY_OFF);
        assertThat(codes(assess(verified(idle("T-01"), "5.2 lb/rev", "03:30")).get(0)))
                .doesNotContain(FindingCode.CATCH_HALF_A_DAY_OFF);
    }

    @Test
    void aValueCannotBeUsedBeforeItIsFound() {
        TruckDay calibrated = with(listing(idle("T-01"), "5.05 lb/rev"), calibration("10:10", 3000, 156));

        assertToldFirst(
                assess(verified(calibrated, "5.2 lb/rev", "09:00")).get(0),
                "The catch of 2026-10-19 09:00 was made with 5.2 lb/rev, which no list has and the calibration catches from"
                        + " 2026-10-19 10:10 on gave: one of the times is wrong.");
        assertThat(codes(assess(verified(calibrated, "5.2 lb/rev", "10:30")).get(0)))
                .doesNotContain(FindingCode.CATCH_BEFORE_CALIBRATION);
        assertThat(codes(assess(verified(calibrated, "5.05 lb/rev", "09:00")).get(0)))
                .as("the listed value")
                .doesNotContain(FindingCode.CATCH_BEFORE_CALIBRATION);
        assertThat(codes(assess(verified(calibrated, "5.25 lb/rev", "09:00")).get(0)))
                .as("another value")
                .doesNotContain(FindingCode.CATCH_BEFORE_CALIBRATION);
        assertThat(codes(assess(verified(listing(calibrated, "5.2 lb/rev"), "5.2 lb/rev", "09:00"))
                        .get(0)))
                .as("the calibration only proves what was listed")
                .doesNotContain(FindingCode.CATCH_BEFORE_CALIBRATION);
    }

    @Test
    void aCounterThatRunsOnOrdersTheCatches() {
        CountEntry first = readings(500, 3500);
        CountEntry second = readings(3500, 6700);

        assertToldFirst(
                assess(with(idle("T-01"), calibration("09:10", first, 156), calibration("08:30", second, 166.5)))
                        .get(0),
                "The counter stood at 3500 pulse after the catch of 2026-10-19 09:10 and before that of 2026-10-19 08:30: the"
                        + " times run backwards, and one of them is wrong.");
        assertThat(codes(assess(with(
                                idle("T-01"), calibration("09:10", second, 166.5), calibration("09:10", first, 156)))
                        .get(0)))
                .as("under one time, in any order")
                .doesNotContain(FindingCode.COUNTER_RUNS_BACKWARDS);
    }

    /** 44 lb for 4 lb, and the same net mass. */
    @ParameterizedTest
    @CsvSource({"44, true", "12.5, true", "12, false", "11.5, false", "0, false"})
    void aContainerThatWeighsSeveralTimesAsMuchEmptyIsTold(double tare, boolean told) {
        CalibrationCatchEntry other = calibration("09:10", pulses(3200), 166.5);
        WeighingEntry weighing = new WeighingEntry(
                "tarp", Amounts.of(166.5 + tare, SpreadingUnits.POUND), Amounts.of(tare, SpreadingUnits.POUND));
        CatchEntry changed = CatchEntry.of(
                        other.entry().at(),
                        other.entry().material(),
                        other.entry().scale().orElseThrow(),
                        weighing)
                .counted(other.entry().counted().orElseThrow())
                .at(other.entry().setting().orElseThrow());
        TruckAssessment assessment = assess(with(
                        idle("T-01"),
                        calibration("08:30", pulses(3000), 156),
                        new CalibrationCatchEntry(changed, true, Coasting.IN_BOTH)))
                .get(0);

        if (told) {
            assertToldFirst(
                    assessment,
                    "Container tarp weighs 4 lb empty in the catch of 2026-10-19 08:30 and "
                            + Amounts.format(Amounts.of(tare, SpreadingUnits.POUND))
                            + " in that of 2026-10-19 09:10: one tare is"
                            + " wrong, or two containers have one name.");
        } else {
            assertThat(codes(assessment)).doesNotContain(FindingCode.TARES_DIFFER);
        }
    }

    @Test
    void aReadingThatTheCounterHadPassedIsTold() {
        assertToldFirst(
                assess(with(
                                idle("T-01"),
                                calibration("08:30", readings(500, 3500), 156),
                                calibration("09:10", readings(3050, 6250), 166.5)))
                        .get(0),
                "The catch of 2026-10-19 09:10 begins at 3050 pulse, but the catch of 2026-10-19 08:30 had the counter at 3500"
                        + " pulse before: a reading or a time is wrong.");
        assertThat(codes(assess(with(
                                idle("T-01"),
                                calibration("08:30", readings(500, 3500), 156),
                                calibration("09:10", readings(0, 3200), 166.5)))
                        .get(0)))
                .as("set back")
                .doesNotContain(FindingCode.COUNTS_OVERLAP);
        assertThat(codes(assess(with(
                                idle("T-01"),
                                calibration("08:30", readings(0, 3000), 156),
                                calibration("09:10", readings(240, 3440), 166.5)))
                        .get(0)))
                .as("set back, and primed before the catch")
                .doesNotContain(FindingCode.COUNTS_OVERLAP);
    }

    @Test
    void runsOfOneTruckTakeTheirTime() {
        // 360 lb/mi at 25 mi/h for 310 s are 775 lb.
        VerificationCatchEntry first = verification("09:00", "5.2 lb/rev", 310, 149.04);

        assertToldFirst(
                assess(with(idle("T-01"), first, verification("09:04", "5.2 lb/rev", 360, 173.1)))
                        .get(0),
                "The catches of 2026-10-19 09:00 and 2026-10-19 09:04 are 4 min apart, but the shorter of their runs took 310 s:"
                        + " a time or a run time is wrong.");
        assertThat(codes(assess(with(idle("T-01"), first, verification("09:05", "5.2 lb/rev", 360, 173.1)))
                        .get(0)))
                .as("to the minute")
                .doesNotContain(FindingCode.RUNS_OVERLAP);
        assertThat(codes(assess(with(
                                idle("T-01"),
                                verification("09:00", "5.2 lb/rev", 300, 144.23),
                                verification("09:04", "5.2 lb/rev", 360, 173.1)))
                        .get(0)))
                .as("four minutes that may be five")
                .doesNotContain(FindingCode.RUNS_OVERLAP);
        assertThat(codes(assess(with(
                                idle("T-01"),
                                verification("09:00", "5.2 lb/rev", 310, 149.04),
                                verification("09:00", "5.2 lb/rev", 360, 173.1)))
                        .get(0)))
                .as("several under one time")
                .doesNotContain(FindingCode.RUNS_OVERLAP);
    }

    private static CountEntry readings(double start, double stop) {
        return CountEntry.ofReadings(Amounts.of(start, SpreadingUnits.PULSE), Amounts.of(stop, SpreadingUnits.PULSE));
    }

    @Test
    void aTicketEnteredTwiceIsTold() {
        assertToldFirst(
                assess(with(idle("T-01"), calibration("08:10", 3011, 156.5), calibration("08:40", 3011, 156.5)))
                        .get(0),
                "The catches of 2026-10-19 08:10 and 2026-10-19 08:40 have the same masses and the same count: one ticket was"
                        + " probably entered twice.");
        assertThat(codes(assess(with(
                                with(idle("T-01"), calibration("08:10", 3011, 156.5)),
                                verificationCatch("5.2 lb/rev", 60, entry(9, 2, 156.5, Optional.of(pulses(3011))))))
                        .get(0)))
                .as("a calibration catch that verifies itself")
                .contains(FindingCode.TICKET_ENTERED_TWICE);
        assertThat(codes(assess(with(idle("T-01"), calibration("08:10", 3011, 156.5), calibration("08:40", 3011, 157)))
                        .get(0)))
                .doesNotContain(FindingCode.TICKET_ENTERED_TWICE);
    }

    @Test
    void catchesThatOftenAgreeByChanceAreNoTicketEnteredTwice() {
        TruckDay coarse = with(idle("T-01"), calibration("08:10", 300, 15.5), calibration("08:40", 300, 15.5));
        assertThat(codes(assess(coarse).get(0)))
                .as("few pulses on a coarse scale")
                .doesNotContain(FindingCode.TICKET_ENTERED_TWICE);

        TruckDay stopsByItself = with(
                idle("T-01"),
                calibration("08:10", 3000, 156.5),
                calibration("08:40", 3000, 156),
                calibration("08:50", 3000, 156.5));
        assertThat(codes(assess(stopsByItself).get(0)))
                .as("a controller that stops at a count")
                .doesNotContain(FindingCode.TICKET_ENTERED_TWICE);
    }

    @Test
    void underOneTimeLessIsLeftToChance() {
        CalibrationCatchEntry another = calibration("08:20", 700, 36);
        assertThat(codes(assess(with(
                                idle("T-01"),
                                calibration("08:10", 800, 41.5),
                                calibration("08:10", 800, 41.5),
                                another))
                        .get(0)))
                .contains(FindingCode.TICKET_ENTERED_TWICE);
        assertThat(codes(assess(with(
                                idle("T-01"),
                                calibration("08:10", 800, 41.5),
                                calibration("08:30", 800, 41.5),
                                another))
                        .get(0)))
                .doesNotContain(FindingCode.TICKET_ENTERED_TWICE);
    }

    @Test
    void aCounterNeverShowsTheSameReadingsAgain() {
        assertThat(codes(assess(with(
                                idle("T-01"),
                                calibration("08:10", readings(500, 530), 1.5),
                                calibration("08:40", readings(500, 530), 1.5)))
                        .get(0)))
                .contains(FindingCode.TICKET_ENTERED_TWICE);
        assertThat(codes(assess(with(
                                idle("T-01"),
                                calibration("08:10", readings(0, 30), 1.5),
                                calibration("08:40", readings(0, 30), 1.5)))
                        .get(0)))
                .as("set back before each catch")
                .doesNotContain(FindingCode.TICKET_ENTERED_TWICE);
    }

    @Test
    void aTicketOnTwoTrucksIsToldOfBoth() {
        TruckDay one = with(idle("T-01"), calibration("08:10", 8011, 416.5));
        TruckDay two = with(idle("T-02"), calibration("08:40", 8011, 416.5));
        List<TruckAssessment> both = assess(one, two);

        assertToldFirst(
                both.get(0),
                "The catch of 2026-10-19 08:10 has the same masses and the same count as that of 2026-10-19 08:40 on truck"
                        + " T-02: one ticket was probably entered twice.");
        assertToldFirst(
                both.get(1),
                "The catch of 2026-10-19 08:40 has the same masses and the same count as that of 2026-10-19 08:10 on truck"
                        + " T-01: one ticket was probably entered twice.");
        assertThat(codes(assess(one, with(idle("T-02"), calibration("08:40", 8012, 416.5)))
                        .get(0)))
                .doesNotContain(FindingCode.TICKET_OF_TWO_TRUCKS);
    }

    private static VerificationCatchEntry wanted(VerificationCatchEntry one, double poundsPerMile) {
        return new VerificationCatchEntry(
                one.entry(),
                one.inForce(),
                one.slot(),
                new TargetEntry(
                        Optional.of(Amounts.of(poundsPerMile, SpreadingUnits.POUND_PER_MILE)),
                        Optional.empty(),
                        Optional.empty(),
                        Optional.empty()),
                one.testSpeed(),
                one.runTime(),
                one.testDistance(),
                one.indicated(),
                one.indicatedStep());
    }

    @Test
    void aRateInAnotherUnitIsNoFaultOfTheDrive() {
        double poundsPerMile =
                Amounts.in(Amounts.of(360, SpreadingUnits.KILOGRAM_PER_KILOMETER), SpreadingUnits.POUND_PER_MILE);
        TruckAssessment assessment = assess(
                        with(idle("T-01"), wanted(verificationCatch(9, "5.2 lb/rev", 120, 57.7), poundsPerMile)))
                .get(0);

        assertToldFirst(
                assessment,
                "In the catch of 2026-10-19 09:00, 300 lb fit a target rate of 360 lb/mi, not 1277 lb/mi: the rate's unit was"
                        + " probably mistaken, kilograms per kilometer for pounds per mile or the other way round.");
        assertThat(assessment.toDo()).noneMatch(toDo -> toDo.step() == NextStep.CHECK_DELIVERY);
        assertThat(codes(assessment)).contains(FindingCode.SHORTFALL);
        assertThat(codes(assess(with(idle("T-01"), wanted(verificationCatch(9, "5.2 lb/rev", 120, 57.7), 101.5)))
                        .get(0)))
                .as("the other way round")
                .contains(FindingCode.RATE_IN_OTHER_UNIT);
        assertThat(codes(assess(with(idle("T-01"), wanted(verificationCatch(9, "5.2 lb/rev", 120, 57.7), 850)))
                        .get(0)))
                .as("a third of what was expected")
                .doesNotContain(FindingCode.RATE_IN_OTHER_UNIT);
        CatchEntry seconds = entry(9, 2, 300, Optional.of(pulses(1700)));
        assertThat(codes(assess(with(idle("T-01"), verificationCatch("5.2 lb/rev", 120, seconds)))
                        .get(0)))
                .as("a count that the scale doesn't support")
                .doesNotContain(FindingCode.RATE_IN_OTHER_UNIT);
    }

    /** 24 lb/mi at 260 mi/h asks for as many turns as 260 lb/mi at 24 mi/h. */
    @Test
    void aTargetRateAndATestSpeedThatWereSwappedAreRefused() {
        VerificationCatchEntry right = verificationCatch(9, "5.2 lb/rev", 120, 57.7);
        VerificationCatchEntry swapped = new VerificationCatchEntry(
                right.entry(),
                right.inForce(),
                right.slot(),
                wanted(right, 24).target(),
                Amounts.of(260, SpreadingUnits.MILE_PER_HOUR),
                right.runTime(),
                right.testDistance(),
                right.indicated(),
                right.indicatedStep());

        TruckAssessment assessment = assess(with(idle("T-01"), swapped)).get(0);
        assertThat(assessment.nextStep()).isEqualTo(NextStep.FIX_RECORD);
        assertThat(Assessments.reasons(assessment))
                .containsExactly("/trucks/0/verificationCatches/0/testSpeed: test speed must be within 0.01 km/h to 150"
                        + " km/h: 260 mi/h");
    }

    @Test
    void minutesAndSecondsAreNoShortfall() {
        // 360 lb/mi at 25 mi/h for 90 s are 225 lb, and 43.27 rev.
        TruckAssessment assessment = assess(with(idle("T-01"), verificationCatch(9, "5.2 lb/rev", 130, 43.27)))
                .get(0);

        assertToldFirst(
                assessment,
                "In the catch of 2026-10-19 09:00, 225 lb fit a run time of 90 s, not 130 s: minutes and seconds were probably"
                        + " written as seconds, unless a limit of the drive explains the shortfall.");
        assertThat(assessment.toDo()).noneMatch(toDo -> toDo.step() == NextStep.CHECK_DELIVERY);
    }

    @ParameterizedTest
    @CsvSource({"130, 44.1", "130, 42.4", "90, 30", "170, 62.3"})
    void otherShortfallsAreTheDrives(double seconds, double turns) {
        TruckAssessment assessment = assess(with(idle("T-01"), verificationCatch(9, "5.2 lb/rev", seconds, turns)))
                .get(0);

        assertThat(codes(assessment)).contains(FindingCode.SHORTFALL).doesNotContain(FindingCode.RUN_TIME_IN_MINUTES);
        assertThat(assessment.toDo()).anyMatch(toDo -> toDo.step() == NextStep.CHECK_DELIVERY);
    }

    @ParameterizedTest
    @ValueSource(doubles = {110, 80})
    void aLimitOfTheDriveFitsOneRunTimeByChanceButHardlyTwo(double seconds) {
        assertThat(codes(assess(with(
                                idle("T-01"),
                                verificationCatch(9, "5.2 lb/rev", 130, 43.27),
                                verificationCatch(10, "5.2 lb/rev", seconds, 43.27 * seconds / 130)))
                        .get(0)))
                .doesNotContain(FindingCode.RUN_TIME_IN_MINUTES);
    }

    @Test
    void aRoadSpeedInDoubtIsNotEntered() {
        TruckDay good = with(idle("T-01"), verificationCatch(9, "5.2 lb/rev", 120, 57.7));
        TruckAssessment doubted = assess(withRoadSpeed(good, 13_000 * 1.609)).get(0);

        assertThat(doubted.nextStep()).isEqualTo(NextStep.CHECK_ENTRIES);
        assertThat(doubted.roadProof()).isEqualTo(RoadProof.UNDECIDED);
        assertThat(doubted.toDo()).noneMatch(toDo -> toDo.step() == NextStep.FIX_ROAD_SPEED);
        assertThat(codes(doubted))
                .containsOnlyOnce(FindingCode.COURSE_IN_OTHER_UNIT)
                .doesNotContain(FindingCode.ROAD_SPEED_OFF);
    }
}
