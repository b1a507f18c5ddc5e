package org.gritwright.core.spi;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.gritwright.core.Samples.assertRefused;
import static org.gritwright.units.SpreadingUnits.LITER_PER_MINUTE;
import static org.gritwright.units.SpreadingUnits.LITER_PER_SECOND;
import static org.gritwright.units.SpreadingUnits.MILLILITER_PER_PULSE;

import java.util.Optional;
import javax.measure.Quantity;
import org.gritwright.core.Shipped;
import org.gritwright.units.Amounts;
import org.gritwright.units.quantity.FlowRate;
import org.gritwright.units.quantity.VolumePerPulse;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

class PulseOutputTest {
    private static final Quantity<VolumePerPulse> TWO = Amounts.of(2, MILLILITER_PER_PULSE);
    private static final PulseOutput ANY_FLOW = PulseOutput.constant(TWO);
    private static final PulseOutput BETWEEN = ANY_FLOW.within(liters(6), liters(120));

    private static Quantity<FlowRate> liters(double perMinute) {
        return Amounts.of(perMinute, LITER_PER_MINUTE);
    }

    @Test
    void aPulseIsTheSameVolumeAtAnyFlow() {
        assertThat(ANY_FLOW.volume().cubicMetersPerPulse(0)).isEqualTo(2e-6);
        assertThat(ANY_FLOW.volume().cubicMetersPerPulse(1)).isEqualTo(2e-6);
        assertThat(ANY_FLOW.lowestFlow()).isEqualTo(liters(0));
        assertThat(ANY_FLOW.highestFlow()).isEmpty();
    }

    @Test
    void aFlowWithinTheLimitsIsANumber() {
        assertThat(BETWEEN.number(liters(6))).isEqualTo(1e-4);
        assertThat(BETWEEN.number(Amounts.of(2, LITER_PER_SECOND))).isEqualTo(2e-3);
        assertThat(BETWEEN.number(1e-3)).isCloseTo(1e-3, within(1e-18));
        assertThat(BETWEEN.number(2e-3 * (1 + 1e-14))).isEqualTo(Amounts.si(FlowRate.class, liters(120)));
    }

    @Test
    @Tag("locale")
    void aFlowOutsideTheLimitsIsRefused() {
        assertRefused("flow must be within 6 L/min to 120 L/min: 5.9 L/min", () -> BETWEEN.number(liters(5.9)));
        assertRefused("flow must be within 6 L/min to 120 L/min: 121 L/min", () -> BETWEEN.number(liters(121)));
        assertRefused("flow must be at least 0 L/min: -1 L/min", () -> ANY_FLOW.number(liters(-1)));
        assertRefused("flow must be finite: Infinity", () -> ANY_FLOW.number(Double.POSITIVE_INFINITY));
    }

    @Test
    void nominalVolumeAndLimitsAreChecked() {
        assertRefused(
                "nominal volume per pulse must be greater than 0: 0 mL/pulse",
                () -> PulseOutput.constant(Amounts.of(0, MILLILITER_PER_PULSE)));
        assertRefused(
                "nominal volume per pulse must be greater than 0: 0 mL/pulse",
                () -> PulseOutput.of(Amounts.of(0, MILLILITER_PER_PULSE), flow -> 1));
        assertRefused("lowest flow must be 0 or more: -1 L/min", () -> ANY_FLOW.within(liters(-1), liters(6)));
        assertRefused("highest flow must be greater than 0: 0 L/min", () -> ANY_FLOW.within(liters(0), liters(0)));
        assertRefused("highest flow must be at least 6 L/min: 5 L/min", () -> ANY_FLOW.within(liters(6), liters(5)));
        assertRefused(
                "flow must be at least 6 L/min: 5 L/min",
                () -> ANY_FLOW.from(liters(6)).number(liters(5)));
        assertThat(BETWEEN.from(liters(7)).highestFlow()).isEqualTo(Optional.of(liters(120)));
        assertRefused("highest flow must be at least 121 L/min: 120 L/min", () -> BETWEEN.from(liters(121)));
    }

    @Test
    @Tag("locale")
    void arrivesAsItWasAndPrintsAsPeopleWriteIt() {
        PulseOutput arrived = Shipped.copyOf(BETWEEN);

        assertThat(arrived.nominal()).isEqualTo(TWO);
        assertThat(arrived.lowestFlow()).isEqualTo(liters(6));
        assertThat(arrived.highestFlow()).isEqualTo(Optional.of(liters(120)));
        assertThat(arrived.volume().cubicMetersPerPulse(1e-3)).isEqualTo(2e-6);
        assertThat(Shipped.copyOf(ANY_FLOW).highestFlow()).isEmpty();
        assertThat(arrived).hasToString("2 mL/pulse from 6 L/min to 120 L/min");
        assertThat(ANY_FLOW).hasToString("2 mL/pulse from 0 L/min");
    }
}
