package org.gritwright.core.observation;

import org.gritwright.core.finding.Term;

/** What became of the conveyor's run-down after the stop: mass and count must cover the same window. */
public enum Coasting {
    /** Its material was caught and its revolutions were counted: the usual catch from rest to rest. */
    IN_BOTH(Term.IN_BOTH, true),
    /** Neither was its material caught nor its revolutions counted, as with a diverter chute. */
    IN_NEITHER(Term.IN_NEITHER, true),
    /** Its material was caught, its revolutions were not counted. */
    CAUGHT_ONLY(Term.CAUGHT_ONLY, false),
    /** Its revolutions were counted, its material was not caught. */
    COUNTED_ONLY(Term.COUNTED_ONLY, false);

    private final Term term;
    private final boolean sameWindow;

    Coasting(Term term, boolean sameWindow) {
        this.term = term;
        this.sameWindow = sameWindow;
    }

    /**
     * What it is called in findings.
     *
     * @return for example "caught but not counted"
     */
    public Term term() {
        return term;
    }

    /**
     * Whether mass and count cover the same window.
     *
     * @return true if they do
     */
    public boolean isSameWindow() {
        return sameWindow;
    }
}
