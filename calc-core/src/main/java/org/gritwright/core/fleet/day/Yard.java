package org.gritwright.core.fleet.day;

import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.gritwright.core.judgement.Tolerance;
import org.gritwright.core.observation.Material;
import org.gritwright.core.weighing.Graduate;
import org.gritwright.core.weighing.Scale;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.check.NearestName;
import org.gritwright.units.check.Require;

/**
 * What all trucks of a day share, by name. Immutable, thread-safe.
 *
 * @param day the day
 * @param tolerance its tolerance
 * @param scales its scales by id
 * @param graduates its containers with marks by id
 * @param materials its materials by name
 */
public record Yard(
        FleetDay day,
        Tolerance tolerance,
        Map<String, Scale> scales,
        Map<String, Graduate> graduates,
        Map<String, Material> materials) {

    /** So many names are listed where another one was wanted: a refusal stands in every catch. */
    private static final int MOST_NAMED = 20;

    /** Copies the maps. */
    public Yard {
        Require.given(Yard.class, day, tolerance, scales, graduates, materials);
        scales = Map.copyOf(scales);
        graduates = Map.copyOf(graduates);
        materials = Map.copyOf(materials);
    }

    /**
     * The yard of a day.
     *
     * @param day the day
     * @return what its trucks share
     * @throws InvalidInputException if the tolerance is not greater than zero, two scales, containers with marks, materials, routes or tanks share a
     *     name, a route or tank names a material or truck that isn't there, or a liquid wets what no conveyor of the day lays
     */
    public static Yard of(FleetDay day) {
        Yard yard = new Yard(
                day,
                new Tolerance(day.tolerance()),
                byName("scale", day.scales(), Scale::id),
                byName("container with marks", day.graduates(), Graduate::id),
                byName("material", day.materials(), Material::name));
        byName("route", day.routes(), RouteEntry::name);
        yard.requireKnown(day.routes());
        byName("tank", day.tanks(), TankEntry::name);
        yard.requireLiquids();
        yard.requireSpreaders();
        return yard;
    }

    /** What names something that isn't there would be driven by nobody, and nobody would notice. */
    private void requireKnown(List<RouteEntry> routes) {
        Map<String, String> ids = routes.isEmpty()
                ? Map.of()
                : day.trucks().stream().map(TruckDay::id).distinct().collect(Collectors.toMap(id -> id, id -> id));
        for (RouteEntry route : routes) {
            Require.naming("route \"" + route.name() + "\"", () -> {
                material(route.material());
                route.trucks().forEach(id -> known("truck", ids, id));
                return route;
            });
        }
    }

    private void requireLiquids() {
        for (TankEntry tank : day.tanks()) {
            Require.naming("tank \"" + tank.name() + "\"", () -> material(tank.material()));
        }
    }

    /** A day of one truck is part of one whose other trucks aren't at hand. */
    private void requireSpreaders() {
        if (day.trucks().size() > 1
                && day.trucks().stream().anyMatch(one -> one.wets().isPresent())) {
            Map<String, TruckDay> spreaders = day.trucks().stream()
                    .filter(one -> !one.spreader().isForLiquids())
                    .collect(Collectors.toMap(TruckDay::id, Function.identity(), (one, other) -> one));
            day.trucks().stream()
                    .flatMap(one -> one.wets().stream())
                    .forEach(id -> known("truck with a conveyor, to be wetted,", spreaders, id));
        }
    }

    private static <T> Map<String, T> byName(String field, List<T> all, Function<T, String> name) {
        return all.stream().collect(Collectors.toMap(name, Function.identity(), (first, second) -> {
            throw new InvalidInputException(field, "listed once", name.apply(second));
        }));
    }

    /**
     * A scale.
     *
     * @param id its id
     * @return the scale
     * @throws InvalidInputException if the day lists none of that id
     */
    public Scale scale(String id) {
        return known("scale", scales, id);
    }

    /**
     * A container with marks.
     *
     * @param id its id
     * @return the container
     * @throws InvalidInputException if the day lists none of that id
     */
    public Graduate graduate(String id) {
        return known("container with marks", graduates, id);
    }

    /**
     * A material.
     *
     * @param name its name
     * @return the material
     * @throws InvalidInputException if the day lists none of that name
     */
    public Material material(String name) {
        return known("material", materials, name);
    }

    private static <T> T known(String field, Map<String, T> all, String name) {
        T found = all.get(name);
        if (found == null) {
            String more = all.size() > MOST_NAMED ? " and " + (all.size() - MOST_NAMED) + " more" : "";
            InvalidInputException unknown = new InvalidInputException(
                    field,
                    "one of "
                            + new TreeSet<>(all.keySet())
                                    .stream().limit(MOST_NAMED).toList() + more,
                    "\"" + name + "\"");
            throw NearestName.of(name, new TreeSet<>(all.keySet()))
                    .map(near -> unknown.withWords(unknown.getMessage() + "; did you mean \"" + near + "\"?"))
                    .orElse(unknown);
        }
        return found;
    }
}
