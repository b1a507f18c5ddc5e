package org.gritwright.core.observation;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Optional;
import org.gritwright.core.LiquidSamples;
import org.gritwright.core.Samples;
import org.gritwright.core.Shipped;
import org.gritwright.core.spi.Setting;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.junit.jupiter.api.Test;

class ShippedPointTest {
    @Test
    void aCalibrationPointArrivesAsItWas() {
        CalibrationPoint point = Samples.chainAt(2);
        CalibrationPoint liquid = CalibrationPoint.of(
                Material.liquid("brine", Amounts.of(1177, SpreadingUnits.KILOGRAM_PER_CUBIC_METER)),
                LiquidSamples.METER,
                Setting.none());

        assertThat(Shipped.copyOf(point)).isEqualTo(point);
        assertThat(Shipped.copyOf(liquid)).isEqualTo(liquid);
    }

    @Test
    void aMaterialArrivesWithAllThatIsSaidOfIt() {
        Material grains = new Material(
                "sand",
                Material.Form.GRANULAR,
                Amounts.of(100, SpreadingUnits.POUND_PER_CUBIC_FOOT),
                Optional.of(Amounts.of(2, SpreadingUnits.MILLIMETER)),
                Optional.of(Amounts.of(10, SpreadingUnits.PERCENT)));

        assertThat(Shipped.copyOf(grains)).isEqualTo(grains);
    }
}
