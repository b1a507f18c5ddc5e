package org.gritwright.core.range;

import org.gritwright.core.finding.Term;

/** From which side a command was reached. A valve answers otherwise on the way up than on the way down. */
public enum Direction {
    /** From below: no command before it was higher. */
    RISING(Term.RISING),
    /** From above: no command before it was lower. */
    FALLING(Term.FALLING);

    private final Term term;

    Direction(Term term) {
        this.term = term;
    }

    /**
     * In a finding.
     *
     * @return the term
     */
    public Term term() {
        return term;
    }
}
