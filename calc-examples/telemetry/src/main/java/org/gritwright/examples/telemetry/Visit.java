package org.gritwright.examples.telemetry;

import org.gritwright.core.telemetry.AppliedTotal;
import org.gritwright.core.telemetry.PieceSums;
import org.gritwright.core.telemetry.RowSums;

/**
 * A truck's rows on a road, from when it comes to it until it leaves it.
 *
 * @param road its number, or {@link TruckPass#NO_ROAD}
 * @param name nothing where no road is named
 * @param sums what the rows add up to
 * @param all pieces of the road from where the truck came to it
 * @param wanted the same without the way on which spreading was switched off, which is unknown here
 */
record Visit(int road, String name, RowSums sums, PieceSums all, PieceSums wanted) {
    RoadTotals totals(AppliedTotal laid, AppliedTotal liquid, Wetting.Sums wetted, Target target) {
        Way way = Way.of(all, wanted);
        return new RoadTotals(
                laid,
                liquid,
                wetted,
                way,
                wanted.amount() - wanted.unplaced(),
                Math.round(way.spreading() * target.lanes()),
                target.milligramsOn(way.spreading()),
                target.isKnown() ? 0 : way.spreading(),
                target.shares(wanted));
    }
}
