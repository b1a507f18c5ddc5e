package org.gritwright.core.fleet.day;

import java.util.HashSet;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import javax.measure.Quantity;
import javax.measure.quantity.Speed;
import org.gritwright.core.envelope.Demand;
import org.gritwright.core.observation.Material;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.UnitSymbol;
import org.gritwright.units.check.Require;
import org.gritwright.units.quantity.ApplicationRate;
import org.gritwright.units.quantity.LiquidApplicationRate;

/**
 * What a route asks of its trucks, as it was written down. Immutable, thread-safe, a value.
 *
 * @param name what people know it by, unique among the routes of a day
 * @param material the name of the material
 * @param target the target rate
 * @param lowestSpeed the lowest road speed at which the rate is to hold
 * @param highestSpeed the highest
 * @param trucks the ids of the trucks that do it; empty for all trucks
 */
public record RouteEntry(
        String name,
        String material,
        TargetEntry target,
        Quantity<Speed> lowestSpeed,
        Quantity<Speed> highestSpeed,
        List<String> trucks) {
    /**
     * Checks the values and copies the list.
     *
     * @throws InvalidInputException if the name is blank, not exactly one target rate is given, a number is out of its range, or
     *     a truck is listed twice
     */
    public RouteEntry {
        Require.given(RouteEntry.class, name, material, target, lowestSpeed, highestSpeed, trucks);
        Require.text("name of a route", name);
        // Which material it is for isn't known here, but what can't be asked of any is refused.
        demand(name, target.perDistance(), 1, lowestSpeed, highestSpeed);
        trucks = List.copyOf(trucks);
        Set<String> ids = new HashSet<>();
        for (String id : trucks) {
            Require.that(ids.add(id), "truck of a route", "listed once", () -> "\"" + id + "\"");
        }
    }

    /**
     * What is asked.
     *
     * @param of the material of the route
     * @return the rate per distance at every speed from the lowest to the highest; of a liquid, the mass at its stated density
     * @throws InvalidInputException if the rate is one of liquids and the material granular, or the other way round
     */
    public Demand demand(Material of) {
        Quantity<?> rate = target.perDistance();
        Require.that(
                of.isLiquid() == isOfLiquid(rate),
                "target rate of route \"" + name + "\"",
                of.isLiquid() ? "a volume per distance, as " + of.name() + " is a liquid" : "a mass per distance",
                rate);
        return demand(name, rate, of.kilogramsPerAmount(), lowestSpeed, highestSpeed);
    }

    private static boolean isOfLiquid(Quantity<?> rate) {
        return UnitSymbol.of(rate.getUnit()).kind() == LiquidApplicationRate.class;
    }

    private static Demand demand(
            String name,
            Quantity<?> rate,
            double kilogramsPerAmount,
            Quantity<Speed> lowestSpeed,
            Quantity<Speed> highestSpeed) {
        if (!isOfLiquid(rate)) {
            return new Demand(name, rate.asType(ApplicationRate.class), lowestSpeed, highestSpeed);
        }
        Quantity<LiquidApplicationRate> liquid = rate.asType(LiquidApplicationRate.class);
        Require.positive("rate", LiquidApplicationRate.class, liquid);
        double kilogramsPerMeter = Amounts.si(LiquidApplicationRate.class, liquid) * kilogramsPerAmount;
        return new Demand(
                name,
                Amounts.ofSi(kilogramsPerMeter, UnitSymbol.tradeUnit(ApplicationRate.class, rate)),
                lowestSpeed,
                highestSpeed);
    }

    /**
     * Whether a truck does it.
     *
     * @param id the truck's id
     * @return true if the route is for all trucks, or names this one
     */
    public boolean isFor(String id) {
        Objects.requireNonNull(id, "id");
        return trucks.isEmpty() || trucks.contains(id);
    }

    /** The same route without the other trucks that do it. */
    RouteEntry withOnly(String id) {
        return trucks.size() <= 1
                ? this
                : new RouteEntry(name, material, target, lowestSpeed, highestSpeed, List.of(id));
    }
}
