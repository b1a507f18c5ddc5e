package org.gritwright.core.metering;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.gritwright.core.Samples.AUGER;
import static org.gritwright.core.Samples.SENSOR;
import static org.gritwright.core.Samples.assertRefused;
import static org.gritwright.core.Samples.inches;

import java.util.Map;
import org.gritwright.core.spi.FillLimits;
import org.gritwright.core.spi.Setting;
import org.junit.jupiter.api.Test;

class AugerTest {
    private static Conveyor auger(double screw, double shaft) {
        return Conveyor.of(
                new Auger(),
                Map.of("screwDiameter", inches(screw), "shaftDiameter", inches(shaft), "pitch", inches(6)));
    }

    @Test
    void sweepsTheRingBetweenShaftAndScrewTimesThePitch() {
        double cubicInch = Math.pow(0.0254, 3);

        assertThat(AUGER.sweptCubicMetersPerRevolution(Setting.none()))
                .isCloseTo(Math.PI / 4 * (36 - 4) * 6 * cubicInch, within(1e-15));
    }

    @Test
    void mayHaveNoShaft() {
        double cubicInch = Math.pow(0.0254, 3);

        assertThat(auger(6, 0).cubicMetersPerRevolution(0)).isCloseTo(Math.PI / 4 * 36 * 6 * cubicInch, within(1e-15));
    }

    @Test
    void doesNotHeedAGate() {
        assertThat(new Auger().meteredByGate()).isFalse();
        assertThat(AUGER.conveyor().cubicMetersPerRevolution(0.5))
                .isEqualTo(AUGER.conveyor().cubicMetersPerRevolution(0));
    }

    @Test
    void underASlidingGateTheOpeningIsStillToBeGiven() {
        Spreader gated =
                new Spreader(AUGER.conveyor(), Gate.of(new SlidingGate(), Map.of("width", inches(24))), SENSOR);

        assertThat(gated.sweptCubicMetersPerRevolution(Setting.of(inches(4))))
                .isEqualTo(AUGER.sweptCubicMetersPerRevolution(Setting.none()));
        assertRefused(
                "gate setting must be given for gate type sliding-gate, version 1: nothing",
                () -> gated.sweptCubicMetersPerRevolution(Setting.none()));
    }

    @Test
    void refusesAShaftAsThickAsTheScrew() {
        assertRefused("shaftDiameter must be smaller than screwDiameter, 6 in: 6 in", () -> auger(6, 6));
        assertRefused("shaftDiameter must be smaller than screwDiameter, 6 in: 7 in", () -> auger(6, 7));
    }

    @Test
    void knowsWhatFillIsPlausible() {
        assertThat(AUGER.conveyor().fillLimits()).isEqualTo(new FillLimits(0.25, 0.5, 1.05, 1.25));
    }
}
