package org.gritwright.core.metering;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.gritwright.core.Samples.CHAIN;
import static org.gritwright.core.Samples.assertRefused;
import static org.gritwright.core.Samples.inches;

import java.util.Map;
import javax.measure.Quantity;
import org.gritwright.core.spi.FillLimits;
import org.gritwright.core.spi.Setting;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.quantity.VolumePerRevolution;
import org.junit.jupiter.api.Test;

class DragChainTest {
    private static Conveyor chain(Quantity<?> teeth, Quantity<?> pitch) {
        return Conveyor.of(new DragChain(), Map.of("teeth", teeth, "chainPitch", pitch));
    }

    @Test
    void sweepsOpenAreaTimesTeethTimesPitch() {
        double swept = CHAIN.sweptCubicMetersPerRevolution(Setting.of(inches(4)));

        Quantity<VolumePerRevolution> cubicInches = Amounts.ofSi(swept, SpreadingUnits.CUBIC_INCH_PER_REVOLUTION);
        assertThat(cubicInches.getValue().doubleValue()).isCloseTo(24 * 4 * 6 * 2.609, within(1e-9));
    }

    @Test
    void barsTakeTheirShareOfTheVolume() {
        Conveyor without = chain(Amounts.of(6, SpreadingUnits.ONE), inches(2.609));
        Conveyor with = Conveyor.of(
                new DragChain(),
                Map.of(
                        "teeth", Amounts.of(6, SpreadingUnits.ONE),
                        "chainPitch", inches(2.609),
                        "barShare", Amounts.of(12.5, SpreadingUnits.PERCENT)));

        assertThat(with.cubicMetersPerRevolution(0.1))
                .isCloseTo(0.875 * without.cubicMetersPerRevolution(0.1), within(1e-16));
        assertThat(without.parameters().get(DragChain.BAR_SHARE)).isEqualTo(Amounts.of(0, SpreadingUnits.PERCENT));
    }

    @Test
    void barsNeverTakeMoreThanHalf() {
        assertRefused(
                "barShare of drag-chain must be within 0 % to 50 %: 51 %",
                () -> Conveyor.of(
                        new DragChain(),
                        Map.of(
                                "teeth", Amounts.of(6, SpreadingUnits.ONE),
                                "chainPitch", inches(2.609),
                                "barShare", Amounts.of(51, SpreadingUnits.PERCENT))));
    }

    @Test
    void isMeteredByAGateAndHasTheCommonFillLimits() {
        assertThat(new DragChain().meteredByGate()).isTrue();
        assertThat(CHAIN.conveyor().fillLimits()).isSameAs(FillLimits.COMMON);
    }

    @Test
    void refusesTeethAndPitchesThatNoChainHas() {
        assertRefused(
                "teeth of drag-chain must be within 3 to 60: 2",
                () -> chain(Amounts.of(2, SpreadingUnits.ONE), inches(2)));
        assertRefused(
                "teeth of drag-chain must be a whole number, 0 or more: 6.5",
                () -> chain(Amounts.of(6.5, SpreadingUnits.ONE), inches(2)));
        assertRefused(
                "chainPitch of drag-chain must be within 10 mm to 0.5 m: 25 in",
                () -> chain(Amounts.of(6, SpreadingUnits.ONE), inches(25)));
    }
}
