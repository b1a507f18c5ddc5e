package org.gritwright.core.season;

import java.io.Serializable;
import org.gritwright.units.check.Require;

/**
 * A delivery to a pile, by its ticket. Immutable, thread-safe, a value.
 *
 * @param ticket the ticket's number, which no other delivery of the season has
 * @param period between which surveys it came: 1 from the opening to the next survey, and so on
 * @param mass as the ticket says, 0 or more
 */
public record Delivery(String ticket, int period, StatedMass mass) implements Serializable {
    private static final long serialVersionUID = 1L;

    /**
     * Checks the values.
     *
     * @throws org.gritwright.units.InvalidInputException if the ticket is blank, the period is below 1 or the mass negative
     */
    public Delivery {
        Require.given(Delivery.class, ticket, mass);
        Require.text("number of a delivery ticket", ticket);
        Require.that(period >= 1, "period of ticket " + ticket, "1 or more", period);
        mass.requireNotNegative("mass of ticket " + ticket);
    }

    /**
     * A delivery between the opening and the next survey, which is the closing where there is no other.
     *
     * @param ticket the ticket's number
     * @param mass as the ticket says
     * @return the delivery
     * @throws org.gritwright.units.InvalidInputException if the ticket is blank or the mass negative
     */
    public static Delivery of(String ticket, StatedMass mass) {
        return new Delivery(ticket, 1, mass);
    }
}
