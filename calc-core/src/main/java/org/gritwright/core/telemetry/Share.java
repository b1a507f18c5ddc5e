package org.gritwright.core.telemetry;

import java.io.Serializable;

/**
 * What is summed apart from the rest, since it shares its errors.
 *
 * @param what of what, for example "slot 1, 2 in, from 2026-11-01T12:00:00Z"
 * @param errors the ids of the errors
 * @param relatives their relative standard uncertainties
 * @param curve the id of the curve's own error, whose size is the setting's; blank where there is none
 */
@SuppressWarnings("ArrayRecordComponent") // never handed out; compared with nothing
record Share(String what, String[] errors, double[] relatives, String curve) implements Serializable {}
