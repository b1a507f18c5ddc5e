package org.gritwright.core.range;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.gritwright.core.range.Drives.falling;
import static org.gritwright.core.range.Drives.inRpm;
import static org.gritwright.core.range.Drives.measurement;
import static org.gritwright.core.range.Drives.point;
import static org.gritwright.core.range.Drives.response;
import static org.gritwright.core.range.Drives.rising;
import static org.gritwright.core.range.Drives.rpm;

import java.util.List;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import org.gritwright.core.Shipped;
import org.gritwright.core.finding.Finding;
import org.gritwright.core.finding.FindingCode;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.junit.jupiter.api.Test;

class DriveResponseTest {
    private static final DriveRun UP = rising(30, 0, 32, 2, 40, 6, 60, 16, 80, 26, 100, 26);
    private static final DriveRun DOWN = falling(100, 26, 80, 26, 60, 18, 40, 8, 28, 2, 26, 0);

    private static double percent(Quantity<Dimensionless> part) {
        return Amounts.in(part, SpreadingUnits.PERCENT);
    }

    private static WorkingRange range(double lowest, double highest) {
        return new WorkingRange(rpm(lowest), rpm(highest));
    }

    private static void assertRange(DriveResponse response, double lowest, double highest) {
        WorkingRange range = response.workingRange().orElseThrow();
        assertThat(inRpm(range.lowest())).isCloseTo(lowest, within(1e-12));
        assertThat(inRpm(range.highest())).isCloseTo(highest, within(1e-12));
    }

    @Test
    void bothDirectionsAreKept() {
        DriveResponse response = response(UP, DOWN);

        assertThat(inRpm(response.curve(Direction.RISING)
                        .orElseThrow()
                        .speedAt(Command.percent(60))
                        .orElseThrow()
                        .value()))
                .isCloseTo(16, within(1e-12));
        assertThat(inRpm(response.curve(Direction.FALLING)
                        .orElseThrow()
                        .speedAt(Command.percent(60))
                        .orElseThrow()
                        .value()))
                .isCloseTo(18, within(1e-12));
        assertThat(response.measurement()).isEqualTo(measurement(UP, DOWN));
    }

    @Test
    void whereTheShaftNeverTurnedThereIsNoCurve() {
        assertThat(response(UP).curve(Direction.FALLING)).isEmpty();
        assertThat(response(rising(0, 0, 50, 0)).curve(Direction.RISING)).isEmpty();
        assertThat(response().curve(Direction.RISING)).isEmpty();
        assertThat(response().workingRange()).isEmpty();
        assertThat(response().hysteresis()).isEmpty();
        assertThat(response().findings()).isEmpty();
        assertThat(response()).hasToString("drive: ");
    }

    @Test
    void theEndsOfTheWorkingRangeAreKnownAsWellAsTheirCurves() {
        DriveResponse response = response(UP, DOWN);
        WorkingRange range = response.workingRange().orElseThrow();

        assertThat(response.lowestSteady()).get().extracting(RangeEnd::speed).isEqualTo(range.lowest());
        assertThat(response.highestSteady()).get().extracting(RangeEnd::speed).isEqualTo(range.highest());
        assertThat(response().lowestSteady()).isEmpty();
        assertThat(response().highestSteady()).isEmpty();
    }

    /** From 32 to 28 % at 2 rev/min, from 60 to 56 % at 16: 4 % on either side. At 26 rev/min both are on their plateau. */
    @Test
    void theHysteresisIsTheLargestDifferenceOfTheCommandsForOneSpeed() {
        Hysteresis hysteresis = response(UP, DOWN).hysteresis().orElseThrow();

        assertThat(percent(hysteresis.ofSpan())).isCloseTo(4, within(0.4));
        assertThat(inRpm(hysteresis.at())).isBetween(2.0, 18.0);
        assertThat(hysteresis.lowest()).isEmpty();
        assertThat(hysteresis.highest()).isEmpty();
    }

    @Test
    void withLinesOnBothSidesItIsExact() {
        Hysteresis hysteresis = response(
                        rising(30, 0, 35, 5, 45, 15, 60, 30, 75, 45), falling(70, 45, 55, 30, 40, 15, 30, 5, 26, 0))
                .hysteresis()
                .orElseThrow();

        assertThat(percent(hysteresis.ofSpan())).isCloseTo(5, within(1e-9));
    }

    @Test
    void itIsInPercentOfTheSpanWhateverTheScale() {
        DriveRun up = DriveRun.of(
                Direction.RISING,
                DrivePoint.of(Command.number(2), rpm(0)),
                DrivePoint.of(Command.number(3), rpm(10)),
                DrivePoint.of(Command.number(6), rpm(40)));
        DriveRun down = DriveRun.of(
                Direction.FALLING,
                DrivePoint.of(Command.number(5), rpm(40)),
                DrivePoint.of(Command.number(2), rpm(10)),
                DrivePoint.of(Command.number(1), rpm(0)));
        DriveResponse response = DriveResponse.of(new DriveMeasurement(
                CommandScale.numbers(0, 10, 1), rpm(0.1), DriveConditions.AS_AT_WORK, List.of(up, down)));

        assertThat(percent(response.hysteresis().orElseThrow().ofSpan())).isCloseTo(10, within(1e-9));
    }

    @Test
    void directionsWithoutACommonSpeedHaveNoHysteresis() {
        assertThat(response(rising(30, 0, 32, 2, 40, 6), falling(100, 30, 90, 26))
                        .hysteresis())
                .isEmpty();
        assertThat(response(UP).hysteresis()).isEmpty();
        assertThat(response(DOWN).hysteresis()).isEmpty();
    }

    /** 6 rev/min is the fastest on the way up, at 40 %, and the slowest on the way down, at 35 %. */
    @Test
    void oneCommonSpeedIsEnough() {
        DriveResponse response = response(rising(30, 0, 32, 2, 40, 6), falling(100, 30, 35, 6));

        assertThat(percent(response.hysteresis().orElseThrow().ofSpan())).isCloseTo(5, within(1e-9));
        assertThat(inRpm(response.hysteresis().orElseThrow().at())).isCloseTo(6, within(1e-12));
        assertRange(response, 6, 6);
    }

    /** Below the plateau there is one row only, at 30 % up and at 27 % down. */
    @Test
    void aPlateauHasNoHysteresis() {
        Hysteresis hysteresis = response(
                        rising(0, 0, 30, 10, 60, 22, 80, 22, 100, 22), falling(100, 22, 80, 22, 50, 22, 27, 10, 0, 0))
                .hysteresis()
                .orElseThrow();

        assertThat(percent(hysteresis.ofSpan())).isCloseTo(3, within(1e-9));
        assertThat(inRpm(hysteresis.at())).isCloseTo(10, within(1e-12));
    }

    @Test
    void itsLimitsHoldForAllSpeedsAtOnce() {
        DriveResponse response = response(
                rising(20, 10, 20, 10.1, 40, 20, 60, 30, 80, 40), falling(75, 40, 55, 30, 35, 20, 35, 20.1, 15, 10));
        Hysteresis hysteresis = response.hysteresis().orElseThrow();
        double lowest = 0;
        double highest = 0;
        // The speeds of either curve between 10.05 and 40.
        double[] speeds = {10.05, 20, 20.05, 30, 40};
        for (double speed : speeds) {
            CommandInterval up = response.curve(Direction.RISING)
                    .orElseThrow()
                    .commandsFor(rpm(speed), 1 - 0.05 / 10)
                    .orElseThrow();
            CommandInterval down = response.curve(Direction.FALLING)
                    .orElseThrow()
                    .commandsFor(rpm(speed), 1 - 0.05 / 10)
                    .orElseThrow();
            lowest = Math.max(lowest, up.from().number() - down.to().number());
            highest = Math.max(highest, up.to().number() - down.from().number());
        }

        assertThat(lowest).isPositive();
        assertThat(percent(hysteresis.lowest().orElseThrow())).isCloseTo(lowest, within(1e-9));
        assertThat(percent(hysteresis.highest().orElseThrow())).isCloseTo(highest, within(1e-9));
    }

    /** Where the way down is the one that takes more command. */
    @Test
    void itCountsWhicheverSideTakesMore() {
        Hysteresis hysteresis = response(
                        rising(15, 10, 35, 20, 55, 30, 55, 30.2), falling(60, 30, 60, 30.2, 40, 20, 20, 10))
                .hysteresis()
                .orElseThrow();

        assertThat(percent(hysteresis.ofSpan())).isCloseTo(5, within(0.1));
        assertThat(percent(hysteresis.highest().orElseThrow())).isGreaterThan(5);
    }

    @Test
    void theWorkingRangeIsWhatBothDirectionsHold() {
        assertRange(response(UP, DOWN), 2, 26);
        assertRange(response(UP), 2, 26);
        assertRange(response(rising(30, 0, 32, 3, 90, 25), falling(100, 27, 30, 2, 28, 0)), 3, 25);
    }

    @Test
    void directionsWithoutACommonSpeedHaveNoRange() {
        assertThat(response(rising(30, 0, 32, 2, 40, 6), falling(100, 30, 90, 26))
                        .workingRange())
                .isEmpty();
    }

    @Test
    void repeatsOfEitherDirectionTellOfBoth() {
        DriveResponse response = response(rising(20, 10, 20, 10.6, 40, 30), falling(40, 31, 20, 11));

        assertThat(inRpm(response.curve(Direction.FALLING)
                        .orElseThrow()
                        .speedAt(Command.percent(40))
                        .orElseThrow()
                        .standardUncertainty()
                        .orElseThrow()))
                .isCloseTo(Math.sqrt(0.18 + 0.01 / 12), within(1e-12));
        Hysteresis hysteresis = response.hysteresis().orElseThrow();
        assertThat(percent(hysteresis.lowest().orElseThrow())).isLessThanOrEqualTo(percent(hysteresis.ofSpan()));
        assertThat(percent(hysteresis.highest().orElseThrow())).isGreaterThan(percent(hysteresis.ofSpan()));
    }

    private static List<Finding> compared(double lowest, double highest, RangeSource source, DriveRun... runs) {
        return response(runs).comparedWith(new StatedRange(range(lowest, highest), source));
    }

    /** The start is known to 2 % only, so that a slower speed may be left to try; at the top all was tried. */
    @Test
    void aRangeThatWasWiderLastTimeIsToldWhereNothingIsLeftToTry() {
        assertThat(compared(1, 26, RangeSource.MEASURED, UP, DOWN)).isEmpty();
        assertThat(compared(2, 26.2, RangeSource.MEASURED, UP, DOWN))
                .containsExactly(new Finding(
                        FindingCode.DRIVE_RANGE_NARROWER,
                        java.util.Map.of(
                                "lowest",
                                        number(response(UP, DOWN)
                                                .workingRange()
                                                .orElseThrow()
                                                .lowest()),
                                "highest",
                                        number(response(UP, DOWN)
                                                .workingRange()
                                                .orElseThrow()
                                                .highest()),
                                "otherLowest", number(rpm(2)),
                                "otherHighest", number(rpm(26.2)))));
        assertThat(compared(2, 26.1, RangeSource.MEASURED, UP, DOWN)).isEmpty();
        assertThat(compared(1, 26, RangeSource.MEASURED, rising(31, 0, 32, 2, 100, 26)))
                .extracting(Finding::code)
                .containsExactly(FindingCode.DRIVE_RANGE_NARROWER);
        assertThat(compared(2, 30, RangeSource.MEASURED, rising(31, 0, 32, 2, 99, 26)))
                .isEmpty();
    }

    private static org.gritwright.core.finding.Argument number(Quantity<?> quantity) {
        return org.gritwright.core.finding.Argument.number(quantity);
    }

    @Test
    void aRangeThatIsWiderThanLastTimeIsNoNews() {
        assertThat(compared(5, 20, RangeSource.MEASURED, UP, DOWN)).isEmpty();
    }

    @Test
    void aRangeStatedByEyeOrByTheMakerIsComparedBothWays() {
        assertThat(compared(2, 26, RangeSource.BY_EYE, UP, DOWN)).isEmpty();
        assertThat(compared(2.05, 25.95, RangeSource.BY_EYE, UP, DOWN)).isEmpty();
        assertThat(compared(3, 26, RangeSource.BY_EYE, UP, DOWN))
                .singleElement()
                .hasToString("drive-range-disagrees: The drive holds 2 rev/min to 26 rev/min as measured, but 3 rev/min"
                        + " to 26 rev/min were stated by eye: find out which is right.");
        assertThat(compared(2, 20, RangeSource.FROM_MAKER, UP, DOWN))
                .singleElement()
                .extracting(Finding::sentence)
                .asString()
                .contains("were stated by the maker");
        assertThat(compared(2, 30, RangeSource.FROM_MAKER, UP, DOWN)).hasSize(1);
        assertThat(compared(1, 26, RangeSource.FROM_MAKER, UP, DOWN)).isEmpty();
    }

    /** s = √0.18, one degree of freedom and more: far more than the 2 rev/min that it seems to differ by. */
    @Test
    void whatScattersDoesntContradict() {
        assertThat(compared(10, 28, RangeSource.FROM_MAKER, rising(10, 0, 11, 10, 40, 20, 40, 20.6, 100, 26)))
                .isEmpty();
        assertThat(compared(10, 28, RangeSource.FROM_MAKER, rising(10, 0, 11, 10, 40, 20, 40, 20, 100, 26)))
                .hasSize(1);
    }

    /** Up, the start is known to a step; down, it isn't: which one the lowest speed is of decides. */
    @Test
    void whatIsLeftToTryCountsWhereTheRangeEnds() {
        DriveRun known = rising(31, 0, 32, 2, 100, 26);

        assertThat(compared(1, 26, RangeSource.MEASURED, known, falling(100, 26, 30, 1.5, 20, 0)))
                .hasSize(1);
        assertThat(compared(1, 26, RangeSource.MEASURED, known, falling(100, 26, 30, 2.5, 20, 0)))
                .isEmpty();
        assertThat(compared(1, 26, RangeSource.MEASURED, known, falling(100, 26, 30, 2, 20, 0)))
                .hasSize(1);
        assertThat(compared(2, 30, RangeSource.MEASURED, known, falling(90, 27, 30, 1.5)))
                .hasSize(1);
        assertThat(compared(2, 30, RangeSource.MEASURED, known, falling(90, 25, 30, 1.5)))
                .isEmpty();
        assertThat(compared(2, 30, RangeSource.MEASURED, known, falling(90, 26, 30, 1.5)))
                .hasSize(1);
        assertThat(compared(2, 30, RangeSource.MEASURED, falling(90, 26, 30, 1.5), known))
                .hasSize(1);
    }

    @Test
    void withoutARangeThereIsNothingToCompare() {
        assertThat(compared(1, 2, RangeSource.FROM_MAKER)).isEmpty();
    }

    @Test
    void aResponseIsAValue() {
        Shipped.assertIsAValue(response(UP, DOWN), response(UP, DOWN), response(UP));
        assertThat(response(UP, DOWN))
                .hasToString("drive: rising, 5 commands from 32 % to 100 %; falling, 5 commands from 28 % to 100 %");
    }

    @Test
    void severalRunsOfADirectionAreOne() {
        assertThat(response(rising(20, 0, 21, 2), rising(20, 0, 60, 20)).curve(Direction.RISING))
                .isEqualTo(response(rising(20, 0, 20, 0, 21, 2, 60, 20)).curve(Direction.RISING));
    }

    @Test
    void whatIsNotedStaysNoted() {
        DrivePoint noted = point(20, 5)
                .withReadings(3)
                .withSwing(rpm(0.5))
                .withOilTemperature(Amounts.of(40, SpreadingUnits.CELSIUS))
                .withEngineSpeed(rpm(900));

        assertThat(noted.readings()).isEqualTo(3);
        assertThat(noted.swing()).hasValue(rpm(0.5));
        assertThat(noted.oilTemperature()).hasValue(Amounts.of(40, SpreadingUnits.CELSIUS));
        assertThat(noted.engineSpeed()).hasValue(rpm(900));
        assertThat(Shipped.copyOf(noted)).isEqualTo(noted);
        assertThat(noted.isTurning()).isTrue();
        assertThat(point(20, 0).isTurning()).isFalse();
    }
}
