package org.gritwright.core.calibration;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.gritwright.core.Samples.AUGER;
import static org.gritwright.core.Samples.AUGER_POINT;
import static org.gritwright.core.Samples.DAY;
import static org.gritwright.core.Samples.augerCatch;
import static org.gritwright.core.Samples.augerPoint;
import static org.gritwright.core.Samples.butForUnknown;
import static org.gritwright.core.Samples.catchAt;
import static org.gritwright.core.Samples.caught;
import static org.gritwright.core.Samples.codes;
import static org.gritwright.core.Samples.goodAugerCatches;
import static org.gritwright.core.Samples.numbers;
import static org.gritwright.core.Samples.only;
import static org.gritwright.core.Samples.pounds;
import static org.gritwright.core.Samples.pulses;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.gritwright.core.finding.Finding;
import org.gritwright.core.finding.FindingCode;
import org.gritwright.core.finding.Severity;
import org.gritwright.core.metering.DriveFeedback;
import org.gritwright.core.metering.NoSensor;
import org.gritwright.core.metering.ShaftCount;
import org.gritwright.core.metering.ShaftSensor;
import org.gritwright.core.observation.CalibrationPoint;
import org.gritwright.core.observation.CatchFindings;
import org.gritwright.core.observation.CatchLimits;
import org.gritwright.core.observation.Coasting;
import org.gritwright.core.statistics.RatioEstimator;
import org.gritwright.core.weighing.CaughtMass;
import org.gritwright.core.weighing.Scale;
import org.gritwright.core.weighing.Weighing;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class CalibrationFindingsTest {
    private static List<Finding> of(CalibrationCatch... catches) {
        return butForUnknown(Calibration.from(List.of(catches)).findings());
    }

    private static List<Finding> byEye(double revolutions, double uncertainty) {
        ShaftCount count = new ShaftCount.ByEye(
                Amounts.of(revolutions, SpreadingUnits.REVOLUTION), Amounts.of(uncertainty, SpreadingUnits.REVOLUTION));
        CalibrationCatch one = catchAt(augerPoint(NoSensor.onDriveShaft()), caught(5.9 * revolutions), count);
        return butForUnknown(Calibration.from(List.of(one, one)).findings());
    }

    @Test
    void threeGoodCatchesHaveNone() {
        assertThat(Calibration.from(goodAugerCatches()).findings()).isEmpty();
    }

    @Test
    void oneCatchIsNoted() {
        Finding finding = only(FindingCode.SINGLE_CATCH, of(augerCatch(118.5, 2000)));

        assertThat(finding.severity()).isEqualTo(Severity.NOTE);
        assertThat(codes(of(augerCatch(118.5, 2000), augerCatch(118.5, 2000)))).isEmpty();
    }

    /**
     * Of three catches that scatter by 5 %, and by the rounding of half pounds and pulses, one lot in twenty shows more than
     * √(5.991465 ÷ 2) times as much, with chi-squared for 2 degrees of freedom: 8.66 % of 120 lb are 10.39 lb.
     */
    @Test
    void catchesThatAreShownToScatterByMoreThanFivePercentDoubtTheData() {
        Finding finding = only(
                FindingCode.CATCHES_SCATTER,
                of(augerCatch(109.5, 2000), augerCatch(120, 2000), augerCatch(130.5, 2000)));

        assertThat(finding.severity()).isEqualTo(Severity.ERROR);
        assertThat(finding.code().doubtsData()).isTrue();
        assertThat(finding.number("scatter").getValue().doubleValue()).isCloseTo(100 * 10.5 / 120, within(1e-12));
        assertThat(finding.number("limit")).isEqualTo(Amounts.of(5, SpreadingUnits.PERCENT));
        assertThat(finding.sentence())
                .isEqualTo("The catches scatter by 8.75 % of their mean, more than 5 %: find out why before trusting"
                        + " them.");
    }

    @Test
    void catchesWhoseScatterMayBeChancePass() {
        // 8.33 % of 120 lb
        assertThat(of(augerCatch(110, 2000), augerCatch(120, 2000), augerCatch(130, 2000)))
                .isEmpty();
    }

    /** Of six, chi-squared for 5 degrees of freedom is 11.0705, and √(11.0705 ÷ 5) × 5 % is 7.44 %: 8.93 lb. */
    @Test
    void theMoreCatchesTheLessIsChance() {
        CalibrationCatch low = augerCatch(111.5, 2000);
        CalibrationCatch high = augerCatch(128.5, 2000);

        // Deviations of 8.5 lb, √(6/5) times that: 9.31 lb.
        assertThat(codes(of(low, high, low, high, low, high))).containsExactly(FindingCode.CATCHES_SCATTER);
        assertThat(of(low, augerCatch(120, 2000), high)).isEmpty();
    }

    @Test
    void oneOutlyingCatchAmongFiveIsReportedAndNotRemoved() {
        List<Finding> findings = of(
                augerCatch(119, 2000),
                augerCatch(126, 2000),
                augerCatch(118.5, 2000),
                augerCatch(119.5, 2000),
                augerCatch(119, 2000));
        Finding finding = only(FindingCode.OUTLYING_CATCH, findings);

        assertThat(findings).hasSize(1);
        assertThat(finding.severity()).isEqualTo(Severity.WARNING);
        assertThat(finding.code().doubtsData()).isFalse();
        assertThat(finding.number("catch")).isEqualTo(Amounts.of(2, SpreadingUnits.ONE));
        assertThat(finding.sentence())
                .isEqualTo(
                        "Catch 2 gives 6.3 lb/rev, an outlier among the 5 catches. It is reported and not removed: find"
                                + " out why.");
    }

    @Test
    void aCatchThatIsAsFarOutAsOthersScatterIsNone() {
        assertThat(of(
                        augerCatch(117, 2000),
                        augerCatch(122, 2000),
                        augerCatch(118.5, 2000),
                        augerCatch(119.5, 2000),
                        augerCatch(119, 2000)))
                .isEmpty();
    }

    @Test
    void ofThreeCatchesTheOneFarFromTwoThatAgreeIsReportedWithTheDoubtThatItDeserves() {
        Finding finding = only(
                FindingCode.OUTLYING_OF_THREE, of(augerCatch(119, 2000), augerCatch(119, 2000), augerCatch(135, 2000)));

        assertThat(finding.severity()).isEqualTo(Severity.WARNING);
        assertThat(finding.code().doubtsData()).isFalse();
        assertThat(finding.sentence())
                .isEqualTo("Catch 3 gives 6.75 lb/rev, while the two others nearly agree. It is reported and not"
                        + " removed: three catches can hardly ever reveal an outlier. Make more.");
    }

    @Test
    void twoCatchesThatAgreeToTheScalesDivisionDoNotMakeTheThirdOutlying() {
        assertThat(of(augerCatch(118.5, 2000), augerCatch(118.5, 2000), augerCatch(120.5, 2000)))
                .isEmpty();
    }

    @Test
    void byALineNoCatchIsHeldOutlyingForItsLength() {
        // 6 lb/rev less 5 lb a start: 5, 5.9, 5.9, 5.9, 5.9 lb/rev
        List<CalibrationCatch> catches = List.of(
                augerCatch(25, 500),
                augerCatch(295, 5000),
                augerCatch(295, 5000),
                augerCatch(295.5, 5000),
                augerCatch(294.5, 5000));

        assertThat(codes(Calibration.from(catches, RatioEstimator.LINE_WITH_INTERCEPT, CatchLimits.COMMON)
                        .findings()))
                .containsExactly(FindingCode.CAUGHT_MASS_SMALL);
        assertThat(codes(Calibration.from(catches).findings())).contains(FindingCode.OUTLYING_CATCH);
    }

    @Test
    void fewerThanAHundredPulsesAreTooFew() {
        CalibrationPoint fourPulses = augerPoint(ShaftSensor.of(Amounts.of(4, SpreadingUnits.PULSE_PER_REVOLUTION)));
        Calibration calibration = Calibration.from(
                List.of(catchAt(fourPulses, caught(146), pulses(99)), catchAt(fourPulses, caught(148), pulses(100))));

        Finding finding = only(FindingCode.TOO_FEW_PULSES, calibration.findings());
        assertThat(finding.severity()).isEqualTo(Severity.NOTE);
        assertThat(finding.sentence()).isEqualTo("Only 99 pulse counted in a catch, fewer than 100 pulse: run longer.");
        assertThat(numbers(finding))
                .isEqualTo(Map.of(
                        "counted",
                        Amounts.of(99, SpreadingUnits.PULSE),
                        "wanted",
                        Amounts.of(100, SpreadingUnits.PULSE)));
    }

    @Test
    void counterReadingsAreCountedAsPulses() {
        ShaftCount few = new ShaftCount.CounterReadings(
                Amounts.of(9950, SpreadingUnits.PULSE),
                Amounts.of(20, SpreadingUnits.PULSE),
                Optional.of(Amounts.of(10000, SpreadingUnits.PULSE)));

        assertThat(CatchFindings.ofCount(few, AUGER.feedback(), CatchLimits.COMMON))
                .extracting(Finding::sentence)
                .containsExactly(
                        "Only 70 pulse counted in a catch, fewer than 100 pulse: run longer.",
                        "Only 0.7 rev in a catch, fewer than 5 rev, in turns of the conveyor shaft: run longer.");
    }

    @Test
    void fewerThanFiveRevolutionsAreTooFew() {
        CalibrationCatch good = augerCatch(59, 1000);
        Finding finding = only(FindingCode.TOO_FEW_REVOLUTIONS, of(good, augerCatch(50, 499)));

        assertThat(finding.severity()).isEqualTo(Severity.NOTE);
        assertThat(numbers(finding))
                .isEqualTo(Map.of(
                        "counted", Amounts.of(4.99, SpreadingUnits.REVOLUTION),
                        "wanted", Amounts.of(5, SpreadingUnits.REVOLUTION)));
        assertThat(finding.sentence())
                .isEqualTo("Only 4.99 rev in a catch, fewer than 5 rev, in turns of the conveyor shaft: run longer.");
        assertThat(codes(CatchFindings.ofCount(pulses(500), AUGER.feedback(), CatchLimits.COMMON)))
                .isEmpty();
    }

    /** 1664 pulses of 64 a revolution are 26 revolutions of a motor, and 5 turns of a conveyor geared 5.2 : 1. */
    @Test
    void revolutionsOfAGearedSensorCountAsTurnsOfTheConveyorShaft() {
        DriveFeedback geared = new ShaftSensor(
                Amounts.of(64, SpreadingUnits.PULSE_PER_REVOLUTION), Amounts.of(5.2, SpreadingUnits.ONE));

        assertThat(CatchFindings.ofCount(pulses(1664), geared, CatchLimits.COMMON))
                .isEmpty();
        Finding finding =
                only(FindingCode.TOO_FEW_REVOLUTIONS, CatchFindings.ofCount(pulses(640), geared, CatchLimits.COMMON));
        assertThat(finding.sentence())
                .isEqualTo("Only 1.923 rev in a catch, fewer than 5 rev, in turns of the conveyor shaft: run longer.");
        assertThat(codes(CatchFindings.ofCount(pulses(1663), geared, CatchLimits.COMMON)))
                .containsExactly(FindingCode.TOO_FEW_REVOLUTIONS);
    }

    /** A watched shaft that turns half as fast as the conveyor's. */
    @Test
    void aSlowerShaftNeedsFewerRevolutions() {
        DriveFeedback slower = new NoSensor(Amounts.of(0.5, SpreadingUnits.ONE));
        ShaftCount enough = new ShaftCount.SpeedTimesTime(
                Amounts.of(31, SpreadingUnits.REVOLUTION_PER_MINUTE), Amounts.of(5, SpreadingUnits.SECOND));
        ShaftCount fewer = new ShaftCount.SpeedTimesTime(
                Amounts.of(29, SpreadingUnits.REVOLUTION_PER_MINUTE), Amounts.of(5, SpreadingUnits.SECOND));
        assertThat(CatchFindings.ofCount(enough, slower, CatchLimits.COMMON)).isEmpty();
        assertThat(codes(CatchFindings.ofCount(fewer, slower, CatchLimits.COMMON)))
                .containsExactly(FindingCode.TOO_FEW_REVOLUTIONS);
    }

    @Test
    void shaftSpeedTimesTimeIsHeldAgainstTheFewestRevolutions() {
        ShaftCount enough = new ShaftCount.SpeedTimesTime(
                Amounts.of(62, SpreadingUnits.REVOLUTION_PER_MINUTE), Amounts.of(5, SpreadingUnits.SECOND));
        ShaftCount fewer = new ShaftCount.SpeedTimesTime(
                Amounts.of(59, SpreadingUnits.REVOLUTION_PER_MINUTE), Amounts.of(5, SpreadingUnits.SECOND));

        assertThat(CatchFindings.ofCount(enough, AUGER.feedback(), CatchLimits.COMMON))
                .isEmpty();
        assertThat(codes(CatchFindings.ofCount(fewer, AUGER.feedback(), CatchLimits.COMMON)))
                .containsExactly(FindingCode.TOO_FEW_REVOLUTIONS);
    }

    @Test
    void aCountByEyeMayBeUncertainByTwoPercent() {
        assertThat(byEye(20, 0.4)).isEmpty();

        Finding finding = only(FindingCode.COUNT_UNCERTAIN, byEye(20, 0.5));
        assertThat(finding.severity()).isEqualTo(Severity.NOTE);
        assertThat(finding.sentence())
                .isEqualTo("The count of 20 rev is uncertain by 0.5 rev, more than 2 % of it: run longer.");
    }

    @Test
    void fewerThanAHundredDivisionsAreASmallMass() {
        CalibrationCatch good = augerCatch(50, 850);
        Finding finding = only(FindingCode.CAUGHT_MASS_SMALL, of(good, augerCatch(49.5, 850)));

        assertThat(finding.severity()).isEqualTo(Severity.NOTE);
        assertThat(numbers(finding)).isEqualTo(Map.of("caught", pounds(49.5), "division", pounds(0.5)));
        assertThat(finding.sentence())
                .isEqualTo("The caught mass 49.5 lb is small against the scale's division 0.5 lb: catch more.");
        assertThat(of(good, good)).isEmpty();
    }

    @Test
    void findingsOfTheWeighingAreAmongThem() {
        Scale unchecked = Scale.of("S-2", pounds(500), pounds(0.5));
        CalibrationCatch one = catchAt(
                AUGER_POINT, CaughtMass.of(unchecked, DAY, new Weighing("A", pounds(118.5), pounds(0))), pulses(2000));

        assertThat(codes(of(one, one, one))).containsExactly(FindingCode.SCALE_NOT_CHECKED);
    }

    @Test
    void aConveyorThatWasNotPrimedDoubtsTheData() {
        CalibrationCatch unprimed =
                new CalibrationCatch(augerCatch(118.5, 2000).observation(), false, Coasting.IN_BOTH);
        Finding finding = only(FindingCode.CONVEYOR_NOT_PRIMED, of(unprimed, augerCatch(118.5, 2000)));

        assertThat(finding.severity()).isEqualTo(Severity.ERROR);
        assertThat(finding.code().doubtsData()).isTrue();
        assertThat(finding.sentence())
                .isEqualTo("The conveyor was not primed: revolutions were counted before material fell.");
    }

    private static List<Finding> with(Coasting coasting) {
        CalibrationCatch one = new CalibrationCatch(augerCatch(118.5, 2000).observation(), true, coasting);
        return of(one, one);
    }

    @ParameterizedTest
    @CsvSource({"CAUGHT_ONLY, caught but not counted", "COUNTED_ONLY, counted but not caught"})
    void aRunDownThatIsOnlyInMassOrCountDoubtsTheData(Coasting coasting, String words) {
        Finding finding = only(FindingCode.COASTING_MISMATCH, with(coasting));

        assertThat(finding.severity()).isEqualTo(Severity.ERROR);
        assertThat(finding.code().doubtsData()).isTrue();
        assertThat(finding.sentence())
                .isEqualTo("The run-down was " + words + ": mass and count must cover the same window.");
    }

    @Test
    void aRunDownThatIsInBothOrInNeitherIsNoMatter() {
        assertThat(with(Coasting.IN_BOTH)).isEmpty();
        assertThat(with(Coasting.IN_NEITHER)).isEmpty();
    }

    @Test
    void anImpossibleFillIsAmongThem() {
        // 20 lb/rev where 6.98 lb/rev fill the screw
        assertThat(codes(of(augerCatch(400, 2000), augerCatch(400, 2000))))
                .containsExactly(FindingCode.FILL_IMPOSSIBLE);
    }
}
