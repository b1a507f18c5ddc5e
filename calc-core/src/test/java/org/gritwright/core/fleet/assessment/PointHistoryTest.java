package org.gritwright.core.fleet.assessment;

import static org.assertj.core.api.Assertions.assertThat;
import static org.gritwright.core.fleet.assessment.Driven.first;
import static org.gritwright.core.fleet.assessment.Driven.sentences;
import static org.gritwright.core.fleet.assessment.Driven.steps;
import static org.gritwright.core.fleet.assessment.Written.calibrates;
import static org.gritwright.core.fleet.assessment.Written.verifies;
import static org.gritwright.core.fleet.assessment.Written.weighed;
import static org.gritwright.core.fleet.day.Trucks.DAY;
import static org.gritwright.core.fleet.day.Trucks.calibrationCatch;
import static org.gritwright.core.fleet.day.Trucks.day;
import static org.gritwright.core.fleet.day.Trucks.entry;
import static org.gritwright.core.fleet.day.Trucks.idle;
import static org.gritwright.core.fleet.day.Trucks.inForce;
import static org.gritwright.core.fleet.day.Trucks.pulses;
import static org.gritwright.core.fleet.day.Trucks.verificationCatch;
import static org.gritwright.core.fleet.day.Trucks.with;
import static org.gritwright.core.fleet.day.Trucks.withRoadSpeed;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.gritwright.core.calibration.CalibrationInForce;
import org.gritwright.core.calibration.Since;
import org.gritwright.core.finding.Finding;
import org.gritwright.core.finding.FindingCode;
import org.gritwright.core.fleet.day.TruckDay;
import org.gritwright.core.fleet.day.VerificationCatchEntry;
import org.gritwright.core.observation.Conditions;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What the catches of one calibration point show together, at its limits. */
class PointHistoryTest {
    private static final VerificationCatchEntry RIGHT = verificationCatch(9, "5.2 lb/rev", 120, 57.7);

    private static TruckDay truck() {
        return withRoadSpeed(with(idle("T-1"), inForce("5.2 lb/rev", DAY.minusDays(90))), 13_000);
    }

    private static List<FindingCode> ofPoint(TruckAssessment truck) {
        return truck.points().get(0).findings().stream().map(Finding::code).toList();
    }

    @ParameterizedTest
    @CsvSource({"31, false", "32, true"})
    void aCatchOfMoreThanAMonthBeforeTheDayIsOfAnotherDay(int days, boolean told) {
        LocalDate before = DAY.minusDays(days);
        TruckAssessment verified =
                first(day(with(truck(), verifies(Written.at(RIGHT.entry(), before, "09:00"), RIGHT))));
        TruckAssessment calibrated = first(day(with(
                truck(), calibrates(Written.at(calibrationCatch(8, 2).entry(), before, "08:00")))));

        for (TruckAssessment one : List.of(verified, calibrated)) {
            assertThat(sentences(one, FindingCode.CATCH_OF_ANOTHER_DAY)).hasSize(told ? 1 : 0);
            assertThat(ofPoint(one).contains(FindingCode.CATCH_OF_ANOTHER_DAY)).isEqualTo(told);
            assertThat(one.toDo())
                    .extracting(ToDo::toString)
                    .satisfies(
                            toDo -> assertThat(toDo.contains("Check the entries that the findings name: salt at 2 in"))
                                    .isEqualTo(told));
        }
        assertThat(verified.massProof()).isEqualTo(told ? MassProof.UNDECIDED : MassProof.PROVEN);
        if (told) {
            assertThat(sentences(verified, FindingCode.CATCH_OF_ANOTHER_DAY))
                    .singleElement()
                    .satisfies(one -> assertThat(one).contains("2026-09-17").contains("2026-10-19"));
        }
    }

    @Test
    void catchesAllWithoutATareAreAskedForIt() {
        TruckAssessment without = first(day(with(truck(), verifies(weighed(RIGHT.entry(), 300, 0), RIGHT))));
        assertThat(sentences(without, FindingCode.NO_TARE))
                .singleElement()
                .satisfies(one -> assertThat(one).contains("salt at 2 in"));
        assertThat(without.massProof()).isEqualTo(MassProof.UNDECIDED);

        assertThat(sentences(
                        first(day(with(
                                truck(),
                                calibrates(weighed(calibrationCatch(8, 2).entry(), 156, 0))))),
                        FindingCode.NO_TARE))
                .as("of calibration catches too")
                .hasSize(1);
        assertThat(sentences(
                        first(day(with(
                                truck(),
                                verifies(weighed(RIGHT.entry(), 300, 0), RIGHT),
                                verificationCatch(10, "5.2 lb/rev", 120, 57.6)))),
                        FindingCode.NO_TARE))
                .as("one of two catches has one")
                .isEmpty();
        assertThat(sentences(
                        first(day(with(truck(), verifies(weighed(RIGHT.entry(), 152, 2, 150, 0), RIGHT)))),
                        FindingCode.NO_TARE))
                .as("one of two containers has one")
                .isEmpty();
        assertThat(sentences(
                        first(day(with(
                                truck(),
                                verifies(
                                        weighed(RIGHT.entry(), 300, 0).under(Conditions.NONE.withScaleZeroed()),
                                        RIGHT)))),
                        FindingCode.NO_TARE))
                .as("the scale was set to zero with the container on it")
                .isEmpty();
    }

    /** 300 lb in 120 s at 25 mi/h, so that the delivery is right with any value. */
    private static VerificationCatchEntry showing(String value) {
        return verificationCatch(9, value, 120, 57.7);
    }

    @ParameterizedTest
    @CsvSource({"5.25 lb/rev, false", "5.26 lb/rev, true", "5.15 lb/rev, false", "5.14 lb/rev, true"})
    void aValueIsTheListedOneToAPercent(String shown, boolean told) {
        assertThat(sentences(first(day(with(truck(), showing(shown)))), FindingCode.OTHER_VALUE_IN_FORCE))
                .hasSize(told ? 1 : 0);
    }

    /** The day's catches give 5.2 lb/rev; the display shows it by 0.01 lb/rev. */
    @ParameterizedTest
    @CsvSource({
        "4.6 lb/rev, 5.2 lb/rev, false",
        "4.6 lb/rev, 5.205 lb/rev, false",
        "4.6 lb/rev, 5.22 lb/rev, true",
        "4.6 lb/rev, 5.05 lb/rev, true",
        "4.1 lb/rev, 5.2 lb/rev, true"
    })
    void anotherValueThanTheListedOneIsTheDaysCalibrationRounded(String listed, String shown, boolean told) {
        TruckDay calibrated =
                with(with(truck(), inForce(listed, DAY.minusDays(90))), calibrationCatch(7, 2), calibrationCatch(8, 2));

        assertThat(sentences(first(day(with(calibrated, showing(shown)))), FindingCode.OTHER_VALUE_IN_FORCE))
                .hasSize(told ? 1 : 0);
    }

    /** 30 rev of 5 lb each, a quarter more than was listed. */
    @Test
    void wearExplainsAQuarterMoreAndNotAQuarterAndAHundredth() {
        TruckDay calibrated = with(truck(), calibrates(entry(8, 2, 150, Optional.of(pulses(3000)))));

        assertThat(sentences(
                        first(day(with(with(calibrated, inForce("4 lb/rev", DAY.minusDays(90))), showing("5 lb/rev")))),
                        FindingCode.OTHER_VALUE_IN_FORCE))
                .isEmpty();
        assertThat(sentences(
                        first(day(with(
                                with(calibrated, inForce("3.99 lb/rev", DAY.minusDays(90))), showing("5 lb/rev")))),
                        FindingCode.OTHER_VALUE_IN_FORCE))
                .hasSize(1);
    }

    @Test
    void whatIsTrueOfAllCatchesIsSaidOnceAndWhatIsTrueOfEachOfEach() {
        TruckAssessment nearlyEmpty = first(day(with(truck(), fromTheLast(9, 57.7), fromTheLast(10, 57.6))));
        assertThat(nearlyEmpty.verifications())
                .allSatisfy(one ->
                        assertThat(one.findings()).extracting(Finding::code).contains(FindingCode.HOPPER_NEARLY_EMPTY));
        assertThat(ofPoint(nearlyEmpty)).containsOnlyOnce(FindingCode.HOPPER_NEARLY_EMPTY);

        TruckAssessment slow = first(day(with(
                truck(), verificationCatch(9, "5.2 lb/rev", 120, 50), verificationCatch(10, "5.2 lb/rev", 120, 50.1))));
        assertThat(ofPoint(slow).stream().filter(FindingCode.SHORTFALL::equals)).hasSize(2);
    }

    private static VerificationCatchEntry fromTheLast(int hour, double revolutions) {
        VerificationCatchEntry one = verificationCatch(hour, "5.2 lb/rev", 120, revolutions);
        return verifies(one.entry().under(Conditions.NONE.withHopperLevel(Amounts.of(5, SpreadingUnits.PERCENT))), one);
    }

    @Test
    void aDisplayThatShowsWhatIsListedHoldsItSinceItWasEntered() {
        List<CalibrationInForce> after = first(day(with(truck(), RIGHT))).inForceAfter();

        assertThat(after)
                .extracting(CalibrationInForce::since)
                .containsExactly(Optional.of(Since.of(DAY.minusDays(90))));
    }

    @Test
    void aValueThatIsCorrectedTodayIsOfThisSeason() {
        LocalDate lastSeason = LocalDate.of(2025, 11, 3);
        TruckAssessment corrected = first(day(with(
                with(truck(), inForce("5.5 lb/rev", lastSeason)),
                verificationCatch(9, "5.5 lb/rev", 120, 54.5),
                verificationCatch(10, "5.2 lb/rev", 120, 57.6))));

        assertThat(corrected.massProof()).isEqualTo(MassProof.PROVEN);
        assertThat(sentences(corrected, FindingCode.CALIBRATION_BEFORE_SEASON)).isEmpty();
        assertThat(steps(corrected)).isEmpty();
    }

    /** Twice what the chain can carry, so that nobody can tell what the catch says. */
    @Test
    void aDoubtedCatchWithinTheToleranceProvesNothing() {
        TruckAssessment doubted = first(day(with(
                with(truck(), inForce("52 lb/rev", DAY.minusDays(90))),
                verificationCatch("52 lb/rev", 120, entry(9, 2, 300, Optional.of(pulses(577)))))));

        assertThat(doubted.verifications().get(0).isDoubted()).isTrue();
        assertThat(doubted.massProof()).isEqualTo(MassProof.NOT_PROVEN);
    }

    /** The day's catches give 5.2 lb/rev, the verification 320 lb in 57.7 rev, and the display is right by neither. */
    @Test
    void aCalibrationAndAVerificationThatMeasureTwoDischargesAreAFault() {
        TruckAssessment disagree = first(day(with(
                with(truck(), calibrationCatch(7, 2), calibrationCatch(8, 2)),
                verificationCatch("5.2 lb/rev", 120, entry(9, 2, 320, Optional.of(pulses(5770)))))));

        assertThat(sentences(disagree, FindingCode.CALIBRATION_DISAGREES)).hasSize(1);
        assertThat(ofPoint(disagree)).contains(FindingCode.CALIBRATION_DISAGREES);
        assertThat(disagree.nextStep()).isEqualTo(NextStep.FIND_FAULT);
    }

    @Test
    void whatIsOutOfPlaceIsToldBeforeWhatWasMissed() {
        VerificationCatchEntry slow = verificationCatch(9, "5.2 lb/rev", 120, 50);
        TruckAssessment assessed =
                first(day(with(truck(), verifies(Written.at(slow.entry(), DAY.minusDays(32), "09:00"), slow))));

        assertThat(assessed.findings())
                .extracting(Finding::code)
                .containsSubsequence(FindingCode.CATCH_OF_ANOTHER_DAY, FindingCode.SHORTFALL);
    }

    /** 5.4 lb/rev in the display of the right slot: a correction, and nothing to be matched. */
    @Test
    void aDisplayThatWasSetForTheCatchsOwnPointIsOnlyCorrected() {
        VerificationCatchEntry off = verificationCatch(9, "5.5 lb/rev", 120, 54.5);
        TruckAssessment assessed = first(day(with(
                with(truck(), Written.inSlot("1", inForce("5.5 lb/rev", DAY.minusDays(90)))),
                Written.bySlot("1", off))));

        assertThat(steps(assessed)).containsExactly(NextStep.ENTER_CORRECTION);
    }
}
