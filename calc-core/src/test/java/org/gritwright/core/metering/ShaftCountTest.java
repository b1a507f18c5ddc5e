package org.gritwright.core.metering;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.gritwright.core.Samples.SENSOR;
import static org.gritwright.core.Samples.assertNamesWhatIsMissing;
import static org.gritwright.core.Samples.assertRefused;
import static org.gritwright.core.Samples.pulses;
import static org.gritwright.core.Samples.revolutionsByEye;

import java.util.List;
import java.util.Optional;
import javax.measure.Quantity;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.quantity.PulseCount;
import org.junit.jupiter.api.Test;

class ShaftCountTest {
    private static Quantity<PulseCount> reading(double pulses) {
        return Amounts.of(pulses, SpreadingUnits.PULSE);
    }

    private static ShaftCount.CounterReadings readings(double start, double stop, double modulus) {
        return new ShaftCount.CounterReadings(reading(start), reading(stop), Optional.of(reading(modulus)));
    }

    private static ShaftCount.CounterReadings readings(double start, double stop) {
        return new ShaftCount.CounterReadings(reading(start), reading(stop), Optional.empty());
    }

    @Test
    void aReadingThatIsMissingIsNamed() throws ReflectiveOperationException {
        assertNamesWhatIsMissing(readings(120, 476, 1000));
    }

    @Test
    void aHundredPulsesAreARevolutionOfASensorWithAHundred() {
        // common practice, no source
        assertThat(pulses(100).revolutions(SENSOR)).isEqualTo(1);
        assertThat(pulses(356).revolutions(SENSOR)).isEqualTo(3.56);
    }

    @Test
    void aGearRatioDoesNotChangeTheRevolutionsOfTheSensedShaft() {
        ShaftSensor geared = new ShaftSensor(
                Amounts.of(100, SpreadingUnits.PULSE_PER_REVOLUTION), Amounts.of(4, SpreadingUnits.ONE));

        assertThat(pulses(356).revolutions(geared)).isEqualTo(3.56);
    }

    @Test
    void counterReadingsAreTheirDifference() {
        assertThat(readings(1200, 1556).pulses()).isEqualTo(pulses(356));
        assertThat(readings(1200, 1556).revolutions(SENSOR)).isEqualTo(3.56);
        assertThat(readings(0, 9999, 10000).pulses()).isEqualTo(pulses(9999));
    }

    @Test
    void aCounterMayRollOverOnce() {
        assertThat(readings(9800, 156, 10000).pulses()).isEqualTo(pulses(356));
        assertThat(readings(9999, 0, 10000).pulses()).isEqualTo(pulses(1));
    }

    @Test
    void aCounterThatDidNotMoveCountedNothing() {
        assertThat(readings(1200, 1200).difference()).isEqualTo(reading(0));
        assertThat(readings(1200, 1200, 10000).difference()).isEqualTo(reading(0));
        assertThat(readings(9800, 156, 10000).difference()).isEqualTo(reading(356));
    }

    @Test
    void aCounterThatDidNotMoveIsNoCountOfACatch() {
        String standing =
                "counter at the stop must be different from the start, as the counter did not move: 1200 pulse";
        String standingOrRound = "counter at the stop must be different from the start, as the counter did not move or"
                + " went round exactly once: 1200 pulse";

        assertRefused(standing, () -> readings(1200, 1200).revolutions(SENSOR));
        assertRefused(standing, () -> readings(1200, 1200).pulses());
        assertRefused(standingOrRound, () -> readings(1200, 1200, 10000).revolutions(SENSOR));
        assertRefused(standingOrRound, () -> readings(1200, 1200, 10000).uncertaintyRevolutions(SENSOR));
    }

    @Test
    void revolutionsByEyeNeedNoSensor() {
        assertThat(revolutionsByEye(20).revolutions(NoSensor.onDriveShaft())).isEqualTo(20);
        assertThat(revolutionsByEye(20).revolutions(SENSOR)).isEqualTo(20);
    }

    @Test
    void shaftSpeedTimesTimeAreRevolutions() {
        ShaftCount count = new ShaftCount.SpeedTimesTime(
                Amounts.of(40, SpreadingUnits.REVOLUTION_PER_MINUTE), Amounts.of(30, SpreadingUnits.SECOND));

        assertThat(count.revolutions(NoSensor.onDriveShaft())).isCloseTo(20, within(1e-14));
    }

    /** 10 rev/min at 2, 30 rev/min at 4. */
    private static final OpenLoop OPEN_LOOP = new OpenLoop(
            Amounts.of(1, SpreadingUnits.ONE),
            List.of(
                    new OpenLoop.Row(
                            Amounts.of(2, SpreadingUnits.ONE), Amounts.of(10, SpreadingUnits.REVOLUTION_PER_MINUTE)),
                    new OpenLoop.Row(
                            Amounts.of(4, SpreadingUnits.ONE), Amounts.of(30, SpreadingUnits.REVOLUTION_PER_MINUTE))));

    private static ShaftCount atSetting(double setting, double seconds) {
        return new ShaftCount.SettingTimesTime(
                Amounts.of(setting, SpreadingUnits.ONE), Amounts.of(seconds, SpreadingUnits.SECOND));
    }

    @Test
    void aControlSettingTimesTimeAreRevolutionsByTheTable() {
        assertThat(atSetting(4, 60).revolutions(OPEN_LOOP)).isCloseTo(30, within(1e-13));
        assertThat(atSetting(2.5, 60).revolutions(OPEN_LOOP)).isCloseTo(15, within(1e-13));
        assertThat(atSetting(2.5, 60).isInPulses()).isFalse();
    }

    @Test
    void aControlSettingNeedsATable() {
        String message = "count must be in a form that needs no table of control settings, as the drive has none:"
                + " control setting 3";

        assertRefused(message, () -> atSetting(3, 60).revolutions(SENSOR));
        assertRefused(message, () -> atSetting(3, 60).revolutions(NoSensor.onDriveShaft()));
    }

    @Test
    void refusesAControlSettingOrTimeThatIsNone() {
        assertRefused("control setting must be 0 or more: -1", () -> atSetting(-1, 60));
        assertRefused("running time must be greater than 0: 0 s", () -> atSetting(3, 0));
        assertRefused(
                "control setting must be within 2 to 4: 5",
                () -> atSetting(5, 60).revolutions(OPEN_LOOP));
    }

    @Test
    void aSettingAtWhichTheShaftStandsStillIsNoCount() {
        OpenLoop startsAtTwo = new OpenLoop(
                Amounts.of(1, SpreadingUnits.ONE),
                List.of(
                        new OpenLoop.Row(
                                Amounts.of(2, SpreadingUnits.ONE), Amounts.of(0, SpreadingUnits.REVOLUTION_PER_MINUTE)),
                        new OpenLoop.Row(
                                Amounts.of(4, SpreadingUnits.ONE),
                                Amounts.of(30, SpreadingUnits.REVOLUTION_PER_MINUTE))));

        assertRefused(
                "control setting must be one at which the shaft turns: 2",
                () -> atSetting(2, 60).revolutions(startsAtTwo));
        assertThat(atSetting(3, 60).revolutions(startsAtTwo)).isCloseTo(15, within(1e-13));
    }

    @Test
    void revolutionsByEyeAndTimedOnesGoWithATableToo() {
        assertThat(revolutionsByEye(20).revolutions(OPEN_LOOP)).isEqualTo(20);
        assertRefused(
                "count must be revolutions or shaft speed × time, as the drive has no pulse sensor: 356 pulse",
                () -> pulses(356).revolutions(OPEN_LOOP));
    }

    @Test
    void onlyPulsesDependOnThePulsesPerRevolution() {
        assertThat(pulses(100).isInPulses()).isTrue();
        assertThat(readings(0, 100).isInPulses()).isTrue();
        assertThat(revolutionsByEye(20).isInPulses()).isFalse();
        assertThat(new ShaftCount.SpeedTimesTime(
                                Amounts.of(40, SpreadingUnits.REVOLUTION_PER_MINUTE),
                                Amounts.of(30, SpreadingUnits.SECOND))
                        .isInPulses())
                .isFalse();
    }

    @Test
    void pulsesNeedASensor() {
        String message = "count must be revolutions or shaft speed × time, as the drive has no pulse sensor: 356 pulse";

        assertRefused(message, () -> pulses(356).revolutions(NoSensor.onDriveShaft()));
        assertRefused(message, () -> readings(1200, 1556).revolutions(NoSensor.onDriveShaft()));
    }

    @Test
    void refusesCountsThatAreNone() {
        assertRefused("counted pulses must be greater than 0: 0 pulse", () -> pulses(0));
        assertRefused("counted pulses must be a whole number, 0 or more: 3.5 pulse", () -> pulses(3.5));
        assertRefused("counted revolutions must be greater than 0: 0 rev", () -> revolutionsByEye(0));
        assertRefused(
                "uncertainty of the count must be 0 or more: -1 rev",
                () -> new ShaftCount.ByEye(
                        Amounts.of(20, SpreadingUnits.REVOLUTION), Amounts.of(-1, SpreadingUnits.REVOLUTION)));
        assertRefused(
                "shaft speed must be greater than 0: 0 rev/min",
                () -> new ShaftCount.SpeedTimesTime(
                        Amounts.of(0, SpreadingUnits.REVOLUTION_PER_MINUTE), Amounts.of(30, SpreadingUnits.SECOND)));
        assertRefused(
                "running time must be greater than 0: 0 s",
                () -> new ShaftCount.SpeedTimesTime(
                        Amounts.of(40, SpreadingUnits.REVOLUTION_PER_MINUTE), Amounts.of(0, SpreadingUnits.SECOND)));
    }

    @Test
    void refusesReadingsThatGiveNoCount() {
        assertRefused(
                "counter at the stop must be at least the start, 1556 pulse, or below it with a stated modulus:"
                        + " 1200 pulse",
                () -> readings(1556, 1200));
        assertRefused(
                "counter at the start must be below the counter's modulus, 10000 pulse: 10000 pulse",
                () -> readings(10000, 1, 10000));
        assertRefused(
                "counter at the stop must be below the counter's modulus, 10000 pulse: 10001 pulse",
                () -> readings(1, 10001, 10000));
        assertRefused("counter at the start must be a whole number, 0 or more: 1.5 pulse", () -> readings(1.5, 10));
        assertRefused("counter at the stop must be a whole number, 0 or more: -1 pulse", () -> readings(1, -1));
        assertRefused("counter modulus must be a whole number, 0 or more: 99.5 pulse", () -> readings(1, 2, 99.5));
    }
}
