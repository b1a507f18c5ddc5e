package org.gritwright.core.metering;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.gritwright.core.Samples.CHAIN;
import static org.gritwright.core.Samples.SENSOR;
import static org.gritwright.core.Samples.assertRefused;
import static org.gritwright.core.Samples.inches;

import java.util.Map;
import org.gritwright.core.spi.FillLimits;
import org.gritwright.core.spi.Setting;
import org.junit.jupiter.api.Test;

class BeltTest {
    private static final double CUBIC_INCH = Math.pow(0.0254, 3);

    private static Conveyor belt(double pulleyInches, double thicknessInches) {
        return Conveyor.of(
                new Belt(), Map.of("pulleyDiameter", inches(pulleyInches), "beltThickness", inches(thicknessInches)));
    }

    @Test
    void sweepsOpenAreaTimesTheTravelOfTheBeltsMiddle() {
        Spreader spreader = new Spreader(belt(10, 0.5), CHAIN.gate(), SENSOR);

        // derived: π × (10 in + 0.5 in) = 32.98672 in a revolution, under a gate of 24 in × 4 in
        assertThat(spreader.sweptCubicMetersPerRevolution(Setting.of(inches(4))) / CUBIC_INCH)
                .isCloseTo(24 * 4 * 32.98672286269283, within(1e-9));
    }

    @Test
    void aBeltWithoutThicknessTravelsThePulleysCircumference() {
        assertThat(belt(10, 0).cubicMetersPerRevolution(1)).isCloseTo(Math.PI * 0.254, within(1e-15));
    }

    @Test
    void isMeteredByAGateAndKnowsItsFill() {
        assertThat(belt(10, 0.5).isMeteredByGate()).isTrue();
        assertThat(belt(10, 0.5).fillLimits()).isEqualTo(new FillLimits(0.35, 0.6, 1.15, 1.3));
    }

    @Test
    void refusesPulleysAndThicknessesThatNoBeltHas() {
        assertRefused("pulleyDiameter of belt must be within 40 mm to 1 m: 1 in", () -> belt(1, 0.5));
        assertRefused("pulleyDiameter of belt must be within 40 mm to 1 m: 40 in", () -> belt(40, 0.5));
        assertRefused("beltThickness of belt must be within 0 mm to 50 mm: 2 in", () -> belt(10, 2));
        assertRefused("beltThickness of belt must be within 0 mm to 50 mm: -0.5 in", () -> belt(10, -0.5));
        assertRefused(
                "beltThickness of belt must be given: nothing",
                () -> Conveyor.of(new Belt(), Map.of("pulleyDiameter", inches(10))));
    }
}
