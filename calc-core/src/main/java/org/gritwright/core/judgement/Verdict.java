package org.gritwright.core.judgement;

/** What a catch shows about an error and the caller's tolerance, by the caller's {@link DecisionRule}. */
public enum Verdict {
    /** Within the tolerance; by a guarded rule, shown to be within it. */
    WITHIN_TOLERANCE("within tolerance"),
    /** Outside the tolerance; by a guarded rule, shown to be outside it. */
    OUTSIDE_TOLERANCE("outside tolerance"),
    /** So close to a limit that this catch can't tell. */
    UNDECIDED("can't tell"),
    /** Not shown to be outside, and the guard band uses up the tolerance: no catch like this one could show an error within. */
    UNDECIDABLE("one such catch can't decide");

    private final String words;

    Verdict(String words) {
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
}
