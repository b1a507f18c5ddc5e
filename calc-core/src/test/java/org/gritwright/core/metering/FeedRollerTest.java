package org.gritwright.core.metering;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.gritwright.core.Samples.assertRefused;
import static org.gritwright.units.SpreadingUnits.CENTIMETER;
import static org.gritwright.units.SpreadingUnits.ONE;
import static org.gritwright.units.SpreadingUnits.SQUARE_CENTIMETER;

import java.util.Map;
import org.gritwright.core.spi.FillLimits;
import org.gritwright.units.Amounts;
import org.junit.jupiter.api.Test;

class FeedRollerTest {
    private static Conveyor roller(double pockets, double squareCentimeters, double centimeters) {
        return Conveyor.of(
                new FeedRoller(),
                Map.of(
                        "pockets", Amounts.of(pockets, ONE),
                        "pocketArea", Amounts.of(squareCentimeters, SQUARE_CENTIMETER),
                        "rollerLength", Amounts.of(centimeters, CENTIMETER)));
    }

    @Test
    void emptiesEveryPocketOnceARevolution() {
        // derived: 12 × 8 cm² × 30 cm = 2.88 L
        assertThat(roller(12, 8, 30).cubicMetersPerRevolution(0)).isCloseTo(0.00288, within(1e-17));
        assertThat(roller(1, 8, 30).cubicMetersPerRevolution(0)).isCloseTo(0.00024, within(1e-18));
    }

    @Test
    void doesNotHeedAGateAndKnowsItsFill() {
        assertThat(roller(12, 8, 30).isMeteredByGate()).isFalse();
        assertThat(roller(12, 8, 30).cubicMetersPerRevolution(0.5))
                .isEqualTo(roller(12, 8, 30).cubicMetersPerRevolution(0));
        assertThat(roller(12, 8, 30).fillLimits()).isEqualTo(new FillLimits(0.25, 0.5, 1.05, 1.25));
    }

    @Test
    void refusesPocketsThatNoRollerHas() {
        assertRefused("pockets of feed-roller must be a whole number, 0 or more: 11.5", () -> roller(11.5, 8, 30));
        assertRefused("pockets of feed-roller must be within 1 to 200: 0", () -> roller(0, 8, 30));
        assertRefused(
                "pocketArea of feed-roller must be within 0.1 cm² to 500 cm²: 0.05 cm²", () -> roller(12, 0.05, 30));
        assertRefused("rollerLength of feed-roller must be within 50 mm to 3 m: 4 cm", () -> roller(12, 8, 4));
    }
}
