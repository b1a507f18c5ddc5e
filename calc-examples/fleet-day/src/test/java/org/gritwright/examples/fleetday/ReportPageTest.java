package org.gritwright.examples.fleetday;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.util.function.Consumer;
import java.util.regex.Pattern;
import org.gritwright.core.document.RejectedDocumentException;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;

@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class ReportPageTest {
    private static final Pattern LINK =
            Pattern.compile("(?i)(src|href|url|@import|srcset|data|action)\\s*[=(]\\s*\"?([^\"'\\s>)]*)");

    private String page;

    private static String page(Consumer<ObjectNode> change) throws IOException, RejectedDocumentException {
        return ReportPage.html(DemoDay.result(change));
    }

    @BeforeAll
    void make() throws IOException, RejectedDocumentException {
        page = page(day -> {});
    }

    @Test
    void itIsOneHtmlPageInEnglish() {
        assertThat(page).startsWith("<!DOCTYPE html>\n<html lang=\"en\">").endsWith("</html>\n");
        assertThat(page).containsOnlyOnce("<main>").containsOnlyOnce("<h1>");
    }

    @Test
    void theFleetAndTheTruckWithSeveralOpeningsHaveAPicture() {
        // The fleet's, a curve, and what five trucks can do whose drive is known.
        assertThat(page.split("<svg", -1)).hasSize(8);
        assertThat(page.substring(0, page.indexOf("Truck by truck"))).containsOnlyOnce("<svg");
        assertThat(sheet("T-17"))
                .containsOnlyOnce("<svg")
                .contains(
                        "viewBox=\"0 0 440 450\" role=\"img\" aria-label=\"Two charts of road salt: mass per revolution,",
                        "<path class=\"solid\" d=\"M",
                        "<text class=\"upright\"");
    }

    @Test
    void theCurveIsListedAtRoundOpenings() {
        String sheet = sheet("T-17");
        assertThat(sheet.substring(sheet.indexOf("</svg")))
                .containsSubsequence(
                        "<caption>Mass per revolution by gate opening, road salt</caption>",
                        "<th scope=\"row\">1 in (25.4 mm)</th>",
                        "geometry alone",
                        "<th scope=\"row\">1.5 in (38.1 mm)</th>",
                        "<th scope=\"row\">2 in (50.8 mm)</th><td>23.90 lb/rev<small>10.84 kg/rev</small></td><td>± 1.1 lb/rev</td>",
                        "<th scope=\"row\">2.5 in (63.5 mm)</th>",
                        "<th scope=\"row\">3 in (76.2 mm)</th>",
                        "<th scope=\"row\">3.5 in (88.9 mm)</th>",
                        "<th scope=\"row\">4 in (102 mm)</th>",
                        "<th scope=\"row\">4.5 in (114 mm)</th>",
                        "geometry alone",
                        "Effective bulk density k = 70.1 lb/ft³. Dead opening h0 = 0.366 in");
    }

    @Test
    void theConditionsOfACatchAreShownWhereTheyWereWrittenDown() {
        assertThat(sheet("T-03"))
                .contains("09:55: oil 104 °F, hopper 70 % full.", "10:31: oil 121 °F, hopper 50 % full.");
        assertThat(sheet("T-05")).doesNotContain(": oil ", ", hopper ");
    }

    @Test
    void noIdIsThereTwice() throws IOException, RejectedDocumentException {
        String twoCurves = page(day -> DemoDay.truck(day, "T-16")
                .setAll(DemoDay.truck(day, "T-17").deepCopy().put("id", "T-16")));
        assertThat(twoCurves.split("<svg", -1)).hasSize(9);
        assertThat(Pattern.compile("\\bid=\"([^\"]+)\"")
                        .matcher(twoCurves)
                        .results()
                        .map(id -> id.group(1)))
                .hasSize(20)
                .doesNotHaveDuplicates();
    }

    @Test
    void whatStandsOnATruckIsToldWithItsTables() {
        assertThat(sheet("T-15"))
                .contains(
                        "no gate; no shaft sensor, gear ratio 1; loaded shaft speed by control setting:"
                                + " 2 → 12 rev/min, 4 → 30 rev/min, 6 → 47 rev/min.",
                        "29.00 rev<small>setting 4 × 58 s</small>");
        assertThat(sheet("T-20"))
                .contains("setting table (areas 0 cm², 60 cm², 125 cm², 190 cm², 260 cm², 330 cm², 400 cm²;"
                        + " settings 0, 1, 2, 3, 4, 5, 6); 48 pulse/rev, gear ratio 1.");
    }

    @Test
    void aLongTableIsToldByItsEnds() throws IOException, RejectedDocumentException {
        String long20 = page(day -> {
            ObjectNode parameters = (ObjectNode) DemoDay.truck(day, "T-20").at("/gate/parameters");
            for (int mark = 7; mark < 20; mark++) {
                parameters.withArray("areas").add(400 + mark + " cm²");
                parameters.withArray("settings").add(String.valueOf(mark));
            }
        });
        assertThat(long20)
                .contains("setting table (areas 0 cm², 60 cm² … 419 cm², 20 in all; settings 0, 1 … 19, 20 in all);");
    }

    @Test
    void itNeedsNothingElse() {
        assertThat(LINK.matcher(page).results().map(link -> link.group(2)))
                .isNotEmpty()
                .allMatch(target -> target.startsWith("#"), "stays in the page");
        assertThat(page).doesNotContain("<script", "<link", "<img", "<iframe", "@font-face");
    }

    @Test
    void everyTruckIsThereInTableAndSheet() {
        for (int number = 1; number <= 20; number++) {
            String id = "T-%02d".formatted(number);
            assertThat(page).contains("<h3>" + id + "</h3>", "role=\"rowheader\">" + id + "</th>", "records/" + id);
        }
    }

    @Test
    void everyLinkInThePageHasItsTarget() {
        assertThat(Pattern.compile("href=\"#([^\"]+)\"").matcher(page).results().map(link -> link.group(1)))
                .hasSize(20)
                .allSatisfy(target -> assertThat(page).containsOnlyOnce("id=\"" + target + "\""));
    }

    @Test
    void whatNeedsDoingComesFirstWithTheValueToEnter() {
        assertThat(page.indexOf("What needs doing first")).isPositive().isLessThan(page.indexOf("Before anyone works"));
        assertThat(page)
                .contains(
                        "<b>Enter 5.68 lb/rev for road salt in slot 1 in place of 5.35 lb/rev, read it back, catch again.</b>",
                        "<b>Enter 12303 pulse/mi in place of 13200 pulse/mi, drive the course again.</b>",
                        "<b>Correct what was written down.</b> Nothing could be computed: catch of 15:42: pail 2: gross 3.5 lb");
    }

    @Test
    void safetyStandsInWorkingOrder() {
        assertThat(page.replaceAll("\\s+", " "))
                .containsSubsequence(
                        "Level ground",
                        "parking brake",
                        "chocked",
                        "Box down",
                        "nobody beneath, look up for power lines, never trust a prop under load",
                        "keep-out zone",
                        "hand on the stop",
                        "Spinner disabled",
                        "guards on",
                        "Lock out before anyone comes near",
                        "Engine off, key out, hydraulic pressure relieved",
                        "try the controls",
                        "Nobody reaches under or into",
                        "Nothing is slid under running material",
                        "Never enter the hopper",
                        "oil leak by hand",
                        "exhaust",
                        "stands, never on a jack alone",
                        "hanging load",
                        "lifted by two",
                        "slippery",
                        "ears",
                        "dust",
                        "second person records",
                        "lockout rules");
    }

    @Test
    void bothUnitSystemsStandSideBySide() {
        assertThat(page)
                .contains("5.35 lb/rev<small>2.427 kg/rev</small>", "2.609 kg/rev<small>5.752 lb/rev</small>")
                .contains("262.0 lb/mi<small>73.84 kg/km</small>");
    }

    @Test
    void asFoundAndAsLeftAreBothKept() {
        String sheet = sheet("T-04");
        assertThat(sheet)
                .containsSubsequence(
                        "as found",
                        "5.12 lb/rev",
                        "called for",
                        "4.827 lb/rev",
                        "to enter",
                        "4.83 lb/rev",
                        "as left",
                        "4.83 lb/rev",
                        "confirmed by an independent catch",
                        "07:45 as found",
                        "07:57 as left",
                        "+6.1 ± 1.7 %<small>outside tolerance, chance to be within: 0.74 %",
                        "+1.6 ± 1.6 %<small>within tolerance, chance to be within: 99.9 %");
    }

    private String sheet(String id) {
        int start = page.indexOf("<h3>" + id + "</h3>");
        return page.substring(start, page.indexOf("</article>", start));
    }

    @Test
    void trucksWithoutAnErrorAreNamedBelowTheChart() {
        assertThat(page).contains("No calibration error is known for T-05, T-09, T-13, T-14, T-15:");
    }

    @Test
    void textsOfOthersAreTextsAndNothingElse() throws IOException, RejectedDocumentException {
        String attack = "<script>alert('&')</script><img src=x onerror=y>\"";
        String attacked = page(day -> {
            day.put("site", attack).put("technician", attack);
            ((ObjectNode) DemoDay.truck(day, "T-01").at("/inForce/0")).put("slot", attack);
            DemoDay.truck(day, "T-13")
                    .get("calibrationCatches")
                    .forEach(one -> one.get("containers")
                            .forEach(container -> ((ObjectNode) container).put("container", attack)));
            day.findParents("material").stream()
                    .filter(entry -> entry.get("material").asText().equals("road salt"))
                    .forEach(entry -> ((ObjectNode) entry).put("material", attack));
            ((ObjectNode) day.get("materials").get(0)).put("name", attack);
            ((ObjectNode) day.get("routes").get(1)).put("name", attack);
            for (String id : new String[] {"T-01", "T-13", "T-11", "T-17"}) {
                DemoDay.truck(day, id).put("notes", attack);
                DemoDay.rename(day, id, id + attack);
            }
        });
        assertThat(attacked).doesNotContain("<script", "<img").contains("&lt;script&gt;");
        assertThat(attacked).contains("aria-label=\"Two charts of &lt;script");
        assertThat(attacked.substring(attacked.indexOf("</svg"))).contains("T-01&lt;script&gt;");
        assertThat(Pattern.compile("<text[^>]*>T-01&lt;").matcher(attacked).find())
                .isTrue();
    }

    @Test
    void aFleetWithoutErrorsHasNoChart() throws IOException, RejectedDocumentException {
        String small = page(day -> DemoDay.only(day, "T-13"));
        assertThat(small).doesNotContain("<svg").contains("There is no chart");
    }

    @Test
    void noNameTurnsTheDirectionOfWritingOrHoldsAControlCharacter() throws IOException, RejectedDocumentException {
        String page = ReportPage.html(
                DemoDay.result(day -> DemoDay.truck(day, "T-04").put("id", "T\u202e4\u2067\u0007\u001b \u200c\u05d0")));
        assertThat(page)
                .contains("T\uFFFD4\uFFFD\uFFFD\uFFFD \u200c\u05d0")
                .doesNotContain("\u202e", "\u2067", "\u0007");
    }

    @Test
    void thePageAsksForNothingFromOutsideAndRunsNothing() throws IOException, RejectedDocumentException {
        String page = ReportPage.html(DemoDay.result(day -> {}));
        assertThat(page)
                .contains("<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; style-src"
                        + " 'unsafe-inline'; base-uri 'none'; form-action 'none'\"/>")
                .doesNotContain("<script", "<img", "javascript:", "url(http", "url(\"", "@import");
    }

    @Test
    void negativeNumbersHaveAMinusSignInSentencesToo() {
        assertThat(page)
                .contains("The calibration error of −5.728 % is outside the tolerance")
                .doesNotContainPattern("error of -[0-9]");
    }
}
