package org.gritwright.core.spi;

import java.io.Serializable;
import org.gritwright.units.check.Require;

/**
 * The range of apparent fill that is usual, and the wider one beyond which an input must be wrong.
 *
 * <p>Apparent fill is the effective bulk density of the discharge over the loose bulk density of the material; it can
 * exceed 1 where the conveyor packs the material. For a pump it is the volumetric efficiency, the volume that a revolution gave
 * over the displacement; for a flow meter, the volume caught per pulse over the nominal one.
 *
 * @param lowestPossible below this an input is wrong; greater than 0
 * @param lowestUsual below this the fill is implausible
 * @param highestUsual above this the fill is implausible
 * @param highestPossible above this an input is wrong
 */
public record FillLimits(double lowestPossible, double lowestUsual, double highestUsual, double highestPossible)
        implements Serializable {
    /** Usual from 0.5 to 1.15, possible from 0.3 to 1.3 (common practice, no source). */
    public static final FillLimits COMMON = new FillLimits(0.3, 0.5, 1.15, 1.3);

    /**
     * Of pumps: usual from 0.75 to 1.03, possible from 0.4 to 1.1 (common practice, no source). Little slips in a good pump and
     * more in a worn one; a little over 1 is what catch, count and displacement don't know better.
     */
    public static final FillLimits PUMP = new FillLimits(0.4, 0.75, 1.03, 1.1);

    /** Of flow meters: usual from 0.95 to 1.05, possible from 0.8 to 1.25 (common practice, no source). */
    public static final FillLimits FLOW_METER = new FillLimits(0.8, 0.95, 1.05, 1.25);

    /**
     * Checks the order.
     *
     * @throws org.gritwright.units.InvalidInputException unless 0 &lt; lowest possible ≤ lowest usual &lt; highest usual ≤ highest possible,
     *     all finite
     */
    public FillLimits {
        boolean ordered = lowestPossible > 0
                && lowestPossible <= lowestUsual
                && lowestUsual < highestUsual
                && highestUsual <= highestPossible
                && highestPossible <= Double.MAX_VALUE;
        Require.that(
                ordered,
                "limits of the apparent fill",
                "finite, greater than 0 and in rising order",
                () -> lowestPossible + ", " + lowestUsual + ", " + highestUsual + ", " + highestPossible);
    }

    /**
     * Whether a fill is usual.
     *
     * @param fill an apparent fill
     * @return true within the usual range, limits included
     */
    public boolean isUsual(double fill) {
        return fill >= lowestUsual && fill <= highestUsual;
    }

    /**
     * Whether a fill can be.
     *
     * @param fill an apparent fill
     * @return true within the possible range, limits included
     */
    public boolean isPossible(double fill) {
        return fill >= lowestPossible && fill <= highestPossible;
    }
}
