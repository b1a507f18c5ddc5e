package org.gritwright.examples.fleetday;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.gritwright.core.fleet.day.CalibrationCatchEntry;
import org.gritwright.core.fleet.day.TruckDay;
import org.gritwright.core.fleet.plan.FleetPlanner;
import org.gritwright.core.metering.BuiltInTypes;
import org.gritwright.units.Amounts;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.openqa.selenium.By;
import org.openqa.selenium.Keys;
import org.openqa.selenium.WebElement;

/** The type-in page in a real browser: what is kept, what is asked, who can use it, and what can't run in it. */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class TypeInPageTest {
    private static final ObjectMapper JSON = new ObjectMapper();
    private static final String FIRST = "p0.c0/";

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

    /** The demo before the day in the yard, for one truck. */
    private static ObjectNode before(String truck) throws IOException {
        return (ObjectNode) JSON.readTree(DemoDay.changed(day ->
                DemoDay.only(day, truck).remove(List.of("calibrationCatches", "verificationCatches", "roadSpeed"))));
    }

    private Typist typist(ObjectNode day) throws Exception {
        browser.driver().executeCdpCommand("Emulation.clearDeviceMetricsOverride", Map.of());
        Typist typist = Typist.of(browser, folder, day.toString());
        return typist.type("offset", "-05:00");
    }

    private static Typist good(Typist typist) {
        return typist.type(FIRST + "at", "0955")
                .type(FIRST + "counted.start", "1000")
                .type(FIRST + "counted.stop", "1320")
                .type(FIRST + "primed", "true")
                .type(FIRST + "coasting", "in-both")
                .type(FIRST + "containers.0.gross", "34.60")
                .type(FIRST + "containers.0.tare", "3.6");
    }

    @Test
    void numbersAreWrittenAsTheyWereTyped() throws Exception {
        String saved = good(typist(before("T-03"))).file("save");
        assertThat(saved).contains("\"gross\": \"34.60 lb\"", "\"at\": \"2026-10-19T09:55:00-05:00\"");
        assertThat(JSON.readTree(saved).at("/trucks/0/calibrationCatches")).hasSize(1);
        assertThat(JSON.readTree(saved).at("/trucks/0").has("verificationCatches"))
                .isFalse();
    }

    @Test
    void catchesThatAreThereStayAndAreNeitherLostNorDoubled() throws Exception {
        ObjectNode day = (ObjectNode) JSON.readTree(DemoDay.changed(all -> DemoDay.only(all, "T-03")));
        Typist typist = typist(day);
        assertThat(typist.text("sheet"))
                .contains("Already in the document, and kept as it is (4)", "Catch of 09:55: road salt");
        good(typist)
                .type(FIRST + "containers.0.gross", "54")
                .press("more-p0.c0")
                .press("more-p0.c0")
                .type(FIRST + "containers.1.gross", "55.8")
                .type(FIRST + "containers.1.tare", "4")
                .type(FIRST + "containers.2.gross", "52.0")
                .type(FIRST + "containers.2.tare", "4");
        assertThat(typist.notes("p0.c0")).contains("this catch of 09:55 is already in the document");
        typist.type(FIRST + "at", "11:05");
        assertThat(typist.notes("p0.c0")).doesNotContain("already in the document");
        TruckDay truck = Typist.read(typist.file("save")).trucks().get(0);
        TruckDay was = Typist.read(day.toString()).trucks().get(0);
        assertThat(truck.calibrationCatches())
                .hasSize(4)
                .startsWith(was.calibrationCatches().toArray(CalibrationCatchEntry[]::new));
        assertThat(truck.verificationCatches()).isEqualTo(was.verificationCatches());
        assertThat(truck.roadSpeed()).isEqualTo(was.roadSpeed());
    }

    @Test
    void whatIsUnfinishedIsListedAndGoesIntoADraftThatIsReadBack() throws Exception {
        ObjectNode day = before("T-03");
        Typist typist = good(typist(day))
                .type("p0.c1/at", "10:0")
                .type("p0.c1/containers.0.gross", "34,6")
                .press("more-p0.c");
        typist.type("p0.c3/counted.stop", "12").type("done/notes", "a note with \"quotes\", </script> and \u2028");
        typist.press("save");
        assertThat(typist.text("said"))
                .contains(
                        "T-03, Catch 2: time: must be a time of 24 hours, such as 08:40 or 15:05: “10:0”; gross: write decimals with a point,"
                                + " 34.6, and no comma: “34,6”; missing: tare; counter, start; counter, stop; primed; run-down",
                        "T-03, Catch 4: missing: counter, start; time; primed; run-down; gross; tare")
                .doesNotContain("Saved as");
        String part = typist.file("save-part");
        assertThat(Typist.read(part).trucks().get(0).calibrationCatches()).hasSize(1);
        String draft = typist.file("draft");
        Path file = Files.writeString(folder.resolve("draft.json"), draft);

        Typist again = typist(day);
        browser.driver().findElement(By.id("file")).sendKeys(file.toString());
        awaitText("said", "The draft draft.json is open.");
        assertThat(again.box("p0.c1/at").getDomProperty("value")).isEqualTo("10:0");
        assertThat(again.box("p0.c3/counted.stop").getDomProperty("value")).isEqualTo("12");
        assertThat(again.file("draft")).isEqualTo(draft);
        again.press("save");
        assertThat(again.file("save-part")).isEqualTo(part);
    }

    private void awaitText(String id, String text) throws InterruptedException {
        for (int i = 0; i < 50; i++) {
            if (browser.driver().findElement(By.id(id)).getText().contains(text)) {
                return;
            }
            Thread.sleep(100);
        }
        assertThat(browser.driver().findElement(By.id(id)).getText()).contains(text);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '`',
            value = {
                "no JSON|it is no JSON",
                "null|This file is no draft",
                "{\"format\":\"gritwright/fleet-day\",\"formatVersion\":2}|This file is no draft",
                "{\"format\":\"gritwright/type-in-draft\",\"formatVersion\":1,\"day\":\"2026-10-18\",\"trucks\":[]}|of 2026-10-18",
                "{\"format\":\"gritwright/type-in-draft\",\"formatVersion\":1,\"day\":\"2026-10-19\",\"trucks\":[{\"id\":\"T-99\",\"points\":[],\"more\":[],\"typed\":[[\"a\",\"b\"]],\"answers\":[]}]}|T-99 isn’t planned",
                "{\"format\":\"gritwright/type-in-draft\",\"formatVersion\":1,\"day\":\"2026-10-19\",\"trucks\":[{\"id\":\"T-03\",\"points\":[],\"more\":[[\"p0.c\",1e9]],\"typed\":[],\"answers\":[]}]}|This file is no draft"
            })
    void aFileThatIsNoDraftOfThisDayIsRefusedAndNothingIsLost(String text, String said) throws Exception {
        Typist typist = good(typist(before("T-03")));
        Path file = Files.writeString(folder.resolve("other.json"), text);
        browser.driver().findElement(By.id("file")).sendKeys(file.toString());
        awaitText("said", "Something is typed here that isn’t saved.");
        typist.press("open-anyway");
        awaitText("said", said);
        assertThat(typist.box(FIRST + "at").getDomProperty("value")).isEqualTo("09:55");
    }

    @Test
    void oddEntriesAreAskedAboutAndDontBlock() throws Exception {
        Typist typist = good(typist(before("T-03")));
        assertThat(typist.notes("p0.c0")).isEqualTo("Complete. Net 31.00 lb.");
        typist.type(FIRST + "containers.0.gross", "315");
        assertThat(typist.notes("p0.c0")).contains("at most the capacity of scale hanging 2, 300 lb: 315 lb");
        typist.type(FIRST + "containers.0.gross", "299.6").type(FIRST + "counted.stop", "1300");
        assertThat(typist.notes("p0.c0"))
                .contains("The net of 296.0 lb is 10.1 times the 29.3 lb that its turns would give. A decimal point?");
        typist.type(FIRST + "counted.stop", "1000000");
        assertThat(typist.notes("p0.c0")).contains("turns, and 5 were planned.");
        typist.type(FIRST + "counted.stop", "1320")
                .type(FIRST + "containers.0.gross", "34.6")
                .type(FIRST + "containers.0.tare", "0");
        assertThat(typist.notes("p0.c0")).contains("Every tare is 0.");
        typist.yes("p0.c0", "Every tare is 0.");
        good2(typist, "p0.c1/", "09:50");
        assertThat(typist.notes("p0.c1")).contains("09:50 is before 09:55, the time of Catch 1.");
        typist.type("p0.c1/at", "21:55").type("p0.c2/at", "09:55");
        assertThat(typist.notes("p0.c1")).contains("was made in the night; 12 hours off, it is next to that of 09:55");
        typist.type("p0.c1/at", "09:55");
        assertThat(typist.notes("p0.c1")).contains("Another catch of this truck has the time 09:55 too.");
        typist.type("p0.c1/containers.0.gross", "38")
                .type("p0.c1/containers.0.tare", "7.6")
                .type(FIRST + "containers.0.tare", "3.6");
        assertThat(typist.notes("p0.c1")).contains("pail 1 weighs 7.6 lb empty, and 3.6 lb in an earlier catch.");
        typist.type("before/testWeight", "50").type("before/reading", "55");
        assertThat(typist.notes("before")).contains("The scale shows 55 lb for a test weight of 50 lb.");
        typist.type("p0.c2/at", "").press("save");
        assertThat(typist.text("said"))
                .contains(
                        "Looks like a slip, and isn’t answered; saved as it is", "Saved as fleet-day-2026-10-19.json");
    }

    private static void good2(Typist typist, String group, String at) {
        typist.type(group + "at", at)
                .type(group + "counted.start", "1320")
                .type(group + "counted.stop", "1640")
                .type(group + "primed", "true")
                .type(group + "coasting", "in-neither")
                .type(group + "containers.0.gross", "34.6")
                .type(group + "containers.0.tare", "3.6");
    }

    @Test
    void anAnswerIsKeptAndAZeroedScaleIsWrittenDown() throws Exception {
        Typist typist = good(typist(before("T-03"))).type(FIRST + "containers.0.tare", "0");
        typist.yes("p0.c0", "Every tare is 0.");
        String saved = typist.file("save");
        assertThat(typist.text("said")).doesNotContain("Every tare is 0.");
        assertThat(JSON.readTree(saved)
                        .at("/trucks/0/calibrationCatches/0/conditions/scaleZeroed")
                        .asBoolean())
                .isTrue();
    }

    /** The value as left goes into verifications and notes; the gate as measured into the notes of the catches. */
    @Test
    void whatTheDocumentHasNoFieldForGoesIntoTheNotes() throws Exception {
        Typist typist = typist(before("T-01"))
                .type("before/gate0", "2.6")
                .type("before/indicatedStep", "1")
                .type("p0.v0/at", "10:31")
                .type("p0.v0/testSpeed", "15")
                .type("p0.v0/targetRate", "320")
                .type("p0.v0/runTime", "376")
                .type("p0.v0/counted.start", "0")
                .type("p0.v0/counted.stop", "6840")
                .type("p0.v0/indicated", "501")
                .type("p0.v0/containers.0.gross", "1150")
                .type("p0.v0/containers.0.tare", "650")
                .type("p0.held/left", "6.62")
                .type("road/inForce", "11000")
                .type("done/notes", "windy");
        assertThat(typist.notes("p0.v0")).isEqualTo("Complete. Net 500 lb.");
        TruckDay truck = Typist.read(typist.file("save")).trucks().get(0);
        assertThat(truck.notes())
                .contains(
                        "value in the display as left: 6.62 lb/rev, slot 1; road-speed value as found: 11000 pulse/mi; windy");
        assertThat(truck.verificationCatches()).singleElement().satisfies(one -> {
            assertThat(Amounts.format(one.inForce())).isEqualTo("6.62 lb/rev");
            assertThat(one.entry().notes()).contains("gate measured 2.6 in");
        });
        typist.type("p0.v0/held", "found");
        TruckDay found = Typist.read(typist.file("save")).trucks().get(0);
        assertThat(Amounts.format(found.verificationCatches().get(0).inForce())).isEqualTo("6.59 lb/rev");
    }

    @Test
    void aCounterThatWentRoundNeedsToBeSaid() throws Exception {
        Typist typist = good(typist(before("T-03")))
                .type(FIRST + "counted.start", "9900")
                .type(FIRST + "counted.stop", "220");
        assertThat(typist.notes("p0.c0"))
                .contains("or below it with a stated modulus: 220 pulse. If the counter went round, say where");
        typist.type("before/counted.modulus", "10000");
        assertThat(typist.notes("p0.c0")).isEqualTo("Complete. Net 31.00 lb.");
        assertThat(typist.file("save")).contains("\"modulus\": \"10000 pulse\"");
    }

    /** From the first box to the button that saves with nothing but keys, and Enter from box to box. */
    @Test
    void aSheetIsTypedInWithTheKeyboardAlone() throws Exception {
        typist(before("T-05"));
        WebElement offset = browser.driver().findElement(By.id("offset"));
        offset.sendKeys(Keys.ENTER);
        List<String> order = new ArrayList<>();
        List<String> typed =
                List.of("", "", "", "", "", "", "", "", "", "", "", "0810", "1000", "7840", "y", "i", "1150", "650");
        for (String text : typed) {
            WebElement box = browser.driver().switchTo().activeElement();
            order.add(box.getDomAttribute("id"));
            box.sendKeys(text, Keys.ENTER);
        }
        assertThat(order)
                .containsSubsequence(
                        "before/scale",
                        "before/testWeight",
                        "before/reading",
                        "before/oilTemperature",
                        "before/engineSpeed",
                        "before/hopperLevel",
                        "before/moisture",
                        "before/moistureBasis",
                        "before/counted.modulus",
                        "before/gate0",
                        "before/indicatedStep",
                        "p0.c0/at",
                        "p0.c0/counted.start",
                        "p0.c0/counted.stop",
                        "p0.c0/primed",
                        "p0.c0/coasting",
                        "p0.c0/containers.0.gross",
                        "p0.c0/containers.0.tare");
        assertThat(browser.driver().switchTo().activeElement().getDomAttribute("id"))
                .isEqualTo("p0.c1/at");
        assertThat(browser.driver().findElement(By.id("notes-p0.c0")).getText()).contains("Complete. Net 500 lb.");
        for (int i = 0;
                i < 200
                        && !"save"
                                .equals(browser.driver()
                                        .switchTo()
                                        .activeElement()
                                        .getDomAttribute("id"));
                i++) {
            browser.driver().switchTo().activeElement().sendKeys(Keys.TAB);
        }
        browser.driver().switchTo().activeElement().sendKeys(Keys.ENTER);
        awaitText("said", "Saved as fleet-day-2026-10-19.json");
    }

    /** The boxes of the page are the boxes of the paper, as far as the document has a field for them. */
    @ParameterizedTest
    @ValueSource(strings = {"T-03", "T-08", "T-17"})
    void theBoxesAreThoseOfThePaperInItsOrder(String id) throws Exception {
        ObjectNode day = before(id);
        typist(day);
        var read = Typist.read(day.toString());
        DayPlan plan = new DayPlan(
                read,
                FleetPlanner.of(BuiltInTypes.registry()).plan(read, read.plan().orElseThrow()));
        List<String> paper = PlanSheet.of(plan, plan.planned().get(0), 1).parts().stream()
                .flatMap(part -> part.lines().stream())
                .flatMap(line -> Stream.concat(line.boxes().stream(), line.more().stream()))
                .map(PlanSheet.Box::label)
                .filter(label -> !label.endsWith("net"))
                .toList();
        List<String> page = browser.texts(
                "return [...document.querySelectorAll('[id^=\"group-p\"]')].filter(one => /[cv][0-9]+$/.test(one.id))"
                        + ".flatMap(one => [...one.querySelectorAll('.entry label')].map(label => label.textContent)).filter(text => text !== 'display held')");
        assertThat(page).isEqualTo(paper);
    }

    private static ObjectNode hostile() throws IOException {
        return (ObjectNode) JSON.readTree(DemoDay.changed(day -> {
            day.put("site", "</title><script>document.title='run'</script>" + "W".repeat(150));
            day.put("technician", "<script>document.title='run'</script>");
            ObjectNode truck = DemoDay.truck(day, "T-03");
            DemoDay.rename(day, "T-03", "M".repeat(200));
            truck.put(
                    "notes",
                    "</script><script>document.title='run'</script>\u2028\u2029<!-- & \" ' ]]> \u202e\u0001 \ud83d\ude9a");
            DemoDay.truck(day, "T-05").put("id", "__proto__");
            DemoDay.truck(day, "T-06").put("id", "\u0634\u0627\u062d\u0646\u0629 7");
            DemoDay.truck(day, "T-09").put("id", "\"><img src=x onerror=document.title='run'>");
            ((ObjectNode) day.withArray("scales").get(1)).put("id", "<b>&amp; \u202escale");
            ((ObjectNode) day.at("/plan/weighingMethods/0")).put("scale", "<b>&amp; \u202escale");
            day.withArray("trucks").forEach(one -> {
                for (String list : List.of("calibrationCatches", "verificationCatches")) {
                    one.path(list).forEach(entry -> {
                        if (entry.get("scale").asText().equals("hanging 2")) {
                            ((ObjectNode) entry).put("scale", "<b>&amp; \u202escale");
                        }
                    });
                }
            });
        }));
    }

    @Test
    void namesStayNamesAndComeBackAsTheyWere() throws Exception {
        browser.complaints();
        ObjectNode day = hostile();
        Typist typist = typist(day);
        for (WebElement truck : browser.driver().findElements(By.cssSelector("#trucks button"))) {
            truck.sendKeys(Keys.ENTER);
        }
        assertThat(browser.complaints()).isEmpty();
        assertThat(browser.driver().getTitle()).startsWith("</title><script>");
        assertThat(browser.run("return document.querySelectorAll('img, link, iframe, script:not([type]), b b').length"))
                .isEqualTo(1L);
        assertThat((String) browser.run("return document.body.innerText")).doesNotContain("\u202e");
        typist.type("done/notes", "</script>\u202e & more");
        String saved = typist.file("save");
        DemoDay.truck(day, "T-20")
                .put("notes", DemoDay.truck(day, "T-20").get("notes").asText() + "; </script>\u202e & more");
        assertThat(Typist.canonical(saved)).isEqualTo(Typist.canonical(day.toString()));
    }

    @ParameterizedTest
    @ValueSource(ints = {390, 800, 1300})
    void nothingLiesBesideTheWindowAndNothingIsCutOff(int width) throws Exception {
        for (ObjectNode day : List.of(before("T-17"), hostile())) {
            Typist typist = typist(day);
            browser.width(width);
            typist.type("p0.c0/at", "9x")
                    .type("p0.c0/containers.0.gross", "3.5")
                    .type("p0.c0/containers.0.tare", "44")
                    .press("save");
            String looks = Browser.script("looks.js");
            assertThat(browser.texts(looks + "return looks.sideways();")).isEmpty();
            assertThat(browser.texts(looks + "return looks.cut();")).isEmpty();
        }
    }

    @Test
    void noRuleForPeopleWhoSeeOrReachLittleIsBroken() throws Exception {
        Typist typist = typist(before("T-17"));
        typist.type("p0.c0/at", "9x").type("p0.c0/containers.0.gross", "3.5").type("p0.c0/containers.0.tare", "44");
        good2(typist, "p0.c1/", "09:50");
        typist.press("save");
        Map<String, List<String>> rules = browser.rules();
        assertThat(rules.get("broken")).isEmpty();
        assertThat(rules.get("passed"))
                .contains("color-contrast", "label", "select-name", "button-name", "target-size");
    }
}
