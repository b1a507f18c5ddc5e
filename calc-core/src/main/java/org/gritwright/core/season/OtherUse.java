package org.gritwright.core.season;

import java.io.Serializable;
import org.gritwright.units.check.Require;

/**
 * What left a pile otherwise than on the trucks of the season: brine making, other crews, a loan. Immutable, thread-safe, a value.
 *
 * @param what for what
 * @param period between which surveys: 1 from the opening to the next survey, and so on
 * @param mass as it was written down, 0 or more
 */
public record OtherUse(String what, int period, StatedMass mass) implements Serializable {
    private static final long serialVersionUID = 1L;

    /**
     * Checks the values.
     *
     * @throws org.gritwright.units.InvalidInputException if the text is blank, the period is below 1 or the mass negative
     */
    public OtherUse {
        Require.given(OtherUse.class, what, mass);
        Require.text("name of another use", what);
        Require.that(period >= 1, "period of " + what, "1 or more", period);
        mass.requireNotNegative("mass of " + what);
    }
}
