package org.gritwright.core.history.fleet;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Set;
import org.gritwright.core.history.Event;
import org.gritwright.core.history.History;
import org.gritwright.core.observation.Repeatability;
import org.gritwright.core.statistics.EqualVariances;
import org.gritwright.core.statistics.Variance;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.check.Require;

/**
 * How the catches of trucks of one kind scatter, pooled from many small samples. What is known so may be stated as the repeatability of a
 * truck with one catch or two ({@link org.gritwright.core.observation.CatchAllowances}). Immutable, thread-safe, a value.
 *
 * @param kind what they have in common
 * @param repeatability how a single catch scatters, with the degrees of freedom of all that were pooled
 * @param trucks how many trucks were pooled
 * @param odd the trucks whose catches scatter more than the others' by more than chance explains; they aren't in the pool
 * @param chance how likely scatters as different as all of these are if all trucks are alike, by Bartlett's test; none with one truck
 */
public record FleetScatter(
        Kind kind, Repeatability repeatability, int trucks, List<String> odd, OptionalDouble chance) {
    /** Copies the list. */
    public FleetScatter {
        Require.given(FleetScatter.class, kind, repeatability, odd, chance);
        odd = List.copyOf(odd);
    }

    /**
     * The scatter of each kind of which anything is known.
     *
     * @param history the fleet's history
     * @return kind by kind, in the order in which they were first caught
     */
    public static List<FleetScatter> of(History history) {
        Map<Kind, Map<String, Variance>> kinds = new LinkedHashMap<>();
        for (String truck : history.trucks()) {
            for (Event event : history.standing(truck)) {
                event.what()
                        .scatter()
                        .ifPresent(scatter -> kinds.computeIfAbsent(
                                        Kind.of(event.what().point().orElseThrow()), kind -> new LinkedHashMap<>())
                                .merge(truck, variance(scatter), Variance::pooledWith));
            }
        }
        return kinds.entrySet().stream()
                .map(kind -> pooled(kind.getKey(), kind.getValue()))
                .toList();
    }

    private static Variance variance(Repeatability scatter) {
        return new Variance(scatter.relative() * scatter.relative(), scatter.degreesOfFreedom());
    }

    private static FleetScatter pooled(Kind kind, Map<String, Variance> trucks) {
        List<String> names = new ArrayList<>(trucks.keySet());
        EqualVariances all = EqualVariances.of(List.copyOf(trucks.values()));
        Set<Integer> odd = new LinkedHashSet<>(all.odd());
        return new FleetScatter(
                kind,
                new Repeatability(
                        Amounts.ofSi(Math.sqrt(all.pooled().value()), SpreadingUnits.PERCENT),
                        all.pooled().degreesOfFreedom()),
                names.size() - odd.size(),
                odd.stream().map(names::get).toList(),
                all.chance());
    }
}
