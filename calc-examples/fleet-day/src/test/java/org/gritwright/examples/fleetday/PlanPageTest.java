package org.gritwright.examples.fleetday;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.function.Consumer;
import java.util.regex.Pattern;
import org.gritwright.core.document.RejectedDocumentException;
import org.gritwright.core.fleet.day.FleetDay;
import org.gritwright.core.fleet.plan.FleetPlanner;
import org.gritwright.core.metering.BuiltInTypes;
import org.gritwright.core.record.Document;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;

@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class PlanPageTest {
    private static final Pattern GROSS = Pattern.compile("<span>(pail \\d+ )?gross</span>");

    private String page;

    private static String page(Consumer<ObjectNode> change) throws IOException, RejectedDocumentException {
        byte[] text = DemoDay.changed(change).getBytes(StandardCharsets.UTF_8);
        FleetDay day = Document.FLEET_DAY.read(new ByteArrayInputStream(text));
        return PlanPage.html(new DayPlan(
                day,
                FleetPlanner.of(BuiltInTypes.registry()).plan(day, day.plan().orElseThrow())));
    }

    @BeforeAll
    void make() throws IOException, RejectedDocumentException {
        // Nothing is known about how catches scatter.
        page = page(day -> day.remove("allowances"));
    }

    private String sheet(String id) {
        return sheet(page, id);
    }

    private static String sheet(String page, String id) {
        int found = page.indexOf("<h2>" + id + "</h2>\n<p><b>Side 1");
        return page.substring(found, page.indexOf("</article>", found));
    }

    private static long pails(String sheet) {
        return GROSS.matcher(sheet).results().count();
    }

    /** Tables for the planner, which no sheet has. */
    private static String tables(String page, String id) {
        int found = page.indexOf("<summary>" + id + "</summary>");
        return page.substring(found, page.indexOf("</details>", found));
    }

    @Test
    void itIsOneHtmlPageThatNeedsNothingElse() {
        assertThat(page).startsWith("<!DOCTYPE html>\n<html lang=\"en\">").endsWith("</html>\n");
        assertThat(page).doesNotContain("<script", "http:", "https:", "<link", "url(");
        assertThat(page.split("<article class=\"worksheet\"", -1)).hasSize(21);
        assertThat(page).contains(".worksheet { break-before: page;");
    }

    /** Two crews of 8 h: T-17 needs more than the pails and the tarp hold. */
    @Test
    void theOverviewSaysHowManyDaysEachMethodAndAMixTake() {
        String first = page.substring(page.indexOf("<h2>How long it takes"), page.indexOf("<article"));
        assertThat(first)
                .containsSubsequence(
                        "<th scope=\"col\">days</th><th scope=\"col\">trucks a day</th>",
                        "<th scope=\"row\">pails on a hanging scale</th><td data-head=\"days\">3</td><td data-head=\"trucks a"
                                + " day\">6.3</td>",
                        "<td data-head=\"works for\">19 trucks</td><td data-head=\"doesn’t work for\">T-17</td>",
                        "<th scope=\"row\">tarp and shovel</th><td data-head=\"days\">4</td>",
                        "<th scope=\"row\">hopper scale that takes the whole drop</th><td data-head=\"days\">3</td><td"
                                + " data-head=\"trucks a day\">6.7</td>",
                        "<td data-head=\"works for\">20 trucks</td><td data-head=\"doesn’t work for\">none</td>",
                        "<th scope=\"row\">a mix: each truck by its own method below</th><td data-head=\"days\">3</td>",
                        "With 2 crews, 8 h a day.",
                        "sets up the yard once a day")
                .containsSubsequence(
                        "Where a weighing method doesn’t work, and why",
                        "<b>T-17</b>: pails on a hanging scale. For road salt, gate 4 in: Can&#39;t be used: containers must be"
                                + " able to hold the smallest sensible catch, 5 rev or 266 lb: 175 lb in all.</li>",
                        "<b>T-17</b>: tarp and shovel. For road salt, gate 4 in: Can&#39;t be used: containers must be"
                                + " able to hold the smallest sensible catch, 5 rev or 266 lb: 200 lb in all.</li>");
    }

    /** One crew of 8 h, nothing once a day: 40 h 30 min for 20 trucks, less 65 min on six days, are 34 h or five crew-days. */
    @Test
    void documentsWithoutCrewsArePlannedToo() throws IOException, RejectedDocumentException {
        String old = page(day -> {
            ObjectNode plan = (ObjectNode) day.get("plan");
            plan.remove(List.of("crews", "workingDay"));
            plan.get("weighingMethods")
                    .forEach(
                            method -> ((ObjectNode) method.get("times")).remove(List.of("dailySetUp", "dailyCleanUp")));
        });
        assertThat(old)
                .contains("With 1 crew, 8 h a day.")
                .contains(
                        "<th scope=\"row\">hopper scale that takes the whole drop</th><td data-head=\"days\">5</td><td"
                                + " data-head=\"trucks a day\">4.0</td><td data-head=\"work of all crews\">34 h 0 min</td>");
    }

    /** How much to catch and how long it takes can be read on a phone: each number names its column. */
    @Test
    void theTrucksAreAListWhereThereIsNoRoomForATable() {
        assertThat(page)
                .contains(
                        "<tr><th scope=\"row\">T-03</th><td data-head=\"where\">road salt</td><td data-head=\"quickest"
                                + " weighing method\">pails on a hanging scale</td><td data-head=\"how much to catch\">3 × 5 rev, 87.8"
                                + " lb</td><td data-head=\"takes\">80 min</td><td data-head=\"verification\">as planned</td></tr>")
                .contains("@media (max-width: 44rem)", "content: attr(data-head)");
    }

    @Test
    void eachCautionHasABoxToTickAndStandsAlone() {
        for (String sheet : page.split("<article class=\"worksheet\"", -1)) {
            if (!sheet.startsWith("<!DOCTYPE")) {
                String cautions = sheet.substring(sheet.indexOf("Before anyone"), sheet.indexOf("In this order"));
                assertThat(cautions)
                        .containsSubsequence(
                                "parking brake set, wheels chocked",
                                "Box down",
                                "nobody beneath",
                                "look up for power lines",
                                "never trust a prop under load",
                                "cones",
                                "No yard traffic",
                                "hand on the stop",
                                "Spinner disabled",
                                "all guards on",
                                "Lock out",
                                "hydraulic pressure relieved",
                                "try the controls",
                                "Nothing is slid under running material",
                                "Never enter the hopper; screens stay on",
                                "Never feel for an oil leak by hand",
                                "Engine exhaust outdoors",
                                "stands, never on a jack alone",
                                "rated for the load",
                                "nobody under a hanging load",
                                "lifted by two",
                                "three points of contact",
                                "ears",
                                "one drives and a second person records",
                                "Local lockout rules, the maker’s manual and licensed practice come first");
                assertThat(count(cautions, "<i class=\"tick\"></i>"))
                        .isEqualTo(count(cautions, "<li>"))
                        .isEqualTo(16);
            }
        }
    }

    private static int count(String text, String part) {
        return text.split(Pattern.quote(part), -1).length - 1;
    }

    @Test
    void theStepsAreInWorkingOrderWithABoxForEachTime() {
        String sheet = sheet("T-01");
        String steps = sheet.substring(sheet.indexOf("In this order"), sheet.indexOf("To bring:"));
        assertThat(steps)
                .containsSubsequence(
                        "Truck and yard safe",
                        "every constant of the display, as found",
                        "test weight",
                        "Warm up",
                        "Last time: oil 105 °F, engine 1600 rev/min.",
                        "set the gate to 2.5 in, measure it, enter it in the display",
                        "Prime",
                        "Ten turns",
                        "900 pulse for the sensed shaft, 4680 pulse for the conveyor’s",
                        "Catch",
                        "Lock out, shovel, weigh full, then empty",
                        "Net ÷ turns of each catch against what side 2 expects. Within ±4 %: leave",
                        "Read the value back",
                        "Verification at each planned speed",
                        "Simulated speed canceled. Lock out. Tarp away, every guard seen on, spinner enabled",
                        "chocks last. Everybody out, each takes off their own lock",
                        "Road speed",
                        "every constant, as left. Switch the display off and on",
                        "Settings saved or backed up",
                        "Put away");
        // 18 steps; the catches are three, the verifications two, the runs over the course three.
        assertThat(count(steps, "<i class=\"tick\"></i>")).isEqualTo(18 - 3 + 3 + 2 + 3);
    }

    /** The old words asked for several containers in one run, which the cautions forbid. */
    @Test
    void whateverFallsIsOnTheGroundBeforeItIsWeighed() {
        assertThat(page).doesNotContain("each in 1 container", "in 2 containers", "in 5 containers,");
        assertThat(sheet("T-07")).contains("shovel the dropped heap into 5 pails and weigh each");
    }

    /** Three catches in one pail each; the verifications in two pails and in three. */
    @Test
    void thereAreThreeBoxesForEachPailOfEachCatch() {
        String sheet = sheet("T-03");
        assertThat(sheet)
                .contains(
                        "3 catches of 5 rev (300 pulse, 5.00 turns of the conveyor shaft), about 29.2 lb each, about 10 s at"
                                + " 30 rev/min; pails on a hanging scale: weigh the whole drop at once.")
                .contains("<b>Verification 1.</b> Set 320 lb/mi and 15 mi/h, run 40 s from rest, about 52.3 lb.")
                .contains("<b>Verification 2.</b> Set 320 lb/mi and 25 mi/h, run 40 s from rest, about 87.1 lb.")
                .contains("<h4>Catch 3</h4>")
                .doesNotContain("<h4>Catch 4</h4>", "Verification 3");
        assertThat(pails(sheet)).isEqualTo(3 + 2 + 3);
        assertThat(count(sheet, "tare</span><i>lb</i>")).isEqualTo(3 + 2 + 3);
        assertThat(count(sheet, "net</span><i>lb</i>")).isEqualTo(3 + 2 + 3);
    }

    @Test
    void eachNumberHasOneBoxInItsUnit() {
        String sheet = sheet("T-01");
        for (String box : List.of(
                "test weight</span><i>lb",
                "scale reads</span><i>lb",
                "oil target</span><i>°F",
                "oil reached</span><i>°F",
                "engine target</span><i>rev/min",
                "engine held</span><i>rev/min",
                "ten turns</span><i>pulse",
                "gate measured</span><i>in",
                "course</span><i>mi",
                "run 3</span><i>pulse",
                "signature</span>")) {
            assertThat(count(sheet, "<span>" + box)).as(box).isOne();
        }
        for (String box : List.of(
                "mass value, slot 1</span><i>lb/rev",
                "gate in display</span><i>in",
                "shaft sensor</span><i>pulse/rev",
                "road speed</span><i>pulse/mi")) {
            assertThat(count(sheet, "<span>" + box))
                    .as(box + ", as found, as left, after reset")
                    .isEqualTo(3);
        }
        for (String box : List.of(
                "speed run</span><i>mi/h",
                "rate run</span><i>lb/mi",
                "seconds run</span><i>s",
                "display’s mass</span><i>lb")) {
            assertThat(count(sheet, "<span>" + box))
                    .as(box + ", each verification")
                    .isEqualTo(2);
        }
        assertThat(count(sheet, "<b>yes / no</b>")).isEqualTo(3);
        assertThat(count(sheet, "<b>in / out</b>")).isEqualTo(3);
    }

    /** The scales of the first three weighing methods read pounds, that of the fourth kilograms. */
    @Test
    void aMetricTrucksSheetIsMetricThroughout() {
        for (String id : List.of("T-07", "T-15", "T-19", "T-20")) {
            assertThat(sheet(id))
                    .contains("90.2 kg/km and ", "°C</i>", "pulse/km</i>", "<i>km</i>")
                    .doesNotContainPattern("\\d (lb|lb/mi|mi/h|in|°F)\\b")
                    .doesNotContainPattern("<i>(lb|lb/mi|mi/h|in|mi|°F|pulse/mi|lb/rev)</i>");
        }
        assertThat(sheet("T-01")).doesNotContainPattern("<i>(kg|kg/km|km/h|mm|km|°C|pulse/km|kg/rev)</i>");
    }

    @Test
    void aScaleInOtherUnitsIsReadAsItIs() throws IOException, RejectedDocumentException {
        String sheet = sheet(
                page(day -> {
                    DemoDay.only(day, "T-07");
                    ((ArrayNode) day.get("plan").get("weighingMethods")).remove(3);
                }),
                "T-07");
        assertThat(sheet)
                .contains(
                        "gross</span><i>lb</i>",
                        "The scale reads lb: write down what it shows; nobody converts by hand.");
    }

    /** 26 revolutions of a shaft geared 5.2 : 1 are 5 turns of the conveyor's, 26 · 90 pulses, and 26 · 6.59 lb. */
    @Test
    void aGearedSensorsRevolutionsAreSaidInTurnsOfTheConveyorShaftToo() throws IOException, RejectedDocumentException {
        String sheet = sheet(
                page(day -> {
                    DemoDay.only(day, "T-01");
                    ((ArrayNode) day.get("plan").get("weighingMethods")).remove(2);
                }),
                "T-01");
        assertThat(sheet)
                .contains("3 catches of 26 rev (2340 pulse, 5.00 turns of the conveyor shaft), about 171 lb each");
        assertThat(tables(page, "T-01"))
                .contains("rev are revolutions of the sensed or watched shaft: 5.2 to a turn of the conveyor shaft.");
    }

    @Test
    void aStatedScatterIsNotCalledAnAssumption() throws IOException, RejectedDocumentException {
        assertThat(page(day -> DemoDay.only(day, "T-01")))
                .contains("Catches are taken to scatter by 0.7 %, as the day states.", "by 0.7 %, as stated;")
                .doesNotContain("(common practice");
    }

    /** 26 revolutions in six pails; the two verifications fill six pails or fewer each. */
    @Test
    void furtherPailsHaveBoxesOfTheirOwn() throws IOException, RejectedDocumentException {
        String six = sheet(
                page(day -> {
                    DemoDay.only(day, "T-01");
                    ((ObjectNode) day.get("plan"))
                            .put("fewestRepeats", "3")
                            .put("mostRepeats", "3")
                            .put("wantedUncertainty", "5.2 %");
                    ArrayNode methods = (ArrayNode) day.get("plan").get("weighingMethods");
                    ((ObjectNode) methods.get(0)).put("containers", "9").put("holds", "30 lb");
                    while (methods.size() > 1) {
                        methods.remove(1);
                    }
                }),
                "T-01");
        assertThat(six).contains("about 171 lb each", "shovel the dropped heap into 6 pails and weigh each");
        assertThat(count(six, "<span>pail 6 gross</span>")).isGreaterThanOrEqualTo(3);
        assertThat(count(six, "<span>pail 1 gross</span>")).isEqualTo(3 + 2);
    }

    @Test
    void boxesAreForWhatTheTruckCounts() {
        assertThat(sheet("T-01")).contains("<span>counter, start</span><i>pulse</i>", "<span>gate measured</span>");
        assertThat(sheet("T-08"))
                .contains("<span>turns by eye</span><i>rev</i>", "two people count the same by eye")
                .doesNotContain("counter, start", "ten turns</span>");
        assertThat(sheet("T-03")).doesNotContain(">gate measured<", ">gate in display<", "set the gate");
    }

    /** 320 lb/mi at 25 mi/h are 4.3 rev/min of 31.2 lb/rev, below the 6 that the drives hold. */
    @Test
    void aTruckThatCantBeVerifiedAsPlannedSaysSo() {
        String sheet = sheet("T-17");
        String part = sheet.substring(sheet.indexOf("What to catch: road salt, gate 2.5 in"));
        part = part.substring(0, part.indexOf("</section>"));
        assertThat(part)
                .contains(
                        "Can&#39;t be verified as planned at 320 lb/mi and 15 mi/h (2.56 rev/min, and the drives hold 6"
                                + " rev/min to 60 rev/min), nor at 320 lb/mi and 25 mi/h (4.27 rev/min")
                .doesNotContain("<b>Verification");
        assertThat(page.substring(0, page.indexOf("<article")))
                .contains("3 can&#39;t be verified at every rate and speed that is planned: T-08, T-17, T-20.")
                .contains("<b>T-17</b>: For road salt, gate 2.5 in: Can&#39;t be verified as planned")
                .contains("<td data-head=\"verification\">not as planned</td>");
        assertThat(tables(page, "T-17")).contains("4.27 rev/min, out of range");
    }

    /** Of 6.59 lb/rev, 6 · 26 rev are 1028 lb and 3 · 26 rev are 514 lb. */
    @Test
    void thePlannersTablesAreInTheOverviewAndNotOnTheSheet() {
        assertThat(tables(page, "T-01"))
                .containsSubsequence(
                        "<caption>By each weighing method</caption>",
                        "<caption>Verification runs with ",
                        "<caption>Total to catch for other uncertainties</caption>",
                        "<th scope=\"row\">±1 %</th><td>6 × 26 rev, 1030 lb</td>",
                        "<th scope=\"row\">±3 %</th><td>3 × 26 rev, 514 lb</td>");
        assertThat(page).contains("<th scope=\"row\">±1 %</th><td>out of reach</td>");
        assertThat(page.substring(page.indexOf("<article"))).doesNotContain("<table", "<caption");
    }

    @Test
    void whatThePlanTakesForGrantedIsSaid() {
        assertThat(sheet("T-01")).contains("Expected: 6.59 lb/rev, by the calibration in force.");
        assertThat(page.substring(0, page.indexOf("<article")))
                .contains("Nothing is stated about how catches scatter; one is assumed to scatter by 1 % (common")
                .contains("The day states no repeatability: catches are assumed to scatter by 1 % (common practice");
    }

    @Test
    void whatOthersWroteCantBecomeMarkup() throws IOException, RejectedDocumentException {
        String hostile = page(day -> {
            DemoDay.only(day, "T-01");
            DemoDay.rename(day, "T-01", "<img src=x>");
            ((ObjectNode) day.get("plan").get("weighingMethods").get(0)).put("name", "<b>pails</b> & \"more\"");
            day.put("site", "<script>1</script>");
        });
        assertThat(hostile).doesNotContain("<img", "<script", "<b>pails").contains("&lt;img src=x&gt;");
    }

    @Test
    void aTruckThatNoWeighingMethodSuitsStillHasItsSheet() throws IOException, RejectedDocumentException {
        String none = sheet(
                page(day -> {
                    DemoDay.only(day, "T-17");
                    ((ArrayNode) day.get("plan").get("weighingMethods")).remove(2);
                }),
                "T-17");
        assertThat(none).contains("none of the planned ones will do");
        String part = none.substring(none.indexOf("What to catch: road salt, gate 4 in"));
        assertThat(part.substring(0, part.indexOf("</section>")))
                .contains("None of the planned weighing methods will do: plan others for this truck.")
                .doesNotContain("<h4>Catch 1</h4>");
    }
}
