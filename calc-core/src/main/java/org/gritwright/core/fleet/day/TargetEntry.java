package org.gritwright.core.fleet.day;

import java.util.Optional;
import javax.measure.Quantity;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.check.Require;
import org.gritwright.units.quantity.ApplicationRate;
import org.gritwright.units.quantity.LaneApplicationRate;
import org.gritwright.units.quantity.LaneCount;
import org.gritwright.units.rate.Rates;

/**
 * A target rate as it was written down: per distance, or per lane distance with the number of lanes.
 *
 * @param rate rate per distance the truck travels
 * @param laneRate rate per lane distance
 * @param lanes lanes treated in the pass
 */
public record TargetEntry(
        Optional<Quantity<ApplicationRate>> rate,
        Optional<Quantity<LaneApplicationRate>> laneRate,
        Optional<Quantity<LaneCount>> lanes) {
    /** Checks that nothing is null. */
    public TargetEntry {
        Require.given(TargetEntry.class, rate, laneRate, lanes);
    }

    /**
     * The target rate per distance.
     *
     * @return the rate, or the lane rate × lanes
     * @throws InvalidInputException if not exactly one rate is given, or a lane rate comes without its lanes
     */
    public Quantity<ApplicationRate> perDistance() {
        if (rate.isPresent() == laneRate.isPresent()) {
            throw new InvalidInputException(
                    "target rate", "either per distance or per lane distance", rate.isPresent() ? "both" : "neither");
        }
        return rate.orElseGet(() -> Rates.rateFromLaneRate(
                laneRate.get(),
                lanes.orElseThrow(() -> new InvalidInputException(
                        "lanes treated", "given with a target rate per lane distance", "nothing"))));
    }
}
