package org.gritwright.core.fleet.assessment;

import static org.assertj.core.api.Assertions.assertThat;
import static org.gritwright.core.Samples.DAY;
import static org.gritwright.core.Samples.codes;
import static org.gritwright.core.Samples.height;
import static org.gritwright.core.Samples.inches;
import static org.gritwright.core.Samples.numbers;
import static org.gritwright.core.Samples.only;
import static org.gritwright.core.fleet.assessment.Assessments.correction;
import static org.gritwright.core.fleet.assessment.Assessments.corrections;
import static org.gritwright.core.fleet.assessment.Assessments.reasons;
import static org.gritwright.core.fleet.day.Trucks.calibrationCatch;
import static org.gritwright.core.fleet.day.Trucks.day;
import static org.gritwright.core.fleet.day.Trucks.entry;
import static org.gritwright.core.fleet.day.Trucks.idle;
import static org.gritwright.core.fleet.day.Trucks.inForce;
import static org.gritwright.core.fleet.day.Trucks.verificationCatch;
import static org.gritwright.core.fleet.day.Trucks.with;
import static org.gritwright.core.fleet.day.Trucks.withRoadSpeed;

import java.time.OffsetDateTime;
import java.util.List;
import java.util.Optional;
import org.gritwright.core.calibration.CalibrationInForce;
import org.gritwright.core.calibration.Since;
import org.gritwright.core.curve.CurveModel;
import org.gritwright.core.finding.Finding;
import org.gritwright.core.finding.FindingCode;
import org.gritwright.core.fleet.day.CalibrationCatchEntry;
import org.gritwright.core.fleet.day.CatchEntry;
import org.gritwright.core.fleet.day.InForceEntry;
import org.gritwright.core.fleet.day.TruckDay;
import org.gritwright.core.fleet.day.VerificationCatchEntry;
import org.gritwright.core.metering.BuiltInTypes;
import org.gritwright.core.observation.Coasting;
import org.gritwright.core.verification.Correction;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A truck with values in force for several calibration points: salt at 2 in and at 3 in. */
class SeveralPointsTest {
    private static final FleetAssessor ASSESSOR = FleetAssessor.of(BuiltInTypes.registry());
    private static final Since LAST_WEEK = Since.of(DAY.minusDays(7));

    /** What the true 5.2 lb/rev at 2 in come to at 3 in. */
    private static final String TRUE_AT_THREE = "7.8 lb/rev";

    private static TruckAssessment assess(TruckDay truck) {
        return ASSESSOR.assess(day(truck)).get(0);
    }

    private static InForceEntry inSlot(String slot, InForceEntry entry) {
        return new InForceEntry(
                entry.value(),
                entry.displayStep(),
                entry.since(),
                entry.material(),
                entry.setting(),
                Optional.of(slot));
    }

    private static TruckDay truck() {
        return withRoadSpeed(
                with(idle("T-01"), inForce("5.2 lb/rev", 2, LAST_WEEK), inForce(TRUE_AT_THREE, 3, LAST_WEEK)), 13_000);
    }

    private static TruckDay truckWithSlots() {
        return with(
                truck(),
                inSlot("1", inForce("5.2 lb/rev", 2, LAST_WEEK)),
                inSlot("2", inForce(TRUE_AT_THREE, 3, LAST_WEEK)));
    }

    /** A catch at so many inches that caught what is truly discharged there, with a value in the display. */
    private static VerificationCatchEntry caught(int hour, double openingInches, String inForce, double revolutions) {
        CatchEntry atTwo = verificationCatch(hour, inForce, 120, revolutions).entry();
        double net = Math.rint(revolutions * 5.2 * openingInches / 2 * 100) / 100;
        return verificationCatch(inForce, 120, entry(hour, openingInches, net, atTwo.counted()));
    }

    private static VerificationCatchEntry bySlot(String slot, VerificationCatchEntry entry) {
        return new VerificationCatchEntry(
                entry.entry(),
                entry.inForce(),
                Optional.of(slot),
                entry.target(),
                entry.testSpeed(),
                entry.runTime(),
                entry.testDistance(),
                entry.indicated(),
                entry.indicatedStep());
    }

    private static PointAssessment at(double openingInches, TruckAssessment assessment) {
        return assessment.points().stream()
                .filter(point -> point.point().setting().isSameAs(height(openingInches)))
                .findFirst()
                .orElseThrow();
    }

    @Test
    void aPointThatOnlyAnEntryNamesIsAssessedAndToBeVerified() {
        TruckAssessment assessment = assess(with(truck(), caught(9, 2, "5.2 lb/rev", 57.7)));

        assertThat(assessment.points())
                .extracting(point -> point.point().toString())
                .containsExactly("salt at 2 in", "salt at 3 in");
        assertThat(at(2, assessment).proof()).isEqualTo(MassProof.PROVEN);
        assertThat(at(3, assessment).proof()).isEqualTo(MassProof.NOT_CHECKED);
        assertThat(at(3, assessment).verifications()).isEmpty();
        assertThat(assessment.massProof()).as("the least proven point decides").isEqualTo(MassProof.NOT_CHECKED);
        assertThat(assessment.toDo())
                .extracting(ToDo::toString)
                .containsExactly("Make a verification catch: salt at 3 in");
    }

    @Test
    void eachPointIsProvenByItsOwnCatches() {
        TruckAssessment assessment =
                assess(with(truck(), caught(9, 2, "5.2 lb/rev", 57.7), caught(10, 3, TRUE_AT_THREE, 38.5)));

        assertThat(assessment.points()).extracting(PointAssessment::proof).containsOnly(MassProof.PROVEN);
        assertThat(assessment.points())
                .extracting(point -> point.inForce().size())
                .containsExactly(1, 1);
        assertThat(assessment.massProof()).isEqualTo(MassProof.PROVEN);
        assertThat(assessment.toDo()).isEmpty();
        assertThat(assessment.verifications()).hasSize(2);
    }

    @Test
    void aCatchAtAnotherPointThanTheOnlyEntryProvesThatEntryNoMore() {
        TruckAssessment assessment =
                assess(withRoadSpeed(with(idle("T-01"), caught(9, 3, TRUE_AT_THREE, 38.5)), 13_000));

        assertThat(at(3, assessment).proof()).isEqualTo(MassProof.PROVEN);
        assertThat(at(2, assessment).proof()).isEqualTo(MassProof.NOT_CHECKED);
        assertThat(assessment.massProof()).isEqualTo(MassProof.NOT_CHECKED);
        assertThat(assessment.nextStep()).isEqualTo(NextStep.VERIFY);
    }

    @Test
    void whatIsToBeDoneIsToldOfEveryPointTheMostUrgentFirst() {
        TruckAssessment assessment =
                assess(with(idle("T-01"), inForce("5.2 lb/rev", 2, LAST_WEEK), inForce("8.3 lb/rev", 3, LAST_WEEK)));
        TruckAssessment off = assess(with(assessment.truck(), caught(9, 3, "8.3 lb/rev", 36)));

        assertThat(off.toDo())
                .extracting(ToDo::toString)
                .containsExactly(
                        "Enter the correction, read it back, catch again: salt at 3 in",
                        "Make a verification catch: salt at 2 in",
                        "Check the road speed over a measured course");
        assertThat(off.nextStep()).isEqualTo(NextStep.ENTER_CORRECTION);
        assertThat(off.toCorrect()).contains(at(3, off));
    }

    private static double perRevolution(String inForce) {
        return Amounts.parseAny(inForce).getValue().doubleValue();
    }

    /** 5.2 lb/rev and 7.8 lb/rev are right. */
    @ParameterizedTest
    @CsvSource({
        "5.5 lb/rev, 8.9 lb/rev, 3 in, 2 in", "5.9 lb/rev, 8.3 lb/rev, 2 in, 3 in",
        "4.9 lb/rev, 6.9 lb/rev, 3 in, 2 in", "4.6 lb/rev, 7.3 lb/rev, 2 in, 3 in"
    })
    void ofTwoCorrectionsTheLargerComesFirst(String atTwo, String atThree, String first, String second) {
        TruckDay truck = with(truck(), inForce(atTwo, 2, LAST_WEEK), inForce(atThree, 3, LAST_WEEK));
        double asked = 57.7 * 5.2;
        TruckAssessment assessment = assess(with(
                truck,
                caught(9, 2, atTwo, asked / perRevolution(atTwo)),
                caught(10, 3, atThree, asked / perRevolution(atThree))));

        assertThat(assessment.toDo())
                .extracting(ToDo::toString)
                .containsExactly(
                        "Enter the correction, read it back, catch again: salt at " + first,
                        "Enter the correction, read it back, catch again: salt at " + second);
    }

    /** Exact catches, two at 2 in and two at 4 in, before a verification at 2 in. */
    private static TruckDay calibratedAround(String valueAtThree) {
        return with(
                with(
                        withRoadSpeed(
                                with(
                                        idle("T-01"),
                                        inForce("5.2 lb/rev", 2, LAST_WEEK),
                                        inForce(valueAtThree, 3, LAST_WEEK),
                                        inForce("10.4 lb/rev", 4, LAST_WEEK)),
                                13_000),
                        calibrationCatch(5, 2),
                        calibrationCatch(6, 2),
                        calibrationCatch(7, 4),
                        calibrationCatch(8, 4)),
                caught(9, 2, "5.2 lb/rev", 57.7),
                caught(10, 4, "10.4 lb/rev", 28.8));
    }

    @Test
    void aPointBetweenCaughtOnesIsProvenByACurveThatIsItselfProven() {
        TruckAssessment assessment = assess(calibratedAround(TRUE_AT_THREE));

        assertThat(at(3, assessment).proof()).isEqualTo(MassProof.PROVEN_BY_CURVE);
        assertThat(assessment.massProof()).isEqualTo(MassProof.PROVEN_BY_CURVE);
        assertThat(assessment.verdict()).isEqualTo("conveyor right by the curve, road speed right");
        assertThat(assessment.toDo()).isEmpty();
    }

    @Test
    void aValueThatTheCurveContradictsIsNotProvenByIt() {
        TruckAssessment assessment = assess(calibratedAround("8.3 lb/rev"));

        assertThat(at(3, assessment).proof()).isEqualTo(MassProof.NOT_CHECKED);
        assertThat(assessment.toDo())
                .extracting(ToDo::toString)
                .containsExactly("Make a verification catch: salt at 3 in");
    }

    @Test
    void aCurveThatNoCatchHasProvenProvesNothing() {
        TruckDay unverified = calibratedAround(TRUE_AT_THREE).verificationCatches(List.of());

        assertThat(assess(unverified).points())
                .extracting(PointAssessment::proof)
                .containsOnly(MassProof.NOT_CHECKED);
    }

    @Test
    void beyondTheCaughtSettingsACurveProvesNothing() {
        TruckDay calibrated = calibratedAround(TRUE_AT_THREE);
        TruckDay atFive = calibrated.inForce(List.of(
                inForce("5.2 lb/rev", 2, LAST_WEEK),
                inForce("10.4 lb/rev", 4, LAST_WEEK),
                inForce("13 lb/rev", 5, LAST_WEEK)));

        assertThat(at(5, assess(atFive)).proof()).isEqualTo(MassProof.NOT_CHECKED);
    }

    @Test
    void aTableProvesNoMoreBeyondThem() {
        TruckDay byTable = calibratedAround(TRUE_AT_THREE).curveModel(CurveModel.TABLE);
        TruckDay atFive = byTable.inForce(List.of(
                inForce("5.2 lb/rev", 2, LAST_WEEK),
                inForce("10.4 lb/rev", 4, LAST_WEEK),
                inForce("13 lb/rev", 5, LAST_WEEK)));

        assertThat(at(3, assess(byTable)).proof()).isEqualTo(MassProof.PROVEN_BY_CURVE);
        assertThat(at(5, assess(atFive)).proof()).isEqualTo(MassProof.NOT_CHECKED);
    }

    /** The right value, but catches that differ by a part either way; the tolerance is 4 %. */
    @ParameterizedTest
    @CsvSource({"0.002, PROVEN_BY_CURVE", "0.03, NOT_CHECKED"})
    void aCurveLessCertainThanTheToleranceProvesNothing(double part, MassProof expected) {
        TruckDay scattered = with(
                calibratedAround(TRUE_AT_THREE),
                scattered(5, 2, 1 - part),
                scattered(6, 2, 1 + part),
                scattered(7, 4, 1 - part),
                scattered(8, 4, 1 + part));

        assertThat(at(3, assess(scattered)).proof()).isEqualTo(expected);
        assertThat(at(2, assess(scattered)).proof()).isEqualTo(MassProof.PROVEN);
        assertThat(codes(assess(scattered).findings())).doesNotContain(FindingCode.CATCHES_SCATTER);
    }

    /** 3 % of 7.8 lb/rev; with the curve's 2.5 % that is more than the tolerance. */
    @ParameterizedTest
    @CsvSource({
        "8.034 lb/rev, 0.001, PROVEN_BY_CURVE",
        "8.034 lb/rev, 0.008, NOT_CHECKED",
        "7.566 lb/rev, 0.008, NOT_CHECKED"
    })
    void whatTheValueIsOffByAndTheCurveMayBeCountTogether(String value, double part, MassProof expected) {
        TruckDay scattered = with(
                calibratedAround(value),
                scattered(5, 2, 1 - part),
                scattered(6, 2, 1 + part),
                scattered(7, 4, 1 - part),
                scattered(8, 4, 1 + part));

        assertThat(at(3, assess(scattered)).proof()).isEqualTo(expected);
    }

    private static CalibrationCatchEntry scattered(int hour, double openingInches, double factor) {
        CatchEntry exact = calibrationCatch(hour, openingInches).entry();
        double net = Math.rint(30 * 5.2 * openingInches / 2 * factor * 100) / 100;
        return new CalibrationCatchEntry(entry(hour, openingInches, net, exact.counted()), true, Coasting.IN_BOTH);
    }

    @Test
    void aCatchWithTheValueOfAnotherSlotProvesNeither() {
        TruckAssessment assessment = assess(with(truckWithSlots(), bySlot("1", caught(9, 3, "5.2 lb/rev", 57.7))));

        Finding finding = only(FindingCode.DISPLAY_SET_FOR_ANOTHER_SETTING, assessment.findings());
        assertThat(numbers(finding)).containsEntry("set", inches(2)).containsEntry("caught", inches(3));
        assertThat(finding.sentence())
                .isEqualTo("The display was set for gate 2 in, but the catch of 2026-10-19 09:00 was made at 3 in: it"
                        + " proves neither value.");
        assertThat(assessment.points()).extracting(PointAssessment::proof).containsOnly(MassProof.NOT_CHECKED);
        assertThat(corrections(assessment)).isEmpty();
        assertThat(assessment.toDo())
                .extracting(ToDo::toString)
                .containsExactly(
                        "Set gate, material and display for the same calibration point, then catch again: salt at 3 in",
                        "Make a verification catch: salt at 2 in");
    }

    @Test
    void aRightCatchAfterwardsSettlesADisplayThatWasSetForAnotherPoint() {
        TruckAssessment assessment = assess(with(
                truckWithSlots(),
                bySlot("1", caught(9, 3, "5.2 lb/rev", 57.7)),
                bySlot("2", caught(10, 3, TRUE_AT_THREE, 38.5)),
                bySlot("1", caught(11, 2, "5.2 lb/rev", 57.7))));

        assertThat(assessment.massProof()).isEqualTo(MassProof.PROVEN);
        assertThat(assessment.toDo()).isEmpty();
        assertThat(codes(assessment.findings())).contains(FindingCode.DISPLAY_SET_FOR_ANOTHER_SETTING);
    }

    @Test
    void withoutASlotTheValueTellsForWhichPointTheDisplayWasSet() {
        TruckAssessment assessment = assess(with(truck(), caught(9, 4, TRUE_AT_THREE, 38.5)));

        assertThat(numbers(only(FindingCode.DISPLAY_SET_FOR_ANOTHER_SETTING, assessment.findings())))
                .containsEntry("set", inches(3))
                .containsEntry("caught", inches(4));
        assertThat(at(4, assessment).proof()).isEqualTo(MassProof.NOT_CHECKED);
        assertThat(assessment.nextStep()).isEqualTo(NextStep.MATCH_DISPLAY);
    }

    @Test
    void aCatchBeforeTheValueWasEnteredSaysNothingOfIt() {
        OffsetDateTime ten = caught(10, 2, "5.2 lb/rev", 57.7).entry().at();
        TruckDay enteredAtTen = with(idle("T-01"), inForce("5.2 lb/rev", 2, Since.of(ten)));
        TruckAssessment before = assess(with(enteredAtTen, caught(9, 2, "5.2 lb/rev", 57.7)));

        assertThat(before.massProof()).isEqualTo(MassProof.NOT_CHECKED);
        assertThat(only(FindingCode.CATCH_BEFORE_ENTRY, before.findings()).sentence())
                .isEqualTo(
                        "The catch of 2026-10-19 09:00 was made before the value in force was entered, 2026-10-19: it"
                                + " says nothing about that value.");
        assertThat(before.nextStep()).isEqualTo(NextStep.VERIFY);
        for (int hour : new int[] {10, 11}) {
            assertThat(assess(with(enteredAtTen, caught(hour, 2, "5.2 lb/rev", 57.7)))
                            .massProof())
                    .isEqualTo(MassProof.PROVEN);
        }
    }

    @Test
    void aCatchOfADayBeforeItsOwnValueWasEnteredIsCheckedAlthoughAnotherProvesIt() {
        TruckDay listed = with(idle("T-01"), inForce("5.2 lb/rev", 2, Since.of(DAY)));
        VerificationCatchEntry dayBefore = Written.verifies(
                Written.at(caught(9, 2, "5.2 lb/rev", 57.7).entry(), DAY.minusDays(1), "09:00"),
                caught(9, 2, "5.2 lb/rev", 57.7));
        TruckAssessment assessment = assess(with(listed, dayBefore, caught(11, 2, "5.2 lb/rev", 57.6)));

        assertThat(only(FindingCode.CATCH_BEFORE_ENTRY, assessment.findings())).isNotNull();
        assertThat(assessment.nextStep()).isEqualTo(NextStep.CHECK_ENTRIES);
        assertThat(assessment.massProof()).isEqualTo(MassProof.UNDECIDED);
        VerificationCatchEntry withAnother = Written.verifies(dayBefore.entry(), caught(9, 2, "5.1 lb/rev", 57.7));
        assertThat(assess(with(listed, withAnother, caught(11, 2, "5.2 lb/rev", 57.6)))
                        .nextStep())
                .as("what the display held before")
                .isNotEqualTo(NextStep.CHECK_ENTRIES);
    }

    @Test
    void aValueThatIsListedInOneSlotWasNotHeldByOneThatNobodyLists() {
        TruckDay listed = with(idle("T-01"), inSlot("1", inForce("5.2 lb/rev", 2, LAST_WEEK)));

        TruckAssessment slip = assess(with(listed, bySlot("2", caught(9, 2, "5.2 lb/rev", 57.7))));
        assertThat(Assessments.reasons(slip))
                .containsExactly("/trucks/0/verificationCatches/0/slot: catch of 09:00: slot must be one that holds the"
                        + " value in force, as \"1\" does: \"2\"");
        assertThat(slip.nextStep()).isEqualTo(NextStep.FIX_RECORD);
        assertThat(assess(with(listed, bySlot("1", caught(9, 2, "5.2 lb/rev", 57.7))))
                        .massProof())
                .isEqualTo(MassProof.PROVEN);
        assertThat(assess(with(listed, bySlot("2", caught(9, 2, "5.25 lb/rev", 57.7))))
                        .refusals())
                .as("a new value in a new slot")
                .isEmpty();
    }

    @Test
    void twoSlotsOfOnePointCannotBothBeRightIfTheyWouldLayDifferentAmounts() {
        InForceEntry first = inSlot("1", inForce("5.2 lb/rev", 2, LAST_WEEK));
        VerificationCatchEntry proves = caught(9, 2, "5.2 lb/rev", 57.7);

        TruckAssessment apart =
                assess(with(with(idle("T-01"), first, inSlot("2", inForce("6.2 lb/rev", 2, LAST_WEEK))), proves));
        assertThat(only(FindingCode.OTHER_VALUE_IN_FORCE, apart.findings()).sentence())
                .isEqualTo(
                        "The value in force in the catch of 2026-10-19 09:00 was 5.2 lb/rev, but 6.2 lb/rev is listed for"
                                + " the truck: find out which the display holds.");
        assertThat(apart.nextStep()).isEqualTo(NextStep.CHECK_ENTRIES);
        assertThat(apart.massProof()).isEqualTo(MassProof.UNDECIDED);
        assertThat(assess(with(with(idle("T-01"), first, inSlot("2", inForce("5.3 lb/rev", 2, LAST_WEEK))), proves))
                        .massProof())
                .as("the same within the tolerance")
                .isEqualTo(MassProof.PROVEN);
    }

    @Test
    void aDayAloneCountsAsBeforeEverythingDoneOnIt() {
        TruckDay enteredThatDay = with(idle("T-01"), inForce("5.2 lb/rev", 2, Since.of(DAY)));

        assertThat(assess(with(enteredThatDay, caught(0, 2, "5.2 lb/rev", 57.7)))
                        .massProof())
                .isEqualTo(MassProof.PROVEN);
    }

    @Test
    void theDayAfterBeginsWithWhatTheDisplaysHoldAfterTheDay() {
        VerificationCatchEntry asFound = bySlot("2", caught(9, 3, "8.3 lb/rev", 36));
        VerificationCatchEntry asLeft = bySlot("2", caught(10, 3, TRUE_AT_THREE, 38.5));
        VerificationCatchEntry again = bySlot("2", caught(11, 3, TRUE_AT_THREE, 38.4));
        TruckDay truck = with(
                truck(),
                inSlot("1", inForce("5.2 lb/rev", 2, LAST_WEEK)),
                inSlot("2", inForce("8.3 lb/rev", 3, LAST_WEEK)));
        TruckAssessment assessment = assess(with(truck, asFound, asLeft, again));
        List<CalibrationInForce> after = assessment.inForceAfter();

        assertThat(correction(assessment).status()).isEqualTo(Correction.Status.CONFIRMED);
        assertThat(after)
                .extracting(held -> held.slot().orElse("") + ": " + held.point() + ", " + held.factor())
                .containsExactlyInAnyOrder("1: salt at 2 in, 5.2 lb/rev", "2: salt at 3 in, 7.8 lb/rev");
        assertThat(after)
                .filteredOn(held -> held.slot().equals(Optional.of("2")))
                .extracting(CalibrationInForce::since)
                .containsExactly(Optional.of(Since.of(asLeft.entry().at())));
        assertThat(after.stream().map(held -> InForceEntry.of(held, Since.of(DAY))))
                .contains(inSlot("1", inForce("5.2 lb/rev", 2, LAST_WEEK)));
    }

    @Test
    void twoSettingsThatAreAlmostOneAreNamed() {
        CatchEntry metric = calibrationCatch(9, 2).entry().at(Amounts.of(57, SpreadingUnits.MILLIMETER));
        TruckAssessment assessment = assess(with(
                idle("T-01"), calibrationCatch(8, 2.25), new CalibrationCatchEntry(metric, true, Coasting.IN_BOTH)));

        assertThat(numbers(only(FindingCode.SETTINGS_NEARLY_THE_SAME, assessment.findings())))
                .containsEntry("first", Amounts.of(57, SpreadingUnits.MILLIMETER))
                .containsEntry("second", inches(2.25));
        assertThat(codes(assess(with(idle("T-01"), calibrationCatch(8, 2), calibrationCatch(9, 3)))
                        .findings()))
                .doesNotContain(FindingCode.SETTINGS_NEARLY_THE_SAME);
    }

    @Test
    void aRefusedTruckTellsEveryReasonWithItsPlace() {
        CalibrationCatchEntry good = calibrationCatch(8, 2);
        CatchEntry unknown = new CatchEntry(
                good.entry().at(),
                Optional.empty(),
                Optional.of("kitchen"),
                good.entry().containers(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.of(inches(50)),
                "sand",
                Optional.empty(),
                Optional.empty());
        TruckDay bad = with(
                with(truck(), good, new CalibrationCatchEntry(unknown, true, Coasting.IN_BOTH)),
                verificationCatch("5.2 lb/rev", 120, good.entry().at(inches(60))));
        List<TruckAssessment> all = ASSESSOR.assess(day(truck(), bad));

        assertThat(all.get(0).isRefused()).isFalse();
        assertThat(reasons(all.get(1)))
                .containsExactly(
                        "/trucks/1/calibrationCatches/1/counted: catch of 08:00: count of a calibration catch must be"
                                + " given: nothing",
                        "/trucks/1/calibrationCatches/1/scale: catch of 08:00: scale must be one of [platform]:"
                                + " \"kitchen\"",
                        "/trucks/1/calibrationCatches/1/material: catch of 08:00: material must be one of [salt]:"
                                + " \"sand\"",
                        "/trucks/1/verificationCatches/0/setting: catch of 08:00: gate setting must be within 0 m to 1"
                                + " m: 60 in");
        assertThat(all.get(1).toDo()).extracting(ToDo::step).containsExactly(NextStep.FIX_RECORD);
        assertThat(all.get(1).points()).isEmpty();
    }

    @Test
    void aSlotHoldsOneValueAndAPointWithoutSlotsHasOne() {
        InForceEntry atTwo = inForce("5.2 lb/rev", 2, LAST_WEEK);
        InForceEntry atThree = inForce(TRUE_AT_THREE, 3, LAST_WEEK);

        assertThat(reasons(assess(with(idle("T-01"), inSlot("1", atTwo), inSlot("1", atThree)))))
                .containsExactly("/trucks/0/inForce/1/slot: calibration in force: slot must be one that holds no other"
                        + " value: \"1\" again");
        assertThat(reasons(assess(with(idle("T-01"), atTwo, inForce("5.3 lb/rev", 2, LAST_WEEK)))))
                .containsExactly(
                        "/trucks/0/inForce: calibration in force for salt at 2 in must be one, or each in a slot that"
                                + " is named: two");
        assertThat(assess(with(idle("T-01"), inSlot("1", atTwo), inSlot("2", inForce("5.3 lb/rev", 2, LAST_WEEK))))
                        .isRefused())
                .isFalse();
    }
}
