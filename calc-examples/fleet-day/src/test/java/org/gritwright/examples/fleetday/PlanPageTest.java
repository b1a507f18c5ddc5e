package org.gritwright.examples.fleetday;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
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
    private static final Pattern BOX = Pattern.compile("<td class=\"pair\">");

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
        int found = page.indexOf("<h2>" + id + "</h2>");
        return page.substring(found, page.indexOf("</article>", found));
    }

    private static long boxes(String sheet) {
        return BOX.matcher(sheet).results().count();
    }

    @Test
    void itIsOneHtmlPageThatNeedsNothingElse() {
        assertThat(page).startsWith("<!DOCTYPE html>\n<html lang=\"en\">").endsWith("</html>\n");
        assertThat(page).doesNotContain("<script", "http:", "https:", "<link", "url(");
        assertThat(page.split("<article class=\"worksheet\"", -1)).hasSize(21);
        assertThat(page).contains(".worksheet { break-before: page;");
    }

    @Test
    void theFirstPageComparesTheWeighingMethods() {
        String first = page.substring(page.indexOf("<h2>How long the day takes"), page.indexOf("<article"));
        assertThat(first)
                .containsSubsequence(
                        "<th scope=\"row\">pails on a hanging scale</th><td>34 h 59 min</td><td>19 trucks</td><td>T-17</td>",
                        "<th scope=\"row\">tarp and shovel</th><td>42 h 55 min</td><td>19 trucks</td><td>T-17</td>",
                        "<th scope=\"row\">hopper scale that takes the whole drop</th><td>36 h 36 min</td><td>20"
                                + " trucks</td><td>none</td>",
                        "<b>T-17</b>, pails on a hanging scale. For road salt, gate 4 in: Can&#39;t be used: containers must be"
                                + " able to hold the smallest sensible catch, 5 rev or 266 lb: 175 lb in all.</li>",
                        "<b>T-17</b>, tarp and shovel. For road salt, gate 4 in: Can&#39;t be used: containers must be"
                                + " able to hold the smallest sensible catch, 5 rev or 266 lb: 200 lb in all.</li>");
    }

    @Test
    void eachSheetHasTheCautionsBeforeWhatToBringAndWhatToCatch() {
        for (String sheet : page.split("<article class=\"worksheet\"", -1)) {
            if (!sheet.startsWith("<!DOCTYPE")) {
                assertThat(sheet)
                        .containsSubsequence(
                                "Parking brake set, wheels chocked",
                                "Spinner disabled",
                                "Nobody reaches",
                                "controls locked out",
                                "Never slide a container under running discharge",
                                "Raised wheels stand on stands",
                                "Nobody under a hanging load",
                                "Hydraulic oil is hot",
                                "the maker’s manual",
                                "To bring",
                                "What to catch: ",
                                "To write down",
                                "Signature");
            }
        }
    }

    /** Three catches in one pail each, and the verification in two. */
    @Test
    void thereIsABoxForEachContainerOfEachCatch() {
        String sheet = sheet("T-03");
        assertThat(sheet)
                .contains("3 catches of 5 rev (300 pulse, 5.00 turns of the conveyor shaft), about 29.2 lb each in 1"
                        + " container, about 10 s at 30 rev/min.")
                .contains("set the truck to 15 mi/h and 320 lb/mi, run 40 s from rest, about 52.3 lb in 2 containers.")
                .contains("<th scope=\"row\">Catch 3</th>", "<th scope=\"row\">Verification</th>")
                .doesNotContain("<th scope=\"row\">Catch 4</th>");
        assertThat(boxes(sheet)).isEqualTo(3 + 2);
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
                .contains("3 catches of 26 rev (2340 pulse, 5.00 turns of the conveyor shaft), about 171 lb each")
                .contains("rev are revolutions of the sensed or watched shaft: 5.2 to a turn of the conveyor shaft.");
    }

    @Test
    void aStatedScatterIsNotCalledAnAssumption() throws IOException, RejectedDocumentException {
        assertThat(page(day -> DemoDay.only(day, "T-01")))
                .contains("Catches are taken to scatter by 0.7 %, as the day states.", "by 0.7 %, as stated;")
                .doesNotContain("common practice");
    }

    /** 26 revolutions in six pails, four of them in the first line. */
    @Test
    void manyContainersGoOnInAnotherLine() throws IOException, RejectedDocumentException {
        String six = sheet(
                page(day -> {
                    DemoDay.only(day, "T-01");
                    ((ObjectNode) day.get("plan"))
                            .put("fewestRepeats", "3")
                            .put("mostRepeats", "3")
                            .put("wantedUncertainty", "5.2 %");
                    ObjectNode method =
                            (ObjectNode) day.get("plan").get("weighingMethods").get(0);
                    method.put("containers", "9").put("holds", "30 lb");
                    ((ArrayNode) day.get("plan").get("weighingMethods")).remove(2);
                    ((ArrayNode) day.get("plan").get("weighingMethods")).remove(1);
                }),
                "T-01");
        assertThat(six).contains("about 171 lb each in 6 containers");
        assertThat(six)
                .contains("<span>6</span></td><td class=\"none\"><span></span></td><td class=\"none\">")
                .contains("<td class=\"none\" colspan=\"4\"></td>");
    }

    @Test
    void boxesAreForWhatTheTruckCounts() {
        assertThat(sheet("T-01")).contains("<th scope=\"col\">counter at start</th>", "gate setting</th>");
        assertThat(sheet("T-08"))
                .contains("<th scope=\"col\">revolutions by eye</th>")
                .doesNotContain("counter at start");
        assertThat(sheet("T-03")).doesNotContain("gate setting</th>");
    }

    /** 320 lb/mi at 25 mi/h are 4.3 rev/min of 31.2 lb/rev, below the 6 that the drives hold. */
    @Test
    void noVerificationRunIsSaidAndNotLeftOut() {
        String sheet = sheet("T-17");
        assertThat(sheet.substring(sheet.indexOf("What to catch: road salt, gate 2.5 in")))
                .contains("Verification: none of the planned rates and speeds fits", "4.27 rev/min, out of range")
                .doesNotContain("<th scope=\"row\">Verification</th>");
    }

    /** Of 6.59 lb/rev, 6 · 26 rev are 1028 lb and 3 · 26 rev are 514 lb. */
    @Test
    void theYardTableIsOnTheSheet() {
        assertThat(sheet("T-01"))
                .containsSubsequence(
                        "<caption>Total to catch for other uncertainties</caption>",
                        "<th scope=\"row\">±1 %</th><td>6 × 26 rev, 1030 lb</td>",
                        "<th scope=\"row\">±3 %</th><td>3 × 26 rev, 514 lb</td>");
        assertThat(page).contains("<th scope=\"row\">±1 %</th><td>out of reach</td>");
    }

    @Test
    void whatThePlanTakesForGrantedIsSaid() {
        assertThat(sheet("T-01"))
                .contains("Nothing is stated about how catches scatter; one is assumed to scatter by 1 % (common")
                .contains("Expected: 6.59 lb/rev, by the calibration in force.");
        assertThat(page.substring(0, page.indexOf("<article")))
                .contains("The day states no repeatability: catches are assumed to scatter by 1 % (common practice");
    }

    @Test
    void whatOthersWroteCantBecomeMarkup() throws IOException, RejectedDocumentException {
        String hostile = page(day -> {
            DemoDay.only(day, "T-01").put("id", "<img src=x>");
            ((ObjectNode) day.get("plan").get("weighingMethods").get(0)).put("name", "<b>pails</b> & \"more\"");
            day.put("site", "<script>1</script>");
        });
        assertThat(hostile).doesNotContain("<img", "<script", "<b>pails").contains("&lt;img src=x&gt;");
    }

    @Test
    void aDayWithoutTrucksIsNoTrouble() throws IOException, RejectedDocumentException {
        assertThat(page(day -> day.putArray("trucks"))).contains("0 trucks: ").doesNotContain("<article");
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
        assertThat(none.substring(none.indexOf("What to catch: road salt, gate 4 in")))
                .contains("doesn’t work", "5 rev or 266 lb: 175 lb in all")
                .doesNotContain("To write down");
    }
}
