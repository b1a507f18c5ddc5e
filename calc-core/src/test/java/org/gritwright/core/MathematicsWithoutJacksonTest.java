package org.gritwright.core;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.gritwright.core.Samples.AUGER_POINT;
import static org.gritwright.core.Samples.augerInForce;
import static org.gritwright.core.Samples.butForUnknown;
import static org.gritwright.core.Samples.caught;
import static org.gritwright.core.Samples.codes;
import static org.gritwright.core.Samples.goodAugerCatches;
import static org.gritwright.core.Samples.observed;
import static org.gritwright.core.Samples.pulses;

import org.gritwright.core.calibration.Calibration;
import org.gritwright.core.calibration.CalibrationFactor;
import org.gritwright.core.calibration.CalibrationInForce;
import org.gritwright.core.finding.FindingCode;
import org.gritwright.core.judgement.Tolerance;
import org.gritwright.core.judgement.Verdict;
import org.gritwright.core.verification.Correction;
import org.gritwright.core.verification.TestRun;
import org.gritwright.core.verification.Verification;
import org.gritwright.core.verification.VerificationCatch;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** Runs on a class path without Jackson only: the mathematics must not need it. */
@Tag("no-jackson")
class MathematicsWithoutJacksonTest {
    private static final TestRun RUN = TestRun.lasting(
            Amounts.of(360, SpreadingUnits.POUND_PER_MILE),
            Amounts.of(25, SpreadingUnits.MILE_PER_HOUR),
            Amounts.of(120, SpreadingUnits.SECOND));

    @BeforeEach
    void thereIsNoJackson() {
        assertThatExceptionOfType(ClassNotFoundException.class)
                .isThrownBy(() -> Class.forName("com.fasterxml.jackson.core.JsonFactory"));
    }

    @Test
    void aCalibrationIsMadeVerifiedCorrectedAndConfirmed() {
        Calibration calibration = Calibration.from(goodAugerCatches());
        assertThat(calibration.dischargePerRevolution().degreesOfFreedom().orElseThrow())
                .isGreaterThan(2);
        assertThat(calibration.findings()).isEmpty();

        CalibrationInForce inForce = calibration
                .entered(Amounts.of(0.1, SpreadingUnits.POUND_PER_REVOLUTION))
                .withFactor(CalibrationFactor.parse("6.3 lb/rev"));
        Verification verification = VerificationCatch.of(
                        observed(AUGER_POINT, caught(296)).counted(pulses(5000)), inForce, RUN)
                .assess(Tolerance.percent(4));
        assertThat(verification.verdict()).isEqualTo(Verdict.OUTSIDE_TOLERANCE);
        assertThat(codes(verification.findings())).contains(FindingCode.TOLERANCE_MISSED);

        Correction correction = verification.proposedCorrection().orElseThrow();
        assertThat(correction.toEnter()).isEqualTo(CalibrationFactor.parse("5.9 lb/rev"));
        Verification proof = VerificationCatch.of(
                        observed(AUGER_POINT, caught(297)).counted(pulses(5030)),
                        inForce.withFactor(correction.toEnter()),
                        RUN)
                .assess(Tolerance.percent(4));
        assertThat(correction.entered(correction.toEnter()).confirmedBy(proof).status())
                .isEqualTo(Correction.Status.CONFIRMED);
    }

    @Test
    void findingsHaveTheirSentences() {
        assertThat(butForUnknown(VerificationCatch.of(observed(AUGER_POINT, caught(296)), augerInForce(6), RUN)
                        .assess(Tolerance.percent(4))
                        .findings()))
                .extracting(finding -> finding.sentence())
                .containsExactly("Nothing was counted or displayed, so only what was caught can be compared with what"
                        + " was expected.");
    }
}
