package org.gritwright.examples.fleetday;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.file.Path;
import java.util.List;
import org.gritwright.core.fleet.assessment.FleetAssessor;
import org.gritwright.core.metering.BuiltInTypes;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Whole days typed in, compared with the documents that Java makes of the same sheets. */
class TypeInDayTest {
    private static final ObjectMapper JSON = new ObjectMapper();

    @TempDir
    private Path folder;

    /** A number without its unit. */
    static String number(JsonNode quantity) {
        return quantity.asText().replaceFirst(" .*", "");
    }

    /** The same truck as the sheet has it: counter readings, a rate for the distance, conditions of the whole truck. */
    private static void asOnPaper(ObjectNode truck) {
        int reading = 1000;
        JsonNode conditions = truck.at("/calibrationCatches/0/conditions");
        for (String list : List.of("calibrationCatches", "verificationCatches")) {
            for (JsonNode node : truck.withArray(list)) {
                ObjectNode one = (ObjectNode) node;
                one.remove("notes");
                if (truck.get("id").asText().equals("T-08")) {
                    // Planned for a scale that takes the whole drop: the page calls what is weighed otherwise.
                    one.get("containers")
                            .forEach(pail -> ((ObjectNode) pail)
                                    .put(
                                            "container",
                                            pail.get("container").asText().replace("pail", "container")));
                }
                one.remove("conditions");
                if (conditions.isObject()) {
                    one.set("conditions", conditions.deepCopy());
                }
                if (one.at("/counted/pulses").isTextual()) {
                    int pulses = Integer.parseInt(number(one.at("/counted/pulses")));
                    one.putObject("counted").put("start", reading + " pulse").put("stop", reading + pulses + " pulse");
                    reading += pulses;
                }
                if (one.has("targetLaneRate")) {
                    one.remove(List.of("targetLaneRate", "lanes", "testDistance"));
                    one.put("targetRate", "85 kg/km").put("runTime", "90 s");
                }
                if (list.equals("verificationCatches")
                        && truck.at("/inForce/0/slot").isTextual()) {
                    one.put("slot", truck.at("/inForce/0/slot").asText());
                }
            }
        }
    }

    private static void addCheck(ObjectNode day, String scale, String weight) {
        for (JsonNode one : day.withArray("scales")) {
            if (one.get("id").asText().equals(scale)) {
                ((ObjectNode) one)
                        .withArray("checks")
                        .addObject()
                        .put("on", "2026-10-19")
                        .put("testWeight", weight)
                        .put("reading", weight);
            }
        }
    }

    static void typeCatch(Typist typist, String group, JsonNode one) {
        typist.type(group + "/at", one.get("at").asText().substring(11, 16));
        for (String field : List.of("testSpeed", "targetRate", "prewetRate", "runTime")) {
            if (one.has(field)) {
                typist.type(group + "/" + field, number(one.get(field)));
            }
        }
        one.path("counted")
                .properties()
                .forEach(field -> typist.type(group + "/counted." + field.getKey(), number(field.getValue())));
        for (String field : List.of("primed", "coasting")) {
            if (one.has(field)) {
                typist.type(group + "/" + field, one.get(field).asText());
            }
        }
        if (one.has("indicated")) {
            typist.type(group + "/indicated", number(one.get("indicated")));
        }
        one.path("density")
                .properties()
                .forEach(field -> typist.type(group + "/density." + field.getKey(), number(field.getValue())));
        for (int i = 0; i < one.path("read").path("fills").size(); i++) {
            if (!typist.has(group + "/read.fills." + i)) {
                typist.press("more-" + group);
            }
            typist.type(group + "/read.fills." + i, number(one.at("/read/fills/" + i)));
        }
        for (int i = 0; i < one.path("containers").size(); i++) {
            String pail = group + "/containers." + i + ".";
            if (!typist.has(pail + "gross")) {
                typist.press("more-" + group);
            }
            typist.type(pail + "gross", number(one.get("containers").get(i).get("gross")));
            typist.type(pail + "tare", number(one.get("containers").get(i).get("tare")));
        }
    }

    private static void typeTruck(Typist typist, JsonNode truck, String weight) {
        typist.truck(truck.get("id").asText());
        JsonNode first = truck.get("calibrationCatches").get(0);
        typist.type("before/scale", first.get("scale").asText());
        typist.type("before/testWeight", weight).type("before/reading", weight);
        first.path("conditions")
                .properties()
                .forEach(field -> typist.type("before/" + field.getKey(), number(field.getValue())));
        for (JsonNode one : truck.path("verificationCatches")) {
            if (one.has("indicatedStep")) {
                typist.type("before/indicatedStep", number(one.get("indicatedStep")));
            }
        }
        typeCatches(typist, truck);
        typeRoad(typist, truck.path("roadSpeed"));
        typist.type("done/operator", first.get("operator").asText());
    }

    static void typeCatches(Typist typist, JsonNode truck) {
        for (String list : List.of("calibrationCatches", "verificationCatches")) {
            String letter = list.substring(0, 1);
            for (int i = 0; i < truck.get(list).size(); i++) {
                String group = "p0." + letter + i;
                if (!typist.has(group + "/at")) {
                    // The button stands after the last.
                    typist.press("more-p0." + letter);
                }
                typeCatch(typist, group, truck.get(list).get(i));
            }
        }
    }

    static void typeRoad(Typist typist, JsonNode road) {
        if (road.isObject()) {
            typist.type("road/inForce", number(road.get("inForce")));
            typist.type("road/course", number(road.at("/runs/0/course")));
            for (int i = 0; i < road.get("runs").size(); i++) {
                typist.type("road/run" + (i + 1), number(road.at("/runs/" + i + "/pulses")));
            }
        }
    }

    static void strip(ObjectNode truck) {
        truck.remove(List.of("calibrationCatches", "verificationCatches", "roadSpeed"));
    }

    private void typedIs(List<String> ids, boolean byEye, String... weights) throws Exception {
        ObjectNode whole = (ObjectNode) JSON.readTree(DemoDay.changed(day -> {
            if (!byEye) {
                ((ObjectNode) day.get("plan")).remove("countUncertainty");
            }
            ids.forEach(id -> asOnPaper(DemoDay.truck(day, id)));
        }));
        ObjectNode planned = whole.deepCopy();
        ids.forEach(id -> strip(DemoDay.truck(planned, id)));
        String saved;
        try (Browser browser = Browser.open()) {
            Typist typist = Typist.of(browser, folder, planned.toString());
            for (int i = 0; i < ids.size(); i++) {
                ObjectNode truck = DemoDay.truck(whole, ids.get(i));
                typeTruck(typist, truck, weights[i]);
                String unit = truck.at("/calibrationCatches/0/containers/0/gross")
                        .asText()
                        .replaceFirst(".* ", "");
                addCheck(whole, truck.at("/calibrationCatches/0/scale").asText(), weights[i] + " " + unit);
            }
            saved = typist.file("save");
            assertThat(typist.text("said")).doesNotContain("Unfinished");
        }
        assertThat(Typist.canonical(saved)).isEqualTo(Typist.canonical(whole.toString()));
        assertThat(FleetAssessor.of(BuiltInTypes.registry()).assess(Typist.read(saved)))
                .filteredOn(truck -> ids.contains(truck.truck().id()))
                .hasSize(ids.size())
                .allSatisfy(truck -> assertThat(truck.refusals()).isEmpty())
                .allSatisfy(
                        truck -> assertThat(truck.points().get(0).calibration()).isPresent());
    }

    /** A sensor and pails on a hanging scale, a metric truck with a catch more than planned, a count by eye. */
    @Test
    void threeKindsOfTrucks() throws Exception {
        typedIs(List.of("T-03", "T-07", "T-08"), true, "55", "25", "45.5");
    }

    @Test
    void aTruckThatRunsAtAControlSetting() throws Exception {
        typedIs(List.of("T-15"), false, "21");
    }
}
