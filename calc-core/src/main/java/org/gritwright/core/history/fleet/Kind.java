package org.gritwright.core.history.fleet;

import org.gritwright.core.metering.FlowMetering;
import org.gritwright.core.metering.Metering;
import org.gritwright.core.metering.PumpMetering;
import org.gritwright.core.metering.Spreader;
import org.gritwright.core.observation.CalibrationPoint;
import org.gritwright.core.spi.TypeId;
import org.gritwright.units.check.Require;

/**
 * What is compared with its like: a type of conveyor, pump or flow meter and a material. Immutable, thread-safe, a value.
 *
 * @param type the type of what meters
 * @param material the material's name
 */
public record Kind(TypeId type, String material) {
    /**
     * Checks the name.
     *
     * @throws org.gritwright.units.InvalidInputException if it is blank
     */
    public Kind {
        Require.given(Kind.class, type, material);
        Require.text("material", material);
    }

    /**
     * The kind of a calibration point.
     *
     * @param point the point
     * @return its kind
     */
    public static Kind of(CalibrationPoint point) {
        return new Kind(type(point.metering()), point.material().name());
    }

    private static TypeId type(Metering metering) {
        if (metering instanceof Spreader spreader) {
            return spreader.conveyor().id();
        }
        return metering instanceof PumpMetering pump
                ? pump.pump().id()
                : ((FlowMetering) metering).meter().id();
    }

    /**
     * Type and material.
     *
     * @return for example "drag-chain, version 1, road salt"
     */
    @Override
    public String toString() {
        return type + ", " + material;
    }
}
