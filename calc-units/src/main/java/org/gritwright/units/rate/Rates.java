package org.gritwright.units.rate;

import javax.measure.Quantity;
import javax.measure.quantity.Length;
import javax.measure.quantity.Speed;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.quantity.ApplicationRate;
import org.gritwright.units.quantity.ArealApplicationRate;
import org.gritwright.units.quantity.DischargePerRevolution;
import org.gritwright.units.quantity.DischargeRate;
import org.gritwright.units.quantity.LaneApplicationRate;
import org.gritwright.units.quantity.LaneCount;
import org.gritwright.units.quantity.LaneWidth;
import org.gritwright.units.quantity.RotationalSpeed;

/**
 * Conversion between kinds of rate for granular material, where more than the unit changes. Each name says what comes out
 * and what goes in, {@code laneRateFromRate}; whatever else the conversion needs is an argument.
 *
 * <p>A plain "rate" is mass per distance the truck travels; a lane rate is per lane distance, an areal rate per area. Lane
 * width and treated width are different arguments of different kinds, because mixing them up halves or doubles a dose. The
 * result is in the trade's unit of the first argument's system (lb/lane-mi from lb/mi, kg/lane-km from kg/km). All
 * formulas are definitions; nothing is rounded beyond double arithmetic. All methods are pure and thread-safe.
 */
public final class Rates {

    private Rates() {}

    /**
     * The rate per lane distance: the rate per distance ÷ lanes treated in the pass.
     *
     * @param rate mass per distance the truck travels
     * @param lanes lanes treated side by side in the pass
     * @return mass per lane distance; 400 lb/mi over 2 lanes is 200 lb/lane-mi
     * @throws InvalidInputException if the rate is negative, or the other value is not greater than zero
     */
    public static Quantity<LaneApplicationRate> laneRateFromRate(
            Quantity<ApplicationRate> rate, Quantity<LaneCount> lanes) {
        return Derived.like(rate, LaneApplicationRate.class, rate(rate) / Derived.lanes(lanes));
    }

    /**
     * The rate per distance: the rate per lane distance × lanes treated in the pass.
     *
     * @param laneRate mass per lane distance
     * @param lanes lanes treated side by side in the pass
     * @return mass per distance the truck travels
     * @throws InvalidInputException if the rate is negative, or the other value is not greater than zero
     */
    public static Quantity<ApplicationRate> rateFromLaneRate(
            Quantity<LaneApplicationRate> laneRate, Quantity<LaneCount> lanes) {
        return Derived.like(laneRate, ApplicationRate.class, laneRate(laneRate) * Derived.lanes(lanes));
    }

    /**
     * The rate per area of a lane: the rate per lane distance ÷ lane width.
     *
     * @param laneRate mass per lane distance
     * @param laneWidth width of one lane
     * @return mass per area
     * @throws InvalidInputException if the rate is negative, or the other value is not greater than zero
     */
    public static Quantity<ArealApplicationRate> arealRateFromLaneRate(
            Quantity<LaneApplicationRate> laneRate, Quantity<LaneWidth> laneWidth) {
        return Derived.like(laneRate, ArealApplicationRate.class, laneRate(laneRate) / Derived.laneWidth(laneWidth));
    }

    /**
     * The rate per lane distance: the rate per area × lane width.
     *
     * @param arealRate mass per area
     * @param laneWidth width of one lane
     * @return mass per lane distance; 20 g/m² on a 12-ft lane is 259.54 lb/lane-mi
     * @throws InvalidInputException if the rate is negative, or the other value is not greater than zero
     */
    public static Quantity<LaneApplicationRate> laneRateFromArealRate(
            Quantity<ArealApplicationRate> arealRate, Quantity<LaneWidth> laneWidth) {
        return Derived.like(arealRate, LaneApplicationRate.class, arealRate(arealRate) * Derived.laneWidth(laneWidth));
    }

    /**
     * The rate per area: the rate per distance ÷ the whole width treated in the pass, not the width of a lane.
     *
     * @param rate mass per distance the truck travels
     * @param treatedWidth width treated in the pass
     * @return mass per area
     * @throws InvalidInputException if the rate is negative, or the other value is not greater than zero
     */
    public static Quantity<ArealApplicationRate> arealRateFromRate(
            Quantity<ApplicationRate> rate, Quantity<Length> treatedWidth) {
        return Derived.like(rate, ArealApplicationRate.class, rate(rate) / Derived.treatedWidth(treatedWidth));
    }

    /**
     * The rate per distance: the rate per area × the whole width treated in the pass.
     *
     * @param arealRate mass per area
     * @param treatedWidth width treated in the pass
     * @return mass per distance the truck travels
     * @throws InvalidInputException if the rate is negative, or the other value is not greater than zero
     */
    public static Quantity<ApplicationRate> rateFromArealRate(
            Quantity<ArealApplicationRate> arealRate, Quantity<Length> treatedWidth) {
        return Derived.like(
                arealRate, ApplicationRate.class, arealRate(arealRate) * Derived.treatedWidth(treatedWidth));
    }

    /**
     * The rate per lane distance from a rate stated per two-lane distance: half of it, whatever the truck treats in a pass.
     *
     * @param statedRate mass per two-lane mile or kilometer, as some agencies state it
     * @return mass per lane distance
     * @throws InvalidInputException if the rate is negative
     */
    public static Quantity<LaneApplicationRate> laneRateFromTwoLaneRate(Quantity<ApplicationRate> statedRate) {
        return Derived.like(
                statedRate,
                LaneApplicationRate.class,
                Derived.notNegative("rate per two-lane distance", ApplicationRate.class, statedRate) / 2);
    }

    /**
     * The rate per two-lane distance: twice the rate per lane distance.
     *
     * @param laneRate mass per lane distance
     * @return mass per two-lane mile or kilometer
     * @throws InvalidInputException if the rate is negative
     */
    public static Quantity<ApplicationRate> twoLaneRateFromLaneRate(Quantity<LaneApplicationRate> laneRate) {
        return Derived.like(laneRate, ApplicationRate.class, laneRate(laneRate) * 2);
    }

    /**
     * The discharge (mass per time) that a rate needs at a road speed: rate × speed.
     *
     * @param rate mass per distance the truck travels
     * @param roadSpeed road speed
     * @return mass per time; 600 lb/mi at 20 mi/h is 200 lb/min
     * @throws InvalidInputException if the rate is negative, or the other value is not greater than zero
     */
    public static Quantity<DischargeRate> dischargeFromRate(Quantity<ApplicationRate> rate, Quantity<Speed> roadSpeed) {
        return Derived.like(rate, DischargeRate.class, rate(rate) * Derived.roadSpeed(roadSpeed));
    }

    /**
     * The rate that a discharge gives at a road speed: discharge ÷ speed, that is, discharge per minute × 60 ÷ mph.
     *
     * @param discharge mass per time
     * @param roadSpeed road speed
     * @return mass per distance; 200 lb/min at 20 mi/h is 600 lb/mi (Minnesota Snow and Ice Control: Field Handbook for
     *     Snowplow Operators, 2nd revision, 2012)
     * @throws InvalidInputException if the rate is negative, or the other value is not greater than zero
     */
    public static Quantity<ApplicationRate> rateFromDischarge(
            Quantity<DischargeRate> discharge, Quantity<Speed> roadSpeed) {
        return Derived.like(
                discharge,
                ApplicationRate.class,
                Derived.notNegative("discharge", DischargeRate.class, discharge) / Derived.roadSpeed(roadSpeed));
    }

    /**
     * The conveyor speed that a rate needs at a road speed: rate × speed ÷ discharge per revolution.
     *
     * @param rate mass per distance the truck travels
     * @param roadSpeed road speed
     * @param dischargePerRevolution mass per revolution of the sensed shaft
     * @return revolutions of the sensed shaft per time
     * @throws InvalidInputException if the rate is negative, or another value is not greater than zero
     */
    public static Quantity<RotationalSpeed> shaftSpeedFromRate(
            Quantity<ApplicationRate> rate,
            Quantity<Speed> roadSpeed,
            Quantity<DischargePerRevolution> dischargePerRevolution) {
        return Derived.like(
                rate,
                RotationalSpeed.class,
                rate(rate)
                        * Derived.roadSpeed(roadSpeed)
                        / Derived.positive(
                                "discharge per revolution", DischargePerRevolution.class, dischargePerRevolution));
    }

    /**
     * The rate that a conveyor speed gives at a road speed: discharge per revolution × shaft speed ÷ road speed.
     *
     * @param dischargePerRevolution mass per revolution of the sensed shaft
     * @param shaftSpeed revolutions of the sensed shaft per time
     * @param roadSpeed road speed
     * @return mass per distance
     * @throws InvalidInputException if the shaft speed is negative, or another value is not greater than zero
     */
    public static Quantity<ApplicationRate> rateFromShaftSpeed(
            Quantity<DischargePerRevolution> dischargePerRevolution,
            Quantity<RotationalSpeed> shaftSpeed,
            Quantity<Speed> roadSpeed) {
        return Derived.like(
                dischargePerRevolution,
                ApplicationRate.class,
                Derived.positive("discharge per revolution", DischargePerRevolution.class, dischargePerRevolution)
                        * Derived.notNegative("shaft speed", RotationalSpeed.class, shaftSpeed)
                        / Derived.roadSpeed(roadSpeed));
    }

    private static double rate(Quantity<ApplicationRate> rate) {
        return Derived.notNegative("rate", ApplicationRate.class, rate);
    }

    private static double laneRate(Quantity<LaneApplicationRate> laneRate) {
        return Derived.notNegative("lane rate", LaneApplicationRate.class, laneRate);
    }

    private static double arealRate(Quantity<ArealApplicationRate> arealRate) {
        return Derived.notNegative("areal rate", ArealApplicationRate.class, arealRate);
    }
}
