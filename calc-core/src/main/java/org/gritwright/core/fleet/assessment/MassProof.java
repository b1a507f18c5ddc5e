package org.gritwright.core.fleet.assessment;

/** Whether a truck's mass per revolution is proven. */
public enum MassProof {
    /** The last verification catch is within tolerance, and no correction is open. */
    PROVEN("right"),
    /** The last verification catch is outside tolerance, or a correction is open. */
    NOT_PROVEN("wrong"),
    /** The last verification catch can't tell whether it is within tolerance. */
    UNDECIDED("can't tell"),
    /** Only what was caught could be compared with what was expected, and it is within tolerance. */
    DELIVERY_ONLY("right as delivered"),
    /** No verification catch was made there, but a curve through catches elsewhere, itself proven, agrees within the tolerance. */
    PROVEN_BY_CURVE("right by the curve"),
    /** There is no verification catch. */
    NOT_CHECKED("not checked");

    private final String words;

    MassProof(String words) {
        this.words = words;
    }

    /**
     * In words.
     *
     * @return for example "right"
     */
    public String words() {
        return words;
    }
}
