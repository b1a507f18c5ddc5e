package org.gritwright.core.fleet.assessment;

/** Whether a truck's road-speed value is proven. */
public enum RoadProof {
    /** Measured over a course and within tolerance. */
    PROVEN("road speed proven"),
    /** Measured over a course and outside tolerance. */
    NOT_PROVEN("road speed wrong"),
    /** Not measured. */
    NOT_CHECKED("road speed not checked");

    private final String words;

    RoadProof(String words) {
        this.words = words;
    }

    /**
     * In words.
     *
     * @return for example "road speed not checked"
     */
    public String words() {
        return words;
    }
}
