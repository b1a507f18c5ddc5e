package org.gritwright.core.curve;

import org.gritwright.core.finding.Term;

/** How discharge per revolution depends on the gate opening h, with the geometry's swept volume g. */
public enum CurveModel {
    /** m = k · g(h): the geometry alone, times an effective bulk density. */
    PROPORTIONAL(Term.PROPORTIONAL, 1),
    /** m = k · g(h − h₀): the gate's reading is off by a dead opening h₀ of either sign. */
    DEAD_OPENING(Term.DEAD_OPENING, 2),
    /** A table that never falls, through the mean at each opening, with straight lines over g between. */
    TABLE(Term.TABLE, 0);

    private final Term term;
    private final int parameters;

    CurveModel(Term term, int parameters) {
        this.term = term;
        this.parameters = parameters;
    }

    /**
     * What it is called in findings.
     *
     * @return for example "k·g(h)"
     */
    public Term term() {
        return term;
    }

    /**
     * How many gate openings it takes to test the model's shape: one more than it has parameters.
     *
     * @return 2 or 3; 0 for a table, which follows whatever was caught
     */
    public int openingsToTest() {
        return parameters == 0 ? 0 : parameters + 1;
    }
}
