package org.gritwright.examples.fleetday;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.io.TempDir;

/** From the sheet of a pump or a flow meter through the page and the program to what is to be done. */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class TypeInLiquidDayTest {
    private static final ObjectMapper JSON = new ObjectMapper();

    private static final String PUMP = "T-31 brine";

    private static final String METER = "A-42";

    /** 200 turns give 2.8 gal, and 190 and 210 in proportion: a turn 0.014 gal, where the display holds 0.0155. */
    private static final String OF_THE_PUMP = "Enter 0.014 gal/rev for salt brine in place of 0.0155 gal/rev";

    /** 1200 pulses are 2 gal, and 1140 and 1260 in proportion: a gallon is 600 pulses, as the meter is rated, but the display holds 640. */
    private static final String OF_THE_METER = "Enter 600 pulse/gal for salt brine in place of 640 pulse/gal";

    @TempDir
    private Path folder;

    private Browser browser;

    @BeforeAll
    void open() {
        browser = Browser.open();
    }

    @AfterAll
    void close() {
        if (browser != null) {
            browser.close();
        }
    }

    /** The demo before these trucks were caught. */
    private static ObjectNode before(String... ids) throws IOException {
        ObjectNode day = (ObjectNode) JSON.readTree(Run.text(Run.LIQUIDS));
        for (String id : ids) {
            DemoDay.truck(day, id).remove(List.of("calibrationCatches", "verificationCatches"));
        }
        ((ObjectNode) DemoDay.truck(day, METER).at("/inForce/0")).put("value", "640 pulse/gal");
        return day;
    }

    private Typist typist(ObjectNode day) throws Exception {
        return Typist.of(browser, folder, day.toString()).type("offset", "-04:00");
    }

    /** Three catches, each with a count and a volume. */
    private static Map<String, String> catches(String hour, Map<String, String> same, String path, String... pairs) {
        Map<String, String> boxes = new LinkedHashMap<>();
        for (int i = 0; i < 3; i++) {
            String group = "p0.c" + i + "/";
            boxes.put(group + "at", hour + ":" + (10 + 12 * i));
            same.forEach((other, text) -> boxes.put(group + "counted." + other, text));
            boxes.put(group + "counted." + path, pairs[2 * i]);
            boxes.put(group + "primed", "true");
            boxes.put(group + "coasting", "in-both");
            boxes.put(group + "read.fills.0", pairs[2 * i + 1]);
        }
        return boxes;
    }

    /** 402.1 lb are 0.201 ton: for 2.01 gal the pump turns 129.7 times at 30 pulses, and 0.014 gal at each turn are 1.82 gal. */
    private static void typePump(Typist typist) {
        typist.truck(PUMP)
                .boxes(catches("08", Map.of("start", "0"), "stop", "6000", "2.80", "5700", "2.66", "6300", "2.94"))
                .boxes(Map.of("p0.v0/at", "08:46", "p0.v0/testSpeed", "25", "p0.v0/targetRate", "300"))
                .boxes(Map.of("p0.v0/prewetRate", "10", "p0.v0/runTime", "193", "p0.v0/read.fills.0", "1.82"))
                .boxes(Map.of("p0.v0/counted.start", "0", "p0.v0/counted.stop", "3891"));
    }

    /** For 5 gal the display lets 3200 pulses pass, and they are 5.33 gal. */
    private static void typeMeter(Typist typist) {
        typist.truck(METER)
                .boxes(catches("13", Map.of("start", "0"), "stop", "1200", "2.00", "1140", "1.90", "1260", "2.10"))
                .boxes(Map.of("p0.v1/at", "13:46", "p0.v1/testSpeed", "25", "p0.v1/targetRate", "24"))
                .boxes(Map.of("p0.v1/runTime", "30", "p0.v1/read.fills.0", "5.33"))
                .boxes(Map.of("p0.v1/counted.start", "0", "p0.v1/counted.stop", "3200"));
    }

    /** What the check and the report say of a saved day. */
    private String checkedAndReported(String saved, String name) throws IOException {
        Path input = Files.writeString(folder.resolve(name + ".json"), saved);
        Run check = Run.of("--input", input.toString(), "--mode", "check");
        assertThat(check.exitCode()).as(check.err()).isZero();
        assertThat(check.out()).contains("0 problems").doesNotContain("truck " + PUMP);
        Path output = folder.resolve(name);
        Run report = Run.of("--input", input.toString(), "--output", output.toString(), "--mode", "report");
        assertThat(report.exitCode()).as(report.err()).isZero();
        return Files.readString(output.resolve("run-0001/report.html"));
    }

    @Test
    void aPumpAndAFlowMeterAmongSpreadersOfGrains() throws Exception {
        ObjectNode day = before(PUMP, METER);
        DemoDay.truck(day, METER).remove("notes");
        Typist typist = typist(day);
        typePump(typist);
        typeMeter(typist);
        String saved = typist.file("save");
        assertThat(typist.text("said")).startsWith("Saved as fleet-day-2026-10-20.json");
        assertThat(checkedAndReported(saved, "mixed")).contains(OF_THE_PUMP, OF_THE_METER);

        JsonNode whole = JSON.readTree(saved);
        for (JsonNode was : day.get("trucks")) {
            String id = was.get("id").asText();
            ObjectNode is = DemoDay.truck((ObjectNode) whole, id);
            if (List.of(PUMP, METER).contains(id)) {
                assertThat(is.get("calibrationCatches")).hasSize(3);
                assertThat(is.get("verificationCatches")).hasSize(1);
                is.remove(List.of("calibrationCatches", "verificationCatches"));
            }
            assertThat(Typist.canonical(alone(day, is))).isEqualTo(Typist.canonical(alone(day, was)));
        }
    }

    /** A day with one truck and, as what wets needs it, all conveyors. */
    private static String alone(ObjectNode day, JsonNode truck) {
        ObjectNode one = day.deepCopy();
        one.remove("routes");
        var trucks = one.putArray("trucks");
        day.get("trucks").forEach(other -> {
            if (other.has("conveyor") && !other.get("id").equals(truck.get("id"))) {
                trucks.add(other);
            }
        });
        return one.set("trucks", trucks.add(truck)).toString();
    }

    /** There needn't be a scale in the yard. */
    @Test
    void aFleetOfLiquidsOnlyThatAreReadOnly() throws Exception {
        ObjectNode day = before("A-41", METER, "A-43");
        DemoDay.cut(day, "A-41", METER, "A-43");
        day.putArray("scales");
        ObjectNode plan = (ObjectNode) day.get("plan");
        plan.putArray("weighingMethods");
        plan.remove(List.of("targetRates", "prewetRates"));
        Typist typist = typist(day);
        typist.truck("A-41");
        assertThat(typist.has("before/scale")).isFalse();
        assertThat(typist.has("before/testWeight")).isFalse();
        typeMeter(typist);
        assertThat(checkedAndReported(typist.file("save"), "only")).contains(OF_THE_METER);
    }

    /** The same pump without a sensor: somebody watches the mark on its shaft. */
    @Test
    void aPumpWhoseTurnsAreCountedByEye() throws Exception {
        ObjectNode day = before(PUMP);
        DemoDay.truck(day, PUMP).remove("pulsesPerRevolution");
        ((ObjectNode) day.get("plan")).put("countUncertainty", "0.2 rev");
        Typist typist = typist(day).truck(PUMP);
        assertThat(typist.has("before/counted.modulus")).isFalse();
        typist.boxes(catches("08", Map.of(), "revolutions", "200", "2.80", "190", "2.66", "210", "2.94"));
        assertThat(typist.notes("p0.c0")).isEqualTo("Missing: ± (standard).");
        for (int i = 0; i < 3; i++) {
            typist.type("p0.c" + i + "/counted.standardUncertainty", "0.25");
        }
        assertThat(typist.notes("p0.c0")).isEqualTo("Complete. Volume 2.80 gal.");
        typist.type("p0.c1/counted.revolutions", "19");
        assertThat(typist.notes("p0.c1")).contains("that its turns would give. A decimal point?");
        typist.type("p0.c1/counted.revolutions", "190");
        String saved = typist.file("save");
        assertThat(DemoDay.truck((ObjectNode) JSON.readTree(saved), PUMP).at("/calibrationCatches/1/counted"))
                .isEqualTo(JSON.readTree("{\"revolutions\": \"190 rev\", \"standardUncertainty\": \"0.25 rev\"}"));
        assertThat(checkedAndReported(saved, "by-eye")).contains("0.014 gal/rev");
    }

    /** And one of which only the setting of its control is known, and how fast its shaft turns there. */
    @Test
    void aPumpThatRunsForATimeAtASetting() throws Exception {
        ObjectNode day = before(PUMP);
        ObjectNode truck = DemoDay.truck(day, PUMP);
        truck.remove("pulsesPerRevolution");
        truck.set(
                "controlSettings",
                JSON.readTree("[{\"setting\": \"1\", \"shaftSpeed\": \"60 rev/min\"},"
                        + " {\"setting\": \"5\", \"shaftSpeed\": \"300 rev/min\"}]"));
        Typist typist = typist(day)
                .truck(PUMP)
                .boxes(catches("08", Map.of("setting", "2"), "time", "100", "2.80", "95", "2.66", "105", "2.94"));
        assertThat(typist.notes("p0.c0")).isEqualTo("Complete. Volume 2.80 gal.");
        typist.type("p0.c1/counted.setting", "6");
        assertThat(typist.said("p0.c1/counted.setting")).contains("control setting must be within 1 to 5: 6");
        typist.type("p0.c1/counted.setting", "2");
        assertThat(checkedAndReported(typist.file("save"), "timed")).contains("0.014 gal/rev");
    }
}
