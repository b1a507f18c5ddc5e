package org.gritwright.core.metering;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.gritwright.core.Samples.assertRefused;
import static org.gritwright.core.Samples.inches;

import java.util.Map;
import java.util.Optional;
import org.gritwright.core.spi.Setting;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.junit.jupiter.api.Test;

class SlidingGateTest {
    private static final Gate GATE =
            Gate.of(new SlidingGate(), Map.of("width", inches(24), "highestOpening", inches(12)));

    @Test
    void leavesARectangle() {
        assertThat(GATE.squareMeters(Setting.of(inches(4)))).isCloseTo(0.6096 * 0.1016, within(1e-16));
        assertThat(GATE.squareMeters(Setting.of(inches(0)))).isZero();
    }

    @Test
    void acceptsOpeningsUpToItsHighest() {
        assertThat(GATE.isAdjustable()).isTrue();
        assertThat(GATE.accepts(Setting.of(inches(0)))).isTrue();
        assertThat(GATE.accepts(Setting.of(inches(12)))).isTrue();
        assertThat(GATE.accepts(Setting.of(Amounts.of(304.8, SpreadingUnits.MILLIMETER))))
                .isTrue();
        assertThat(GATE.accepts(Setting.of(inches(12.1)))).isFalse();
        assertThat(GATE.accepts(Setting.mark(1))).isFalse();
        assertThat(GATE.accepts(Setting.percent(40))).isFalse();
        assertThat(GATE.accepts(Setting.none())).isFalse();
    }

    @Test
    void opensToOneMeterIfNothingElseIsSaid() {
        Gate gate = Gate.of(new SlidingGate(), Map.of("width", inches(24)));

        assertThat(gate.accepts(Setting.of(Amounts.of(1, SpreadingUnits.METER))))
                .isTrue();
        assertThat(gate.accepts(Setting.of(Amounts.of(1.01, SpreadingUnits.METER))))
                .isFalse();
    }

    private static Gate dead(double inches) {
        return Gate.of(
                new SlidingGate(),
                Map.of("width", inches(24), "highestOpening", inches(12), "deadOpening", inches(inches)));
    }

    @Test
    void aDeadOpeningIsTakenOffTheReading() {
        assertThat(dead(0.375).squareMeters(Setting.of(inches(4)))).isCloseTo(0.6096 * 0.0254 * 3.625, within(1e-16));
        assertThat(dead(0.375).squareMeters(Setting.of(inches(0.375)))).isZero();
        assertThat(dead(0.375).squareMeters(Setting.of(inches(0.2)))).isZero();
        assertThat(dead(0.375).squareMeters(Setting.of(inches(0)))).isZero();
    }

    @Test
    void aNegativeDeadOpeningLeavesTheGateOpenAtZero() {
        assertThat(dead(-0.375).squareMeters(Setting.of(inches(0)))).isCloseTo(0.6096 * 0.0254 * 0.375, within(1e-16));
        assertThat(dead(-0.375).squareMeters(Setting.of(inches(4)))).isCloseTo(0.6096 * 0.0254 * 4.375, within(1e-16));
    }

    @Test
    void isClosedAtItsDeadOpeningIfThatCanBeSet() {
        assertThat(closed(GATE)).contains(Setting.height(Amounts.of(0, SpreadingUnits.MILLIMETER)));
        assertThat(closed(dead(0))).contains(Setting.height(inches(0)));
        assertThat(closed(dead(0.375))).contains(Setting.height(inches(0.375)));
        assertThat(closed(dead(-0.375))).isEmpty();
    }

    private static Optional<Setting> closed(Gate gate) {
        return gate.adjustable().orElseThrow().closed();
    }

    @Test
    void refusesADeadOpeningAboveItsHighest() {
        assertRefused(
                "closed position must be within 0 in to 2 in: 3 in",
                () -> Gate.of(
                        new SlidingGate(),
                        Map.of("width", inches(24), "highestOpening", inches(2), "deadOpening", inches(3))));
        assertRefused("deadOpening of sliding-gate must be within -100 mm to 100 mm: 4 in", () -> dead(4));
    }

    @Test
    void refusesAnOpeningThatCanNotBeSet() {
        assertRefused(
                "gate setting must be within 0 in to 12 in: 120 in", () -> GATE.squareMeters(Setting.of(inches(120))));
        assertRefused(
                "gate setting must be given for gate type sliding-gate, version 1: nothing",
                () -> GATE.squareMeters(Setting.none()));
    }

    @Test
    void noGateRefusesAnOpening() {
        Gate none = Gate.of(new NoGate(), Map.of());

        assertThat(none.isAdjustable()).isFalse();
        assertThat(none.accepts(Setting.of(inches(4)))).isFalse();
        assertThat(none.accepts(Setting.none())).isTrue();
        assertThat(none.squareMeters(Setting.none())).isZero();
        assertRefused(
                "gate setting must be left out for gate type no-gate, version 1: 4 in",
                () -> none.squareMeters(Setting.of(inches(4))));
    }
}
