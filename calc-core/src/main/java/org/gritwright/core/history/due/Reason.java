package org.gritwright.core.history.due;

import java.time.LocalDate;
import java.util.Optional;
import org.gritwright.core.history.Event;
import org.gritwright.units.check.Require;

/**
 * Why something is due. Immutable, thread-safe, a value.
 *
 * @param rule the rule by which
 * @param words why, as a person in the yard would say it, without a full stop
 * @param by by when
 * @param because the event that made it due; none if the time did
 */
public record Reason(DueRule rule, String words, LocalDate by, Optional<Event> because) {
    /**
     * Checks that it is told.
     *
     * @throws org.gritwright.units.InvalidInputException if the words are blank
     */
    public Reason {
        Require.given(Reason.class, rule, words, by, because);
        Require.text("reason", words);
    }
}
