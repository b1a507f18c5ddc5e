package org.gritwright.core.fleet.assessment;

/** Whether a truck's road-speed value is proven. */
public enum RoadProof {
    /** Measured over a course and within tolerance. */
    PROVEN("road speed proven"),
    /** Measured over a course and outside tolerance. */
    NOT_PROVEN("road speed wrong"),
    /** Measured over a course, but the runs or their entries are in doubt. */
    UNDECIDED("road speed not shown either way"),
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
