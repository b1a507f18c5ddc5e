package org.gritwright.core.fleet.assessment;

/** Whether a truck's mass per revolution is proven. */
public enum MassProof {
    /** The last verification catch is within tolerance, and no correction is open. */
    PROVEN("mass per revolution proven"),
    /** The last verification catch is outside tolerance, or a correction is open. */
    NOT_PROVEN("mass per revolution not proven"),
    /** The last verification catch can't tell whether it is within tolerance. */
    UNDECIDED("mass per revolution not shown either way"),
    /** Only what was caught could be compared with what was expected, and it is within tolerance. */
    DELIVERY_ONLY("delivered mass proven, mass per revolution not checked"),
    /** No verification catch was made there, but a curve through catches elsewhere, itself proven, agrees within the tolerance. */
    PROVEN_BY_CURVE("mass per revolution proven by the discharge curve"),
    /** There is no verification catch. */
    NOT_CHECKED("mass per revolution not checked");

    private final String words;

    MassProof(String words) {
        this.words = words;
    }

    /**
     * In words.
     *
     * @return for example "mass per revolution proven"
     */
    public String words() {
        return words;
    }
}
