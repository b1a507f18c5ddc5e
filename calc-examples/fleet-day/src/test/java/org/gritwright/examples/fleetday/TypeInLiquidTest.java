package org.gritwright.examples.fleetday;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.gritwright.core.document.RejectedDocumentException;
import org.gritwright.core.fleet.assessment.FleetAssessor;
import org.gritwright.core.fleet.assessment.Refusal;
import org.gritwright.core.fleet.assessment.TruckAssessment;
import org.gritwright.core.fleet.plan.FleetPlanner;
import org.gritwright.core.metering.BuiltInTypes;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.openqa.selenium.By;

/** Pumps and flow meters typed in: what is saved, what page and library refuse alike, and what is asked. */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class TypeInLiquidTest {
    private static final ObjectMapper JSON = new ObjectMapper();

    /** A prewet by a pump, read, and a flow meter, weighed. */
    private static final String PUMP = "T-31 brine";

    private static final String METER = "A-41";

    private Path folder;

    private Browser browser;

    /** Whose good sheet is typed; nobody's, if a case left something wrong in it. */
    private String typedTruck = "";

    private Typist typedPage;
    private String typedDay;

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

    /** The demo with these trucks; a flow meter's liquid is weighed where no reading is planned. */
    private static ObjectNode day(boolean isWeighed, String... ids) throws IOException {
        return (ObjectNode) JSON.readTree(DemoDay.changed(Run.LIQUIDS, day -> {
            DemoDay.cut(day, ids);
            if (isWeighed) {
                ((ObjectNode) day.get("plan")).remove("readingMethods");
            }
        }));
    }

    private static ObjectNode dayOf(String id) throws IOException {
        ObjectNode day = id.equals(PUMP) ? day(false, "T-31", PUMP) : day(true, METER);
        TypeInDayTest.strip(DemoDay.truck(day, id));
        return day;
    }

    private Typist typist(ObjectNode day, String id) throws Exception {
        return Typist.of(browser, folder, day.toString())
                .type("offset", "-04:00")
                .truck(id);
    }

    private static TruckAssessment assessed(String document, String id) throws IOException, RejectedDocumentException {
        return FleetAssessor.of(BuiltInTypes.registry()).assess(Typist.read(document)).stream()
                .filter(truck -> truck.truck().id().equals(id))
                .findFirst()
                .orElseThrow();
    }

    /** The same truck as the sheet has it: counter readings, a rate for the distance, names of the page. */
    private static void asOnPaper(ObjectNode truck, String targetRate) {
        int reading = 1000;
        for (String list : List.of("calibrationCatches", "verificationCatches")) {
            for (JsonNode node : truck.withArray(list)) {
                ObjectNode one = (ObjectNode) node;
                int pulses = Integer.parseInt(TypeInDayTest.number(one.at("/counted/pulses")));
                one.putObject("counted").put("start", reading + " pulse").put("stop", reading + pulses + " pulse");
                reading += pulses;
                if (one.has("targetLaneRate")) {
                    one.remove(List.of("targetLaneRate", "lanes"));
                    one.put("targetRate", targetRate);
                }
                one.path("containers").forEach(pail -> ((ObjectNode) pail).put("container", "container 1"));
            }
        }
    }

    private void isSavedAsTyped(ObjectNode whole, Map<String, String> instruments) throws Exception {
        ObjectNode planned = whole.deepCopy();
        instruments.keySet().forEach(id -> TypeInDayTest.strip(DemoDay.truck(planned, id)));
        Typist typist = Typist.of(browser, folder, planned.toString()).type("offset", "-04:00");
        for (String id : instruments.keySet()) {
            ObjectNode truck = DemoDay.truck(whole, id);
            String[] instrument = instruments.get(id).split(" ", 2);
            typist.truck(id).type("before/" + instrument[0], instrument[1]);
            JsonNode step = truck.at("/verificationCatches/0/indicatedStep");
            if (step.isTextual()) {
                typist.type("before/indicatedStep", TypeInDayTest.number(step));
            }
            TypeInDayTest.typeCatches(typist, truck);
            TypeInDayTest.typeRoad(typist, truck.path("roadSpeed"));
            typist.type("done/operator", "R. Ohm");
        }
        String saved = typist.file("save");
        assertThat(typist.text("said")).doesNotContain("Unfinished");
        assertThat(Typist.canonical(saved)).isEqualTo(Typist.canonical(whole.toString()));
        for (String id : instruments.keySet()) {
            TruckAssessment typed = assessed(saved, id);
            assertThat(typed.refusals()).isEmpty();
            assertThat(typed.points().get(0).calibration()).isPresent();
            assertThat(typed.nextStep())
                    .isEqualTo(assessed(Run.text(Run.LIQUIDS), id).nextStep());
        }
    }

    /** A prewet, and a flow meter that was read in another container than the planned one. */
    @Test
    void aDayOfLiquidsThatWereRead() throws Exception {
        ObjectNode whole = day(false, "T-31", PUMP, "A-43");
        asOnPaper(DemoDay.truck(whole, PUMP), "");
        asOnPaper(DemoDay.truck(whole, "A-43"), "24 gal/mi");
        ((ArrayNode) DemoDay.truck(whole, PUMP).at("/calibrationCatches/1/read/fills"))
                .removeAll()
                .add("2.26 gal")
                .add("1.00 gal");
        Map<String, String> containers = new LinkedHashMap<>();
        containers.put(PUMP, "container M-5");
        containers.put("A-43", "container M-20");
        isSavedAsTyped(whole, containers);
    }

    @Test
    void aFlowMeterWhoseLiquidIsWeighed() throws Exception {
        ObjectNode whole = day(true, METER);
        asOnPaper(DemoDay.truck(whole, METER), "80 gal/mi");
        isSavedAsTyped(whole, Map.of(METER, "scale platform 1"));
    }

    private static Map<String, String> good(String id) {
        Map<String, String> boxes = new LinkedHashMap<>();
        for (String group : List.of("p0.c0/", "p0.v0/")) {
            boolean isRun = group.startsWith("p0.v");
            boxes.put(group + "at", isRun ? "09:42" : "09:06");
            if (isRun) {
                boxes.put(group + "testSpeed", id.equals(PUMP) ? "25" : "30");
                boxes.put(group + "targetRate", id.equals(PUMP) ? "300" : "80");
                if (id.equals(PUMP)) {
                    boxes.put(group + "prewetRate", "10");
                }
                boxes.put(group + "runTime", id.equals(PUMP) ? "300" : "60");
            }
            boxes.put(group + "counted.start", "1000");
            boxes.put(group + "counted.stop", id.equals(PUMP) ? "7000" : isRun ? "25000" : "22672");
            if (!isRun) {
                boxes.put(group + "primed", "true");
                boxes.put(group + "coasting", "in-both");
            }
            if (id.equals(PUMP)) {
                boxes.put(group + "read.fills.0", "3.12");
            } else {
                boxes.put(group + "density.value", "9.82");
                boxes.put(group + "containers.0.gross", isRun ? "438" : "400");
                boxes.put(group + "containers.0.tare", "46");
            }
        }
        boxes.put("p0.v0/indicated", id.equals(PUMP) ? "3.12" : "40");
        boxes.put("before/indicatedStep", id.equals(PUMP) ? "0.01" : "1");
        boxes.put("p0.held/found", id.equals(PUMP) ? "0.0155" : "600");
        boxes.put("p0.held/since", "2026-10-05");
        return boxes;
    }

    /** What the box is in the document; blank is not there. */
    private static void into(ObjectNode truck, String box, String text) {
        String at = box.replace("p0.c0/", "calibrationCatches.0.")
                .replace("p0.v0/", "verificationCatches.0.")
                .replace("before/", "verificationCatches.0.")
                .replace("p0.held/found", "inForce.0.value")
                .replace("p0.held/since", "inForce.0.since");
        String[] steps = at.split("\\.", -1);
        JsonNode holder = truck;
        for (int i = 0; i < steps.length - 1; i++) {
            holder = holder.isArray() ? holder.get(Integer.parseInt(steps[i])) : holder.get(steps[i]);
        }
        String last = steps[steps.length - 1];
        if (holder instanceof ArrayNode list) {
            list.remove(Integer.parseInt(last));
            if (!text.isEmpty()) {
                list.add(text);
            }
        } else if (text.isEmpty()) {
            ((ObjectNode) holder).remove(last);
        } else {
            ((ObjectNode) holder).put(last, text);
        }
    }

    /** The page of a truck's good sheet, typed; it is used again while the cases before put right what they changed. */
    private Typist typed(String id) throws Exception {
        if (!id.equals(typedTruck)) {
            typedPage = typist(dayOf(id), id).boxes(good(id));
            typedDay = typedPage.file("save");
        }
        typedTruck = "";
        return typedPage;
    }

    private void putRight(String id, String box) {
        typedPage.type(box, good(id).getOrDefault(box, ""));
        typedTruck = id;
    }

    private static List<String> refusals(String document, String id) throws IOException {
        try {
            return assessed(document, id).refusals().stream()
                    .map(Refusal::sentence)
                    .map(sentence -> sentence.replaceFirst("^(catch of [0-9:]+|calibration in force): ", ""))
                    .toList();
        } catch (RejectedDocumentException e) {
            return List.of();
        }
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            T-31 brine | p0.c0/read.fills.0                | 5.6
            T-31 brine | p0.c0/read.fills.0                | 0
            T-31 brine | p0.c0/read.fills.0                | -3.12
            T-31 brine | p0.c0/read.fills.0                | 9000000
            T-31 brine | p0.c0/read.fills.0                | 3,12
            T-31 brine | p0.v0/read.fills.0                | 6
            T-31 brine | p0.c0/counted.stop                | 1000
            T-31 brine | p0.c0/counted.stop                | 900
            T-31 brine | p0.v0/targetRate                  | 0
            T-31 brine | p0.v0/targetRate                  | -300
            T-31 brine | p0.v0/targetRate                  | 90000000
            T-31 brine | p0.v0/prewetRate                  | 0
            T-31 brine | p0.v0/prewetRate                  | -10
            T-31 brine | p0.v0/prewetRate                  | 90000
            T-31 brine | p0.v0/prewetRate                  | 1O
            T-31 brine | p0.v0/indicated                   | 0
            T-31 brine | p0.v0/indicated                   | -3
            T-31 brine | p0.v0/indicated                   | 90000000
            T-31 brine | before/indicatedStep              | 0
            T-31 brine | p0.held/found                     | 0
            T-31 brine | p0.held/found                     | 90000
            T-31 brine | p0.held/since                     | 2026-10-21
            A-41       | p0.c0/density.value               | 0
            A-41       | p0.c0/density.value               | -9.82
            A-41       | p0.c0/density.value               | 0.001
            A-41       | p0.c0/density.value               | 9,82
            A-41       | p0.c0/density.standardUncertainty | -0.02
            A-41       | p0.c0/density.standardUncertainty | 0.02 lb
            A-41       | p0.c0/containers.0.gross          | 40
            A-41       | p0.c0/containers.0.gross          | 1001
            A-41       | p0.c0/containers.0.tare           | -46
            A-41       | p0.c0/counted.start               | 22672
            A-41       | p0.c0/counted.stop                | 22672.5
            A-41       | p0.v0/targetRate                  | 0
            A-41       | p0.v0/targetRate                  | -80
            A-41       | p0.v0/targetRate                  | 90000000
            A-41       | p0.v0/indicated                   | -40
            A-41       | p0.held/found                     | -600
            """)
    void thePageAndTheLibraryRefuseTheSame(String id, String box, String slip) throws Exception {
        Typist typist = typed(id);
        assertThat(refusals(typedDay, id)).isEmpty();
        ObjectNode day = (ObjectNode) JSON.readTree(typedDay);
        String unit = typist.unit(box);
        into(DemoDay.truck(day, id), box, unit.isEmpty() ? slip : slip + " " + unit);
        List<String> refused = refusals(day.toString(), id);
        typist.type(box, slip).press("save");
        String said = typist.text("said");
        assertThat(said).contains("Unfinished: not in the document until they are complete");
        if (refused.isEmpty()) {
            // Then the document itself is refused, and the page says what is wrong with the form in its own words.
            assertThatThrownBy(() -> Typist.read(day.toString())).isInstanceOf(RejectedDocumentException.class);
            assertThat(said).containsAnyOf("must be", "write ").contains(slip);
        } else {
            assertThat(said).contains(refused.get(0));
        }
        assertThat(refusals(typist.file("save-part"), id)).isEmpty();
        putRight(id, box);
    }

    /** What the library refuses in a document is not in the one that is saved. */
    @Test
    void whatIsMissingIsNamedAsOnTheSheet() throws Exception {
        Typist typist = typist(dayOf(METER), METER).boxes(good(METER));
        ObjectNode day = (ObjectNode) JSON.readTree(typist.file("save"));
        ((ObjectNode) DemoDay.truck(day, METER).at("/calibrationCatches/0")).remove("density");
        assertThat(refusals(day.toString(), METER)).isNotEmpty();
        typist.type("p0.c0/density.value", "").press("save");
        assertThat(typist.text("said")).contains("A-41, Catch 1: missing: density\n");
        typist.type("p0.c0/density.standardUncertainty", "").press("save");
        assertThat(typist.text("said")).contains("A-41, Catch 1: missing: density; density ± (standard)\n");
        typist.type("p0.c0/density.value", "9.82").press("save");
        assertThat(typist.text("said")).contains("A-41, Catch 1: missing: density ± (standard)\n");
        typist.type("p0.c0/density.standardUncertainty", "0.02")
                .type("p0.c0/containers.0.gross", "")
                .type("p0.c0/containers.0.tare", "")
                .press("save");
        assertThat(typist.text("said")).contains("A-41, Catch 1: missing: gross; tare\n");
        assertThat(refusals(typist.file("save-part"), METER)).isEmpty();

        typist = typist(dayOf(PUMP), PUMP).boxes(good(PUMP)).type("p0.c0/read.fills.0", "");
        typist.type("p0.v0/prewetRate", "").type("before/indicatedStep", "").press("save");
        assertThat(typist.text("said"))
                .contains("T-31 brine, Catch 1: missing: volume\n")
                .contains("T-31 brine, Verification 1: missing: prewet run; the step of the display’s volume, before");
        String part = typist.file("save-part");
        assertThat(DemoDay.truck((ObjectNode) JSON.readTree(part), PUMP).has("calibrationCatches"))
                .isFalse();
    }

    /** Who needed fewer fills says so; a box in front may be the blank one. */
    @Test
    void aFillThatIsBlankIsAskedAbout() throws Exception {
        ObjectNode day = dayOf(PUMP);
        ((ObjectNode) day.at("/plan/readingMethods/0")).put("fills", "2").put("holds", "2 gal");
        Typist typist = typist(day, PUMP)
                .boxes(good(PUMP))
                .type("p0.v0/read.fills.0", "")
                .type("p0.v0/read.fills.1", "1.20");
        assertThat(typist.notes("p0.v0")).contains("Written down is 1 fill, and 2 were planned.");
        typist.type("p0.v0/read.fills.0", "1.92");
        assertThat(typist.notes("p0.v0")).contains("Complete. Volume 3.12 gal.").doesNotContain("Written down");
        assertThat(DemoDay.truck((ObjectNode) JSON.readTree(typist.file("save")), PUMP)
                        .at("/verificationCatches/0/read"))
                .isEqualTo(JSON.readTree("{\"container\": \"M-5\", \"fills\": [\"1.92 gal\", \"1.20 gal\"]}"));
    }

    /** 200 lb/mi with 10 gal/ton is the flow of 400 lb/mi with 5 gal/ton, and the sheet names both. */
    @Test
    void eitherOfTwoSettingsOfOneFlowIsAsPlanned() throws Exception {
        ObjectNode day = dayOf(PUMP);
        ObjectNode plan = (ObjectNode) day.get("plan");
        plan.putArray("targetRates").add("200 lb/mi").add("400 lb/mi");
        plan.putArray("prewetRates").add("5 gal/ton").add("10 gal/ton");
        Typist typist = typist(day, PUMP);
        List<String> unasked = new ArrayList<>();
        for (String pair : List.of("200 5", "200 10", "400 5", "400 10", "200 15")) {
            for (int run = 0; run < 3; run++) {
                String group = "p0.v" + run;
                typist.type(group + "/targetRate", pair.substring(0, 3)).type(group + "/prewetRate", pair.substring(4));
                if (!typist.notes(group).contains(" was planned.")) {
                    unasked.add(pair + " in " + run);
                }
            }
        }
        assertThat(unasked).containsExactly("200 5 in 0", "200 10 in 1", "400 5 in 1", "400 10 in 2");
        assertThat(typist.has("p0.v3/at")).isFalse();
    }

    /** Nobody writes down on paper how certain a density is; where nothing is typed, that alone is no catch. */
    @Test
    void thePlannedUncertaintyOfADensityStandsThereAndMakesNoCatch() throws Exception {
        ObjectNode planned = dayOf(METER);
        Typist typist = typist(planned, METER);
        assertThat(typist.box("p0.c1/density.standardUncertainty").getDomProperty("value"))
                .isEqualTo("0.02");
        typist.type("p0.v0/held", "found").type("p0.c1/at", "09:06").type("p0.c1/at", "");
        assertThat(Typist.canonical(typist.file("save"))).isEqualTo(Typist.canonical(planned.toString()));
        typist.boxes(good(METER)).type("p0.c0/density.standardUncertainty", "0.03");
        JsonNode catches = DemoDay.truck((ObjectNode) JSON.readTree(typist.file("save")), METER);
        assertThat(catches.at("/calibrationCatches/0/density/standardUncertainty")
                        .asText())
                .isEqualTo("0.03 lb/gal");
        assertThat(catches.at("/verificationCatches/0/density/standardUncertainty")
                        .asText())
                .isEqualTo("0.02 lb/gal");
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            T-31 brine | p0.c0/read.fills.0  | 0.312 | A decimal point?
            T-31 brine | p0.c0/counted.stop  | 2585  | Liters?
            T-31 brine | p0.c0/counted.stop  | 31000 | Counted are 1000 turns, and
            T-31 brine | p0.v0/indicated     | 11.81 | Liters?
            T-31 brine | p0.v0/prewetRate    | 12    | prewet run is 12 gal/ton, and 10 gal/ton was planned.
            T-31 brine | p0.v0/targetRate    | 400   | rate run is 400 lb/mi, and 300 lb/mi was planned.
            A-41       | p0.c0/density.value | 8.34  | The density of 8.34 lb/gal is 0.849 times the planned one, 9.82 lb/gal.
            A-41       | p0.c0/counted.stop  | 1200  | that its pulses would give
            A-41       | p0.held/left        | 6000  | As left is 10 times
            """)
    void whatIsOddIsAskedAbout(String id, String box, String odd, String question) throws Exception {
        Typist typist = typed(id);
        String group = box.replaceFirst("/.*", "");
        assertThat(typist.notes(group)).doesNotContain(question);
        typist.type(box, odd);
        assertThat(typist.notes(group)).contains(question);
        assertThat(typist.file("save")).isNotEmpty();
        putRight(id, box);
    }

    /** The boxes of the page are the boxes of the paper; how certain a density is, is asked beyond it. */
    @ParameterizedTest
    @CsvSource({PUMP, METER})
    void theBoxesAreThoseOfThePaperInItsOrder(String id) throws Exception {
        ObjectNode day = dayOf(id);
        typist(day, id);
        var read = Typist.read(day.toString());
        DayPlan plan = new DayPlan(
                read,
                FleetPlanner.of(BuiltInTypes.registry()).plan(read, read.plan().orElseThrow()));
        List<String> paper = plan.planned().stream()
                .filter(truck -> truck.truck().id().equals(id))
                .flatMap(truck -> PlanSheet.of(plan, truck, 1).parts().stream())
                .flatMap(part -> part.lines().stream())
                .flatMap(line -> Stream.concat(line.boxes().stream(), line.more().stream()))
                .map(PlanSheet.Box::label)
                .filter(label -> !label.endsWith("net"))
                .toList();
        List<String> page = browser.texts(
                "return [...document.querySelectorAll('[id^=\"group-p\"]')].filter(one => /[cv][0-9]+$/.test(one.id))"
                        + ".flatMap(one => [...one.querySelectorAll('.entry label')].map(label => label.textContent))"
                        + ".filter(text => text !== 'display held' && text !== 'density ± (standard)')");
        assertThat(page).isNotEmpty().isEqualTo(paper);
        assertThat(browser.driver().findElements(By.id("group-road"))).hasSize(id.equals(PUMP) ? 0 : 1);
    }

    /** A draft of the page before, which had no sheets for liquids, and one of this page. */
    @Test
    void draftsAreReadBackWithAndWithoutLiquids() throws Exception {
        ObjectNode day = dayOf(PUMP);
        Typist typist = typist(day, "T-31").type("done/notes", "windy");
        ObjectNode before = (ObjectNode) JSON.readTree(typist.file("draft"));
        ((ArrayNode) before.get("trucks")).remove(1);
        Typist again = typist(day, PUMP);
        open(before.toString(), "before.json");
        assertThat(again.truck("T-31").box("done/notes").getDomProperty("value"))
                .isEqualTo("windy");

        again.truck(PUMP).type("before/container", "M-20").boxes(good(PUMP)).press("more-p0.c0");
        String draft = again.type("p0.c0/read.fills.1", "1.5").file("draft");
        Typist third = typist(day, PUMP);
        open(draft, "draft.json");
        assertThat(third.truck(PUMP).box("before/container").getDomProperty("value"))
                .isEqualTo("M-20");
        assertThat(third.box("p0.c0/read.fills.1").getDomProperty("value")).isEqualTo("1.5");
        assertThat(third.file("draft")).isEqualTo(draft);
    }

    private void open(String draft, String name) throws Exception {
        Path file = Files.writeString(folder.resolve(name), draft);
        browser.driver().findElement(By.id("file")).sendKeys(file.toString());
        for (int i = 0; i < 50; i++) {
            if (browser.driver().findElement(By.id("said")).getText().contains("is open.")) {
                return;
            }
            Thread.sleep(100);
        }
        throw new AssertionError(browser.driver().findElement(By.id("said")).getText());
    }

    /** A sheet as it stands in the middle: a catch, half of one, one with slips, and what saving says of them. */
    private Typist halfTyped(ObjectNode day, String id) throws Exception {
        browser.driver().executeCdpCommand("Emulation.clearDeviceMetricsOverride", Map.of());
        boolean isRead = id.equals(PUMP);
        Typist typist = typist(day, id).boxes(good(id)).type("p0.c1/at", "9x");
        if (isRead) {
            typist.type("p0.c0/counted.stop", "2585").type("p0.c1/read.fills.0", "56");
        } else {
            typist.type("p0.c0/density.value", "8.34").type("p0.c1/containers.0.gross", "4");
            typist.type("p0.c1/containers.0.tare", "46");
        }
        assertThat(typist.notes("p0.c0")).contains("yes, so it was");
        assertThat(typist.notes("p0.c1")).contains(isRead ? "at most its highest mark" : "Swapped?", "Missing: ");
        return typist.press("save");
    }

    @ParameterizedTest
    @CsvSource({PUMP, METER})
    void noRuleForPeopleWhoSeeOrReachLittleIsBroken(String id) throws Exception {
        halfTyped(dayOf(id), id);
        Map<String, List<String>> rules = browser.rules();
        assertThat(rules.get("broken")).isEmpty();
        assertThat(rules.get("passed"))
                .contains("color-contrast", "label", "select-name", "button-name", "target-size");
    }

    @ParameterizedTest
    @CsvSource({PUMP + ", 390", PUMP + ", 800", PUMP + ", 1300", METER + ", 390", METER + ", 800", METER + ", 1300"})
    void nothingLiesBesideTheWindowAndNothingIsCutOff(String id, int width) throws Exception {
        ObjectNode day = dayOf(id);
        String name = "<b>&amp;" + "M".repeat(150);
        DemoDay.truck(day, id).remove("notes");
        String text =
                day.toString().replace("\"M-5\"", "\"" + name + "\"").replace("\"platform 1\"", "\"" + name + "2\"");
        halfTyped((ObjectNode) JSON.readTree(text), id);
        browser.width(width);
        String looks = Browser.script("looks.js");
        assertThat(browser.texts(looks + "return looks.sideways();")).isEmpty();
        assertThat(browser.texts(looks + "return looks.cut();")).isEmpty();
        assertThat(
                        browser.texts(
                                "return [...document.querySelectorAll('#sheet .entry')].flatMap(one => {"
                                        + "const tops = [...one.parentNode.children].map(other => other.querySelector('.field'))"
                                        + ".map(field => field.getBoundingClientRect()).filter(other => "
                                        + "Math.abs(other.top - one.querySelector('.field').getBoundingClientRect().top) < 20);"
                                        + "return tops.some(other => Math.abs(other.top - tops[0].top) > 1) ? [one.textContent] : []; })"))
                .isEmpty();
    }

    /** What the document has already of liquids is shown, and kept as it is. */
    @Test
    void catchesThatAreThereAreShown() throws Exception {
        ObjectNode day = day(false, "T-31", PUMP);
        Typist typist = typist(day, PUMP);
        assertThat(typist.text("sheet")).contains("Catch of 08:06: salt brine, 3.12 gal in M-5");
        assertThat(Typist.canonical(typist.file("save"))).isEqualTo(Typist.canonical(day.toString()));
    }
}
