package org.gritwright.core.metering;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatNullPointerException;
import static org.assertj.core.api.Assertions.within;
import static org.gritwright.core.Samples.AUGER;
import static org.gritwright.core.Samples.CHAIN;
import static org.gritwright.core.Samples.SENSOR;
import static org.gritwright.core.Samples.assertRefused;
import static org.gritwright.core.Samples.augerWith;
import static org.gritwright.core.Samples.inches;

import java.util.Map;
import org.gritwright.core.spi.Setting;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.junit.jupiter.api.Test;

class SpreaderTest {
    @Test
    void aShaftThatTurnsFourTimesAsFastSweepsAQuarterPerRevolution() {
        Spreader geared = augerWith(new ShaftSensor(
                Amounts.of(100, SpreadingUnits.PULSE_PER_REVOLUTION), Amounts.of(4, SpreadingUnits.ONE)));

        double swept = AUGER.sweptCubicMetersPerRevolution(Setting.none());
        assertThat(geared.sweptCubicMetersPerRevolution(Setting.none())).isCloseTo(swept / 4, within(1e-18));
    }

    @Test
    void aMeteredConveyorNeedsAGate() {
        assertRefused(
                "gate type must be one with an opening, as a gate meters conveyor type drag-chain, version 1:"
                        + " no-gate, version 1",
                () -> new Spreader(CHAIN.conveyor(), Gate.of(new NoGate(), Map.of()), SENSOR));
    }

    @Test
    void aGateThatCanNotBeSetMetersAsWell() {
        Spreader fixed = new Spreader(
                CHAIN.conveyor(), Gate.of(new FixedGate(), Map.of("width", inches(24), "height", inches(4))), SENSOR);

        assertThat(fixed.sweptCubicMetersPerRevolution(Setting.none()))
                .isCloseTo(CHAIN.sweptCubicMetersPerRevolution(Setting.of(inches(4))), within(1e-17));
        assertRefused(
                "gate setting must be left out for gate type fixed-opening, version 1: 4 in",
                () -> fixed.sweptCubicMetersPerRevolution(Setting.of(inches(4))));
    }

    @Test
    void tellsTheOpenAreaWhateverTheGate() {
        assertThat(CHAIN.openArea(Setting.of(inches(4))).getUnit()).isEqualTo(SpreadingUnits.SQUARE_METER);
        assertThat(CHAIN.openArea(Setting.of(inches(4))).getValue().doubleValue())
                .isCloseTo(0.6096 * 0.1016, within(1e-16));
        assertThat(CHAIN.openArea(Setting.of(inches(0))).getValue().doubleValue())
                .isZero();
        assertThat(AUGER.openArea(Setting.none()).getValue().doubleValue()).isZero();
        assertRefused(
                "gate setting must be given for gate type sliding-gate, version 1: nothing",
                () -> CHAIN.openArea(Setting.none()));
    }

    @Test
    void acceptsWhatItsGateAccepts() {
        assertThat(CHAIN.accepts(Setting.of(inches(4)))).isTrue();
        assertThat(CHAIN.accepts(Setting.none())).isFalse();
        assertThat(AUGER.accepts(Setting.none())).isTrue();
        assertThat(AUGER.accepts(Setting.of(inches(4)))).isFalse();
        assertThat(CHAIN.isSettable()).isTrue();
        assertThat(AUGER.isSettable()).isFalse();
    }

    @Test
    void aGateMetersByItsSettingIfItCanBeSetAndMetersTheConveyor() {
        Spreader fixed = new Spreader(
                CHAIN.conveyor(), Gate.of(new FixedGate(), Map.of("width", inches(24), "height", inches(4))), SENSOR);
        Spreader gateThatMetersNothing = new Spreader(AUGER.conveyor(), CHAIN.gate(), SENSOR);

        assertThat(CHAIN.isMeteredBySetting()).isTrue();
        assertThat(fixed.isMeteredBySetting()).isFalse();
        assertThat(gateThatMetersNothing.isMeteredBySetting()).isFalse();
        assertThat(CHAIN.meteringArea(Setting.of(inches(4)))).contains(CHAIN.openArea(Setting.of(inches(4))));
        assertThat(fixed.meteringArea(Setting.none())).contains(fixed.openArea(Setting.none()));
        assertThat(gateThatMetersNothing.meteringArea(Setting.of(inches(4)))).isEmpty();
    }

    @Test
    void aClosedGateSweepsNothing() {
        assertRefused(
                "gate setting must be one at which the conveyor sweeps a volume: 0 in",
                () -> CHAIN.sweptCubicMetersPerRevolution(Setting.of(inches(0))));
    }

    @Test
    void feedbackIsGiven() {
        assertThatNullPointerException()
                .isThrownBy(() -> new Spreader(AUGER.conveyor(), AUGER.gate(), null))
                .withMessage("feedback");
    }

    @Test
    void isEqualWhenTypesParametersAndFeedbackAre() {
        assertThat(augerWith(SENSOR)).isEqualTo(AUGER).hasSameHashCodeAs(AUGER);
        assertThat(augerWith(NoSensor.onDriveShaft())).isNotEqualTo(AUGER);
        assertThat(CHAIN).isNotEqualTo(AUGER);
        assertThat(CHAIN.conveyor()).doesNotHaveSameHashCodeAs(AUGER.conveyor());
        assertThat(CHAIN.conveyor()).isNotEqualTo(AUGER.conveyor()).isNotEqualTo(CHAIN.gate());
        assertThat(CHAIN.gate()).isNotEqualTo(AUGER.gate()).isNotEqualTo(CHAIN.conveyor());
        assertThat(Gate.of(new SlidingGate(), Map.of("width", inches(23)))).isNotEqualTo(CHAIN.gate());
        assertThat(Conveyor.of(
                        new DragChain(),
                        Map.of("teeth", Amounts.of(7, SpreadingUnits.ONE), "chainPitch", inches(2.609))))
                .isNotEqualTo(CHAIN.conveyor());
    }

    @Test
    void partsSayWhatTheyAre() {
        assertThat(CHAIN.conveyor()).hasToString("drag-chain, version 1 {barShare=0 %, chainPitch=2.609 in, teeth=6}");
        assertThat(CHAIN.gate())
                .hasToString("sliding-gate, version 1 {deadOpening=0 mm, highestOpening=1 m, width=24 in}");
        assertThat(CHAIN.gate().parameters().get(SlidingGate.WIDTH)).isEqualTo(inches(24));
        assertThat(CHAIN.conveyor().parameters().get(DragChain.CHAIN_PITCH)).isEqualTo(inches(2.609));
    }
}
