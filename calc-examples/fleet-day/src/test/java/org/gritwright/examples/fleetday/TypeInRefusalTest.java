package org.gritwright.examples.fleetday;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.junit.jupiter.params.provider.Arguments.arguments;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.gritwright.core.document.RejectedDocumentException;
import org.gritwright.core.fleet.assessment.FleetAssessor;
import org.gritwright.core.fleet.assessment.Refusal;
import org.gritwright.core.metering.BuiltInTypes;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * What can't be is refused by the page and by the library alike. The page must say the library's own sentence, which is computed
 * here from the same entries.
 */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class TypeInRefusalTest {
    private static final ObjectMapper JSON = new ObjectMapper();

    private static final String CATCH = "p0.c0/";
    private static final String RUN = "p0.v0/";

    /** A sheet on which nothing is wrong, by truck: box and text; T-03 has a sensor, T-08 is watched, T-15 has a table. */
    private static final Map<String, Map<String, String>> GOOD = Map.of(
            "T-03",
            sheet(CATCH, "counted.start", "1000", "counted.stop", "2518"),
            "T-08",
            sheet(CATCH, "counted.revolutions", "8", "counted.standardUncertainty", "0.1"),
            "T-15",
            sheet(CATCH, "counted.setting", "4", "counted.time", "60"));

    private Path folder;
    private Browser browser;

    /** The page of a sheet on which nothing is wrong, typed: slips are made in it one after the other, and each is put right. */
    private Typist typist;

    /** Whose sheet that is; none, if a case left something wrong in it. */
    private Sheet typed = Sheet.NONE;

    private record Sheet(String truck, Map<String, String> boxes) {
        static final Sheet NONE = new Sheet("", Map.of());
    }

    private static Map<String, String> sheet(String group, String... counted) {
        Map<String, String> boxes = new LinkedHashMap<>();
        boxes.put(group + "at", "09:55");
        boxes.put(group + counted[0], counted[1]);
        boxes.put(group + counted[2], counted[3]);
        boxes.put(group + "primed", "true");
        boxes.put(group + "coasting", "in-both");
        boxes.put(group + "containers.0.gross", "90.5");
        boxes.put(group + "containers.0.tare", "3.5");
        return boxes;
    }

    private static Map<String, String> run() {
        Map<String, String> boxes = new LinkedHashMap<>(GOOD.get("T-03"));
        sheet(RUN, "counted.start", "2600", "counted.stop", "4118").forEach(boxes::put);
        boxes.keySet().removeAll(List.of(RUN + "primed", RUN + "coasting"));
        boxes.put(RUN + "at", "10:31");
        boxes.put(RUN + "testSpeed", "20");
        boxes.put(RUN + "targetRate", "200");
        boxes.put(RUN + "runTime", "180");
        boxes.put(RUN + "indicated", "196");
        boxes.put("before/indicatedStep", "1");
        return boxes;
    }

    @BeforeAll
    void open(@TempDir Path made) {
        folder = made;
        browser = Browser.open();
    }

    @AfterAll
    void close() {
        if (browser != null) {
            browser.close();
        }
    }

    private static Arguments slip(String truck, String... changed) {
        return arguments(truck, List.of(changed));
    }

    static Stream<Arguments> slips() {
        return Stream.of(
                slip("T-03", CATCH + "containers.0.gross", "3.5", CATCH + "containers.0.tare", "44"),
                slip("T-03", CATCH + "containers.0.gross", "-3.5", CATCH + "containers.0.tare", "0"),
                slip("T-03", CATCH + "containers.0.tare", "-4"),
                slip("T-03", CATCH + "containers.0.gross", "9000"),
                slip("T-03", CATCH + "containers.0.gross", "9000000"),
                slip("T-03", CATCH + "containers.0.gross", "3.5"),
                slip("T-03", CATCH + "containers.0.gross", "90.5.1"),
                slip("T-03", CATCH + "containers.0.gross", "90,5"),
                slip("T-03", CATCH + "containers.0.gross", ".5"),
                slip("T-03", CATCH + "containers.0.gross", "090.5"),
                slip("T-03", CATCH + "containers.0.gross", "1e999"),
                slip("T-03", CATCH + "at", "25:10"),
                slip("T-03", CATCH + "at", "9:6"),
                slip("T-03", CATCH + "counted.start", "2600"),
                slip("T-03", CATCH + "counted.start", "2518"),
                slip("T-03", CATCH + "counted.start", "1000.5"),
                slip("T-03", CATCH + "counted.start", "-1"),
                slip("T-03", CATCH + "counted.stop", "25180000000000"),
                slip("T-08", CATCH + "counted.revolutions", "0"),
                slip("T-08", CATCH + "counted.revolutions", "-8"),
                slip("T-08", CATCH + "counted.standardUncertainty", "-0.1"),
                slip("T-08", CATCH + "counted.revolutions", "80000000000"),
                slip("T-15", CATCH + "counted.setting", "7"),
                slip("T-15", CATCH + "counted.setting", "1"),
                slip("T-15", CATCH + "counted.setting", "-4"),
                slip("T-15", CATCH + "counted.time", "0"),
                slip("T-15", CATCH + "counted.time", "-60"),
                slip("T-15", CATCH + "counted.time", "4000000"),
                slip("T-03", RUN + "testSpeed", "0"),
                slip("T-03", RUN + "testSpeed", "900"),
                slip("T-03", RUN + "targetRate", "0"),
                slip("T-03", RUN + "targetRate", "-200"),
                slip("T-03", RUN + "targetRate", "9000000"),
                slip("T-03", RUN + "runTime", "0"),
                slip("T-03", RUN + "runTime", "9000000"),
                slip("T-03", RUN + "indicated", "0"),
                slip("T-03", RUN + "indicated", "-196"),
                slip("T-03", "before/indicatedStep", "0"),
                slip("T-03", "before/testWeight", "0"),
                slip("T-03", "before/reading", "-1"),
                slip("T-03", "before/hopperLevel", "120"),
                slip("T-03", "before/hopperLevel", "-1"),
                slip("T-03", "before/oilTemperature", "1500"),
                slip("T-03", "before/oilTemperature", "-400"),
                slip("T-03", "before/engineSpeed", "1600000"),
                slip("T-03", "road/inForce", "0"),
                slip("T-03", "road/course", "0"),
                slip("T-03", "road/course", "0.0001"),
                slip("T-03", "road/run2", "0"),
                slip("T-03", "road/run2", "5484.5"),
                slip("T-03", "road/run2", "-5484"),
                slip("T-03", "p0.held/found", "0"),
                slip("T-03", "p0.held/found", "5,85"),
                slip("T-03", "p0.held/found", "9000000000"),
                slip("T-03", "p0.held/since", "2026-10-20"),
                slip("T-03", "p0.held/since", "2027-09-01"),
                slip("T-03", "p0.held/since", "2026-02-30"));
    }

    private static ObjectNode planned(String truck) throws IOException {
        return (ObjectNode) JSON.readTree(DemoDay.changed(day -> {
            if (truck.equals("T-15")) {
                ((ObjectNode) day.get("plan")).remove("countUncertainty");
            }
            DemoDay.only(day, truck).remove(List.of("calibrationCatches", "verificationCatches", "roadSpeed"));
        }));
    }

    /** Sheets before the slip: those of a verification and of the road are typed only where the slip is there. */
    private static Map<String, String> boxes(String truck, String slip) {
        Map<String, String> boxes = slip.startsWith(RUN) || slip.equals("before/indicatedStep")
                ? run()
                : new LinkedHashMap<>(GOOD.get(truck));
        if (slip.startsWith("before/") && !slip.equals("before/indicatedStep")) {
            boxes.put("before/testWeight", "55");
            boxes.put("before/reading", "55");
            boxes.put("before/oilTemperature", "105");
            boxes.put("before/engineSpeed", "1600");
            boxes.put("before/hopperLevel", "80");
        }
        if (slip.startsWith("road/")) {
            boxes.putAll(Map.of(
                    "road/inForce",
                    "11000",
                    "road/course",
                    "0.5",
                    "road/run1",
                    "5484",
                    "road/run2",
                    "5473",
                    "road/run3",
                    "5476"));
        }
        if (slip.startsWith("p0.held/")) {
            boxes.put("p0.held/found", "5.9");
            boxes.put("p0.held/since", "2026-09-01");
        }
        return boxes;
    }

    /** What the library says of a document that has the same: its refusals, or that it isn't even a document. */
    private static List<String> library(ObjectNode day) throws IOException {
        try {
            return FleetAssessor.of(BuiltInTypes.registry())
                    .assess(Typist.read(day.toString()))
                    .get(0)
                    .refusals()
                    .stream()
                    .map(Refusal::sentence)
                    .map(sentence -> sentence.replaceFirst(
                            "^(catch of [0-9:]+|road speed|calibration in force): (?=.* must be |.*: gross )", ""))
                    .toList();
        } catch (RejectedDocumentException e) {
            return List.of();
        }
    }

    private void type(Sheet sheet) throws Exception {
        if (!sheet.equals(typed)) {
            typist = Typist.of(browser, folder, planned(sheet.truck()).toString());
            typist.type("offset", "-05:00").boxes(sheet.boxes());
        }
        typed = Sheet.NONE;
    }

    @ParameterizedTest
    @MethodSource("slips")
    void thePageAndTheLibraryRefuseTheSame(String truck, List<String> slip) throws Exception {
        ObjectNode day = planned(truck);
        Sheet good = new Sheet(truck, boxes(truck, slip.get(0)));
        Map<String, String> slips = new LinkedHashMap<>();
        for (int i = 0; i < slip.size(); i += 2) {
            slips.put(slip.get(i), slip.get(i + 1));
        }
        Map<String, String> boxes = new LinkedHashMap<>(good.boxes());
        boxes.putAll(slips);
        type(good);
        String saidOfGood = typist.said(slip.get(0));
        typist.boxes(slips);
        TypedByHand.into(day, truck, boxes, typist::unit);
        List<String> refused = library(day);
        String said = typist.said(slip.get(0));
        if (refused.isEmpty()) {
            // Then the document itself is refused, and the page says what is wrong with the form in its own words.
            assertThatThrownBy(() -> Typist.read(day.toString())).isInstanceOf(RejectedDocumentException.class);
            assertThat(said).containsAnyOf("must be", "write ").contains(slip.get(1));
        } else {
            assertThat(said).contains(refused.get(0));
        }
        typist.press("save");
        assertThat(typist.text("said")).contains("Unfinished: not in the document until they are complete");
        ObjectNode saved = (ObjectNode) JSON.readTree(typist.file("save-part"));
        assertThat(library(saved)).isEmpty();
        assertThat(Typist.read(saved.toString())).isNotNull();

        slips.keySet().forEach(box -> typist.type(box, good.boxes().get(box)));
        assertThat(typist.said(slip.get(0))).as("put right").isEqualTo(saidOfGood);
        typed = good;
    }

    @ParameterizedTest
    @MethodSource("goodSheets")
    void withoutASlipBothTakeIt(String truck, Map<String, String> boxes) throws Exception {
        ObjectNode day = planned(truck);
        type(new Sheet(truck, boxes));
        TypedByHand.into(day, truck, boxes, typist::unit);
        assertThat(library(day)).isEmpty();
        assertThat(Typist.canonical(typist.file("save"))).isEqualTo(Typist.canonical(day.toString()));
    }

    static Stream<Arguments> goodSheets() {
        return Stream.of(
                arguments("T-03", boxes("T-03", RUN)),
                arguments("T-03", boxes("T-03", "before/testWeight")),
                arguments("T-03", boxes("T-03", "road/course")),
                arguments("T-03", boxes("T-03", "p0.held/found")),
                arguments("T-08", boxes("T-08", CATCH)),
                arguments("T-15", boxes("T-15", CATCH)));
    }
}
