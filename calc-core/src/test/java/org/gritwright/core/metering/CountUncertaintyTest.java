package org.gritwright.core.metering;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.gritwright.core.Samples.SENSOR;
import static org.gritwright.core.Samples.assertRefused;
import static org.gritwright.core.Samples.pulses;
import static org.gritwright.core.Samples.revolutionsByEye;

import java.util.Optional;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.junit.jupiter.api.Test;

class CountUncertaintyTest {
    @Test
    void pulsesAreUncertainByOneEitherWayHoweverMany() {
        // 100 pulses a revolution
        assertThat(pulses(2000).uncertaintyRevolutions(SENSOR)).hasValueCloseTo(0.01 / Math.sqrt(6), within(1e-15));
        assertThat(pulses(20).uncertaintyRevolutions(SENSOR)).hasValueCloseTo(0.01 / Math.sqrt(6), within(1e-15));
    }

    @Test
    void counterReadingsAreAsUncertainAsTheirPulses() {
        ShaftCount rolledOver = new ShaftCount.CounterReadings(
                Amounts.of(990, SpreadingUnits.PULSE),
                Amounts.of(10, SpreadingUnits.PULSE),
                Optional.of(Amounts.of(1000, SpreadingUnits.PULSE)));

        assertThat(rolledOver.uncertaintyRevolutions(SENSOR)).hasValueCloseTo(0.01 / Math.sqrt(6), within(1e-15));
        assertThat(rolledOver.isInPulses()).isTrue();
    }

    @Test
    void aCountByEyeIsAsUncertainAsItsObserverSays() {
        assertThat(revolutionsByEye(20).uncertaintyRevolutions(NoSensor.onDriveShaft()))
                .hasValue(0.1);
        assertThat(revolutionsByEye(20).isInPulses()).isFalse();
    }

    @Test
    void ofASpeedAndATimeNobodyKnows() {
        ShaftCount count = new ShaftCount.SpeedTimesTime(
                Amounts.of(30, SpreadingUnits.REVOLUTION_PER_MINUTE), Amounts.of(60, SpreadingUnits.SECOND));

        assertThat(count.uncertaintyRevolutions(SENSOR)).isEmpty();
        assertThat(count.isInPulses()).isFalse();
    }

    @Test
    void pulsesNeedASensor() {
        assertRefused(
                "count must be revolutions or shaft speed × time, as the drive has no pulse sensor: 20 pulse",
                () -> pulses(20).uncertaintyRevolutions(NoSensor.onDriveShaft()));
    }
}
