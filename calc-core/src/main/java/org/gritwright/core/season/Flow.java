package org.gritwright.core.season;

import java.io.Serializable;
import javax.measure.quantity.Mass;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.units.check.Require;

/**
 * One line of a pile's account. Immutable, thread-safe, a value.
 *
 * @param kind what it is
 * @param name the ticket, the truck or trucks, the use, of what was found the period as {@link SurveyPeriod#words} has it; empty for what has none
 * @param mass adjusted, with its standard uncertainty
 */
public record Flow(Kind kind, String name, Measured<Mass> mass) implements Serializable {
    private static final long serialVersionUID = 1L;

    /** What a line is; whether it comes to the pile or leaves it. */
    public enum Kind {
        /** What was there at the beginning. */
        OPENING(true),
        /** A delivery, by its ticket. */
        DELIVERY(true),
        /** What isn't written down, by an error that was found. */
        FOUND(true),
        /** What a truck took; trucks that can't be told apart are one line. */
        TRUCK(false),
        /** Another use. */
        OTHER_USE(false),
        /** What nobody wrote down, within what was allowed for. */
        UNEXPLAINED(false),
        /** What was there at the end. */
        CLOSING(false);

        private final boolean in;

        Kind(boolean in) {
            this.in = in;
        }

        /**
         * The side of the account.
         *
         * @return true for what was there or came, false for what left or remains
         */
        public boolean isIn() {
            return in;
        }
    }

    /** Checks that all is given. */
    public Flow {
        Require.given(Flow.class, kind, name, mass);
    }
}
