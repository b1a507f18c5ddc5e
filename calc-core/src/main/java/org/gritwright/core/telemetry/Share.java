package org.gritwright.core.telemetry;

import java.io.Serializable;

/**
 * What is summed apart from the rest, since it shares its errors.
 *
 * @param what of what, for example "slot 1, 2 in, from 2026-11-01T12:00:00Z"
 * @param errors the ids of the errors
 * @param relatives their relative standard uncertainties
 * @param curve the id of the curve's own error, whose size is the setting's; blank where there is none
 * @param grown the id of a found error that grew up to its whole size; blank where there is none
 * @param relative its relative standard uncertainty
 * @param mostTurned how many pulses can be turned with it: where an error grows with them or what they lay, what a first pass counted
 */
@SuppressWarnings("ArrayRecordComponent") // never handed out; compared with nothing
record Share(
        String what, String[] errors, double[] relatives, String curve, String grown, double relative, long mostTurned)
        implements Serializable {
    static Share of(String what) {
        return new Share(what, new String[0], new double[0], "", "", 0, Long.MAX_VALUE);
    }

    void addTo(Fingerprint all) {
        all.add(what).add(relatives).add(curve).add(grown).add(relative).add(mostTurned);
        for (String error : errors) {
            all.add(error);
        }
    }
}
