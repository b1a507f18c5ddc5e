package org.gritwright.core.verification;

import org.gritwright.core.judgement.Verdict;

/**
 * What to do about a measured error. An error is significant where it is larger than its own expanded uncertainty (95 %):
 * then it is not the catch that is off but the calibration.
 */
public enum Advice {
    /** Not significant, and shown within the tolerance: leave it. A correction would follow chance. */
    LEAVE("leave it"),
    /**
     * Not shown either way; or, by simple acceptance, outside the tolerance but not significant: catch more before anything
     * is changed.
     */
    CATCH_MORE("catch more"),
    /** Significant, yet shown within the tolerance: may be corrected. */
    OPTIONAL("may be corrected"),
    /** Significant and outside the tolerance: correct, then confirm by an independent catch. */
    CORRECT("correct and confirm"),
    /** A finding doubts the data, or no correction is proposed for an error outside the tolerance: nothing may be built on it. */
    FIND_FAULT("find the fault");

    private final String words;

    Advice(String words) {
        this.words = words;
    }

    /**
     * In words.
     *
     * @return for example "catch more"
     */
    public String words() {
        return words;
    }

    /**
     * The advice for an error that nothing doubts.
     *
     * @param significant whether the error is larger than its expanded uncertainty
     * @param verdict what the rule says about it
     * @return what to do
     */
    public static Advice of(boolean significant, Verdict verdict) {
        return switch (verdict) {
            case WITHIN_TOLERANCE -> significant ? OPTIONAL : LEAVE;
            case OUTSIDE_TOLERANCE -> significant ? CORRECT : CATCH_MORE;
            case UNDECIDED, UNDECIDABLE -> CATCH_MORE;
        };
    }
}
