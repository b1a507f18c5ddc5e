package org.gritwright.core.fleet.assessment;

/** Whether a truck's road-speed value is proven. */
public enum RoadProof {
    /** Measured over a course and within tolerance. */
    PROVEN("right"),
    /** Measured over a course and outside tolerance. */
    NOT_PROVEN("wrong"),
    /** Measured over a course, but the runs or their entries are in doubt. */
    UNDECIDED("can't tell"),
    /** Not measured. */
    NOT_CHECKED("not checked");

    private final String words;

    RoadProof(String words) {
        this.words = words;
    }

    /**
     * In words.
     *
     * @return for example "not checked"
     */
    public String words() {
        return words;
    }
}
