package org.gritwright.core.metering;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.gritwright.core.Samples.assertRefused;
import static org.gritwright.core.Samples.inches;

import java.util.Map;
import org.gritwright.core.spi.Setting;
import org.junit.jupiter.api.Test;

class FixedGateTest {
    private static Gate gate(double width, double height) {
        return Gate.of(new FixedGate(), Map.of("width", inches(width), "height", inches(height)));
    }

    @Test
    void leavesARectangleThatNeedsNoOpening() {
        assertThat(gate(24, 4).squareMeters(Setting.none())).isCloseTo(0.6096 * 0.1016, within(1e-16));
    }

    @Test
    void existsButCanNotBeSet() {
        assertThat(gate(24, 4).exists()).isTrue();
        assertThat(gate(24, 4).isAdjustable()).isFalse();
        assertThat(gate(24, 4).adjustable()).isEmpty();
        assertThat(gate(24, 4).accepts(Setting.of(inches(4)))).isFalse();
        assertRefused(
                "gate setting must be left out for gate type fixed-opening, version 1: 4 in",
                () -> gate(24, 4).squareMeters(Setting.of(inches(4))));
    }

    @Test
    void refusesAnOpeningThatIsNone() {
        assertRefused("width of fixed-opening must be within 10 mm to 3 m: 0.25 in", () -> gate(0.25, 4));
        assertRefused("height of fixed-opening must be within 5 mm to 2 m: 0 in", () -> gate(24, 0));
    }
}
