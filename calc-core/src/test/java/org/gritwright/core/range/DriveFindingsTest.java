package org.gritwright.core.range;

import static org.assertj.core.api.Assertions.assertThat;
import static org.gritwright.core.range.Drives.falling;
import static org.gritwright.core.range.Drives.point;
import static org.gritwright.core.range.Drives.response;
import static org.gritwright.core.range.Drives.rising;
import static org.gritwright.core.range.Drives.rpm;

import java.util.List;
import java.util.Optional;
import org.gritwright.core.finding.Finding;
import org.gritwright.core.finding.FindingCode;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.junit.jupiter.api.Test;

class DriveFindingsTest {
    private static final DriveRun UP = rising(31, 0, 32, 2, 32, 2.1, 40, 6, 60, 16, 80, 26);
    private static final DriveRun DOWN = falling(80, 26, 60, 18, 40, 8, 28, 2, 27, 0);

    private static List<FindingCode> codes(DriveRun... runs) {
        return response(runs).findings().stream().map(Finding::code).toList();
    }

    private static Optional<String> sentence(FindingCode code, DriveRun... runs) {
        return sentence(code, response(runs));
    }

    private static Optional<String> sentence(FindingCode code, DriveResponse response) {
        return response.findings().stream()
                .filter(finding -> finding.code() == code)
                .map(Finding::sentence)
                .findFirst();
    }

    @Test
    void aDriveThatWasMeasuredWellHasNone() {
        assertThat(codes(UP, DOWN)).isEmpty();
    }

    @Test
    void fewerThanFourCommandsOfADirectionAreFew() {
        assertThat(codes(rising(31, 0, 32, 2, 32, 2.1, 40, 6, 60, 16), DOWN))
                .containsExactly(FindingCode.DRIVE_POINTS_FEW);
        assertThat(sentence(FindingCode.DRIVE_POINTS_FEW, rising(0, 0)))
                .hasValue(
                        "With rising commands the shaft was seen to turn at 0 commands; it takes 4 to show how it answers."
                                + " Measure at more.");
    }

    @Test
    void oneDirectionIsHalfTheTruth() {
        assertThat(codes(UP)).containsExactly(FindingCode.DRIVE_ONE_DIRECTION);
        assertThat(sentence(FindingCode.DRIVE_ONE_DIRECTION, DOWN).orElseThrow())
                .startsWith("The drive was measured with falling commands only");
    }

    @Test
    void withoutRepeatsTheScatterIsNotKnown() {
        assertThat(codes(rising(31, 0, 31, 0, 32, 2, 40, 6, 60, 16, 80, 26), DOWN))
                .containsExactly(FindingCode.DRIVE_NOT_REPEATED);
    }

    @Test
    void aThresholdWiderThanAStepIsOpen() {
        assertThat(codes(rising(30, 0, 32, 2, 32, 2.1, 40, 6, 60, 16, 80, 26), DOWN))
                .containsExactly(FindingCode.DRIVE_THRESHOLD_OPEN);
        assertThat(sentence(FindingCode.DRIVE_THRESHOLD_OPEN, rising(30, 0, 32, 2))
                        .orElseThrow())
                .contains("somewhere between 30 % and 32 %");
        assertThat(sentence(FindingCode.DRIVE_THRESHOLD_OPEN, rising(32, 2)).orElseThrow())
                .contains("somewhere between 0 % and 32 %");
        assertThat(sentence(FindingCode.DRIVE_THRESHOLD_OPEN, rising(0, 2))).isEmpty();
        assertThat(sentence(FindingCode.DRIVE_THRESHOLD_OPEN, rising(0, 0))).isEmpty();
    }

    @Test
    void twoSpeedsAtOneCommandThatAreTimesApartAreProbablyASlip() {
        assertThat(sentence(
                        FindingCode.DRIVE_READINGS_APART, rising(31, 0, 32, 2, 32, 2.1, 40, 6, 60, 16, 80, 260), DOWN))
                .hasValue(
                        "At 80 % the shaft is said to have turned at 260 rev/min and at 26 rev/min: look for a slip of"
                                + " the decimal point.");
        assertThat(sentence(FindingCode.DRIVE_READINGS_APART, rising(31, 0, 32, 2, 32, 0.2, 40, 6, 60, 16, 80, 26)))
                .hasValue("At 32 % the shaft is said to have turned at 2 rev/min and at 0.2 rev/min: look for a slip of"
                        + " the decimal point.");
        // A valve that lags is at 7 rev/min on the way down where it was at 2 on the way up; a shaft crawls at its
        // start.
        assertThat(sentence(FindingCode.DRIVE_READINGS_APART, UP, falling(80, 26, 60, 18, 40, 8, 32, 7, 27, 0)))
                .isEmpty();
        assertThat(sentence(FindingCode.DRIVE_READINGS_APART, rising(31, 0, 32, 0.2, 32, 0.7, 60, 16, 80, 26)))
                .isEmpty();
    }

    /** Of 26 rev/min a twentieth are 1.3 and a quarter 6.5: in one direction, and in both together. */
    @Test
    void speedsAreApartByAPartOfTheHighest() {
        assertThat(sentence(FindingCode.DRIVE_READINGS_APART, falling(80, 26, 60, 16, 40, 6, 32, 2, 32, 0.6)))
                .isPresent();
        assertThat(sentence(FindingCode.DRIVE_READINGS_APART, falling(80, 26, 60, 16, 40, 6, 32, 1.8, 32, 0.55)))
                .isEmpty();
        assertThat(sentence(FindingCode.DRIVE_READINGS_APART, UP, falling(80, 26, 60, 5, 40, 4)))
                .isPresent();
        assertThat(sentence(FindingCode.DRIVE_READINGS_APART, UP, falling(80, 26, 60, 13, 40, 1)))
                .isEmpty();
    }

    /** Below, (6 − 2 + 0.1) ÷ 8 rev/min per percent; five times that on 20 % are 51.25, and a reading may hide 0.1. */
    @Test
    void aLeapIsMoreThanTheResolutionMayHide() {
        assertThat(sentence(FindingCode.DRIVE_SPEED_LEAPS, rising(31, 0, 32, 2, 40, 6, 60, 16, 80, 67.3)))
                .isEmpty();
        assertThat(sentence(FindingCode.DRIVE_SPEED_LEAPS, rising(31, 0, 32, 2, 40, 6, 60, 16, 80, 67.4)))
                .isPresent();
    }

    @Test
    void aLastSpeedThatLeapsIsProbablyASlip() {
        assertThat(sentence(FindingCode.DRIVE_SPEED_LEAPS, rising(31, 0, 32, 2, 40, 6, 60, 16, 80, 260)))
                .hasValue(
                        "With rising commands the speed leaps from 16 rev/min at 60 % to 260 rev/min at 80 %, more than"
                                + " five times as steeply as anywhere below: look for a slip of the decimal point.");
        // 0.5 rev/min per percent below, 2.5 at the end.
        assertThat(sentence(FindingCode.DRIVE_SPEED_LEAPS, rising(31, 0, 32, 2, 40, 6, 60, 16, 80, 66)))
                .isEmpty();
        // Too few to tell; and what the resolution hides below.
        assertThat(sentence(FindingCode.DRIVE_SPEED_LEAPS, rising(31, 0, 40, 6, 60, 16, 80, 260)))
                .isEmpty();
        assertThat(sentence(FindingCode.DRIVE_SPEED_LEAPS, rising(31, 0, 32, 2, 33, 2, 34, 2, 35, 2.4)))
                .isEmpty();
    }

    @Test
    void aSpeedThatFallsByMoreThanTheReadingIsAReversal() {
        assertThat(sentence(FindingCode.DRIVE_REVERSAL, rising(31, 0, 32, 2, 40, 6.2, 50, 6, 60, 16)))
                .hasValue(
                        "With rising commands the shaft turned at 6.2 rev/min at 40 % but at 6 rev/min at 50 %, where it"
                                + " should not be slower, and by more than readings scatter: look for a wrong entry, for changing"
                                + " oil or load, or for a valve that sticks.");
        assertThat(sentence(FindingCode.DRIVE_REVERSAL, rising(31, 0, 32, 2, 40, 6.05, 50, 6, 60, 16)))
                .isEmpty();
        assertThat(sentence(FindingCode.DRIVE_REVERSAL, falling(60, 16, 50, 6, 40, 6.2)))
                .isPresent();
    }

    /** 6.4 and 6.6 scatter by 0.14 with one degree of freedom. */
    @Test
    void aSpeedThatFallsByLessThanItScattersIsNone() {
        assertThat(sentence(FindingCode.DRIVE_REVERSAL, rising(31, 0, 32, 2, 40, 6.4, 40, 6.6, 50, 6.2, 60, 16)))
                .isEmpty();
        assertThat(sentence(FindingCode.DRIVE_REVERSAL, rising(31, 0, 32, 2, 40, 6.5, 40, 6.5, 50, 6.2, 60, 16)))
                .isPresent();
    }

    @Test
    void theWorstReversalIsTold() {
        assertThat(sentence(FindingCode.DRIVE_REVERSAL, rising(31, 0, 32, 2, 40, 7, 50, 6, 55, 5, 60, 16, 70, 15.5))
                        .orElseThrow())
                .contains("7 rev/min at 40 %", "5 rev/min at 55 %");
    }

    @Test
    void aShaftThatStandsWhereItTurnedBelowIsAReversal() {
        assertThat(sentence(FindingCode.DRIVE_REVERSAL, rising(18, 0, 20, 2, 25, 0, 30, 0, 31, 5))
                        .orElseThrow())
                .contains("2 rev/min at 20 %", "0 rev/min at 30 %");
        assertThat(sentence(FindingCode.DRIVE_REVERSAL, rising(18, 0, 20, 2, 20, 0, 31, 5)))
                .isEmpty();
    }

    @Test
    void aSpeedThatSwingsIsJerky() {
        assertThat(sentence(
                        FindingCode.DRIVE_JERKY,
                        DriveRun.of(Direction.RISING, point(31, 0), point(32, 2).withSwing(rpm(0.51)))))
                .hasValue("With rising commands the shaft doesn't turn steadily at 32 %: 2 rev/min give or take 0.255"
                        + " rev/min, more than 10 % of it. The range starts at a steady speed.");
        assertThat(sentence(
                        FindingCode.DRIVE_JERKY,
                        DriveRun.of(Direction.RISING, point(31, 0), point(32, 2).withSwing(rpm(0.49)))))
                .isEmpty();
    }

    /** The limit is √(0.2² + 0.05²) = 0.206; of two, s = 0.40 is 3.8 times its square and likely by chance to 5.1 %, 0.41 to 4.7 %. */
    @Test
    void aSpeedThatScattersByMoreThanATenthIsJerky() {
        double just = 0.40 * Math.sqrt(2) / 2;
        double more = 0.41 * Math.sqrt(2) / 2;

        assertThat(sentence(FindingCode.DRIVE_JERKY, rising(31, 0, 32, 2 - just, 32, 2 + just)))
                .isEmpty();
        assertThat(sentence(FindingCode.DRIVE_JERKY, rising(31, 0, 32, 2 - more, 32, 2 + more))
                        .orElseThrow())
                .contains("2 rev/min give or take 0.41 rev/min");
    }

    /** Read to 1 rev/min: the limit is √(0.3² + 0.5²); (2, 4) have s² = 2, 5.9 times its square, and (2, 3) 0.5. */
    @Test
    void readingsOfOneSpeedMayBeRoundedToBothSides() {
        for (double other : new double[] {3, 4}) {
            DriveResponse response = DriveResponse.of(new DriveMeasurement(
                    CommandScale.percent(1),
                    rpm(1),
                    DriveConditions.AS_AT_WORK,
                    List.of(rising(31, 0, 32, 2, 32, other))));
            assertThat(sentence(FindingCode.DRIVE_JERKY, response).isPresent()).isEqualTo(other == 4);
        }
    }

    @Test
    void theLowestCommandThatTurnedBelowRestIsTold() {
        assertThat(sentence(FindingCode.DRIVE_REVERSAL, rising(25, 3), rising(20, 2), rising(30, 0, 31, 5))
                        .orElseThrow())
                .contains("2 rev/min at 20 %", "0 rev/min at 30 %");
    }

    private static DrivePoint warm(double percent, double rpm, double celsius) {
        return point(percent, rpm).withOilTemperature(Amounts.of(celsius, SpreadingUnits.CELSIUS));
    }

    @Test
    void aSpeedThatMovesWithTheOilDrifts() {
        DriveRun run = DriveRun.of(
                Direction.RISING,
                warm(40, 10, 20),
                warm(40, 10.4, 40),
                warm(40, 10.8, 60),
                warm(60, 20, 30),
                warm(60, 20.4, 50));

        assertThat(sentence(FindingCode.DRIVE_OIL_DRIFT, run))
                .hasValue(
                        "The speed at one command moves with the oil: by 0.8 rev/min from 20 °C to 60 °C. Measure with the"
                                + " oil as warm as at work.");
    }

    /** Weights 1, 1, 2: means 45 °C and 10.4425; Σwxy 19.15 + 14 by Σwx² 1100 + 800 = 0.017447, by 40 °C 0.6979; unweighted 0.7. */
    @Test
    void aMeanOfReadingsWeighsByTheirNumber() {
        assertThat(sentence(
                                FindingCode.DRIVE_OIL_DRIFT,
                                DriveRun.of(
                                        Direction.RISING,
                                        warm(40, 10, 20),
                                        warm(40, 10.37, 40),
                                        warm(40, 10.7, 60).withReadings(2),
                                        warm(60, 20, 20),
                                        warm(60, 20.7, 60)))
                        .orElseThrow())
                .contains("by 0.6979 rev/min");
    }

    @Test
    void aSpeedThatOnlyScattersDoesnt() {
        assertThat(sentence(
                        FindingCode.DRIVE_OIL_DRIFT,
                        DriveRun.of(
                                Direction.RISING,
                                warm(40, 10, 20),
                                warm(40, 10.8, 40),
                                warm(40, 10.4, 60),
                                warm(60, 20.4, 30),
                                warm(60, 20, 50))))
                .isEmpty();
    }

    @Test
    void whatIsLessThanAReadingShowsIsNoDrift() {
        assertThat(sentence(
                        FindingCode.DRIVE_OIL_DRIFT,
                        DriveRun.of(Direction.RISING, warm(40, 10, 20), warm(40, 10.04, 40), warm(40, 10.08, 60))))
                .isEmpty();
    }

    /** Warm oil goes with high commands here: between commands nothing is compared. */
    @Test
    void onlySpeedsOfOneCommandAreCompared() {
        assertThat(sentence(
                        FindingCode.DRIVE_OIL_DRIFT,
                        DriveRun.of(
                                Direction.RISING,
                                warm(40, 10, 20),
                                warm(40, 10, 20),
                                warm(60, 20, 40),
                                warm(60, 20, 40),
                                warm(80, 30, 60))))
                .isEmpty();
        // Two temperatures of one command alone can't tell a drift from scatter.
        assertThat(sentence(
                        FindingCode.DRIVE_OIL_DRIFT, DriveRun.of(Direction.RISING, warm(40, 10, 20), warm(40, 12, 40))))
                .isEmpty();
    }

    private static DriveResponse under(DriveConditions conditions) {
        return DriveResponse.of(new DriveMeasurement(CommandScale.percent(1), rpm(0.1), conditions, List.of(UP, DOWN)));
    }

    @Test
    void whatWasNotAsAtWorkIsTold() {
        DriveResponse response =
                under(new DriveConditions(AtWork.NO, AtWork.YES, AtWork.NO, AtWork.NOT_SAID, AtWork.NOT_SAID));

        assertThat(response.findings())
                .extracting(Finding::code)
                .containsExactly(FindingCode.DRIVE_NOT_AS_AT_WORK, FindingCode.DRIVE_CONDITIONS_NOT_SAID);
        assertThat(sentence(FindingCode.DRIVE_NOT_AS_AT_WORK, response))
                .hasValue(
                        "The drive was measured without the load on the conveyor, the spinner: at work its range may be"
                                + " narrower.");
        assertThat(sentence(FindingCode.DRIVE_CONDITIONS_NOT_SAID, response))
                .hasValue(
                        "Nobody says whether the drive was measured with the prewet pump, the plow as at work: if not, its"
                                + " range may be narrower there.");
        assertThat(under(DriveConditions.NOT_SAID).findings())
                .extracting(Finding::code)
                .containsExactly(FindingCode.DRIVE_CONDITIONS_NOT_SAID);
        assertThat(sentence(
                                FindingCode.DRIVE_NOT_AS_AT_WORK,
                                under(new DriveConditions(AtWork.YES, AtWork.NO, AtWork.YES, AtWork.YES, AtWork.YES)))
                        .orElseThrow())
                .contains("without the engine at its lowest working speed:");
    }

    @Test
    void noneOfThemDoubtsACalibration() {
        assertThat(FindingCode.values())
                .filteredOn(code -> code.name().startsWith("DRIVE_"))
                .hasSize(16)
                .noneMatch(FindingCode::doubtsData);
    }
}
