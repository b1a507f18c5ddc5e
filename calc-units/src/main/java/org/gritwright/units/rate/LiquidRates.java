package org.gritwright.units.rate;

import javax.measure.Quantity;
import javax.measure.quantity.Length;
import javax.measure.quantity.Speed;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.quantity.FlowRate;
import org.gritwright.units.quantity.LaneCount;
import org.gritwright.units.quantity.LaneWidth;
import org.gritwright.units.quantity.LiquidApplicationRate;
import org.gritwright.units.quantity.LiquidArealApplicationRate;
import org.gritwright.units.quantity.LiquidLaneApplicationRate;

/**
 * Conversion between kinds of rate for liquids, where more than the unit changes; the twin of {@link Rates}, with the same
 * names.
 *
 * <p>The result is in the trade's unit of the first argument's system. All formulas are definitions. All methods are pure
 * and thread-safe.
 */
public final class LiquidRates {

    private LiquidRates() {}

    /**
     * The rate per lane distance: the rate per distance ÷ lanes treated in the pass.
     *
     * @param rate volume per distance the truck travels
     * @param lanes lanes treated side by side in the pass
     * @return volume per lane distance
     * @throws InvalidInputException if the rate is negative, or the other value is not greater than zero
     */
    public static Quantity<LiquidLaneApplicationRate> laneRateFromRate(
            Quantity<LiquidApplicationRate> rate, Quantity<LaneCount> lanes) {
        return Derived.like(rate, LiquidLaneApplicationRate.class, rate(rate) / Derived.lanes(lanes));
    }

    /**
     * The rate per distance: the rate per lane distance × lanes treated in the pass.
     *
     * @param laneRate volume per lane distance
     * @param lanes lanes treated side by side in the pass
     * @return volume per distance the truck travels
     * @throws InvalidInputException if the rate is negative, or the other value is not greater than zero
     */
    public static Quantity<LiquidApplicationRate> rateFromLaneRate(
            Quantity<LiquidLaneApplicationRate> laneRate, Quantity<LaneCount> lanes) {
        return Derived.like(laneRate, LiquidApplicationRate.class, laneRate(laneRate) * Derived.lanes(lanes));
    }

    /**
     * The rate per area of a lane: the rate per lane distance ÷ lane width.
     *
     * @param laneRate volume per lane distance
     * @param laneWidth width of one lane
     * @return volume per area
     * @throws InvalidInputException if the rate is negative, or the other value is not greater than zero
     */
    public static Quantity<LiquidArealApplicationRate> arealRateFromLaneRate(
            Quantity<LiquidLaneApplicationRate> laneRate, Quantity<LaneWidth> laneWidth) {
        return Derived.like(
                laneRate, LiquidArealApplicationRate.class, laneRate(laneRate) / Derived.laneWidth(laneWidth));
    }

    /**
     * The rate per lane distance: the rate per area × lane width.
     *
     * @param arealRate volume per area
     * @param laneWidth width of one lane
     * @return volume per lane distance
     * @throws InvalidInputException if the rate is negative, or the other value is not greater than zero
     */
    public static Quantity<LiquidLaneApplicationRate> laneRateFromArealRate(
            Quantity<LiquidArealApplicationRate> arealRate, Quantity<LaneWidth> laneWidth) {
        return Derived.like(
                arealRate, LiquidLaneApplicationRate.class, arealRate(arealRate) * Derived.laneWidth(laneWidth));
    }

    /**
     * The rate per area: the rate per distance ÷ the whole width treated in the pass, not the width of a lane.
     *
     * @param rate volume per distance the truck travels
     * @param treatedWidth width treated in the pass
     * @return volume per area
     * @throws InvalidInputException if the rate is negative, or the other value is not greater than zero
     */
    public static Quantity<LiquidArealApplicationRate> arealRateFromRate(
            Quantity<LiquidApplicationRate> rate, Quantity<Length> treatedWidth) {
        return Derived.like(rate, LiquidArealApplicationRate.class, rate(rate) / Derived.treatedWidth(treatedWidth));
    }

    /**
     * The rate per distance: the rate per area × the whole width treated in the pass.
     *
     * @param arealRate volume per area
     * @param treatedWidth width treated in the pass
     * @return volume per distance the truck travels
     * @throws InvalidInputException if the rate is negative, or the other value is not greater than zero
     */
    public static Quantity<LiquidApplicationRate> rateFromArealRate(
            Quantity<LiquidArealApplicationRate> arealRate, Quantity<Length> treatedWidth) {
        return Derived.like(
                arealRate, LiquidApplicationRate.class, arealRate(arealRate) * Derived.treatedWidth(treatedWidth));
    }

    /**
     * The rate per lane distance from a rate stated per two-lane distance: half of it, whatever the truck treats in a pass.
     *
     * @param statedRate volume per two-lane mile or kilometer, as some agencies state it
     * @return volume per lane distance
     * @throws InvalidInputException if the rate is negative
     */
    public static Quantity<LiquidLaneApplicationRate> laneRateFromTwoLaneRate(
            Quantity<LiquidApplicationRate> statedRate) {
        return Derived.like(
                statedRate,
                LiquidLaneApplicationRate.class,
                Derived.notNegative("rate per two-lane distance", LiquidApplicationRate.class, statedRate) / 2);
    }

    /**
     * The rate per two-lane distance: twice the rate per lane distance.
     *
     * @param laneRate volume per lane distance
     * @return volume per two-lane mile or kilometer
     * @throws InvalidInputException if the rate is negative
     */
    public static Quantity<LiquidApplicationRate> twoLaneRateFromLaneRate(
            Quantity<LiquidLaneApplicationRate> laneRate) {
        return Derived.like(laneRate, LiquidApplicationRate.class, laneRate(laneRate) * 2);
    }

    /**
     * The flow that a rate needs at a road speed: rate × speed.
     *
     * @param rate volume per distance the truck travels
     * @param roadSpeed road speed
     * @return volume per time; 45 gal/mi at 20 mi/h is 15 gal/min
     * @throws InvalidInputException if the rate is negative, or the other value is not greater than zero
     */
    public static Quantity<FlowRate> flowFromRate(Quantity<LiquidApplicationRate> rate, Quantity<Speed> roadSpeed) {
        return Derived.like(rate, FlowRate.class, rate(rate) * Derived.roadSpeed(roadSpeed));
    }

    /**
     * The rate that a flow gives at a road speed: flow ÷ speed, that is, gal/min × 60 ÷ mph.
     *
     * @param flow volume per time
     * @param roadSpeed road speed
     * @return volume per distance
     * @throws InvalidInputException if the rate is negative, or the other value is not greater than zero
     */
    public static Quantity<LiquidApplicationRate> rateFromFlow(Quantity<FlowRate> flow, Quantity<Speed> roadSpeed) {
        return Derived.like(
                flow,
                LiquidApplicationRate.class,
                Derived.notNegative("flow", FlowRate.class, flow) / Derived.roadSpeed(roadSpeed));
    }

    private static double rate(Quantity<LiquidApplicationRate> rate) {
        return Derived.notNegative("rate", LiquidApplicationRate.class, rate);
    }

    private static double laneRate(Quantity<LiquidLaneApplicationRate> laneRate) {
        return Derived.notNegative("lane rate", LiquidLaneApplicationRate.class, laneRate);
    }

    private static double arealRate(Quantity<LiquidArealApplicationRate> arealRate) {
        return Derived.notNegative("areal rate", LiquidArealApplicationRate.class, arealRate);
    }
}
