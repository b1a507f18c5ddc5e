package org.gritwright.examples.fleetmemory;

import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import javax.measure.quantity.Dimensionless;
import org.gritwright.core.history.Held;
import org.gritwright.core.history.History;
import org.gritwright.core.history.SlotState;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;

/**
 * What the kept records say of the trucks of a season: by how much what each display held at its end was off.
 *
 * @param errors by truck
 * @param unknown why nothing is known, by truck
 */
record SeasonErrors(Map<String, Measured<Dimensionless>> errors, Map<String, String> unknown) {
    /** @param materials of each truck, those that it drew */
    static SeasonErrors of(History history, Map<String, Set<String>> materials, Instant end) {
        Map<String, Measured<Dimensionless>> errors = new LinkedHashMap<>();
        Map<String, String> unknown = new LinkedHashMap<>();
        Set<String> known = Set.copyOf(history.trucks());
        materials.forEach((truck, drawn) -> {
            if (!known.contains(truck)) {
                unknown.put(truck, "no record of it is kept");
                return;
            }
            List<Measured<Dimensionless>> found = new ArrayList<>();
            for (SlotState slot : history.asOf(truck, end).slots()) {
                for (Held held : slot.values()) {
                    if (drawn.contains(held.value().point().material().name())) {
                        usable(held).ifPresent(found::add);
                    }
                }
            }
            if (found.isEmpty()) {
                unknown.put(truck, "no catch tells how far off what its display held was");
            } else {
                errors.put(truck, together(found));
            }
        });
        return new SeasonErrors(errors, unknown);
    }

    /** What was changed after it was caught isn't known any more. */
    private static Optional<Measured<Dimensionless>> usable(Held held) {
        return held.changed().isEmpty()
                ? held.error()
                        .filter(error -> error.standardUncertainty()
                                .filter(u -> Amounts.si(Dimensionless.class, u) > 0)
                                .isPresent())
                : Optional.empty();
    }

    /** Nobody knows how much was laid with which gate opening: any share of each is as likely. */
    private static Measured<Dimensionless> together(List<Measured<Dimensionless>> found) {
        if (found.size() == 1) {
            return found.get(0);
        }
        double lowest = Double.POSITIVE_INFINITY;
        double highest = Double.NEGATIVE_INFINITY;
        double own = 0;
        for (Measured<Dimensionless> one : found) {
            double error = Amounts.si(Dimensionless.class, one.value());
            lowest = Math.min(lowest, error);
            highest = Math.max(highest, error);
            own = Math.max(
                    own,
                    Amounts.si(Dimensionless.class, one.standardUncertainty().orElseThrow()));
        }
        // Rectangular from the lowest to the highest, JCGM 100:2008, 4.3.7.
        double between = (highest - lowest) / Math.sqrt(12);
        return Measured.of(
                Amounts.ofSi((lowest + highest) / 2, SpreadingUnits.PERCENT),
                Amounts.ofSi(Math.hypot(own, between), SpreadingUnits.PERCENT),
                Double.POSITIVE_INFINITY);
    }
}
