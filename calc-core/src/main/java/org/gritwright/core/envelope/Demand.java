package org.gritwright.core.envelope;

import java.util.stream.Stream;
import javax.measure.Quantity;
import javax.measure.quantity.Speed;
import org.gritwright.units.check.Require;
import org.gritwright.units.quantity.ApplicationRate;
import org.gritwright.units.quantity.LaneApplicationRate;
import org.gritwright.units.quantity.LaneCount;
import org.gritwright.units.rate.Rates;

/**
 * What a truck is to do: a rate at every speed from one to another. Immutable, thread-safe, a value.
 *
 * @param name what people know it by, such as a route
 * @param rate the rate, over all lanes that are treated at once, greater than zero
 * @param slowest the lowest road speed, greater than zero
 * @param fastest the highest road speed, not below the lowest
 */
public record Demand(String name, Quantity<ApplicationRate> rate, Quantity<Speed> slowest, Quantity<Speed> fastest) {
    /**
     * Checks the values.
     *
     * @throws org.gritwright.units.InvalidInputException if one is out of its range
     */
    public Demand {
        Require.given(Demand.class, name, rate, slowest, fastest);
        Require.positive("rate", ApplicationRate.class, rate);
        Require.positive("lowest road speed", Speed.class, slowest);
        Require.atLeast("highest road speed", Speed.class, fastest, slowest);
    }

    /**
     * A demand by a rate on each lane.
     *
     * @param name what people know it by
     * @param rate the rate on each lane, greater than zero
     * @param lanes how many lanes are treated at once, greater than zero
     * @param slowest the lowest road speed
     * @param fastest the highest road speed
     * @return the demand
     * @throws org.gritwright.units.InvalidInputException if a value is out of its range
     */
    public static Demand onLanes(
            String name,
            Quantity<LaneApplicationRate> rate,
            Quantity<LaneCount> lanes,
            Quantity<Speed> slowest,
            Quantity<Speed> fastest) {
        return new Demand(name, Rates.rateFromLaneRate(rate, lanes), slowest, fastest);
    }

    Stream<Quantity<Speed>> ends() {
        return Stream.of(slowest, fastest).distinct();
    }
}
