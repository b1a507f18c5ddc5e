package org.gritwright.core.boom;

/** What a measured flow shows of a nozzle, beside the flow that it is compared with. */
public enum NozzleCondition {
    /** Shown to be within the tolerance. */
    WITHIN("within tolerance"),
    /** Shown to give more than the tolerance allows. */
    HIGH("gives too much: worn, damaged or of another size"),
    /** Shown to give less than the tolerance allows. */
    LOW("gives too little: blocked in part or whole, or of another size"),
    /** So near to a limit, or so roughly measured, that the catch can't tell. */
    UNDECIDED("can't tell");

    private final String words;

    NozzleCondition(String words) {
        this.words = words;
    }

    /**
     * In words.
     *
     * @return for example "within tolerance"
     */
    public String words() {
        return words;
    }

    /**
     * Whether it is shown to be off.
     *
     * @return true if it gives too much or too little
     */
    public boolean isOff() {
        return this == HIGH || this == LOW;
    }
}
