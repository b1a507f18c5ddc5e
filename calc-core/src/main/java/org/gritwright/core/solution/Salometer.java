package org.gritwright.core.solution;

import org.gritwright.units.check.Require;

/**
 * What a salometer reads, the hydrometer for sodium chloride: percent of saturation at 60 °F, where a saturated solution holds
 * 26.395 % of salt. So 100 degrees are 26.395 %, and 85 degrees are 22.4 % and not 23.3 %. Immutable, thread-safe, a value.
 *
 * @param degrees the reading, 0 to 100
 * @param uncertainty its standard uncertainty in degrees, 0 or more: of a scale that is read to a degree about 0.3
 */
public record Salometer(double degrees, double uncertainty) {
    /** Of the mass of a saturated solution at 60 °F, in percent (Salt Institute's table of solubility). */
    private static final double SATURATED = 26.395;

    private static final double FULL = 100;

    /**
     * Checks the numbers.
     *
     * @throws org.gritwright.units.InvalidInputException if the reading is not 0 to 100, or the uncertainty is negative
     */
    public Salometer {
        Require.that(degrees >= 0 && degrees <= FULL, "degrees of a salometer", "within 0 to 100", degrees);
        Require.notNegative("uncertainty of a salometer", uncertainty);
    }

    double percent() {
        return percent(degrees);
    }

    static double percent(double degrees) {
        return degrees * SATURATED / FULL;
    }
}
