package org.gritwright.core.spreader;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.gritwright.core.Samples.assertRefused;
import static org.gritwright.core.Samples.inches;

import java.util.Map;
import java.util.Optional;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.junit.jupiter.api.Test;

class SlidingGateTest {
    private static final Gate GATE =
            Gate.of(new SlidingGate(), Map.of("width", inches(24), "highestOpening", inches(12)));

    @Test
    void leavesARectangle() {
        assertThat(GATE.squareMetres(Optional.of(inches(4)))).isCloseTo(0.6096 * 0.1016, within(1e-16));
        assertThat(GATE.squareMetres(Optional.of(inches(0)))).isZero();
    }

    @Test
    void acceptsOpeningsUpToItsHighest() {
        assertThat(GATE.isAdjustable()).isTrue();
        assertThat(GATE.accepts(inches(0))).isTrue();
        assertThat(GATE.accepts(inches(12))).isTrue();
        assertThat(GATE.accepts(Amounts.of(304.8, SpreadingUnits.MILLIMETRE))).isTrue();
        assertThat(GATE.accepts(inches(12.1))).isFalse();
        assertThat(GATE.accepts(inches(-0.1))).isFalse();
    }

    @Test
    void opensToOneMetreIfNothingElseIsSaid() {
        Gate gate = Gate.of(new SlidingGate(), Map.of("width", inches(24)));

        assertThat(gate.accepts(Amounts.of(1, SpreadingUnits.METRE))).isTrue();
        assertThat(gate.accepts(Amounts.of(1.01, SpreadingUnits.METRE))).isFalse();
    }

    @Test
    void refusesAnOpeningThatCanNotBeSet() {
        assertRefused(
                "gate opening must be within 0 in to 12 in: 120 in", () -> GATE.squareMetres(Optional.of(inches(120))));
        assertRefused(
                "gate opening must be given for gate type sliding-gate, version 1: nothing",
                () -> GATE.squareMetres(Optional.empty()));
    }

    @Test
    void noGateRefusesAnOpening() {
        Gate none = Gate.of(new NoGate(), Map.of());

        assertThat(none.isAdjustable()).isFalse();
        assertThat(none.accepts(inches(4))).isFalse();
        assertThat(none.squareMetres(Optional.empty())).isZero();
        assertRefused(
                "gate opening must be left out for gate type no-gate, version 1: 4 in",
                () -> none.squareMetres(Optional.of(inches(4))));
    }
}
