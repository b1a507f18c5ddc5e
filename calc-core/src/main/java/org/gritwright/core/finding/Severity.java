package org.gritwright.core.finding;

/** How much a finding matters. */
public enum Severity {
    /** Worth knowing; nothing has to be done. */
    NOTE,
    /** A person should look at it. */
    WARNING,
    /** Something is wrong; the result must not be used as it stands. */
    ERROR
}
