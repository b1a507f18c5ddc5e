package org.gritwright.core.curve;

/** How discharge per revolution depends on the gate opening h, with the geometry's swept volume g. */
public enum CurveModel {
    /** m = k · g(h): the geometry alone, times an effective bulk density. */
    PROPORTIONAL("k·g(h)", 1),
    /** m = k · g(h − h₀): the gate's reading is off by a dead opening h₀ of either sign. */
    DEAD_OPENING("k·g(h − h0)", 2),
    /** A table that never falls, through the mean at each opening, with straight lines over g between. */
    TABLE("a rising table", 0);

    private final String words;
    private final int parameters;

    CurveModel(String words, int parameters) {
        this.words = words;
        this.parameters = parameters;
    }

    /**
     * In words.
     *
     * @return for example "k·g(h)"
     */
    public String words() {
        return words;
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
