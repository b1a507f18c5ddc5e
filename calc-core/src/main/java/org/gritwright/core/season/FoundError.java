package org.gritwright.core.season;

import java.io.Serializable;
import org.gritwright.units.check.Require;

/**
 * An error that is beyond chance. Immutable, thread-safe, a value.
 *
 * @param what what is wrong, or the first of those that can't be told apart
 * @param risk at most so large is the chance of something like this in a season where nothing is wrong
 * @param confusion what it can't be told from, and why
 */
public record FoundError(Suspicion what, double risk, Confusion confusion) implements Serializable {
    private static final long serialVersionUID = 1L;

    /** Checks that all is given. */
    public FoundError {
        Require.given(FoundError.class, what, confusion);
        Require.that(risk >= 0 && risk <= 1, "risk", "within 0 to 1", risk);
    }
}
