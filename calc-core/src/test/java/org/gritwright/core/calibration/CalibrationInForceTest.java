package org.gritwright.core.calibration;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.gritwright.core.Samples.AUGER_POINT;
import static org.gritwright.core.Samples.DAY;
import static org.gritwright.core.Samples.assertRefused;
import static org.gritwright.core.Samples.augerInForce;
import static org.gritwright.core.Samples.augerPoint;

import java.util.Optional;
import org.gritwright.core.metering.NoSensor;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.junit.jupiter.api.Test;

class CalibrationInForceTest {
    private static final CalibrationFactor FACTOR = CalibrationFactor.parse("5.41 lb/rev");

    @Test
    void isWhatTheTruckBelievesIn() {
        assertThat(augerInForce(5.41).kilogramsPerRevolution()).isCloseTo(5.41 * 0.45359237, within(1e-15));
    }

    @Test
    void anotherValueLeavesAllElse() {
        assertThat(augerInForce(5.41).withFactor(CalibrationFactor.parse("6 lb/rev")))
                .isEqualTo(augerInForce(6));
    }

    @Test
    void refusesAFactorByPulseWithoutASensor() {
        assertRefused(
                "calibration must be by revolution, as the drive has no pulse sensor: in pulse/lb",
                () -> CalibrationInForce.of(
                        augerPoint(NoSensor.onDriveShaft()), CalibrationFactor.parse("20 pulse/lb"), Optional.empty()));
    }

    @Test
    void refusesADisplayStepInAnotherUnit() {
        assertRefused(
                "display resolution must be greater than 0 and in the unit of 5.41 lb/rev: 0.1 pulse/lb",
                () -> CalibrationInForce.of(
                        AUGER_POINT, FACTOR, Optional.of(Amounts.of(0.1, SpreadingUnits.PULSE_PER_POUND))));
        assertRefused(
                "display resolution must be greater than 0 and in the unit of 2 kg/rev: 0.01 lb/rev",
                () -> augerInForce(5.41).withFactor(CalibrationFactor.parse("2 kg/rev")));
    }

    @Test
    void anotherValueLeavesSinceAndSlotToo() {
        CalibrationInForce held = augerInForce(5.41)
                .since(Since.of(DAY))
                .inSlot("program 2")
                .withFactor(CalibrationFactor.parse("6 lb/rev"));

        assertThat(held.since()).contains(Since.of(DAY));
        assertThat(held.slot()).contains("program 2");
        assertThat(held)
                .isEqualTo(augerInForce(6).inSlot("program 2").since(Since.of(DAY)))
                .isNotEqualTo(augerInForce(6));
    }
}
