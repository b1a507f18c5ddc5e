package org.gritwright.core.fleet.day;

import java.util.Optional;
import javax.measure.Quantity;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.UnitSymbol;
import org.gritwright.units.check.Require;
import org.gritwright.units.quantity.ApplicationRate;
import org.gritwright.units.quantity.LaneApplicationRate;
import org.gritwright.units.quantity.LaneCount;
import org.gritwright.units.quantity.LiquidApplicationRate;
import org.gritwright.units.quantity.LiquidLaneApplicationRate;
import org.gritwright.units.quantity.PrewetRate;
import org.gritwright.units.rate.LiquidRates;
import org.gritwright.units.rate.PrewetRates;
import org.gritwright.units.rate.Rates;

/**
 * A target rate as it was written down: per distance, or per lane distance with the number of lanes; of a liquid that prewets, the
 * rate of the dry material and the prewet rate.
 *
 * @param rate mass or, of a liquid, volume per distance the truck travels
 * @param laneRate mass or volume per lane distance
 * @param lanes lanes treated in the pass
 * @param prewetRate liquid per mass of the dry material that the rate is of; none where the rate is the material's own
 */
public record TargetEntry(
        Optional<Quantity<?>> rate,
        Optional<Quantity<?>> laneRate,
        Optional<Quantity<LaneCount>> lanes,
        Optional<Quantity<PrewetRate>> prewetRate) {
    private static final String FIELD = "target rate";

    /** Checks that nothing is null. */
    public TargetEntry {
        Require.given(TargetEntry.class, rate, laneRate, lanes, prewetRate);
    }

    /**
     * The target rate per distance of what is metered.
     *
     * @return a mass or a volume per distance: the rate, or the lane rate × lanes; with a prewet rate, that × the prewet rate
     * @throws InvalidInputException if not exactly one rate is given, it is no rate, a lane rate comes without its lanes, or a
     *     prewet rate with a rate that is itself one of a liquid
     */
    public Quantity<?> perDistance() {
        Quantity<?> stated = ofStated();
        return prewetRate
                .<Quantity<?>>map(per -> {
                    Require.that(
                            kind(stated) == ApplicationRate.class,
                            "target rate with a prewet rate",
                            "that of the dry material, a mass per distance",
                            stated);
                    return PrewetRates.liquidRateFromDryRate(stated.asType(ApplicationRate.class), per);
                })
                .orElse(stated);
    }

    private Quantity<?> ofStated() {
        if (rate.isPresent() == laneRate.isPresent()) {
            throw new InvalidInputException(
                    FIELD, "either per distance or per lane distance", rate.isPresent() ? "both" : "neither");
        }
        return rate.<Quantity<?>>map(TargetEntry::perDistance)
                .orElseGet(() -> perDistance(
                        laneRate.orElseThrow(),
                        lanes.orElseThrow(() -> new InvalidInputException(
                                "lanes treated", "given with a target rate per lane distance", "nothing"))));
    }

    private static Quantity<?> perDistance(Quantity<?> rate) {
        Class<?> kind = kind(rate);
        Require.that(
                kind == ApplicationRate.class || kind == LiquidApplicationRate.class,
                FIELD,
                "a mass or a volume per distance",
                rate);
        return rate;
    }

    private static Quantity<?> perDistance(Quantity<?> laneRate, Quantity<LaneCount> lanes) {
        if (kind(laneRate) == LiquidLaneApplicationRate.class) {
            return LiquidRates.rateFromLaneRate(laneRate.asType(LiquidLaneApplicationRate.class), lanes);
        }
        Require.that(
                kind(laneRate) == LaneApplicationRate.class,
                "target lane rate",
                "a mass or a volume per lane distance",
                Amounts.format(laneRate));
        return Rates.rateFromLaneRate(laneRate.asType(LaneApplicationRate.class), lanes);
    }

    private static Class<?> kind(Quantity<?> rate) {
        return UnitSymbol.of(rate.getUnit()).kind();
    }
}
