package org.gritwright.core.record;

import java.util.ArrayList;
import java.util.List;
import org.gritwright.core.json.JsonNode;
import org.gritwright.core.json.Migrating;
import org.gritwright.core.json.Migration;
import org.gritwright.core.json.Schema;

/** How fleet days of older versions become those of the version that is written. */
final class FleetDayMigrations {
    /** The first step leads from version 1 to 2, and so on. */
    static final List<Migration> STEPS = List.of(Migration.from("fleet-day-1", 0, FleetDayMigrations::fromVersion1));

    private FleetDayMigrations() {}

    /**
     * A truck has several calibrations in force, each since a day or a time; where a gate stands is a setting, since pumps have
     * no opening. A weighing method was called a way of weighing, a tire a tyre.
     */
    static void fromVersion1(JsonNode.ObjectNode day, Migrating migrating) {
        migrating.object(day, "plan").forEach(plan -> migrating.rename(plan, "waysOfWeighing", "weighingMethods"));
        migrating.objects(day, "trucks").forEach(truck -> {
            migrating.object(truck, "inForce").forEach(entry -> {
                migrating.rename(entry, "dated", "since");
                migrating.rename(entry, "opening", "setting");
                truck.fields().put("inForce", new JsonNode.ArrayNode(new ArrayList<>(List.of(entry))));
            });
            migrating
                    .objects(truck, "changes")
                    .forEach(change -> change.fields().replace("part", Schema.text("tyre"), Schema.text("tire")));
            for (String catches : List.of("calibrationCatches", "verificationCatches")) {
                migrating.objects(truck, catches).forEach(one -> migrating.rename(one, "opening", "setting"));
            }
        });
    }
}
