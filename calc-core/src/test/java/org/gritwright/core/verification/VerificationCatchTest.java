package org.gritwright.core.verification;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatNullPointerException;
import static org.assertj.core.api.Assertions.within;
import static org.gritwright.core.Samples.DAY;
import static org.gritwright.core.Samples.SCALE;
import static org.gritwright.core.Samples.assertRefused;
import static org.gritwright.core.Samples.augerInForce;
import static org.gritwright.core.Samples.augerPoint;
import static org.gritwright.core.Samples.caught;
import static org.gritwright.core.Samples.chainAt;
import static org.gritwright.core.Samples.observed;
import static org.gritwright.core.Samples.pounds;
import static org.gritwright.core.Samples.pulses;
import static org.gritwright.core.Samples.revolutionsByEye;

import java.util.Optional;
import org.gritwright.core.calibration.CalibrationFactor;
import org.gritwright.core.calibration.CalibrationInForce;
import org.gritwright.core.judgement.Tolerance;
import org.gritwright.core.judgement.Verdict;
import org.gritwright.core.metering.NoSensor;
import org.gritwright.core.observation.Observation;
import org.gritwright.core.weighing.CaughtMass;
import org.gritwright.core.weighing.Weighing;
import org.junit.jupiter.api.Test;

class VerificationCatchTest {
    private static final CalibrationInForce WITHOUT_SENSOR = CalibrationInForce.of(
            augerPoint(NoSensor.onDriveShaft()), CalibrationFactor.parse("6 lb/rev"), Optional.empty());

    @Test
    void revolutionsAreCountedOrElseTheDisplayedMassByTheCalibrationInForce() {
        VerificationCatch open = Runs.openLoop(290);

        assertThat(open.revolutions()).isEmpty();
        assertThat(Runs.counted(5000, 290).revolutions()).hasValue(50);
        assertThat(open.indicated(pounds(300), pounds(1)).revolutions().orElseThrow())
                .isCloseTo(50, within(1e-13));
        assertThat(Runs.counted(5000, 290).indicated(pounds(312), pounds(1)).revolutions())
                .hasValue(50);
    }

    @Test
    void aCountByEyeNeedsNoSensor() {
        assertThat(Runs.of(WITHOUT_SENSOR, Runs.seconds(120), caught(290), revolutionsByEye(50))
                        .assess(Tolerance.percent(4))
                        .verdict())
                .isEqualTo(Verdict.WITHIN_TOLERANCE);
    }

    @Test
    void pulsesNeedASensor() {
        assertRefused(
                "count must be revolutions or shaft speed × time, as the drive has no pulse sensor: 5000 pulse",
                () -> Runs.of(WITHOUT_SENSOR, Runs.seconds(120), caught(290), pulses(5000)));
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
    void theCalibrationInForceIsForThePointOfTheCatch() {
        Observation atFour = observed(chainAt(4), caught(290));
        CalibrationInForce forThree =
                CalibrationInForce.of(chainAt(3), CalibrationFactor.parse("6 lb/rev"), Optional.empty());

        assertRefused(
                "calibration in force must be for the catch's point, salt at 4 in: for salt at 3 in",
                () -> VerificationCatch.of(atFour, forThree, Runs.seconds(120)));
        assertThat(VerificationCatch.of(observed(chainAt(3), caught(290)), forThree, Runs.seconds(120))
                        .point())
                .isEqualTo(chainAt(3));
    }

    @Test
    void aRunIsGiven() {
        assertThatNullPointerException()
                .isThrownBy(() -> Runs.of(augerInForce(6), null, caught(290)))
                .withMessage("run");
    }

    @Test
    void theNumbersOfADischargeAreItsWeighingsToo() {
        CaughtMass caught = CaughtMass.of(SCALE, DAY, new Weighing("A", pounds(300), pounds(10)));
        VerificationCatch.Numbers numbers = Runs.of(augerInForce(6), Runs.seconds(120), caught, pulses(5000))
                .numbers();

        // A pound is 0.45359237 kg by definition.
        assertThat(numbers.readings())
                .satisfiesExactly(
                        gross -> assertThat(gross).isCloseTo(300 * 0.45359237, within(1e-12)),
                        tare -> assertThat(tare).isCloseTo(10 * 0.45359237, within(1e-12)));
        assertThat(numbers.expectedKilograms()).isCloseTo(300 * 0.45359237, within(1e-12));
        assertThat(numbers.counted()).hasValue(50);
    }
}
