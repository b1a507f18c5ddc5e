package org.gritwright.examples.telemetry;

import java.io.Serializable;
import javax.measure.Quantity;
import org.gritwright.core.judgement.Tolerance;
import org.gritwright.core.telemetry.PieceSums;
import org.gritwright.core.telemetry.RateShares;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.quantity.ApplicationRate;

/**
 * What a truck is asked to lay, by the routes of its newest record.
 *
 * @param poundsPerMile the target rate over all its lanes; NaN where the routes ask for different ones, or there is none
 * @param lanes lanes treated in a pass
 * @param band how far the rate of a piece may be from the target
 */
record Target(double poundsPerMile, double lanes, Tolerance band) implements Serializable {
    private static final long serialVersionUID = 1L;

    private static final double MILLIMETERS = 1000;
    private static final double MILLIGRAMS = 1e6;

    /** What it asks for on so much of the way; 0 where it isn't known. */
    long milligramsOn(long millimeters) {
        return isKnown()
                ? Math.round(Amounts.si(ApplicationRate.class, rate()) * MILLIGRAMS * (millimeters / MILLIMETERS))
                : 0;
    }

    private Quantity<ApplicationRate> rate() {
        return Amounts.of(poundsPerMile, SpreadingUnits.POUND_PER_MILE);
    }

    boolean isKnown() {
        return !Double.isNaN(poundsPerMile);
    }

    double poundsPerLaneMile() {
        return poundsPerMile / lanes;
    }

    Verdict verdict(double rateInPoundsPerMile) {
        if (!isKnown()) {
            return Verdict.NO_TARGET;
        }
        double off = rateInPoundsPerMile / poundsPerMile - 1;
        if (band.acceptsRatio(off)) {
            return Verdict.WITHIN;
        }
        return off < 0 ? Verdict.BELOW : Verdict.ABOVE;
    }

    /** Over how much of the way the rate was within the band; all unknown where there is no target. */
    RateShares shares(PieceSums sums) {
        if (!isKnown()) {
            long way = sums.pieces().stream().mapToLong(sums::covered).sum();
            return new RateShares(0, 0, 0, way);
        }
        return RateShares.of(sums, rate(), band);
    }
}
