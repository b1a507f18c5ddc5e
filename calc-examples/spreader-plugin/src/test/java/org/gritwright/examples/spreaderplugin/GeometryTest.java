package org.gritwright.examples.spreaderplugin;

import static org.gritwright.units.SpreadingUnits.METER;
import static org.gritwright.units.SpreadingUnits.PERCENT;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Map;
import org.gritwright.core.metering.Conveyor;
import org.gritwright.core.metering.Gate;
import org.gritwright.core.metering.NoSensor;
import org.gritwright.core.metering.Spreader;
import org.gritwright.core.spi.Setting;
import org.gritwright.units.Amounts;
import org.junit.jupiter.api.Test;

class GeometryTest {
    private static final Spreader SPREADER = new Spreader(
            Conveyor.of(
                    new ReciprocatingFloor(),
                    Map.of("stroke", Amounts.of(0.2, METER), "slideBack", Amounts.of(10, PERCENT))),
            Gate.of(new DiamondGate(), Map.of("diagonal", Amounts.of(0.4, METER))),
            NoSensor.onDriveShaft());

    @Test
    void sweepsTheOpenAreaTimesWhatIsLeftOfTheStroke() {
        assertSwept(0.1 * 0.1 * 0.18, 0.1);
        assertSwept(0.2 * 0.2 * 0.18, 0.2);
        assertSwept((0.08 - 0.01) * 0.18, 0.3);
        assertSwept(0.08 * 0.18, 0.4);
    }

    private static void assertSwept(double cubicMeters, double openingMeters) {
        double swept = SPREADER.sweptCubicMetersPerRevolution(Setting.of(Amounts.of(openingMeters, METER)));
        assertEquals(cubicMeters, swept, 1e-15);
    }
}
