package org.gritwright.core.verification;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatNullPointerException;
import static org.assertj.core.api.Assertions.within;
import static org.gritwright.core.Samples.SALT;
import static org.gritwright.core.Samples.assertRefused;
import static org.gritwright.core.Samples.augerInForce;
import static org.gritwright.core.Samples.augerWith;
import static org.gritwright.core.Samples.caught;
import static org.gritwright.core.Samples.pounds;
import static org.gritwright.core.Samples.pulses;
import static org.gritwright.core.Samples.revolutionsByEye;

import java.util.Optional;
import org.gritwright.core.calibration.CalibrationFactor;
import org.gritwright.core.calibration.CalibrationInForce;
import org.gritwright.core.judgement.Tolerance;
import org.gritwright.core.judgement.Verdict;
import org.gritwright.core.metering.NoSensor;
import org.junit.jupiter.api.Test;

class VerificationCatchTest {
    private static final CalibrationInForce WITHOUT_SENSOR = new CalibrationInForce(
            augerWith(NoSensor.onDriveShaft()),
            SALT,
            Optional.empty(),
            CalibrationFactor.parse("6 lb/rev"),
            Optional.empty());

    @Test
    void revolutionsAreCountedOrElseTheDisplayedMassByTheCalibrationInForce() {
        VerificationCatch open = Runs.openLoop(290);

        assertThat(open.revolutions()).isEmpty();
        assertThat(open.counted(pulses(5000)).revolutions()).hasValue(50);
        assertThat(open.indicated(pounds(300), pounds(1)).revolutions().orElseThrow())
                .isCloseTo(50, within(1e-13));
        assertThat(open.indicated(pounds(312), pounds(1)).counted(pulses(5000)).revolutions())
                .hasValue(50);
    }

    @Test
    void aCountByEyeNeedsNoSensor() {
        assertThat(VerificationCatch.of(WITHOUT_SENSOR, Runs.seconds(120), caught(290))
                        .counted(revolutionsByEye(50))
                        .assess(Tolerance.percent(4))
                        .verdict())
                .isEqualTo(Verdict.WITHIN_TOLERANCE);
    }

    @Test
    void pulsesNeedASensor() {
        assertRefused(
                "count must be revolutions or shaft speed × time, as the drive has no pulse sensor: 5000 pulse",
                () -> VerificationCatch.of(WITHOUT_SENSOR, Runs.seconds(120), caught(290))
                        .counted(pulses(5000)));
    }

    @Test
    void aDisplayedMassAndItsStepAreMoreThanNothing() {
        assertRefused(
                "indicated mass must be greater than 0: 0 lb",
                () -> Runs.openLoop(290).indicated(pounds(0), pounds(1)));
        assertRefused(
                "resolution of the indicated mass must be greater than 0: 0 lb",
                () -> Runs.openLoop(290).indicated(pounds(300), pounds(0)));
    }

    @Test
    void runAndMassAreGiven() {
        assertThatNullPointerException()
                .isThrownBy(() -> VerificationCatch.of(augerInForce(6), null, caught(290)))
                .withMessage("run");
        assertThatNullPointerException()
                .isThrownBy(() -> VerificationCatch.of(augerInForce(6), Runs.seconds(120), null))
                .withMessage("caught");
    }
}
