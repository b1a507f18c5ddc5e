package org.gritwright.core.season;

import java.io.Serializable;
import org.gritwright.units.check.Require;

/**
 * A slip with one ticket that would explain what a pile has too much or too little. Immutable, thread-safe, a value.
 *
 * @param ticket the ticket's number
 * @param kind what would be wrong with it
 */
public record TicketSlip(String ticket, Kind kind) implements Serializable {
    private static final long serialVersionUID = 1L;

    /** What can be wrong with a ticket. */
    public enum Kind {
        /** It is in the list although it never came here. */
        NOT_HERE("would fit if it never came here, or is another one listed again."),
        /** Pounds were written down as tons. */
        POUNDS_AS_TONS("would fit if its number was in pounds, not tons."),
        /** Tons were written down as pounds. */
        TONS_AS_POUNDS("would fit if its number was in tons, not pounds.");

        private final String words;

        Kind(String words) {
            this.words = words;
        }
    }

    /** Checks that all is given. */
    public TicketSlip {
        Require.given(TicketSlip.class, ticket, kind);
    }

    /**
     * In words for the yard.
     *
     * @return an English sentence
     */
    public String sentence() {
        return "Ticket " + ticket + " " + kind.words;
    }
}
