package org.gritwright.core.range;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.gritwright.core.range.Drives.measurement;
import static org.gritwright.core.range.Drives.rising;
import static org.gritwright.core.range.Drives.rpm;

import java.util.List;
import java.util.Optional;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.gritwright.core.range.Drives.Simulated;
import org.gritwright.core.range.NextTry.Purpose;
import org.junit.jupiter.api.Test;

class NextTryTest {
    private static Optional<NextTry> next(DriveRun... runs) {
        return NextTry.after(measurement(runs), Direction.RISING);
    }

    private static Optional<NextTry> toTry(double percent, Purpose purpose) {
        return Optional.of(new NextTry(Command.percent(percent), purpose));
    }

    @Test
    void withNothingMeasuredTheMiddleComesFirst() {
        assertThat(next()).isEqualTo(toTry(50, Purpose.THRESHOLD));
    }

    @Test
    void whatIsLeftIsHalved() {
        assertThat(next(rising(50, 20))).isEqualTo(toTry(24, Purpose.THRESHOLD));
        assertThat(next(rising(50, 0))).isEqualTo(toTry(75, Purpose.THRESHOLD));
        assertThat(next(rising(20, 0, 30, 5))).isEqualTo(toTry(25, Purpose.THRESHOLD));
        assertThat(next(rising(20, 0, 22, 5))).isEqualTo(toTry(21, Purpose.THRESHOLD));
    }

    @Test
    void betweenStepsItIsAsNearAsStepsAllow() {
        assertThat(next(rising(20.5, 0, 22.5, 5))).isEqualTo(toTry(21, Purpose.THRESHOLD));
        assertThat(next(rising(20.5, 0, 21, 5, 100, 30))).isNotEqualTo(toTry(20, Purpose.THRESHOLD));
    }

    @Test
    void theOtherDirectionTellsNothing() {
        assertThat(NextTry.after(measurement(rising(50, 0)), Direction.FALLING))
                .isEqualTo(toTry(50, Purpose.THRESHOLD));
    }

    @Test
    void aShaftThatNeverTurnsHasNoKnee() {
        assertThat(next(rising(99, 0))).isEqualTo(toTry(100, Purpose.THRESHOLD));
        assertThat(next(rising(100, 0))).isEmpty();
    }

    @Test
    void aShaftThatTurnsAtTheLowestCommandHasNoStart() {
        assertThat(next(rising(1, 3))).isEqualTo(toTry(0, Purpose.THRESHOLD));
        assertThat(next(rising(0, 3))).isEqualTo(toTry(100, Purpose.KNEE));
    }

    @Test
    void afterTheStartComesTheHighestAndThenTheKnee() {
        assertThat(next(rising(20, 0, 21, 2))).isEqualTo(toTry(100, Purpose.KNEE));
        assertThat(next(rising(20, 0, 21, 2, 100, 30))).isEqualTo(toTry(60, Purpose.KNEE));
        assertThat(next(rising(20, 0, 21, 2, 60, 20, 100, 30))).isEqualTo(toTry(80, Purpose.KNEE));
        assertThat(next(rising(20, 0, 21, 2, 60, 30, 100, 30))).isEqualTo(toTry(40, Purpose.KNEE));
        assertThat(next(rising(20, 0, 21, 2, 59, 29, 60, 30, 100, 30))).isEmpty();
    }

    @Test
    void aValveThatIsOnOrOffHasNothingLeftToTry() {
        assertThat(next(rising(20, 0, 21, 30, 100, 30))).isEmpty();
    }

    /** It both rested and turned at 20 %: that is not tried for ever. */
    @Test
    void aShaftThatSticksIsNotTriedForEver() {
        assertThat(next(rising(19, 0, 20, 2, 20, 0, 21, 3, 100, 30))).isEqualTo(toTry(60, Purpose.KNEE));
    }

    @Test
    void theLastStepMayBeAShorterOne() {
        CommandScale scale = CommandScale.numbers(0, 10, 3);
        DriveRun nine = DriveRun.of(Direction.RISING, DrivePoint.of(Command.number(9), rpm(0)));
        DriveRun ten = DriveRun.of(Direction.RISING, DrivePoint.of(Command.number(10), rpm(0)));

        assertThat(NextTry.after(
                                new DriveMeasurement(scale, rpm(0.1), DriveConditions.AS_AT_WORK, List.of(nine)),
                                Direction.RISING)
                        .orElseThrow()
                        .command())
                .isEqualTo(Command.number(10));
        assertThat(NextTry.after(
                        new DriveMeasurement(scale, rpm(0.1), DriveConditions.AS_AT_WORK, List.of(ten)),
                        Direction.RISING))
                .isEmpty();
    }

    @Test
    void stepsAreExactDecimals() {
        CommandScale scale = CommandScale.milliamperes(4, 20, 0.1);
        DriveRun run = DriveRun.of(
                Direction.RISING,
                DrivePoint.of(Command.milliamperes(4.2), rpm(0)),
                DrivePoint.of(Command.milliamperes(4.4), rpm(2)));

        assertThat(NextTry.after(
                                new DriveMeasurement(scale, rpm(0.1), DriveConditions.AS_AT_WORK, List.of(run)),
                                Direction.RISING)
                        .orElseThrow()
                        .command())
                .isEqualTo(Command.milliamperes(4.3));
    }

    /** 100 steps: log₂ 102 is 6.7; so 7 tries for the start, 1 for the highest, 7 for the knee, and some more that
     * the resolution of the readings may cost. */
    @Property
    void startAndKneeAreFoundToOneStepWithTheFewestTries(
            @ForAll @DoubleRange(min = 0.5, max = 60) double start,
            @ForAll @DoubleRange(min = 5, max = 60) double rise,
            @ForAll Direction direction) {
        Simulated drive = new Simulated(start, 2, 0.5, start + rise, 0, 0, 0);
        DriveMeasurement test =
                new DriveMeasurement(CommandScale.percent(1), rpm(0.1), DriveConditions.AS_AT_WORK, List.of());
        int forStart = 0;
        int tries = 0;
        for (Optional<NextTry> next = NextTry.after(test, direction);
                next.isPresent();
                next = NextTry.after(test, direction)) {
            double percent = next.get().command().number();
            double speed = drive.truth(direction, percent);
            test = test.with(Drives.run(direction, percent, speed));
            tries++;
            forStart += next.get().purpose() == Purpose.THRESHOLD ? 1 : 0;
            assertThat(tries).isLessThanOrEqualTo(20);
        }
        DriveCurve curve = DriveResponse.of(test).curve(direction).orElseThrow();

        assertThat(forStart).isLessThanOrEqualTo(7);
        assertThat(curve.isThresholdFound()).isTrue();
        assertThat(curve.threshold().width()).isCloseTo(1, within(1e-12));
        assertThat(curve.threshold().from().number()).isLessThan(start);
        assertThat(curve.threshold().to().number()).isGreaterThanOrEqualTo(start);
        if (drive.knee() <= 99) {
            CommandInterval knee = curve.saturation().orElseThrow();
            // The reading is to 0.1 rev/min, which are 0.2 %: a plateau may seem to begin that much too early.
            assertThat(knee.from().number()).isLessThan(drive.knee());
            assertThat(knee.to().number()).isGreaterThanOrEqualTo(drive.knee() - 1e-9);
            assertThat(knee.width()).isLessThanOrEqualTo(2 + 1e-9);
        } else if (drive.knee() > 100) {
            assertThat(curve.saturation()).isEmpty();
        }
    }
}
