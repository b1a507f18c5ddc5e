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
    WITH_TIME,
    /** It grew in proportion to what the shaft turned, which a first pass over the rows counts. */
    WITH_TURNS,
    /** It grew in proportion to what left the hopper, which a first pass over the rows counts. */
    WITH_AMOUNT;

    Onset onset(AsFound found) {
        return switch (this) {
            case AS_FOUND -> new Onset.AtOnce(found.at());
            case AS_LEFT -> new Onset.AtOnce(found.asLeft());
            case WITH_TIME -> Onset.Gradually.WITH_TIME;
            case WITH_TURNS -> Onset.Gradually.WITH_TURNS;
            case WITH_AMOUNT -> Onset.Gradually.WITH_AMOUNT;
        };
    }
}
