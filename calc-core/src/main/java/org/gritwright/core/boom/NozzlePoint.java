package org.gritwright.core.boom;

import java.io.Serializable;
import javax.measure.Quantity;
import javax.measure.quantity.Pressure;
import org.gritwright.units.Amounts;
import org.gritwright.units.check.Require;
import org.gritwright.units.quantity.FlowRate;

/**
 * What a nozzle gives at a pressure: a line of a catalog, or a measurement. Immutable, thread-safe, a value.
 *
 * @param pressure the pressure at the nozzle above that of the air, greater than zero
 * @param flow the flow there, greater than zero
 */
public record NozzlePoint(Quantity<Pressure> pressure, Quantity<FlowRate> flow) implements Serializable {
    /**
     * Checks the values.
     *
     * @throws org.gritwright.units.InvalidInputException if one is not greater than zero
     */
    public NozzlePoint {
        Require.given(NozzlePoint.class, pressure, flow);
        Require.positive("nozzle pressure", Pressure.class, pressure);
        Require.positive("nozzle flow", FlowRate.class, flow);
    }

    double pascals() {
        return Amounts.si(Pressure.class, pressure);
    }

    double cubicMetersPerSecond() {
        return Amounts.si(FlowRate.class, flow);
    }
}
