package org.gritwright.core.curve;

import org.gritwright.core.finding.Term;

/** How a pump's volume per revolution depends on the speed n of its shaft. */
public enum SlipModel {
    /** v = a: the same at all speeds. */
    CONSTANT(Term.CONSTANT_VOLUME),
    /** v = a − b/n: a flow b leaks back, whatever the speed. */
    LEAK(Term.LEAK_FLOW);

    private final Term term;

    SlipModel(Term term) {
        this.term = term;
    }

    /**
     * What it is called in findings.
     *
     * @return for example "a constant leak flow"
     */
    public Term term() {
        return term;
    }
}
