package org.gritwright.examples.telemetry;

import java.util.Locale;

/** What a piece of a trip was. */
enum Verdict {
    BELOW,
    WITHIN,
    ABOVE,
    /** Nobody knows what was laid, or how far the truck went: a gap, a restart, no calibration. */
    UNKNOWN,
    /** Spreading was switched off, or the truck stood. */
    NOT_SPREADING,
    /** Its routes don't say what was wanted. */
    NO_TARGET;

    String words() {
        return name().toLowerCase(Locale.ROOT).replace('_', ' ');
    }
}
