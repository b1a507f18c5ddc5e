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
    /** 260 lb/mi at 24 mi/h for 150 s. */
    private static final TestRun RUN = TestRun.lasting(
            Amounts.of(260, SpreadingUnits.POUND_PER_MILE),
            Amounts.of(24, SpreadingUnits.MILE_PER_HOUR),
            Amounts.of(150, SpreadingUnits.SECOND));

    /** The display showed 247 lb with 5.38 lb/rev in force; 251 lb were caught. */
    private static final Verification CHECK = VerificationCatch.of(
                    observed(AUGER_POINT, caught(251)), augerInForce(5.38), RUN)
            .indicated(pounds(247), pounds(1))
            .assess(Tolerance.percent(4));

    private static double percent(Quantity<Dimensionless> error) {
        return Amounts.in(error, SpreadingUnits.PERCENT);
    }

    @ParameterizedTest
    @CsvSource({"20, 180, 1", "24, 150, 1", "20, 90, 0.5"})
    void aTestDistanceIsTestSpeedTimesRunTime(double milesPerHour, double seconds, double miles) {
        TestRun run = TestRun.lasting(
                Amounts.of(260, SpreadingUnits.POUND_PER_MILE),
                Amounts.of(milesPerHour, SpreadingUnits.MILE_PER_HOUR),
                Amounts.of(seconds, SpreadingUnits.SECOND));

        assertThat(Amounts.in(run.testDistance(), SpreadingUnits.MILE)).isCloseTo(miles, within(1e-15));
    }

    @Test
    void indicated247AndCaught251IsACalibrationErrorOfMinus1Point5936Percent() {
        assertThat(percent(CHECK.calibrationError().orElseThrow())).isCloseTo((247.0 / 251 - 1) * 100, within(1e-12));
        assertThat(percent(CHECK.calibrationError().orElseThrow())).isCloseTo(-1.5936, within(0.00005));
    }

    @Test
    void indicated247Of260IsAShortfallOf13PoundsOr7Point5Seconds() {
        assertThat(Amounts.in(CHECK.expectedMass(), SpreadingUnits.POUND)).isCloseTo(260, within(1e-12));
        assertThat(percent(CHECK.deliveryError())).isCloseTo(-13.0 / 260 * 100, within(1e-12));
        assertThat(Amounts.in(CHECK.equivalentLostTime().orElseThrow(), SpreadingUnits.SECOND))
                .isCloseTo(7.5, within(1e-12));
    }

    @Test
    void aCalibrationOf5Point38IsCorrectedTo5Point47() {
        Correction correction = CHECK.proposedCorrection().orElseThrow();

        assertThat(5.38 * 251 / 247).isCloseTo(5.4671, within(0.00005));
        assertThat(correction.asFound()).isEqualTo(CalibrationFactor.parse("5.38 lb/rev"));
        assertThat(correction.toEnter()).isEqualTo(CalibrationFactor.parse("5.47 lb/rev"));
    }

    @Test
    void aHundredPulsesAreARevolution() {
        assertThat(pulses(100).revolutions(SENSOR)).isEqualTo(1);
    }

    // A gate at 3 in recorded as 13 in: FillSlipsTest.
}
