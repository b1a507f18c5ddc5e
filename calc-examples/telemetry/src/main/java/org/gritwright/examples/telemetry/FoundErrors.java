package org.gritwright.examples.telemetry;

import org.gritwright.core.telemetry.AsFound;
import org.gritwright.core.telemetry.Onset;

/** How an error came about that a verification found before anything was adjusted. */
enum FoundErrors {
    /** It came just then: what was laid before isn't corrected. One bound, where nobody knows. */
    AS_FOUND,
    /** It was there since the value was right for the last time: the other bound. */
    AS_LEFT,
    /** It grew in proportion to time. */
    WITH_TIME;

    Onset onset(AsFound found) {
        return switch (this) {
            case AS_FOUND -> new Onset.AtOnce(found.at());
            case AS_LEFT -> new Onset.AtOnce(found.asLeft());
            case WITH_TIME -> Onset.Gradually.WITH_TIME;
        };
    }
}
