package org.gritwright.examples.fleetmemory;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import javax.measure.quantity.Dimensionless;
import org.gritwright.core.history.History;
import org.gritwright.core.history.SeasonError;
import org.gritwright.core.record.WrittenSeason;
import org.gritwright.core.telemetry.SharedError;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.units.Amounts;

/**
 * What the kept records say of the trucks of a season: by how much what each display held was off.
 *
 * @param errors by truck
 * @param shared by truck, the parts of their uncertainty that others share
 * @param remarks what a person should know of them, by truck
 */
record SeasonErrors(
        Map<String, Measured<Dimensionless>> errors,
        Map<String, List<SharedError>> shared,
        Map<String, List<String>> remarks) {
    /** @param materials of each truck, those that it drew */
    static SeasonErrors of(History history, Map<String, Set<String>> materials, WrittenSeason season) {
        Map<String, Measured<Dimensionless>> errors = new LinkedHashMap<>();
        Map<String, List<SharedError>> shared = new LinkedHashMap<>();
        Map<String, List<String>> remarks = new LinkedHashMap<>();
        Set<String> known = Set.copyOf(history.trucks());
        materials.forEach((truck, drawn) -> {
            List<String> said = new ArrayList<>();
            if (!known.contains(truck)) {
                said.add("No record of it is kept.");
            } else if (drawn.size() != 1) {
                said.add("It drew " + Words.count(drawn.size(), "material") + ", and an error is known of one only.");
            } else {
                SeasonError error =
                        SeasonError.of(history, truck, drawn.iterator().next(), season.from(), season.to());
                said.addAll(error.remarks());
                error.error().filter(SeasonErrors::isUncertain).ifPresent(one -> errors.put(truck, one));
                shared.put(truck, error.shared());
            }
            remarks.put(truck, said);
        });
        return new SeasonErrors(errors, shared, remarks);
    }

    private static boolean isUncertain(Measured<Dimensionless> error) {
        return error.standardUncertainty()
                .filter(u -> Amounts.si(Dimensionless.class, u) > 0)
                .isPresent();
    }
}
