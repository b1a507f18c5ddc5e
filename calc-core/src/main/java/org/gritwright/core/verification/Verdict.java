package org.gritwright.core.verification;

/** Whether an error is within the caller's tolerance. */
public enum Verdict {
    /** Within the tolerance. */
    WITHIN_TOLERANCE,
    /** Outside the tolerance. */
    OUTSIDE_TOLERANCE
}
