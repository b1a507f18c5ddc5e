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
import javax.measure.quantity.Speed;
import javax.measure.quantity.Time;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.quantity.ApplicationRate;
import org.junit.jupiter.api.Test;

class TestRunTest {
    private static final Quantity<ApplicationRate> RATE = Amounts.of(300, SpreadingUnits.POUND_PER_MILE);
    private static final Quantity<Speed> SPEED = Amounts.of(30, SpreadingUnits.MILE_PER_HOUR);
    private static final Quantity<Time> TWO_MINUTES = Amounts.of(2, SpreadingUnits.MINUTE);
    private static final Quantity<Length> MILE = Amounts.of(1, SpreadingUnits.MILE);

    @Test
    void aRunOverADistanceIsOneOverItsTime() {
        TestRun over = TestRun.over(RATE, SPEED, MILE);
        TestRun lasting = TestRun.lasting(RATE, SPEED, TWO_MINUTES);

        assertThat(over.testDistance()).isEqualTo(MILE);
        assertThat(over.seconds()).isCloseTo(120, within(1e-12));
        assertThat(lasting.seconds()).isEqualTo(120);
        assertThat(lasting.metres()).isCloseTo(1609.344, within(1e-12));
        assertThat(over.expectedKilograms()).isCloseTo(lasting.expectedKilograms(), within(1e-12));
    }

    @Test
    void expectsTargetRateTimesTestDistance() {
        assertThat(Amounts.in(TestRun.lasting(RATE, SPEED, TWO_MINUTES).expectedMass(), SpreadingUnits.POUND))
                .isCloseTo(300, within(1e-12));
        assertThat(TestRun.lasting(RATE, SPEED, TWO_MINUTES).kilogramsPerSecond())
                .isCloseTo(2.5 * 0.45359237, within(1e-15));
    }

    @Test
    void speaksMilesAndPoundsOrKilometresAndKilograms() {
        TestRun metric = TestRun.lasting(
                Amounts.of(85, SpreadingUnits.KILOGRAM_PER_KILOMETRE),
                Amounts.of(48, SpreadingUnits.KILOMETRE_PER_HOUR),
                Amounts.of(75, SpreadingUnits.SECOND));

        assertThat(metric.testDistance().getUnit()).isEqualTo(SpreadingUnits.KILOMETRE);
        assertThat(Amounts.in(metric.testDistance(), SpreadingUnits.KILOMETRE)).isCloseTo(1, within(1e-15));
        assertThat(metric.expectedMass().getUnit()).isEqualTo(SpreadingUnits.KILOGRAM);
        assertThat(TestRun.lasting(RATE, SPEED, TWO_MINUTES).testDistance().getUnit())
                .isEqualTo(SpreadingUnits.MILE);
        assertThat(TestRun.lasting(RATE, SPEED, TWO_MINUTES).expectedMass().getUnit())
                .isEqualTo(SpreadingUnits.POUND);
    }

    @Test
    void refusesValuesThatMakeNoRun() {
        assertRefused(
                "target rate must be greater than 0: 0 lb/mi",
                () -> TestRun.lasting(Amounts.of(0, SpreadingUnits.POUND_PER_MILE), SPEED, TWO_MINUTES));
        assertRefused(
                "test speed must be greater than 0: 0 mi/h",
                () -> TestRun.lasting(RATE, Amounts.of(0, SpreadingUnits.MILE_PER_HOUR), TWO_MINUTES));
        assertRefused(
                "run time must be greater than 0: -1 s",
                () -> TestRun.lasting(RATE, SPEED, Amounts.of(-1, SpreadingUnits.SECOND)));
        assertRefused(
                "test distance must be greater than 0: 0 mi",
                () -> TestRun.over(RATE, SPEED, Amounts.of(0, SpreadingUnits.MILE)));
        assertRefused(
                "target rate must be a finite application rate: 300 lb",
                () -> TestRun.lasting(wrongKind(pounds(300)), SPEED, TWO_MINUTES));
        assertRefused(
                "test speed must be a finite speed: NaN in \"mi/h\"",
                () -> TestRun.lasting(RATE, foreign(Double.NaN, SpreadingUnits.MILE_PER_HOUR), TWO_MINUTES));
    }

    @Test
    void takesARunTimeOrADistanceAndNotBoth() {
        assertRefused(
                "test run must be given either a run time or a test distance: both",
                () -> new TestRun(RATE, SPEED, Optional.of(TWO_MINUTES), Optional.of(MILE)));
        assertRefused(
                "test run must be given either a run time or a test distance: neither",
                () -> new TestRun(RATE, SPEED, Optional.empty(), Optional.empty()));
    }
}
