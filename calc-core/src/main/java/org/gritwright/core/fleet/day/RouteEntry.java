package org.gritwright.core.fleet.day;

import java.util.HashSet;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import javax.measure.Quantity;
import javax.measure.quantity.Speed;
import org.gritwright.core.envelope.Demand;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.check.Require;

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
        demand(name, target, lowestSpeed, highestSpeed);
        trucks = List.copyOf(trucks);
        Set<String> ids = new HashSet<>();
        for (String id : trucks) {
            Require.that(ids.add(id), "truck of a route", "listed once", () -> "\"" + id + "\"");
        }
    }

    private static Demand demand(
            String name, TargetEntry target, Quantity<Speed> lowestSpeed, Quantity<Speed> highestSpeed) {
        return new Demand(name, target.perDistance(), lowestSpeed, highestSpeed);
    }

    /**
     * What is asked.
     *
     * @return the rate per distance at every speed from the lowest to the highest
     */
    public Demand demand() {
        return demand(name, target, lowestSpeed, highestSpeed);
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
