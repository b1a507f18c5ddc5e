package org.gritwright.examples.fleetday;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.gritwright.core.document.RejectedDocumentException;
import org.gritwright.core.record.BoomOutcome;
import org.gritwright.core.record.Document;
import org.gritwright.core.record.TankRecord;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.io.TempDir;

/** What report, console and check say of booms and tanks. */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class LiquidReportTest {
    private static final Pattern ROW = Pattern.compile("<tr[^>]*><th scope=\"row\"[^>]*>(.*?)</th>(.*?)</tr>");
    private static final Pattern CELL = Pattern.compile("<td[^>]*>(.*?)</td>");

    private Run run;
    private Path results;
    private String page;

    @BeforeAll
    void make(@TempDir Path folder) throws IOException {
        run = Run.of(Run.LIQUIDS, folder);
        assertThat(run.exitCode()).as(run.err()).isZero();
        results = folder.resolve("run-0001");
        page = Run.text(results.resolve("report.html"));
    }

    /** The rows of the table with a caption, each as its head and its cells. */
    private static List<List<String>> table(String html, String caption) {
        int start = html.indexOf("<caption>" + caption);
        assertThat(start).as(caption).isNotNegative();
        String table = html.substring(start, html.indexOf("</table>", start));
        return ROW.matcher(table)
                .results()
                .map(row -> Stream.concat(
                                Stream.of(row.group(1)),
                                CELL.matcher(row.group(2)).results().map(cell -> cell.group(1)))
                        .toList())
                .toList();
    }

    private String sheet(String id) {
        int start = page.indexOf("<h3>" + id + "</h3>");
        return page.substring(start, page.indexOf("</article>", start));
    }

    private String tanks() {
        int start = page.indexOf("<h2>Tanks</h2>");
        return page.substring(start, page.indexOf("</section>", start));
    }

    @Test
    void theDemoIsWrittenAsTheLibraryWritesItButForTheSchema() throws IOException, RejectedDocumentException {
        String text = Run.text(Run.LIQUIDS);
        Matcher schema = Pattern.compile("(?m)^  \"\\$schema\": \"(.*)\",\n").matcher(text);
        assertThat(schema.find()).isTrue();
        assertThat(Run.LIQUIDS.resolveSibling(schema.group(1))).exists();
        assertThat(Document.FLEET_DAY.toText(Document.FLEET_DAY.read(Files.newInputStream(Run.LIQUIDS))))
                .isEqualTo(schema.replaceFirst(""));
    }

    @Test
    void everyNozzleIsBesideTheAverageOfThoseThatAgree() {
        List<List<String>> nozzles =
                table(sheet("A-41"), "Nozzles, beside the average of the nozzles that agree, 1.501 gal/min");
        assertThat(nozzles).hasSize(12);
        assertThat(nozzles.get(0))
                .containsExactly(
                        "left lane",
                        "1",
                        "1.500 gal/min<small>5.678 L/min</small>",
                        "−0.09 %<small>± 1.2</small>",
                        "within tolerance");
        assertThat(nozzles)
                .filteredOn(row -> !row.get(4).equals("within tolerance"))
                .containsExactly(List.of(
                        "right lane",
                        "2",
                        "1.859 gal/min<small>7.039 L/min</small>",
                        "+23.84 %<small>± 1.6</small>",
                        "gives too much: worn, damaged or of another size"));
    }

    @Test
    void sharesOfSectionsSayWhatFlowControlHides() {
        String sheet = sheet("A-41");
        // 407 of 1176 fluid ounces where a third would be even.
        assertThat(table(sheet, "Sections of the boom"))
                .containsExactly(
                        List.of("left lane", "4", "32.7 %", "33.3 %", "−2.04 %"),
                        List.of("center", "4", "32.7 %", "33.3 %", "−1.79 %"),
                        List.of("right lane", "4", "34.6 %", "33.3 %", "+3.83 %"));
        assertThat(sheet)
                .contains(
                        "the flow meter holds the total, and what one nozzle gives too much the others lack",
                        "rate off by");
        assertThat(sheet("A-43")).contains("share off by").doesNotContain("rate off by");
    }

    @Test
    void aWornNozzleLeavesTheFlowMeterRight() {
        assertThat(sheet("A-41"))
                .contains("flow meter ✓ right", "Do next:</b> Clean, compare or replace the nozzles that are off.");
        assertThat(run.out().replaceAll("\\s+", " ")).contains("(right lane 2)");
    }

    @Test
    void aPressureThatWasSetWithWaterIsToldWithWhatWouldBeRight() {
        String sheet = sheet("A-43");
        assertThat(table(sheet, "Pressure of the boom"))
                .containsExactly(
                        List.of("set up with", "8.34 lb/gal<small>999.4 kg/m³</small>"),
                        List.of("runs now", "9.82 lb/gal<small>1177 kg/m³</small>"),
                        List.of("its volume is off by", "−7.84 %"),
                        List.of("right pressure", "1.18 × the one that was set"));
        assertThat(sheet).contains("flow meter ✓ right").doesNotContain("Check start-up, valve and speed limits");
    }

    @Test
    void everyTankHasARow() {
        List<List<String>> rows = table(tanks(), "Tanks, in the order of the day");
        assertThat(rows)
                .containsExactly(
                        List.of(
                                "brine maker",
                                "21.50 % ± 0.22<small>sodium chloride</small>",
                                "−1.3 °F ± 1.0<small>−18.5 °C ± 0.57</small>",
                                "Add 634.7 lb ± 78 of the salt at hand.<small>287.9 kg; then 2629 gal in it, and 24.9 lb that"
                                        + " doesn’t dissolve</small>",
                                "23.3 % ± 0.5 %",
                                "2600 of 3000 gal<small>at 48 °F</small>",
                                "9.728 lb/gal ± 0.019<small>1166 kg/m³</small>"),
                        List.of(
                                "north tank",
                                "23.20 % ± 0.22<small>sodium chloride</small>",
                                "−5.7 °F ± 1.1<small>−21.0 °C ± 0.61, side of the eutectic not known</small>",
                                "Nothing to do.<small>as strong as is wanted</small>",
                                "23.3 % ± 0.5 %",
                                "4100 of 6000 gal<small>at 52 °F</small>",
                                "9.836 lb/gal ± 0.019<small>1179 kg/m³</small>"),
                        List.of(
                                "calcium tank",
                                "32.42 % ± 0.44<small>calcium chloride</small>",
                                "not known<small>beyond the eutectic</small>",
                                "Add 139.3 gal ± 18 of water.<small>527.2 L; then 1036 gal in it</small>",
                                "29 % ± 0.7 %",
                                "900 of 1500 gal<small>at 60 °F</small>",
                                "10.94 lb/gal ± 0.055<small>1311 kg/m³</small>"),
                        List.of(
                                "tote",
                                "21.50 % ± 0.39<small>sodium chloride</small>",
                                "−1.3 °F ± 1.3<small>−18.5 °C ± 0.73</small>",
                                "Too weak, and can’t be corrected as it is: capacity of the tank must be at least 277.103 gal,"
                                        + " what is in it after salt is added: 275 gal.",
                                "23.3 % ± 0.5 %",
                                "274 of 275 gal<small>at 55 °F</small>",
                                "9.712 lb/gal ± 0.029<small>1164 kg/m³</small>"));
    }

    @Test
    void findingsOfTanksStandBelowTheirNames() {
        assertThat(tanks())
                .containsSubsequence(
                        "<h3>brine maker</h3>",
                        "The solution in tank brine maker holds 21.5 % of its salt where 23.3 % is wanted",
                        "<h3>north tank</h3>",
                        "published eutectics go from 23.3 % to 23.31 %",
                        "<h3>calcium tank</h3>",
                        "more than the eutectic of 31 %",
                        "<h3>tote</h3>",
                        "a density of 9.712 lb/gal, but that of salt brine is stated as 9.82 lb/gal");
        assertThat(page)
                .containsSubsequence(
                        "<h3>Tanks that want something</h3>",
                        "<a href=\"#tanks\">brine maker</a>, <a href=\"#tanks\">calcium tank</a>, <a href=\"#tanks\">tote</a></p>");
    }

    @Test
    void cautionsStandBesideWhatIsToBeDone() {
        assertThat(tanks())
                .contains(
                        "never water to salt",
                        "Eye protection and gloves",
                        "backflow preventer",
                        "Never enter a tank, and never reach or lean in over its edge",
                        "Local codes, the salt’s safety data sheet and the makers’ manuals come first");
        for (String id : List.of("A-41", "A-43")) {
            assertThat(sheet(id))
                    .contains(
                            "relieve the pressure",
                            "a stopped pump is no sign that the line has no pressure",
                            "Eye protection for all",
                            "under a boom that is held up by hydraulics alone",
                            "never in a drain",
                            "Local rules and codes, the maker’s manual and licensed practice come first");
        }
        assertThat(sheet("A-42")).doesNotContain("Before anybody opens a cap");
    }

    @Test
    void theConsoleHasALineForEachTankOfNoMoreThanItsWidth() {
        assertThat(run.outLines()).allMatch(line -> line.length() <= ConsoleSummary.WIDTH);
        assertThat(run.outLines().stream().collect(Collectors.joining(" ")))
                .contains(
                        "Tank brine maker: 21.50 % +/-0.22, freezes at -1.3 °F +/-1.0. Add 634.7 lb +/-78 of the salt at hand.",
                        "Tank calcium tank: 32.42 % +/-0.44, freezing point not known, beyond the eutectic. Add 139.3 gal +/-18 of water.");
    }

    @Test
    void everyTankHasARecordThatReadsBack() throws IOException, RejectedDocumentException {
        List<Path> files;
        try (Stream<Path> all = Files.list(results.resolve("tank-records"))) {
            files = all.sorted().toList();
        }
        assertThat(files)
                .extracting(file -> file.getFileName().toString())
                .containsExactly("brine_maker.json", "calcium_tank.json", "north_tank.json", "tote.json");
        for (Path file : files) {
            try (InputStream in = Files.newInputStream(file)) {
                TankRecord record = Document.TANK_RECORD.read(in);
                assertThat(Document.TANK_RECORD.toText(record)).isEqualTo(Run.text(file));
                assertThat(file.getFileName().toString())
                        .startsWith(record.tank().name().replace(' ', '_'));
            }
        }
        assertThat(Run.text(results.resolve("tank-records/brine_maker.json")))
                .contains("\"salometer\": \"83\"", "\"nextStep\": \"correct\"", "\"salt\": \"634.66");
    }

    @Test
    void theRecordOfATruckHasItsBoom() throws IOException, RejectedDocumentException {
        try (InputStream in = Files.newInputStream(results.resolve("records/A-41.json"))) {
            BoomOutcome boom = Document.CALIBRATION_RECORD.read(in).boom().orElseThrow();
            assertThat(boom.review().orElseThrow().nozzles()).hasSize(12);
            assertThat(boom.sections()).hasSize(3);
        }
    }

    @Test
    void noCatchThatWasWeighedHasDigitsWithoutEnd() {
        assertThat(page).doesNotContainPattern("\\d\\.\\d{7}");
    }

    @Test
    void thePaperOfATruckHasItsBoomAndNoTanks() throws IOException {
        Run papers = Run.withPdf(Run.LIQUIDS, results.resolveSibling("paper"), "report");
        assertThat(papers.exitCode()).as(papers.err()).isZero();
        String paper = TaggedText.of(results.resolveSibling("paper").resolve("run-0001/trucks/A-41.pdf"));
        assertThat(paper.replaceAll("\\s+", " "))
                .contains(
                        "Sections of the boom",
                        "gives too much: worn, damaged or of another size",
                        "relieve the pressure")
                .doesNotContain("Before anybody adds salt");
    }

    @Test
    void whatCantBeComputedOfATankIsACheckedProblemAtItsPlace(@TempDir Path folder) throws IOException {
        Path wrong = Files.writeString(
                folder.resolve("wrong.json"), Run.text(Run.LIQUIDS).replace("\"4100 gal\"", "\"41000 gal\""));
        Run check = Run.of("--input", wrong.toString(), "--output", folder.toString(), "--mode", "check");

        assertThat(check.out())
                .contains(
                        "/tanks/1/level (line ", "level of the tank must be at most its capacity, 6000 gal: 41000 gal");
        assertThat(check.exitCode()).isNotZero();

        Run report = Run.of(wrong, folder.resolve("out"));
        assertThat(Run.text(folder.resolve("out/run-0001/report.html")))
                .contains(
                        "Correct what was written down.",
                        "<b>Error.</b> level of the tank must be at most its capacity");
        assertThat(report.exitCode()).isZero();
    }
}
