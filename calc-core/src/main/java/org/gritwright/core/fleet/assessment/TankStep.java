package org.gritwright.core.fleet.assessment;

/** What has to be done next about a tank, the most urgent first. */
public enum TankStep {
    /** Something can't be computed with. */
    FIX_RECORD("Correct what was written down", true),
    /** It is shown to be off, and what to add is known. */
    CORRECT("Add what brings it to what is wanted", true),
    /** It is shown to be off, and what would have to be added doesn't fit or isn't there. */
    FIND_ANOTHER_WAY("Find another way: it is off, and can't be corrected as it is", true),
    /** The density that the reading tells isn't the one that is stated for the liquid. */
    CHECK_ENTRIES("Check liquid, salt and reading: the stated density doesn't go with them", true),
    /** The reading can't tell whether it is off, or, where nobody says what is wanted, on which side of the eutectic it is. */
    READ_AGAIN("Read it again, more finely", true),
    /** It is beyond the eutectic, be it as was wanted. */
    KEEP_FROM_COLD("Keep it from the cold, or thin it: beyond the eutectic salt drops out", true),
    /** Nobody says what is wanted. */
    STATE_TARGET("Write down what is wanted", false),
    /** Nothing. */
    NOTHING("Nothing to do", false);

    private final String words;
    private final boolean needsAttention;

    TankStep(String words, boolean needsAttention) {
        this.words = words;
        this.needsAttention = needsAttention;
    }

    /**
     * In words.
     *
     * @return an instruction
     */
    public String words() {
        return words;
    }

    /**
     * Whether the tank shouldn't be used before it is done.
     *
     * @return true for all but what is wanted being written down
     */
    public boolean needsAttention() {
        return needsAttention;
    }
}
