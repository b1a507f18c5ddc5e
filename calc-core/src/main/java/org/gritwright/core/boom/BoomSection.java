package org.gritwright.core.boom;

import java.io.Serializable;
import javax.measure.Quantity;
import javax.measure.quantity.Length;
import org.gritwright.units.Amounts;
import org.gritwright.units.check.Require;
import org.gritwright.units.quantity.LaneCount;

/**
 * A part of a boom that is switched as one, with nozzles of one kind at equal distances. Immutable, thread-safe, a value.
 *
 * @param name what people know it by, such as "left lane"; once in a boom
 * @param lanes how many lanes it treats, greater than zero; half of one where two sections share a lane
 * @param nozzle its nozzles
 * @param nozzles how many of them, 1 to 1000
 * @param spacing the distance from one nozzle to the next, greater than zero
 * @param on whether it is switched on
 */
public record BoomSection(
        String name, Quantity<LaneCount> lanes, Nozzle nozzle, int nozzles, Quantity<Length> spacing, boolean on)
        implements Serializable {
    private static final int MOST = 1000;

    /**
     * Checks the values.
     *
     * @throws org.gritwright.units.InvalidInputException if one is out of its range
     */
    public BoomSection {
        Require.given(BoomSection.class, name, lanes, nozzle, spacing);
        Require.text("name of a boom section", name);
        Require.positive("lanes of boom section " + name, LaneCount.class, lanes);
        Require.that(nozzles >= 1 && nozzles <= MOST, "nozzles of boom section " + name, "1 to " + MOST, nozzles);
        Require.positive("spacing of the nozzles of boom section " + name, Length.class, spacing);
    }

    /**
     * A section that is switched on.
     *
     * @param name what people know it by
     * @param lanes how many lanes it treats
     * @param nozzle its nozzles
     * @param nozzles how many of them
     * @param spacing the distance from one to the next
     * @return the section
     * @throws org.gritwright.units.InvalidInputException if a value is out of its range
     */
    public static BoomSection of(
            String name, Quantity<LaneCount> lanes, Nozzle nozzle, int nozzles, Quantity<Length> spacing) {
        return new BoomSection(name, lanes, nozzle, nozzles, spacing, true);
    }

    /**
     * The same section, switched on or off.
     *
     * @param on whether it is on
     * @return the section
     */
    public BoomSection switched(boolean on) {
        return new BoomSection(name, lanes, nozzle, nozzles, spacing, on);
    }

    /**
     * The width that it treats when it is on: each nozzle stands for the road half-way to its neighbors on both sides.
     *
     * @return nozzles × spacing, in the unit of the spacing
     */
    public Quantity<Length> width() {
        return Amounts.of(nozzles * spacing.getValue().doubleValue(), spacing.getUnit());
    }

    double cubicMetersPerSecond(double pascals, double kilogramsPerCubicMeter) {
        return nozzles * nozzle.cubicMetersPerSecond(pascals, kilogramsPerCubicMeter);
    }
}
