package org.gritwright.core.season;

import java.io.Serializable;
import javax.measure.Quantity;
import javax.measure.quantity.Mass;
import org.gritwright.units.check.Require;

/**
 * What a truck took from a pile, by its own controller. Immutable, thread-safe, a value.
 *
 * @param pile the pile's id
 * @param period between which surveys of the pile: 1 from the opening to the next survey, and so on
 * @param indicated the indicated mass of what it took and spread, 0 or more: counts × the calibration in force
 */
public record Draw(String pile, int period, Quantity<Mass> indicated) implements Serializable {
    private static final long serialVersionUID = 1L;

    /**
     * Checks the values.
     *
     * @throws org.gritwright.units.InvalidInputException if the id is blank, the period is below 1 or the mass negative
     */
    public Draw {
        Require.given(Draw.class, pile, indicated);
        Require.text("pile of a draw", pile);
        Require.that(period >= 1, "period of a draw from pile " + pile, "1 or more", period);
        Require.notNegative("indicated mass from pile " + pile, Mass.class, indicated);
    }

    /**
     * What it took between the opening and the next survey, which is the closing where there is no other.
     *
     * @param pile the pile's id
     * @param indicated the indicated mass
     * @return the draw
     * @throws org.gritwright.units.InvalidInputException if the id is blank or the mass negative
     */
    public static Draw of(String pile, Quantity<Mass> indicated) {
        return new Draw(pile, 1, indicated);
    }
}
