package org.gritwright.examples.telemetry;

import java.util.Optional;
import javax.measure.quantity.Length;
import javax.measure.quantity.Mass;
import javax.measure.quantity.Volume;
import org.gritwright.core.telemetry.AppliedTotal;
import org.gritwright.core.telemetry.RateShares;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;

/** Whole milligrams and millimeters in the units of the tables. */
final class UsUnits {
    private static final double MILLIMETERS = 1000 * Amounts.si(Length.class, Amounts.of(1, SpreadingUnits.MILE));
    private static final double MILLIGRAMS = 1e6 * Amounts.si(Mass.class, Amounts.of(1, SpreadingUnits.POUND));
    private static final double MILLIS = 1000;

    private static final double MICROLITERS = 1e9 * Amounts.si(Volume.class, Amounts.of(1, SpreadingUnits.US_GALLON));
    private static final double POUNDS_PER_TON = 2000;
    private static final double PERCENT = 100;
    private static final double COVERAGE = 0.95;

    private UsUnits() {}

    static double gallons(long microliters) {
        return microliters / MICROLITERS;
    }

    /** Half the 95 % interval of grains, in pounds. */
    static double expandedPounds(AppliedTotal laid) {
        return Amounts.in(
                laid.mass(SpreadingUnits.POUND).expandedUncertainty(COVERAGE).orElseThrow(), SpreadingUnits.POUND);
    }

    /** Half the 95 % interval of a liquid, in gallons. */
    static double expandedGallons(AppliedTotal laid) {
        return Amounts.in(
                laid.volume(SpreadingUnits.US_GALLON)
                        .expandedUncertainty(COVERAGE)
                        .orElseThrow(),
                SpreadingUnits.US_GALLON);
    }

    /** A part of the way of which it is known; nothing if it is known of none. */
    static Optional<Double> percent(RateShares shares, long millimeters) {
        long known = shares.below() + shares.within() + shares.above();
        return known == 0 ? Optional.empty() : Optional.of(PERCENT * millimeters / known);
    }

    /** Gallons a short ton of what was wetted; nothing where nothing was. */
    static Optional<Double> gallonsPerTon(Wetting.Sums wetted) {
        return wetted.milligrams() == 0
                ? Optional.empty()
                : Optional.of(gallons(wetted.microliters()) / (pounds(wetted.milligrams()) / POUNDS_PER_TON));
    }

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
