package org.gritwright.core;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.gritwright.core.Samples.AUGER_POINT;
import static org.gritwright.core.Samples.SENSOR;
import static org.gritwright.core.Samples.augerInForce;
import static org.gritwright.core.Samples.caught;
import static org.gritwright.core.Samples.observed;
import static org.gritwright.core.Samples.pounds;
import static org.gritwright.core.Samples.pulses;

import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import org.gritwright.core.calibration.CalibrationFactor;
import org.gritwright.core.judgement.Tolerance;
import org.gritwright.core.verification.Correction;
import org.gritwright.core.verification.TestRun;
import org.gritwright.core.verification.Verification;
import org.gritwright.core.verification.VerificationCatch;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Facts of the trade. All of them: common practice, no source. */
class TradeFactsTest {
    /** 300 lb/mi at 30 mi/h for 120 s. */
    private static final TestRun RUN = TestRun.lasting(
            Amounts.of(300, SpreadingUnits.POUND_PER_MILE),
            Amounts.of(30, SpreadingUnits.MILE_PER_HOUR),
            Amounts.of(120, SpreadingUnits.SECOND));

    /** The display showed 281 lb with 5.2864 lb/rev in force; 278 lb were caught. */
    private static final Verification CHECK = VerificationCatch.of(
                    observed(AUGER_POINT, caught(278)), augerInForce(5.2864), RUN)
            .indicated(pounds(281), pounds(1))
            .assess(Tolerance.percent(4));

    private static double percent(Quantity<Dimensionless> error) {
        return Amounts.in(error, SpreadingUnits.PERCENT);
    }

    @ParameterizedTest
    @CsvSource({"20, 180, 1", "30, 120, 1", "30, 60, 0.5"})
    void aTestDistanceIsTestSpeedTimesRunTime(double milesPerHour, double seconds, double miles) {
        TestRun run = TestRun.lasting(
                Amounts.of(300, SpreadingUnits.POUND_PER_MILE),
                Amounts.of(milesPerHour, SpreadingUnits.MILE_PER_HOUR),
                Amounts.of(seconds, SpreadingUnits.SECOND));

        assertThat(Amounts.in(run.testDistance(), SpreadingUnits.MILE)).isCloseTo(miles, within(1e-15));
    }

    @Test
    void indicated281AndCaught278IsACalibrationErrorOf1Point0791PerCent() {
        assertThat(percent(CHECK.calibrationError().orElseThrow())).isCloseTo((281.0 / 278 - 1) * 100, within(1e-12));
        assertThat(percent(CHECK.calibrationError().orElseThrow())).isCloseTo(1.0791, within(0.00005));
    }

    @Test
    void indicated281Of300IsAShortfallOf19PoundsOr7Point6Seconds() {
        assertThat(Amounts.in(CHECK.expectedMass(), SpreadingUnits.POUND)).isCloseTo(300, within(1e-12));
        assertThat(percent(CHECK.deliveryError())).isCloseTo(-19.0 / 300 * 100, within(1e-12));
        assertThat(Amounts.in(CHECK.equivalentLostTime().orElseThrow(), SpreadingUnits.SECOND))
                .isCloseTo(7.6, within(1e-12));
    }

    @Test
    void aCalibrationCorrectedTo5Point23Was5Point2864Before() {
        Correction correction = CHECK.proposedCorrection().orElseThrow();

        assertThat(5.23 * 281 / 278).isCloseTo(5.2864, within(0.00005));
        assertThat(correction.asFound()).isEqualTo(CalibrationFactor.parse("5.2864 lb/rev"));
        assertThat(correction.toEnter()).isEqualTo(CalibrationFactor.parse("5.23 lb/rev"));
    }

    @Test
    void aHundredPulsesAreARevolution() {
        assertThat(pulses(100).revolutions(SENSOR)).isEqualTo(1);
    }

    // A gate at 5 in recorded as 25 in: FillSlipsTest.
}
