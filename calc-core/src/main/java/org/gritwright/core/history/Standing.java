package org.gritwright.core.history;

/** How sure a value in a display is. */
public enum Standing {
    /** Verified since it was entered, and nothing was changed since. */
    PROVEN("proven"),
    /** Verified, and the catches can't tell. */
    UNDECIDED("can't tell"),
    /** Verified, and outside the tolerance. */
    WRONG("wrong"),
    /** Entered and not verified since. */
    NOT_CHECKED("not checked"),
    /** Something was changed since it was verified or entered. */
    CHANGED_SINCE("changed since");

    private final String words;

    Standing(String words) {
        this.words = words;
    }

    /**
     * What it is called.
     *
     * @return for example "not checked"
     */
    public String words() {
        return words;
    }
}
