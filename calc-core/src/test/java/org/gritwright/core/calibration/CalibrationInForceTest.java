package org.gritwright.core.calibration;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatNullPointerException;
import static org.assertj.core.api.Assertions.within;
import static org.gritwright.core.Samples.AUGER;
import static org.gritwright.core.Samples.CHAIN;
import static org.gritwright.core.Samples.SALT;
import static org.gritwright.core.Samples.assertRefused;
import static org.gritwright.core.Samples.augerInForce;
import static org.gritwright.core.Samples.augerWith;
import static org.gritwright.core.Samples.inches;

import java.util.Optional;
import org.gritwright.core.metering.NoSensor;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.junit.jupiter.api.Test;

class CalibrationInForceTest {
    private static final CalibrationFactor FACTOR = CalibrationFactor.parse("5.23 lb/rev");

    @Test
    void isWhatTheTruckBelievesIn() {
        assertThat(augerInForce(5.23).kilogramsPerRevolution()).isCloseTo(5.23 * 0.45359237, within(1e-15));
    }

    @Test
    void anotherValueLeavesAllElse() {
        assertThat(augerInForce(5.23).withFactor(CalibrationFactor.parse("6 lb/rev")))
                .isEqualTo(augerInForce(6));
    }

    @Test
    void refusesAFactorByPulseWithoutASensor() {
        assertRefused(
                "calibration must be by revolution, as the drive has no pulse sensor: in pulse/lb",
                () -> new CalibrationInForce(
                        augerWith(NoSensor.onDriveShaft()),
                        SALT,
                        Optional.empty(),
                        CalibrationFactor.parse("20 pulse/lb"),
                        Optional.empty()));
    }

    @Test
    void refusesAnOpeningThatDoesNotGoWithTheGate() {
        assertRefused(
                "gate opening must be given for gate type sliding-gate, version 1: nothing",
                () -> new CalibrationInForce(CHAIN, SALT, Optional.empty(), FACTOR, Optional.empty()));
        assertRefused(
                "gate opening must be left out for gate type no-gate, version 1: 4 in",
                () -> new CalibrationInForce(AUGER, SALT, Optional.of(inches(4)), FACTOR, Optional.empty()));
    }

    @Test
    void refusesADisplayStepInAnotherUnit() {
        assertRefused(
                "display resolution must be greater than 0 and in the unit of 5.23 lb/rev: 0.1 pulse/lb",
                () -> new CalibrationInForce(
                        AUGER,
                        SALT,
                        Optional.empty(),
                        FACTOR,
                        Optional.of(Amounts.of(0.1, SpreadingUnits.PULSE_PER_POUND))));
        assertRefused(
                "display resolution must be greater than 0 and in the unit of 2 kg/rev: 0.01 lb/rev",
                () -> augerInForce(5.23).withFactor(CalibrationFactor.parse("2 kg/rev")));
    }

    @Test
    void aMaterialIsGiven() {
        assertThatNullPointerException()
                .isThrownBy(() -> new CalibrationInForce(AUGER, null, Optional.empty(), FACTOR, Optional.empty()))
                .withMessage("material");
    }
}
