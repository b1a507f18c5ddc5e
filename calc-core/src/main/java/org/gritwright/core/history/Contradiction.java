package org.gritwright.core.history;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Collectors;
import org.gritwright.units.check.Require;

/**
 * Events that can't all be as they were written down. Nothing is left out because of it: whoever knows better supersedes one of them.
 * Immutable, thread-safe, a value.
 *
 * <p>What was in a slot is settled by the next value that somebody entered there for the same point, or for another material, without
 * contradicting anything: a display that shows what was to be entered holds it from then on, whoever was right before. That a value was seen
 * again, or caught with, settles nothing. What is odd about superseding stays open.
 *
 * @param kind what is odd
 * @param events the events, in the order of time
 * @param settled the entry or correction by which it is settled; none while it is open
 */
public record Contradiction(Kind kind, List<Event> events, Optional<Event> settled) {
    /** More in one sentence, nobody reads. */
    private static final int MOST = 5;

    /** What is odd. */
    public enum Kind {
        /** The display was seen to hold a value that nobody entered. */
        CHANGED_BY_NOBODY("the display shows a value that nobody entered"),
        /** A catch was made with a value that the display didn't hold. */
        VERIFIED_ANOTHER("the catch is of a value that the display didn't hold"),
        /** A correction replaced a value that the display didn't hold. */
        CORRECTED_ANOTHER("the correction replaces a value that the display didn't hold"),
        /** What was read back isn't what was to be entered. */
        READ_BACK_DIFFERS("what was read back isn't what was to be entered"),
        /** Two values were entered into one slot for one point at one time. */
        TWO_AT_ONCE("two values were entered at one time"),
        /**
         * Two sums of what was laid have a time in common, or are of one day and alike where neither says since when, so that it counts
         * twice.
         */
        COUNTED_TWICE("two sums of what was laid have a time in common"),
        /** What was laid isn't turns × a value that the display held: summed with another value, corrected, or in another unit. */
        SUMMED_OTHERWISE("what was laid isn't its turns × a value that the display held then"),
        /** Several events stand in the place of one, and none of them of another. */
        SUPERSEDED_TWICE("several events stand in the place of one"),
        /** An event stands in the place of one that isn't there. */
        SUPERSEDES_UNKNOWN("the event in whose place it stands isn't there");

        private final String words;

        Kind(String words) {
            this.words = words;
        }

        /**
         * What is odd, in words.
         *
         * @return for example "the display shows a value that nobody entered"
         */
        public String words() {
            return words;
        }
    }

    /** Copies the list. */
    public Contradiction {
        Require.given(Contradiction.class, kind, events, settled);
        events = List.copyOf(events);
        Require.that(!events.isEmpty(), "events of a contradiction", "one or more", "none");
    }

    /**
     * One that is open.
     *
     * @param kind what is odd
     * @param events the events, in the order of time
     */
    public Contradiction(Kind kind, List<Event> events) {
        this(kind, events, Optional.empty());
    }

    /**
     * The same, settled.
     *
     * @param by the entry or correction by which it is settled
     * @return the changed copy
     */
    public Contradiction settledBy(Event by) {
        return new Contradiction(kind, events, Optional.of(Objects.requireNonNull(by, "by")));
    }

    /**
     * Whether nothing settled it yet.
     *
     * @return false if somebody entered a value since that contradicts nothing
     */
    public boolean isOpen() {
        return settled.isEmpty();
    }

    /**
     * What is odd, about which events, and by what it was settled.
     *
     * @return a sentence without a full stop
     */
    @Override
    public String toString() {
        int more = events.size() - MOST;
        return kind.words + ": "
                + events.stream().limit(MOST).map(Event::toString).collect(Collectors.joining("; "))
                + (more > 0 ? "; and " + more + " more" : "")
                + settled.map(by -> "; settled by " + by).orElse("");
    }
}
