package org.gritwright.core.metering;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.gritwright.core.Samples.assertRefused;

import org.gritwright.core.LiquidSamples;
import org.gritwright.core.Samples;
import org.gritwright.core.spi.Setting;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.junit.jupiter.api.Test;

class LiquidMeteringTest {
    private static final double GALLON = 0.003785411784;
    private static final Setting TWO_INCHES = Setting.height(Amounts.of(2, SpreadingUnits.INCH));

    private static ShaftSensor sensorAt(double turnsPerTurnOfThePump) {
        return new ShaftSensor(
                Amounts.of(100, SpreadingUnits.PULSE_PER_REVOLUTION),
                Amounts.of(turnsPerTurnOfThePump, SpreadingUnits.ONE));
    }

    @Test
    void aShaftThatTurnsThreeTimesAsFastAsThePumpStandsForAThirdOfItsDisplacement() {
        assertThat(LiquidSamples.pump(sensorAt(1)).sweptCubicMetersPerRevolution(Setting.none()))
                .isCloseTo(0.05 * GALLON, within(1e-15));
        assertThat(LiquidSamples.pump(sensorAt(3)).sweptCubicMetersPerRevolution(Setting.none()))
                .isCloseTo(0.05 * GALLON / 3, within(1e-15));
    }

    @Test
    void aPulseOfAFlowMeterStandsWhereARevolutionStands() {
        FlowMetering metering = LiquidSamples.METER;

        assertThat(metering.sweptCubicMetersPerRevolution(Setting.none())).isCloseTo(GALLON / 1200, within(1e-15));
        assertThat(metering.pulsesPerVolume().getUnit()).isEqualTo(SpreadingUnits.PULSE_PER_US_GALLON);
        assertThat(metering.pulsesPerVolume().getValue().doubleValue()).isCloseTo(1200, within(1e-9));
        assertThat(metering.feedback().pulsesPerTurn()).hasValue(1);
        assertThat(metering.feedback().gearRatio()).isEqualTo(Amounts.of(1, SpreadingUnits.ONE));
        assertThat(metering.feedback()).hasToString("flow meter");
    }

    @Test
    void whatMetersALiquidIsNoConveyor() {
        assertThat(LiquidSamples.METER.isForLiquids()).isTrue();
        assertThat(LiquidSamples.METER.hasShaft()).isFalse();
        assertThat(LiquidSamples.pump(Samples.SENSOR).isForLiquids()).isTrue();
        assertThat(LiquidSamples.pump(Samples.SENSOR).hasShaft()).isTrue();
        assertThat(Samples.AUGER.isForLiquids()).isFalse();
        assertThat(Samples.AUGER.hasShaft()).isTrue();
    }

    /** 0.5 and 50 gal/min, limits included; its own pulses don't matter. */
    @Test
    void aFlowMeterIsGoodForItsFlows() {
        double perMinute = GALLON / 60;
        assertThat(LiquidSamples.METER.isGoodFor(0.5 * perMinute, 0)).hasValue(true);
        assertThat(LiquidSamples.METER.isGoodFor(0.49 * perMinute, 10)).hasValue(false);
        assertThat(LiquidSamples.METER.isGoodFor(50 * perMinute, 0)).hasValue(true);
        assertThat(LiquidSamples.METER.isGoodFor(50.1 * perMinute, 10)).hasValue(false);
    }

    /** Of a shaft that turns twice as fast as the pump, whose table goes from 60 to 120 rev/min. */
    @Test
    void aPumpIsGoodForItsOwnSpeeds() {
        PumpMetering pump = new PumpMetering(LiquidSamples.tablePump(60, 120), sensorAt(2));
        assertThat(pump.isGoodFor(0, 2)).hasValue(true);
        assertThat(pump.isGoodFor(1, 1.99)).hasValue(false);
        assertThat(pump.isGoodFor(0, 4)).hasValue(true);
        assertThat(pump.isGoodFor(1, 4.01)).hasValue(false);
        assertThat(LiquidSamples.pump(Samples.SENSOR).isGoodFor(1, 1e6)).hasValue(true);
        assertThat(Samples.AUGER.isGoodFor(1, 1)).isEmpty();
    }

    @Test
    void thereIsNothingToSet() {
        for (Metering metering : new Metering[] {LiquidSamples.METER, LiquidSamples.pump(Samples.SENSOR)}) {
            assertThat(metering.accepts(TWO_INCHES)).isFalse();
            assertThat(metering.isSettable()).isFalse();
            assertThat(metering.isMeteredBySetting()).isFalse();
            assertThat(metering.meteringArea(Setting.none())).isEmpty();
            assertRefused(
                    "metering must be one with a conveyor that an adjustable gate meters: " + metering,
                    metering::sweptByOpening);
        }
        assertRefused(
                "gate setting must be left out for a flow meter, which has nothing to set: 2 in",
                () -> LiquidSamples.METER.sweptCubicMetersPerRevolution(TWO_INCHES));
        assertRefused(
                "gate setting must be left out for a pump, which has nothing to set: 2 in",
                () -> LiquidSamples.pump(Samples.SENSOR).sweptCubicMetersPerRevolution(TWO_INCHES));
    }

    @Test
    void aFlowMeterMetersByItselfAndNotThroughAPump() {
        assertRefused(
                "feedback of a pump must be that of its shaft, as a flow meter meters by itself: a flow meter's",
                () -> LiquidSamples.pump(new MeterPulses()));
    }

    @Test
    void theySayWhatTheyAre() {
        assertThat(LiquidSamples.METER).hasToString(LiquidSamples.METER.meter().toString());
        assertThat(LiquidSamples.pump(Samples.SENSOR).toString())
                .startsWith("displacement-pump, version 1 {")
                .endsWith("; sensor with 100 pulse/rev, gear ratio 1");
    }
}
