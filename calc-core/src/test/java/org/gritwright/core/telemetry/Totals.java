package org.gritwright.core.telemetry;

import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;

/** Errors and totals. */
final class Totals {
    private Totals() {}

    static SharedError error(String id, double relative) {
        return new SharedError(id, Amounts.of(relative, SpreadingUnits.ONE));
    }
}
