package org.gritwright.core.fleet.assessment;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.gritwright.core.fleet.day.EnteredRanges;
import org.gritwright.core.fleet.day.FleetDay;
import org.gritwright.core.fleet.day.TruckDay;
import org.gritwright.core.weighing.Scale;

/**
 * Numbers that can't be, of what trucks share. They are found once, and told of every truck that uses it.
 *
 * @param day the fleet's day
 * @param parts scales, graduates and materials with such numbers
 * @param routes routes with such numbers, by their places in the day
 */
record SharedRefusals(FleetDay day, Map<Record, List<Refusal>> parts, Map<Integer, List<Refusal>> routes) {
    static SharedRefusals in(FleetDay day) {
        Map<Record, List<Refusal>> parts = new LinkedHashMap<>();
        addAll(day.scales(), day, "/scales/", parts);
        addAll(day.graduates(), day, "/graduates/", parts);
        addAll(day.materials(), day, "/materials/", parts);
        Map<Integer, List<Refusal>> routes = new LinkedHashMap<>();
        for (int i = 0; i < day.routes().size(); i++) {
            List<Refusal> refusals = refusals(day.routes().get(i), day, "/routes/" + i);
            if (!refusals.isEmpty()) {
                routes.put(i, refusals);
            }
        }
        return new SharedRefusals(day, parts, routes);
    }

    /** Of equal ones the first is named. */
    private static void addAll(
            List<? extends Record> all, FleetDay day, String root, Map<Record, List<Refusal>> parts) {
        for (int i = 0; i < all.size(); i++) {
            List<Refusal> refusals = refusals(all.get(i), day, root + i);
            if (!refusals.isEmpty()) {
                parts.putIfAbsent(all.get(i), refusals);
            }
        }
    }

    private static List<Refusal> refusals(Record part, FleetDay day, String pointer) {
        List<Refusal> refusals = new ArrayList<>();
        EnteredRanges.check(part, pointer, (at, why) -> refusals.add(Refusal.of(at, "", why)));
        if (part instanceof Scale scale) {
            for (int i = 0; i < scale.checks().size(); i++) {
                Refusal.ofDateAfter(
                                day.day(),
                                scale.checks().get(i).on(),
                                pointer + "/checks/" + i + "/on",
                                "",
                                "date of a scale's check")
                        .ifPresent(refusals::add);
            }
        }
        return List.copyOf(refusals);
    }

    /** Those of what a truck uses. */
    List<Refusal> of(TruckDay truck) {
        List<Refusal> all = new ArrayList<>();
        if (!parts.isEmpty()) {
            FleetDay only = day.withOnly(truck);
            Stream.of(only.scales(), only.graduates(), only.materials())
                    .flatMap(List::stream)
                    .forEach(part -> all.addAll(parts.getOrDefault(part, List.of())));
        }
        routes.forEach((place, refusals) -> {
            if (day.routes().get(place).isFor(truck.id())) {
                all.addAll(refusals);
            }
        });
        return all;
    }
}
