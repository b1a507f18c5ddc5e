package org.gritwright.core.verification;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.gritwright.core.Samples.assertRefused;
import static org.gritwright.core.Samples.foreign;
import static org.gritwright.core.Samples.pounds;
import static org.gritwright.core.Samples.wrongKind;

import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Length;
import javax.measure.quantity.Mass;
import javax.measure.quantity.Speed;
import javax.measure.quantity.Time;
import org.gritwright.core.Samples;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.quantity.ApplicationRate;
import org.junit.jupiter.api.Test;

class TestRunTest {
    private static final Quantity<ApplicationRate> RATE = Amounts.of(240, SpreadingUnits.POUND_PER_MILE);
    private static final Quantity<Speed> SPEED = Amounts.of(20, SpreadingUnits.MILE_PER_HOUR);
    private static final Quantity<Time> THREE_MINUTES = Amounts.of(3, SpreadingUnits.MINUTE);
    private static final Quantity<Length> MILE = Amounts.of(1, SpreadingUnits.MILE);

    @Test
    void aRunOverADistanceIsOneOverItsTime() {
        TestRun over = TestRun.over(RATE, SPEED, MILE);
        TestRun lasting = TestRun.lasting(RATE, SPEED, THREE_MINUTES);

        assertThat(over.testDistance()).isEqualTo(MILE);
        assertThat(over.seconds()).isCloseTo(180, within(1e-12));
        assertThat(lasting.seconds()).isEqualTo(180);
        assertThat(lasting.meters()).isCloseTo(1609.344, within(1e-12));
        assertThat(over.expectedKilograms(Samples.SALT))
                .isCloseTo(lasting.expectedKilograms(Samples.SALT), within(1e-12));
    }

    @Test
    void expectsTargetRateTimesTestDistance() {
        assertThat(Amounts.in(
                        TestRun.lasting(RATE, SPEED, THREE_MINUTES)
                                .expectedAmount()
                                .asType(Mass.class),
                        SpreadingUnits.POUND))
                .isCloseTo(240, within(1e-12));
        assertThat(TestRun.lasting(RATE, SPEED, THREE_MINUTES).kilogramsPerSecond(Samples.SALT))
                .isCloseTo(240 / 180.0 * 0.45359237, within(1e-15));
    }

    @Test
    void speaksMilesAndPoundsOrKilometersAndKilograms() {
        TestRun metric = TestRun.lasting(
                Amounts.of(85, SpreadingUnits.KILOGRAM_PER_KILOMETER),
                Amounts.of(48, SpreadingUnits.KILOMETER_PER_HOUR),
                Amounts.of(75, SpreadingUnits.SECOND));

        assertThat(metric.testDistance().getUnit()).isEqualTo(SpreadingUnits.KILOMETER);
        assertThat(Amounts.in(metric.testDistance(), SpreadingUnits.KILOMETER)).isCloseTo(1, within(1e-15));
        assertThat(metric.expectedAmount().getUnit()).isEqualTo(SpreadingUnits.KILOGRAM);
        assertThat(TestRun.lasting(RATE, SPEED, THREE_MINUTES).testDistance().getUnit())
                .isEqualTo(SpreadingUnits.MILE);
        assertThat(TestRun.lasting(RATE, SPEED, THREE_MINUTES).expectedAmount().getUnit())
                .isEqualTo(SpreadingUnits.POUND);
    }

    @Test
    void refusesValuesThatMakeNoRun() {
        assertRefused(
                "target rate must be greater than 0: 0 lb/mi",
                () -> TestRun.lasting(Amounts.of(0, SpreadingUnits.POUND_PER_MILE), SPEED, THREE_MINUTES));
        assertRefused(
                "test speed must be greater than 0: 0 mi/h",
                () -> TestRun.lasting(RATE, Amounts.of(0, SpreadingUnits.MILE_PER_HOUR), THREE_MINUTES));
        assertRefused(
                "run time must be greater than 0: -1 s",
                () -> TestRun.lasting(RATE, SPEED, Amounts.of(-1, SpreadingUnits.SECOND)));
        assertRefused(
                "test distance must be greater than 0: 0 mi",
                () -> TestRun.over(RATE, SPEED, Amounts.of(0, SpreadingUnits.MILE)));
        assertRefused(
                "target rate must be a mass or a volume per distance of travel: 300 lb",
                () -> TestRun.lasting(wrongKind(pounds(300)), SPEED, THREE_MINUTES));
        assertRefused(
                "test speed must be a finite speed: NaN in \"mi/h\"",
                () -> TestRun.lasting(RATE, foreign(Double.NaN, SpreadingUnits.MILE_PER_HOUR), THREE_MINUTES));
    }

    @Test
    void takesARunTimeOrADistanceAndNotBoth() {
        assertRefused(
                "test run must be given either a run time or a test distance: both",
                () -> new TestRun(RATE, SPEED, Optional.of(THREE_MINUTES), Optional.of(MILE)));
        assertRefused(
                "test run must be given either a run time or a test distance: neither",
                () -> new TestRun(RATE, SPEED, Optional.empty(), Optional.empty()));
    }
}
