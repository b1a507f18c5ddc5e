package org.gritwright.examples.telemetry;

import java.time.ZoneOffset;
import javax.measure.Quantity;
import javax.measure.quantity.Length;
import javax.measure.quantity.Speed;
import javax.measure.quantity.Time;
import org.gritwright.core.judgement.Tolerance;
import org.gritwright.units.quantity.FlowRate;
import org.gritwright.units.quantity.PulseCount;
import org.gritwright.units.quantity.RotationalSpeed;

/**
 * What neither rows nor records say.
 *
 * @param offset the yards' offset: a value of which only the day is known is held from that day's beginning on
 * @param fastestShaft no shaft turns faster
 * @param fastestTruck no truck goes faster
 * @param longestGap rows that are farther apart can't be counted
 * @param shaftRollsOverAt the count at which the shaft's counters start again at 0
 * @param roadRollsOverAt the same of the road's
 * @param mostLiquid no more of a liquid that wets runs
 * @param liquidRollsOverAt the count at which its counters start again at 0
 * @param piece how long a piece is
 * @param band how far the rate of a piece may be from the target
 * @param foundErrors how errors came about that verifications found
 */
record SeasonOptions(
        ZoneOffset offset,
        Quantity<RotationalSpeed> fastestShaft,
        Quantity<Speed> fastestTruck,
        Quantity<Time> longestGap,
        Quantity<PulseCount> shaftRollsOverAt,
        Quantity<PulseCount> roadRollsOverAt,
        Quantity<FlowRate> mostLiquid,
        Quantity<PulseCount> liquidRollsOverAt,
        Quantity<Length> piece,
        Tolerance band,
        FoundErrors foundErrors) {}
