package org.gritwright.examples.fleetday;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import javax.measure.Quantity;
import org.gritwright.core.observation.Conditions;
import org.gritwright.core.observation.Moisture;
import org.gritwright.core.observation.Observation;
import org.gritwright.units.Amounts;

/** The conditions that were written down beside catches, in words: one line for each catch that has any. */
final class ConditionWords {

    private ConditionWords() {}

    static List<String> of(Stream<Observation> catches) {
        return catches.filter(one -> !one.conditions().equals(Conditions.NONE))
                .map(one -> SheetTables.time(one.at()) + ": " + words(one.conditions()) + ".")
                .toList();
    }

    private static String words(Conditions conditions) {
        List<String> parts = new ArrayList<>();
        conditions.oilTemperature().ifPresent(oil -> parts.add("oil " + text(oil)));
        conditions.engineSpeed().ifPresent(engine -> parts.add("engine " + text(engine)));
        conditions.hopperLevel().ifPresent(level -> parts.add("hopper " + text(level) + " full"));
        conditions
                .moisture()
                .ifPresent(moisture -> parts.add("moisture " + text(moisture)
                        + (conditions.moistureBasis().orElseThrow() == Moisture.Basis.WET_MASS
                                ? " of the wet mass"
                                : " of the dry mass")));
        if (conditions.scaleZeroed()) {
            parts.add("scale set to zero with the empty containers on it");
        }
        return String.join(", ", parts);
    }

    private static String text(Quantity<?> quantity) {
        return Amounts.format(quantity);
    }
}
