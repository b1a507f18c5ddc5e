package org.gritwright.examples.fleetday;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.gritwright.core.document.RejectedDocumentException;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A day with more trucks than one page can do with: the demo's twenty, eleven times. */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class LargeDayTest {
    private static final int COPIES = 11;
    private static final Pattern LINK = Pattern.compile("<a href=\"([^\"]+)\">([^<]+)</a>");
    private static final Pattern ARTICLE =
            Pattern.compile("<article class=\"truck[^\"]*\" id=\"[^\"]*\">(.*?)</article>", Pattern.DOTALL);

    private Path run;
    private FleetResult result;
    private Browser browser;

    /** Each copy with another letter after the truck's id. */
    static void enlarge(ObjectNode day) {
        ArrayNode trucks = day.withArray("trucks");
        List<ObjectNode> originals = new ArrayList<>();
        trucks.forEach(truck -> originals.add((ObjectNode) truck));
        for (int copy = 1; copy < COPIES; copy++) {
            char letter = (char) ('a' + copy);
            originals.forEach(truck ->
                    trucks.add(truck.deepCopy().put("id", truck.get("id").asText() + letter)));
        }
    }

    @BeforeAll
    void run(@TempDir Path folder) throws IOException, RejectedDocumentException {
        Path input = DemoDay.write(folder.resolve("day.json"), LargeDayTest::enlarge);
        Run done = Run.of(input, folder.resolve("out"));
        assertThat(done.exitCode()).as(done.err()).isZero();
        assertThat(done.errLines())
                .contains("Writing 220 pages into "
                        + folder.resolve("out/run-0001").resolve("trucks"));
        run = folder.resolve("out/run-0001");
        result = DemoDay.result(LargeDayTest::enlarge);
        assertThat(result.trucks()).hasSize(220);
    }

    @AfterAll
    void close() {
        if (browser != null) {
            browser.close();
        }
    }

    private static Map<String, String> links(Path page) throws IOException {
        Map<String, String> links = new HashMap<>();
        LINK.matcher(Run.text(page)).results().forEach(link -> links.put(link.group(2), link.group(1)));
        return links;
    }

    private static List<String> articles(String page) {
        return ARTICLE.matcher(page)
                .results()
                // A truck is compared with its like, of which there are more here.
                .map((MatchResult found) -> found.group(1).replaceAll("the fleet&#39;s [0-9]+ trucks", "others"))
                .toList();
    }

    @Test
    void theReportIsAnOverviewThatLeadsToAPageOfEachTruck() throws IOException {
        Map<String, String> links = links(run.resolve("report.html"));
        assertThat(articles(Run.text(run.resolve("report.html")))).isEmpty();
        for (TruckResult truck : result.trucks()) {
            Path page = run.resolve(links.get(truck.id()));
            String text = Run.text(page);
            assertThat(text).contains("<title>" + truck.id() + ",", "never trust a prop under load");
            assertThat(articles(text)).hasSize(1);
            assertThat(page.getParent().resolve(links(page).get("All trucks")).normalize())
                    .isEqualTo(run.resolve("report.html"));
        }
        assertThat(Run.names(run.resolve("trucks"))).hasSize(220);
    }

    @Test
    void theTableAndTheSummaryHaveAllTrucks() throws IOException {
        String report = Run.text(run.resolve("report.html"));
        assertThat(report)
                .contains(
                        "220 trucks: ",
                        "These are too many for one page: each truck’s name leads to its own page, in the folder");
        result.trucks().forEach(truck -> assertThat(report).contains("scope=\"row\" role=\"rowheader\">" + truck.id()));
    }

    @Test
    void aTrucksPageSaysWhatTheReportOfASmallDaySays() throws IOException, RejectedDocumentException {
        // The originals, on their own day.
        FleetResult small = DemoDay.result(day -> {});
        List<String> articles = articles(ReportPage.html(small));
        List<TruckResult> order = small.mostUrgentFirst();
        assertThat(articles).hasSize(order.size());
        for (int i = 0; i < order.size(); i++) {
            if (order.get(i).id().equals("T-02")) {
                // One of its tickets is taken for that of its copies, rightly.
                continue;
            }
            String page = Run.text(run.resolve("trucks").resolve(order.get(i).pageFile()));
            assertThat(articles(page)).as(order.get(i).id()).containsExactly(articles.get(i));
        }
    }

    @Test
    void theChartHasTheMostUrgentTrucksOfThoseThatNeedAttention() throws IOException {
        long inNeed =
                result.trucks().stream().filter(TruckResult::needsAttention).count();
        assertThat(inNeed).isBetween(1L, 200L);
        String report = Run.text(run.resolve("report.html"));
        assertThat(report).contains("the chart shows those that need attention, at most 200");
        for (TruckResult truck : result.trucks()) {
            boolean hasError = truck.assessment().verifications().stream()
                    .anyMatch(verification -> verification.calibrationError().isPresent());
            assertThat(report.contains(">" + truck.id() + "</text>"))
                    .as(truck.id())
                    .isEqualTo(truck.needsAttention() && hasError);
        }
    }

    @Test
    void eachCabHasAPageOfItsOwnToo() throws IOException {
        Map<String, String> links = links(run.resolve("cab.html"));
        assertThat(Run.text(run.resolve("cab.html"))).doesNotContain("<article");
        assertThat(links).hasSizeGreaterThan(COPIES);
        for (Map.Entry<String, String> link : links.entrySet()) {
            Path page = run.resolve(link.getValue());
            assertThat(Run.text(page)).contains("<h2>" + link.getKey() + "</h2>", "class=\"card\"");
            assertThat(links(page)).containsEntry("All trucks", "../cab.html");
        }
        assertThat(Run.names(run.resolve("cabs"))).hasSize(links.size());
        // Each truck has a page, or a reason for having none.
        result.trucks()
                .forEach(truck -> assertThat(
                                CabSheet.of(result, truck, 1).missing().isEmpty()
                                        || cabText().contains("<b>" + truck.id() + "</b>"))
                        .isTrue());
    }

    private String cabText() {
        try {
            return Run.text(run.resolve("cab.html"));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    @Test
    void onPaperItIsAnOverviewToo() throws IOException {
        byte[] pdf = Papers.load().pdf(ReportPage.paper(result), result.day().day());
        try (PDDocument read = Loader.loadPDF(pdf)) {
            assertThat(read.getNumberOfPages()).isBetween(5, 60);
            assertThat(new PDFTextStripper().getText(read).replaceAll("\\s+", " "))
                    .contains("T-20", "T-20k", "each truck has its own paper");
        }
        List<String> own = new ArrayList<>();
        String cabs = CabPage.paper(result, (truck, page) -> own.add(page));
        assertThat(own)
                .hasSize(Run.names(run.resolve("cabs")).size())
                .allMatch(page -> page.contains("class=\"card\""));
        assertThat(cabs).doesNotContain("<article");
    }

    /** Its heading alone would cost every truck a sheet. */
    @Test
    void aTrucksOwnPaperBeginsOnItsFirstSheet() throws IOException {
        List<String> cabs = new ArrayList<>();
        CabPage.paper(result, (truck, page) -> cabs.add(page));
        assertThat(firstSheet(Papers.load().pdf(cabs.get(0), result.day().day())))
                .contains("Parked, engine off, locked out");

        openBrowser();
        for (Browser.Paper paper : List.of(Browser.Paper.LETTER, Browser.Paper.A4)) {
            browser.goTo(run.resolve("cabs/T-01.html"));
            assertThat(firstSheet(browser.print(paper))).contains("Parked, engine off, locked out");
            browser.goTo(run.resolve("trucks/T-01.html"));
            assertThat(firstSheet(browser.print(paper))).contains("Calibration in the display");
        }
    }

    private static String firstSheet(byte[] pdf) throws IOException {
        try (PDDocument read = Loader.loadPDF(pdf)) {
            PDFTextStripper first = new PDFTextStripper();
            first.setEndPage(1);
            return first.getText(read).replaceAll("\\s+", " ");
        }
    }

    private void openBrowser() {
        if (browser == null) {
            browser = Browser.open();
        }
    }

    @ParameterizedTest
    @ValueSource(ints = {390, 800, 1300})
    void inABrowserItsPagesFitTheWindowAndBreakNoRule(int width) throws IOException {
        openBrowser();
        String looks = Browser.script("looks.js");
        browser.width(width);
        for (Path page :
                List.of(run.resolve("trucks/T-01.html"), run.resolve("report.html"), run.resolve("cab.html"))) {
            browser.complaints();
            browser.goTo(page);
            assertThat(browser.texts(looks + "return looks.sideways();"))
                    .as(page.toString())
                    .isEmpty();
            assertThat(browser.texts(looks + "return looks.cut();"))
                    .as(page.toString())
                    .isEmpty();
            assertThat(browser.complaints()).isEmpty();
        }
        browser.goTo(run.resolve("trucks/T-01.html"));
        assertThat(browser.rules().get("broken")).isEmpty();
    }
}
