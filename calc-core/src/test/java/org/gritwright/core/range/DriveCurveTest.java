package org.gritwright.core.range;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.gritwright.core.Samples.assertRefused;
import static org.gritwright.core.range.Drives.curve;
import static org.gritwright.core.range.Drives.falling;
import static org.gritwright.core.range.Drives.inRpm;
import static org.gritwright.core.range.Drives.percents;
import static org.gritwright.core.range.Drives.point;
import static org.gritwright.core.range.Drives.response;
import static org.gritwright.core.range.Drives.rising;
import static org.gritwright.core.range.Drives.rpm;

import java.util.List;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import org.gritwright.core.Shipped;
import org.gritwright.core.statistics.Student;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.quantity.RotationalSpeed;
import org.junit.jupiter.api.Test;

class DriveCurveTest {
    /** Starts between 30 and 32 %, 0.5 rev/min a percent, no faster from 72 % on. */
    private static final DriveRun UP =
            rising(0, 0, 20, 0, 30, 0, 32, 2, 40, 6, 52, 12, 60, 16, 72, 22, 80, 22, 90, 22, 100, 22);

    private static double percent(Quantity<Dimensionless> part) {
        return Amounts.in(part, SpreadingUnits.PERCENT);
    }

    private static double speed(DriveCurve curve, double percent) {
        return inRpm(curve.speedAt(Command.percent(percent)).orElseThrow().value());
    }

    private static Command only(Optional<CommandInterval> commands) {
        assertThat(commands.orElseThrow().isSingle()).isTrue();
        return commands.orElseThrow().from();
    }

    @Test
    void theShaftStartsBetweenTheLastCommandAtRestAndTheFirstThatTurns() {
        DriveCurve curve = curve(UP);

        assertThat(curve.direction()).isEqualTo(Direction.RISING);
        assertThat(curve.threshold()).isEqualTo(percents(30, 32));
        assertThat(curve.isThresholdFound()).isFalse();
        assertThat(percent(curve.deadBand().atLeast())).isCloseTo(30, within(1e-12));
        assertThat(percent(curve.deadBand().atMost())).isCloseTo(32, within(1e-12));
    }

    @Test
    void oneStepIsAsNearAsItGets() {
        assertThat(curve(rising(30, 0, 31, 2)).isThresholdFound()).isTrue();
        assertThat(curve(rising(30, 0, 31.5, 2)).isThresholdFound()).isFalse();
    }

    @Test
    void whereItWasNeverAtRestItMayStartAnywhereBelow() {
        DriveCurve curve = curve(rising(20, 3, 40, 9));

        assertThat(curve.threshold()).isEqualTo(percents(0, 20));
        assertThat(curve.isThresholdFound()).isFalse();
        assertThat(curve.speedAt(Command.percent(10))).isEmpty();
        assertThat(curve.speedAt(Command.percent(0))).isEmpty();
        assertThat(curve.commandsFor(rpm(0))).isEmpty();
        assertThat(curve(rising(0, 3, 40, 9)).isThresholdFound()).isTrue();
    }

    @Test
    void whereItRestedAboveATurnAllBetweenIsInDoubt() {
        DriveCurve curve = curve(rising(10, 0, 20, 2, 30, 0, 40, 5, 50, 8));

        assertThat(curve.threshold()).isEqualTo(percents(10, 40));
        assertThat(curve.speedAt(Command.percent(20))).isEmpty();
        assertThat(speed(curve, 40)).isEqualTo(5);
    }

    @Test
    void whereItBothRestedAndTurnedItIsInDoubtToo() {
        assertThat(curve(rising(10, 0, 20, 2, 20, 0, 21, 3)).threshold()).isEqualTo(percents(10, 21));
    }

    @Test
    void onTheWayDownItStopsInstead() {
        DriveCurve curve = curve(falling(100, 22, 60, 20, 30, 5, 26, 0, 0, 0));

        assertThat(curve.direction()).isEqualTo(Direction.FALLING);
        assertThat(curve.threshold()).isEqualTo(percents(26, 30));
        assertThat(speed(curve, 60)).isCloseTo(20, within(1e-12));
    }

    @Test
    void itRestsUpToTheLastCommandAtRestAndThenNobodyKnows() {
        DriveCurve curve = curve(UP);

        assertThat(curve.speedAt(Command.percent(30))).hasValue(Measured.of(rpm(0), rpm(0), Double.POSITIVE_INFINITY));
        assertThat(curve.speedAt(Command.percent(7.5)).orElseThrow().value()).isEqualTo(rpm(0));
        assertThat(curve.speedAt(Command.percent(30.1))).isEmpty();
        assertThat(curve.speedAt(Command.percent(31.9))).isEmpty();
        assertThat(speed(curve, 32)).isCloseTo(2, within(1e-12));
    }

    @Test
    void beyondTheHighestCommandThatWasTriedNobodyKnows() {
        DriveCurve curve = curve(rising(30, 0, 32, 2, 60, 16));

        assertThat(speed(curve, 60)).isCloseTo(16, within(1e-12));
        assertThat(curve.speedAt(Command.percent(60.5))).isEmpty();
        assertRefused("command must be within 0 % to 100 %: 101 %", () -> curve.speedAt(Command.percent(101)));
        assertRefused("command must be a percentage: 4 mA", () -> curve.speedAt(Command.milliamperes(4)));
    }

    @Test
    void betweenPointsOnALineItIsOnTheLine() {
        assertThat(speed(curve(UP), 46)).isCloseTo(9, within(1e-12));
        assertThat(only(curve(UP).commandsFor(rpm(9))).number()).isCloseTo(46, within(1e-9));
    }

    @Test
    void aPlateauInvertsToAllOfIt() {
        assertThat(curve(UP).commandsFor(rpm(22))).hasValue(percents(72, 100));
        assertThat(curve(UP).commandsFor(rpm(0))).hasValue(percents(0, 30));
    }

    @Test
    void aSpeedThatItDoesntHoldHasNoCommand() {
        assertThat(curve(UP).commandsFor(rpm(1.9))).isEmpty();
        assertThat(curve(UP).commandsFor(rpm(22.1))).isEmpty();
        assertThat(only(curve(UP).commandsFor(rpm(2)))).isEqualTo(Command.percent(32));
        assertRefused(
                "shaft speed must be 0 or more: -1 rev/min", () -> curve(UP).commandsFor(rpm(-1)));
    }

    /** 1.1 rev/min in another unit is another double. */
    @Test
    void aMeasuredSpeedIsntLostToRounding() {
        DriveCurve curve = curve(rising(10, 1.1, 20, 3.3));
        Quantity<RotationalSpeed> slowest = Amounts.of(1.1 / 60, SpreadingUnits.REVOLUTION_PER_SECOND);
        Quantity<RotationalSpeed> less = Amounts.of(Math.nextDown(1.1 / 60), SpreadingUnits.REVOLUTION_PER_SECOND);
        Quantity<RotationalSpeed> more = Amounts.of(Math.nextUp(3.3 / 60), SpreadingUnits.REVOLUTION_PER_SECOND);

        assertThat(curve.commandsFor(slowest)).isPresent();
        assertThat(only(curve.commandsFor(less))).isEqualTo(Command.percent(10));
        assertThat(only(curve.commandsFor(more))).isEqualTo(Command.percent(20));
    }

    @Test
    void theKneeIsWhereTheSpeedRisesNoLonger() {
        CommandInterval knee = curve(UP).saturation().orElseThrow();

        assertThat(knee.from()).isEqualTo(Command.percent(60));
        // A speed that is read to 0.1 rev/min may miss as much, which 0.5 rev/min a percent make up in 0.2 %.
        assertThat(knee.to().number()).isCloseTo(72.2, within(1e-9));
    }

    @Test
    void aSpeedThatRisesToTheEndHasNoKnee() {
        assertThat(curve(rising(30, 0, 32, 2, 60, 16, 100, 30)).saturation()).isEmpty();
        assertThat(curve(rising(30, 0, 32, 2)).saturation()).isEmpty();
    }

    /** 0.1 rev/min a percent, read to 0.1 rev/min: the last steps are within the reading, and yet it rises. */
    @Test
    void aSlowRiseInSmallStepsIsNoKnee() {
        assertThat(curve(rising(0, 0, 1, 20.1, 50, 25, 97, 29.7, 98, 29.8, 99, 29.9, 100, 30))
                        .saturation())
                .isEmpty();
        assertThat(curve(rising(0, 0, 1, 20.1, 50, 25, 97, 29.7, 98, 29.7, 99, 29.7, 100, 29.7))
                        .saturation())
                .isPresent();
    }

    @Test
    void aValveThatIsOnOrOffIsAllPlateau() {
        DriveCurve curve = curve(rising(0, 0, 20, 0, 30, 22, 60, 22, 100, 22));

        assertThat(curve.saturation()).hasValue(percents(20, 30));
        assertThat(curve.commandsFor(rpm(22))).hasValue(percents(30, 100));
    }

    @Test
    void theGainIsToldByStretches() {
        List<Stretch> gain = curve(UP).gain();

        assertThat(gain).hasSize(7);
        assertThat(gain.get(0).commands()).isEqualTo(percents(32, 40));
        assertThat(inRpm(gain.get(0).perUnit())).isCloseTo(0.5, within(1e-12));
        assertThat(inRpm(gain.get(4).perUnit())).isZero();
        assertThat(inRpm(gain.get(3).perStep())).isCloseTo(0.5, within(1e-12));
        assertThat(inRpm(curve(UP).resolution().orElseThrow())).isCloseTo(0.5, within(1e-12));
    }

    @Test
    void aStepMakesWhatItIsOfTheScale() {
        DriveRun run = DriveRun.of(
                Direction.RISING,
                DrivePoint.of(Command.milliamperes(4), rpm(0)),
                DrivePoint.of(Command.milliamperes(8), rpm(4)),
                DrivePoint.of(Command.milliamperes(12), rpm(12)),
                DrivePoint.of(Command.milliamperes(20), rpm(20)));
        DriveMeasurement test = new DriveMeasurement(
                CommandScale.milliamperes(4, 20, 0.5), rpm(0.1), DriveConditions.AS_AT_WORK, List.of(run));
        DriveCurve curve = DriveResponse.of(test).curve(Direction.RISING).orElseThrow();

        assertThat(inRpm(curve.gain().get(0).perUnit())).isCloseTo(2, within(1e-12));
        assertThat(inRpm(curve.gain().get(0).perStep())).isCloseTo(1, within(1e-12));
        assertThat(inRpm(curve.resolution().orElseThrow())).isCloseTo(1, within(1e-12));
        assertThat(percent(curve.deadBand().atMost())).isCloseTo(25, within(1e-12));
        assertThat(curve.threshold()).hasToString("4 mA to 8 mA");
    }

    @Test
    void theResolutionIsThatOfTheSteepestStretch() {
        assertThat(inRpm(curve(rising(0, 0, 10, 2, 20, 4, 30, 12, 40, 13))
                        .resolution()
                        .orElseThrow()))
                .isCloseTo(0.8, within(1e-12));
    }

    @Test
    void oneCommandHasNoGain() {
        DriveCurve curve = curve(rising(30, 0, 31, 2));

        assertThat(curve.gain()).isEmpty();
        assertThat(curve.resolution()).isEmpty();
        assertThat(speed(curve, 31)).isCloseTo(2, within(1e-12));
        assertThat(curve).hasToString("rising, 1 command at 31 %");
    }

    @Test
    void readingsThatFallArePooledByTheirNumber() {
        DriveCurve curve = curve(
                DriveRun.of(Direction.RISING, point(20, 0), point(30, 8).withReadings(3), point(40, 4), point(50, 10)));

        assertThat(speed(curve, 30)).isCloseTo(7, within(1e-12));
        assertThat(speed(curve, 40)).isCloseTo(7, within(1e-12));
        assertThat(curve.commandsFor(rpm(7))).hasValue(percents(30, 40));
    }

    /** 10 and 10.6, 20 and 20.6: s = √(2 · 0.18 ÷ 2), by the root of 2 for a mean of two; the resolution 0.1 ÷ √12 beside it. */
    @Test
    void theUncertaintyIsThatOfRepeatsAndOfTheReading() {
        DriveCurve curve = curve(rising(0, 0, 20, 10, 20, 10.6, 40, 20, 40, 20.6, 60, 30));
        double scatter = 0.18;
        Measured<RotationalSpeed> twice = curve.speedAt(Command.percent(20)).orElseThrow();
        Measured<RotationalSpeed> once = curve.speedAt(Command.percent(60)).orElseThrow();

        assertThat(inRpm(twice.standardUncertainty().orElseThrow()))
                .isCloseTo(Math.sqrt(scatter / 2 + 0.01 / 12), within(1e-12));
        assertThat(inRpm(once.standardUncertainty().orElseThrow()))
                .isCloseTo(Math.sqrt(scatter + 0.01 / 12), within(1e-12));
        assertThat(once.degreesOfFreedom().orElseThrow())
                .isCloseTo(2 * Math.pow(1 + 0.01 / 12 / scatter, 2), within(1e-9));
    }

    /** Straight lines give 20 at 45; between 40 and 50 the curve bends. The less certain neighbor is the one at 50. */
    @Test
    void betweenCommandsItIsThatOfTheLessCertainAndOfTheBend() {
        DriveCurve curve = curve(rising(30, 0, 40, 10, 40, 10.6, 50, 30, 60, 32));
        Measured<RotationalSpeed> between = curve.speedAt(Command.percent(45)).orElseThrow();
        double bend = inRpm(between.value()) - (10.3 + 30) / 2;

        assertThat(Math.abs(bend)).isGreaterThan(0.5);
        assertThat(inRpm(between.standardUncertainty().orElseThrow()))
                .isCloseTo(Math.sqrt(0.18 + 0.01 / 12 + bend * bend / 3), within(1e-12));
    }

    @Test
    void withoutRepeatsThereIsNoUncertainty() {
        assertThat(curve(UP).speedAt(Command.percent(40)).orElseThrow().standardUncertainty())
                .isEmpty();
        assertThat(curve(UP).commandsFor(rpm(9), 0.95)).isEmpty();
    }

    /** 1 rev/min a percent; the commands are as wide as the speed is uncertain. */
    @Test
    void theCommandsForASpeedAreAsWideAsItIsUncertain() {
        DriveCurve curve = curve(rising(0, 0, 20, 10, 20, 10.6, 40, 30, 40, 30.6, 60, 50, 60, 50.6));
        double u = Math.sqrt(0.18 / 2 + 0.01 / 12);
        double degrees = 3 * Math.pow(u * u / 0.09, 2);
        double half = Student.of(degrees).coverageFactor(0.9) * u;
        CommandInterval commands = curve.commandsFor(rpm(25.3), 0.9).orElseThrow();

        assertThat(commands.from().number()).isCloseTo(35 - half, within(1e-9));
        assertThat(commands.to().number()).isCloseTo(35 + half, within(1e-9));
        assertThat(curve.commandsFor(rpm(0), 0.9)).isEmpty();
        assertThat(curve.commandsFor(rpm(9), 0.9)).isEmpty();
        assertRefused("coverage must be greater than 0 and below 1: 1.0", () -> curve.commandsFor(rpm(25), 1));
    }

    @Test
    void beyondTheSlowestAndTheFastestTheyGoOnToRestAndToTheEndOfTheScale() {
        DriveCurve curve = curve(rising(0, 0, 20, 10, 20, 10.6, 40, 30, 40, 30.6, 60, 50, 60, 50.6));

        assertThat(curve.commandsFor(rpm(10.3), 0.95).orElseThrow().from()).isEqualTo(Command.percent(0));
        assertThat(curve.commandsFor(rpm(50.3), 0.95).orElseThrow().to()).isEqualTo(Command.percent(100));
    }

    /** Where neither scatters nor rounds, the speed has its command for certain. */
    @Test
    void withoutNoiseTheCommandIsCertain() {
        DriveMeasurement exact = new DriveMeasurement(
                CommandScale.percent(1),
                rpm(0),
                DriveConditions.AS_AT_WORK,
                List.of(rising(0, 0, 20, 10, 20, 10, 60, 50)));
        DriveCurve curve = DriveResponse.of(exact).curve(Direction.RISING).orElseThrow();

        assertThat(curve.commandsFor(rpm(50), 0.95)).hasValue(percents(60, 60));
        assertThat(curve.commandsFor(rpm(10), 0.95)).hasValue(percents(20, 20));
    }

    @Test
    void theLowestSteadySpeedIsAboveTheJerkyOnes() {
        DriveCurve curve = curve(DriveRun.of(
                Direction.RISING,
                point(20, 0),
                point(22, 1).withSwing(rpm(0.31)),
                point(24, 2).withSwing(rpm(0.5)),
                point(60, 20)));

        assertThat(curve.lowestSteady()).hasValue(Command.percent(24));
        assertThat(curve.highestSteady()).hasValue(Command.percent(60));
        assertThat(inRpm(curve.workingRange().orElseThrow().lowest())).isCloseTo(2, within(1e-12));
        assertThat(inRpm(curve.workingRange().orElseThrow().highest())).isCloseTo(20, within(1e-12));
    }

    @Test
    void aSwingConcernsItsOwnCommandOnly() {
        assertThat(curve(DriveRun.of(Direction.RISING, point(22, 1).withSwing(rpm(3)), point(24, 2), point(60, 20)))
                        .lowestSteady())
                .hasValue(Command.percent(24));
    }

    @Test
    void aShaftThatIsJerkyAtAllCommandsHasNoRange() {
        DriveCurve curve = curve(DriveRun.of(Direction.RISING, point(22, 1).withSwing(rpm(1))));

        assertThat(curve.lowestSteady()).isEmpty();
        assertThat(curve.highestSteady()).isEmpty();
        assertThat(curve.workingRange()).isEmpty();
    }

    /** s of (1, 2, 3) is 1, far more than 10 %; it isn't taken for the scatter of the others. */
    @Test
    void whatIsJerkyDoesntMakeTheOthersUncertain() {
        DriveCurve curve = curve(rising(20, 0, 22, 1, 22, 2, 22, 3, 40, 10, 40, 10.2, 60, 20));

        assertThat(curve.lowestSteady()).hasValue(Command.percent(40));
        assertThat(inRpm(curve.speedAt(Command.percent(60))
                        .orElseThrow()
                        .standardUncertainty()
                        .orElseThrow()))
                .isCloseTo(Math.sqrt(0.02 + 0.01 / 12), within(1e-12));
        assertThat(inRpm(curve.speedAt(Command.percent(22))
                        .orElseThrow()
                        .standardUncertainty()
                        .orElseThrow()))
                .isCloseTo(Math.sqrt(1 / 3.0 + 0.01 / 12), within(1e-12));
    }

    @Test
    void speedsAreToldInTheUnitTheyWereReadIn() {
        DriveRun run = DriveRun.of(
                Direction.RISING,
                DrivePoint.of(Command.percent(20), Amounts.of(0.5, SpreadingUnits.REVOLUTION_PER_SECOND)));
        assertThat(curve(run).speedAt(Command.percent(20)).orElseThrow().value())
                .isEqualTo(Amounts.of(0.5, SpreadingUnits.REVOLUTION_PER_SECOND));
    }

    @Test
    void aCurveIsAValue() {
        Shipped.assertIsAValue(curve(UP), curve(UP), curve(rising(30, 0, 31, 2)));
        assertThat(curve(UP)).hasToString("rising, 8 commands from 32 % to 100 %");
        DriveCurve arrived = Shipped.copyOf(curve(UP));
        assertThat(arrived.speedAt(Command.percent(47))).isEqualTo(curve(UP).speedAt(Command.percent(47)));
        assertThat(response(UP, falling(100, 22, 20, 0)).curve(Direction.RISING))
                .hasValue(curve(UP));
    }
}
