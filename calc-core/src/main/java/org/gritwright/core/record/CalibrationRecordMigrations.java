package org.gritwright.core.record;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.gritwright.core.json.JsonNode;
import org.gritwright.core.json.Migrating;
import org.gritwright.core.json.Migration;
import org.gritwright.core.json.Schema;

/** How calibration records of older versions become those of the version that is written. */
final class CalibrationRecordMigrations {
    /** The first step leads from version 1 to 2, and so on. */
    static final List<Migration> STEPS =
            List.of(Migration.from("calibration-record-1", 0, CalibrationRecordMigrations::fromVersion1));

    private static final String MUST_BE = " must be ";
    private static final String VALUE = ": ";

    private CalibrationRecordMigrations() {}

    /** What belongs to one calibration point stands together, and a truck may have several things to do. */
    private static void fromVersion1(JsonNode.ObjectNode record, Migrating migrating) {
        migrating.object(record, "entered").forEach(day -> FleetDayMigrations.fromVersion1(day, migrating));
        Map<List<JsonNode>, JsonNode.ObjectNode> points = new LinkedHashMap<>();
        move(record, migrating, "calibrations", (point, one) -> point.fields().put("calibration", one), points);
        move(record, migrating, "verifications", CalibrationRecordMigrations::addVerification, points);
        move(record, migrating, "corrections", (point, one) -> point.fields().put("correction", one), points);
        move(record, migrating, "startUps", (point, one) -> point.fields().put("startUp", one), points);
        if (!points.isEmpty()) {
            record.fields().put("points", new JsonNode.ArrayNode(new ArrayList<>(points.values())));
        }
        migrating.objects(record, "findings").forEach(FindingOfVersion1::toToday);
        migrating
                .objects(record, "curves")
                .forEach(curve -> migrating
                        .objects(curve, "points")
                        .forEach(point -> migrating.rename(point, "opening", "setting")));
        if (record.fields().remove("refusal") instanceof JsonNode.TextNode text) {
            record.fields().put("refusals", list(refusal(text.text())));
        }
        if (record.fields().remove("nextStep") instanceof JsonNode.TextNode step
                && !step.text().equals("nothing")) {
            JsonNode text = Schema.text(step.text().replace("mend-", "fix-"));
            record.fields().put("toDo", list(Schema.object(Map.entry("step", text))));
        }
    }

    private interface Placing {
        void into(JsonNode.ObjectNode point, JsonNode.ObjectNode one);
    }

    /** In version 1 everything at a point goes by one spelling of its setting. */
    private static void move(
            JsonNode.ObjectNode record,
            Migrating migrating,
            String from,
            Placing placing,
            Map<List<JsonNode>, JsonNode.ObjectNode> points) {
        migrating.objects(record, from).forEach(one -> {
            JsonNode material = one.fields().remove("material");
            JsonNode opening = one.fields().remove("opening");
            JsonNode.ObjectNode point = points.computeIfAbsent(Arrays.asList(material, opening), any -> {
                Map<String, JsonNode> fields = new LinkedHashMap<>();
                if (material != null) {
                    fields.put("material", material);
                }
                if (opening != null) {
                    fields.put("setting", opening);
                }
                return new JsonNode.ObjectNode(fields);
            });
            placing.into(point, one);
        });
        record.fields().remove(from);
    }

    private static void addVerification(JsonNode.ObjectNode point, JsonNode.ObjectNode one) {
        JsonNode list =
                point.fields().computeIfAbsent("verifications", any -> new JsonNode.ArrayNode(new ArrayList<>()));
        ((JsonNode.ArrayNode) list).items().add(one);
    }

    private static JsonNode.ArrayNode list(JsonNode item) {
        return new JsonNode.ArrayNode(new ArrayList<>(List.of(item)));
    }

    /** Version 1 kept the first reason only, as a sentence. */
    private static JsonNode refusal(String sentence) {
        int rule = sentence.indexOf(MUST_BE);
        int value = sentence.lastIndexOf(VALUE);
        boolean whole = rule < 0 || value < rule;
        return Schema.object(
                Map.entry("pointer", Schema.text("")),
                Map.entry("subject", Schema.text("")),
                Map.entry("field", Schema.text(whole ? sentence : sentence.substring(0, rule))),
                Map.entry(
                        "accepted",
                        Schema.text(whole ? "otherwise" : sentence.substring(rule + MUST_BE.length(), value))),
                Map.entry("value", Schema.text(whole ? "" : sentence.substring(value + VALUE.length()))));
    }
}
