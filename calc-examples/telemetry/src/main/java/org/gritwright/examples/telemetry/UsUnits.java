package org.gritwright.examples.telemetry;

import javax.measure.quantity.Length;
import javax.measure.quantity.Mass;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;

/** Whole milligrams and millimeters in the units of the tables. */
final class UsUnits {
    private static final double MILLIMETERS = 1000 * Amounts.si(Length.class, Amounts.of(1, SpreadingUnits.MILE));
    private static final double MILLIGRAMS = 1e6 * Amounts.si(Mass.class, Amounts.of(1, SpreadingUnits.POUND));
    private static final double MILLIS = 1000;

    private UsUnits() {}

    static double miles(long millimeters) {
        return millimeters / MILLIMETERS;
    }

    static double pounds(long milligrams) {
        return milligrams / MILLIGRAMS;
    }

    static double seconds(long millis) {
        return millis / MILLIS;
    }
}
