package org.gritwright.core.range;

import static org.assertj.core.api.Assertions.assertThat;
import static org.gritwright.core.Samples.assertNamesWhatIsMissing;
import static org.gritwright.core.Samples.assertRefused;
import static org.gritwright.core.range.Drives.falling;
import static org.gritwright.core.range.Drives.measurement;
import static org.gritwright.core.range.Drives.percents;
import static org.gritwright.core.range.Drives.point;
import static org.gritwright.core.range.Drives.rising;
import static org.gritwright.core.range.Drives.rpm;

import java.util.Collections;
import java.util.List;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.junit.jupiter.api.Test;

class DriveErrorsTest {
    private static Quantity<Dimensionless> percent(double number) {
        return Amounts.of(number, SpreadingUnits.PERCENT);
    }

    @Test
    void commandsGoTheWayThatIsDeclared() {
        assertRefused(
                "command 3 of a rising run must be a percentage, at least 30 %: 20 %",
                () -> rising(10, 0, 30, 5, 20, 3));
        assertRefused(
                "command 2 of a falling run must be a percentage, at most 30 %: 31 %", () -> falling(30, 5, 31, 6));
        assertRefused(
                "command 2 of a rising run must be a percentage, at least 10 %: 12",
                () -> DriveRun.of(Direction.RISING, point(10, 0), DrivePoint.of(Command.number(12), rpm(1))));
    }

    @Test
    void aRepeatGoesEitherWay() {
        assertThat(rising(30, 5, 30, 6).points()).hasSize(2);
        assertThat(falling(30, 5, 30, 6).points()).hasSize(2);
    }

    @Test
    void speedsMayDoWhatTheyLike() {
        assertThat(Drives.response(rising(10, 9, 20, 8, 30, 0)).curve(Direction.RISING))
                .isEmpty();
        assertThat(Drives.response(rising(10, 9, 20, 8, 30, 1)).curve(Direction.RISING))
                .isPresent();
    }

    @Test
    void aRunHasAPoint() {
        assertRefused("points of a run must be one or more: none", () -> new DriveRun(Direction.RISING, List.of()));
    }

    @Test
    void commandsAreOfTheScale() {
        assertRefused("command must be within 0 % to 100 %: 101 %", () -> measurement(rising(101, 5)));
        assertRefused(
                "command must be a percentage: 5 mA",
                () -> measurement(DriveRun.of(Direction.RISING, DrivePoint.of(Command.milliamperes(5), rpm(1)))));
    }

    @Test
    void pointsAreBounded() {
        List<DrivePoint> points = Collections.nCopies(5000, point(30, 5));
        DriveRun half = new DriveRun(Direction.RISING, points);

        assertThat(measurement(half, half).runs()).hasSize(2);
        assertRefused("points of a drive must be at most 10000: more", () -> measurement(half, half, rising(30, 5)));
    }

    @Test
    void numbersAreInTheirRanges() {
        assertRefused("shaft speed must be 0 or more: -1 rev/min", () -> point(30, -1));
        assertRefused(
                "readings must be within 1 to 1000000: 0", () -> point(30, 1).withReadings(0));
        assertRefused(
                "readings must be within 1 to 1000000: 1000001",
                () -> point(30, 1).withReadings(1_000_001));
        assertThat(point(30, 1).withReadings(1_000_000).readings()).isEqualTo(1_000_000);
        assertRefused(
                "swing of the shaft speed must be 0 or more: -1 rev/min",
                () -> point(30, 1).withSwing(rpm(-1)));
        assertRefused(
                "engine speed must be 0 or more: -1 rev/min", () -> point(30, 1).withEngineSpeed(rpm(-1)));
        assertRefused(
                "oil temperature must be 0 or more: -300 °C",
                () -> point(30, 1).withOilTemperature(Amounts.of(-300, SpreadingUnits.CELSIUS)));
        assertRefused(
                "resolution of the shaft speed must be 0 or more: -1 rev/min",
                () -> new DriveMeasurement(CommandScale.percent(1), rpm(-1), DriveConditions.NOT_SAID, List.of()));
        assertRefused("gain must be 0 or more: -1 rev/min", () -> new Stretch(percents(1, 2), rpm(-1), rpm(1)));
        assertRefused(
                "speed of a step must be 0 or more: -1 rev/min", () -> new Stretch(percents(1, 2), rpm(1), rpm(-1)));
        assertRefused("dead band must be 0 or more: -1 %", () -> new DeadBand(percent(-1), percent(2)));
        assertRefused("dead band must be at least 3 %: 2 %", () -> new DeadBand(percent(3), percent(2)));
    }

    @Test
    void aHysteresisHasBothLimitsOrNone() {
        Optional<Quantity<Dimensionless>> one = Optional.of(percent(1));
        assertRefused(
                "limits of the hysteresis must be given together: the lower only",
                () -> new Hysteresis(percent(1), rpm(1), one, Optional.empty()));
        assertRefused(
                "limits of the hysteresis must be given together: the upper only",
                () -> new Hysteresis(percent(1), rpm(1), Optional.empty(), one));
        Optional<Quantity<Dimensionless>> negative = Optional.of(percent(-1));
        String rule = "hysteresis must be 0 or more: -1 %";
        assertRefused(rule, () -> new Hysteresis(percent(-1), rpm(1), one, one));
        assertRefused(rule, () -> new Hysteresis(percent(1), rpm(1), negative, one));
        assertRefused(rule, () -> new Hysteresis(percent(1), rpm(1), one, negative));
        assertRefused("shaft speed must be 0 or more: -1 rev/min", () -> new Hysteresis(percent(1), rpm(-1), one, one));
    }

    @Test
    void aRangeUpsideDownIsRefused() {
        assertRefused(
                "highest steady shaft speed must be at least 5 rev/min: 4 rev/min",
                () -> new WorkingRange(rpm(5), rpm(4)));
        assertRefused(
                "lowest steady shaft speed must be 0 or more: -1 rev/min", () -> new WorkingRange(rpm(-1), rpm(4)));
        assertRefused(
                "highest steady shaft speed must be greater than 0: 0 rev/min", () -> new WorkingRange(rpm(0), rpm(0)));
    }

    @Test
    void aRangeHoldsItsLimits() {
        WorkingRange range = new WorkingRange(rpm(2), rpm(26));

        assertThat(range.contains(rpm(2))).isTrue();
        assertThat(range.contains(rpm(26))).isTrue();
        assertThat(range.contains(rpm(1.99))).isFalse();
        assertThat(range.contains(rpm(26.01))).isFalse();
    }

    @Test
    void whatIsMissingIsNamed() throws ReflectiveOperationException {
        assertNamesWhatIsMissing(measurement(rising(30, 5)));
        assertNamesWhatIsMissing(rising(30, 5));
        assertNamesWhatIsMissing(point(30, 5));
        assertNamesWhatIsMissing(CommandScale.percent(1));
        assertNamesWhatIsMissing(percents(1, 2));
        assertNamesWhatIsMissing(DriveConditions.NOT_SAID);
        assertNamesWhatIsMissing(Command.percent(1));
        assertNamesWhatIsMissing(new Stretch(percents(1, 2), rpm(1), rpm(1)));
        assertNamesWhatIsMissing(new NextTry(Command.percent(1), NextTry.Purpose.KNEE));
        assertNamesWhatIsMissing(new StatedRange(new WorkingRange(rpm(1), rpm(2)), RangeSource.BY_EYE));
        assertNamesWhatIsMissing(new Hysteresis(percent(1), rpm(1), Optional.empty(), Optional.empty()));
    }
}
