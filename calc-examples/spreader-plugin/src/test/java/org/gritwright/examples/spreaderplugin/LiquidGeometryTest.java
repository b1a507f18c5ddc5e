package org.gritwright.examples.spreaderplugin;

import static org.gritwright.units.SpreadingUnits.CENTIMETER;
import static org.gritwright.units.SpreadingUnits.METER_PER_SECOND;
import static org.gritwright.units.SpreadingUnits.MILLIMETER;
import static org.gritwright.units.SpreadingUnits.ONE;
import static org.gritwright.units.SpreadingUnits.PERCENT;
import static org.gritwright.units.SpreadingUnits.REVOLUTION_PER_MINUTE;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.gritwright.core.metering.BuiltInTypes;
import org.gritwright.core.metering.FlowMeter;
import org.gritwright.core.metering.Pump;
import org.gritwright.core.spi.TypeId;
import org.gritwright.core.spi.TypeRegistry;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.quantity.FlowRate;
import org.junit.jupiter.api.Test;

class LiquidGeometryTest {
    private static final TypeRegistry TYPES = BuiltInTypes.registry().withServices(HosePump.class.getClassLoader());

    /** 1 cm² of hose along 1 m, of which a fifth is pressed flat: 80 mL a turn. */
    private static final Pump PUMP = Pump.of(
            TYPES,
            TypeId.of("example.org/hose-pump", 1),
            Map.of(
                    "hoseDiameter", Amounts.of(2 / Math.sqrt(Math.PI), CENTIMETER),
                    "circle", Amounts.of(1000 / Math.PI, MILLIMETER)));

    /** 10 cm² of pipe; four vanes whose tips go 10 cm a turn, at the liquid's speed less 0.1 m/s. */
    private static final FlowMeter METER = meter(0.5);

    private static FlowMeter meter(double lowestSpeed) {
        return FlowMeter.of(
                TYPES,
                TypeId.of("example.org/paddle-wheel", 1),
                Map.of(
                        "pipeDiameter", Amounts.of(Math.sqrt(40 / Math.PI), CENTIMETER),
                        "wheelDiameter", Amounts.of(100 / Math.PI, MILLIMETER),
                        "vanes", Amounts.of(4, ONE),
                        "tipShare", Amounts.of(100, PERCENT),
                        "friction", Amounts.of(0.1, METER_PER_SECOND),
                        "lowestSpeed", Amounts.of(lowestSpeed, METER_PER_SECOND)));
    }

    @Test
    void aTurnGivesTheHoseThatIsNotPressedFlat() {
        assertEquals(80e-6, PUMP.cubicMetersPerRevolution(), 1e-15);
        assertEquals(80e-6, PUMP.cubicMetersPerRevolution(1.5), 1e-15);
        assertEquals(80e-6, Amounts.si(FlowRate.class, PUMP.flow(Amounts.of(60, REVOLUTION_PER_MINUTE))), 1e-15);
        assertEquals(Optional.of(Amounts.of(100, REVOLUTION_PER_MINUTE)), PUMP.highestSpeed());
        assertThrows(InvalidInputException.class, () -> PUMP.cubicMetersPerRevolution(2));
    }

    @Test
    void aPulseIsAQuarterTurnOfTheWheel() {
        assertEquals(25e-6, METER.cubicMetersPerPulse(), 1e-15);
        // 1 m/s is 1 L/s; the wheel goes as if it were 0.9 m/s: 9 turns, 36 pulses.
        assertEquals(1e-3 / 36, METER.cubicMetersPerPulse(1e-3), 1e-15);
        assertEquals(0.5e-3 / 16, METER.cubicMetersPerPulse(0.5e-3), 1e-15);
        assertEquals(Optional.empty(), METER.highestFlow());
        assertThrows(InvalidInputException.class, () -> METER.cubicMetersPerPulse(0.49e-3));
    }

    @Test
    void aWheelTurnsOnlyAboveItsFriction() {
        assertTrue(assertThrows(InvalidInputException.class, () -> meter(0.1))
                .getMessage()
                .contains("lowestSpeed must be above friction, 0.1 m/s: 0.1 m/s"));
    }

    @Test
    void bothAreOfferedAsServices() {
        assertEquals(List.of(), TYPES.rejected());
        assertEquals(4, TYPES.pumps().size());
        assertEquals(3, TYPES.flowMeters().size());
    }
}
