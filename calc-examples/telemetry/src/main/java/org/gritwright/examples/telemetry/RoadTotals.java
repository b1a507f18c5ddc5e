package org.gritwright.examples.telemetry;

import java.io.Serializable;
import java.math.BigInteger;
import java.util.Map;
import org.gritwright.core.telemetry.AppliedTotal;
import org.gritwright.core.telemetry.RateShares;

/**
 * What was laid on a road, by one truck or several: whole numbers, and errors that they share by what they are of, so that it comes to the
 * same in whatever order trucks are added.
 *
 * @param laid of the dry material
 * @param liquid what wetted it, where that was counted
 * @param wetted how much of both, where both were counted
 * @param way how far trucks went on it
 * @param placed milligrams of which it is known how far the truck went meanwhile
 * @param laneMillimeters the way with spreading on × the lanes of a pass
 * @param wantedMilligrams what the targets ask for on it
 * @param withoutTarget millimeters with spreading on, of trucks whose target isn't known
 * @param shares over how much of the way the rate was within the band
 */
record RoadTotals(
        AppliedTotal laid,
        AppliedTotal liquid,
        Wetting.Sums wetted,
        Way way,
        long placed,
        long laneMillimeters,
        long wantedMilligrams,
        long withoutTarget,
        RateShares shares)
        implements Serializable {
    private static final long serialVersionUID = 1L;

    static final AppliedTotal NO_LIQUID = new AppliedTotal(true, 0, Map.of(), BigInteger.ZERO);

    /** The same where no road is named: what was laid on that way, and nothing of a rate. */
    RoadTotals nowhere(Way left) {
        return new RoadTotals(laid, liquid, wetted, left, 0, 0, 0, 0, new RateShares(0, 0, 0, 0));
    }

    RoadTotals plus(RoadTotals other) {
        return new RoadTotals(
                laid.plus(other.laid),
                liquid.plus(other.liquid),
                wetted.plus(other.wetted),
                way.plus(other.way),
                placed + other.placed,
                laneMillimeters + other.laneMillimeters,
                wantedMilligrams + other.wantedMilligrams,
                withoutTarget + other.withoutTarget,
                shares.plus(other.shares));
    }
}
