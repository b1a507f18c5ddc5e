package org.gritwright.examples.fleetday;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.fail;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.awt.geom.Rectangle2D;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Base64;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.function.Function;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.io.TempDir;

/** The PDF files of the demo's report and plan. */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class PapersTest {
    private static final LocalDate DAY = LocalDate.of(2026, 10, 19);
    /** As different as the demo's trucks are: counted by eye, several pails, several gates, refused, and so on. */
    private static final List<String> IDS =
            List.of("T-01", "T-03", "T-06", "T-07", "T-08", "T-10", "T-13", "T-15", "T-17", "T-19");

    /** What is on screen only, and captions that the headings above them repeat. */
    private static final Pattern NOT_ON_PAPER = Pattern.compile(
            "<head>.*?</head>|<section class=\"fleet planner\">.*?</section>|<table class=\"(wide|stacked)\"[^>]*>\\s*<caption>.*?</caption>"
                    // Written upward, it is read letter by letter.
                    + "|<text class=\"upright\".*?</text>",
            Pattern.DOTALL);

    /** A4 is so much narrower than Letter. */
    private static final double NARROWER = (215.9 - 210) * Paper.MILLIMETER;

    /** Printers leave a quarter of an inch. */
    private static final double UNPRINTABLE = 18;

    /** A picture of one dot. */
    private static final byte[] DOT = Base64.getDecoder()
            .decode("iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNkYPhfDwAChwGA60e6kgAAAABJRU5ErkJggg==");

    private final Map<String, Paper> papers = new LinkedHashMap<>();
    private Path report;
    private Path plan;

    @BeforeAll
    void make(@TempDir Path folder) throws IOException {
        Path input = DemoDay.write(folder.resolve("day.json"), day -> DemoDay.cut(day, IDS.toArray(String[]::new)));
        report = made(input, folder.resolve("report"), "report");
        plan = made(input, folder.resolve("plan"), "plan");
    }

    private Path made(Path input, Path output, String mode) throws IOException {
        Run run = Run.withPdf(input, output, mode);
        assertThat(run.exitCode()).as(run.err()).isZero();
        Path made = output.resolve("run-0001");
        for (String name : Run.names(made)) {
            if (name.endsWith(".pdf")) {
                papers.put(mode + "/" + name, Paper.of(made.resolve(name)));
            }
        }
        return made;
    }

    private Paper paper(String name) {
        return Objects.requireNonNull(papers.get(name), name);
    }

    @Test
    void thereIsOneFileADayAndOneATruck() throws IOException {
        Stream<String> trucks = IDS.stream().map(id -> "trucks/" + id + ".pdf");
        assertThat(Run.names(plan))
                .filteredOn(name -> !name.equals("type-in.html"))
                .containsExactlyElementsOf(Stream.concat(
                                Stream.of("blank-sheets.html", "blank-sheets.pdf", "plan.html", "plan.pdf"), trucks)
                        .toList());
        assertThat(Run.names(report))
                .contains("report.pdf")
                .filteredOn(name -> name.startsWith("trucks/"))
                .hasSize(IDS.size());
    }

    /** How often each word or number stands in a page; the file may have them in another order. */
    private static Map<String, Long> words(String html) {
        return counted(NOT_ON_PAPER
                .matcher(html)
                .replaceAll("")
                .replaceAll("<[^>]*>", " ")
                .replace("&#39;", "'")
                .replace("&quot;", "\"")
                .replace("&lt;", "<")
                .replace("&gt;", ">")
                .replace("&amp;", "&"));
    }

    private static Map<String, Long> counted(String text) {
        return Stream.of(text.split("[^\\p{L}\\p{N}]+"))
                .filter(word -> !word.isEmpty())
                .collect(Collectors.groupingBy(Function.identity(), Collectors.counting()));
    }

    private static void assertHasAll(Paper paper, String html, String what) {
        assertHasAll(paper.text(), html, what);
    }

    private static void assertHasAll(String text, String html, String what) {
        Map<String, Long> there = counted(text);
        Map<String, Long> wanted = words(html);
        assertThat(wanted).hasSizeGreaterThan(50);
        assertThat(wanted)
                .as(what)
                .allSatisfy((word, times) ->
                        assertThat(there.getOrDefault(word, 0L)).as(word).isGreaterThanOrEqualTo(times));
    }

    private static String article(String page, String id) {
        int heading = page.indexOf(">" + id + "</h");
        return page.substring(page.lastIndexOf("<article", heading), page.indexOf("</article>", heading));
    }

    private static int count(String text, String part) {
        return text.split(Pattern.quote(part), -1).length - 1;
    }

    @Test
    void whatTheReportSaysStandsInItsFiles() throws IOException {
        String html = Run.text(report.resolve("report.html"));
        String cautions =
                html.substring(html.indexOf("<section class=\"safety\">"), html.indexOf("<section class=\"errors\">"));
        assertHasAll(paper("report/report.pdf"), html, "report.pdf");
        assertThat(bare(paper("report/report.pdf").text())).contains("offthecurve,%");
        for (String id : IDS) {
            assertHasAll(paper("report/trucks/" + id + ".pdf"), article(html, id) + cautions, id);
        }
    }

    /** Every box, every caution and every step. */
    @Test
    void whatThePlanSaysStandsInItsFiles() throws IOException {
        String html = Run.text(plan.resolve("plan.html"));
        assertHasAll(paper("plan/plan.pdf"), html, "plan.pdf");
        for (String id : IDS) {
            assertHasAll(paper("plan/trucks/" + id + ".pdf"), article(html, id), id);
        }
    }

    @Test
    void aWorksheetHasTwoSides() {
        for (String id : IDS) {
            List<Paper.Page> sides = paper("plan/trucks/" + id + ".pdf").pages();
            assertThat(sides).as(id).hasSize(2);
            assertThat(sides.get(0).text())
                    .contains(
                            "Side 1: what to do.",
                            "Before anyone works on a truck",
                            "In this order",
                            "To bring:",
                            id + ", worksheet for 2026-10-19",
                            "page 1 of 2");
            assertThat(sides.get(1).text()).contains("Side 2: the numbers.", "signature", "page 2 of 2");
        }
    }

    /** Each one side, with every word and every box, for no truck. */
    @Test
    void theBlankSheetsAreOneSideEach() throws IOException {
        String html = Run.text(plan.resolve("blank-sheets.html"));
        List<String> titles = List.of("Range of a drive", "Across the road");
        Paper paper = paper("plan/blank-sheets.pdf");
        assertThat(paper.pages()).hasSize(titles.size());
        for (int i = 0; i < titles.size(); i++) {
            String sheet = article(html, titles.get(i));
            Paper.Page side = paper.pages().get(i);
            assertThat(side.text()).startsWith(titles.get(i)).contains("page 1 of 1");
            assertHasAll(side.text(), sheet, titles.get(i));
            assertThat(count(sheet, "<td></td>")).isEqualTo(24 * 4);
            assertThat(sheet).doesNotContain("T-0");
            // Taller than a tick box: what is written in.
            List<Double> uprights = side.shapes().stream()
                    .filter(shape -> shape.getWidth() < 2 && shape.getHeight() > 5.6 * Paper.MILLIMETER)
                    .map(shape -> shape.getHeight() / Paper.MILLIMETER)
                    .toList();
            assertThat(uprights)
                    .hasSizeGreaterThanOrEqualTo(count(sheet, "<td></td>") + count(sheet, "<div class=\"box\">"))
                    .allMatch(height -> height > 10 && height < 14);
        }
    }

    /** What a screen reader reads of them: all of it. */
    @Test
    void everyWordOfTheBlankSheetsIsInTheStructureOfTheirFile() throws IOException {
        String html = Run.text(plan.resolve("blank-sheets.html"));
        String told = TaggedText.of(plan.resolve("blank-sheets.pdf"));
        assertHasAll(told, article(html, "Range of a drive") + article(html, "Across the road"), "tags");
    }

    /** The day's file numbers each worksheet's sides by themselves. */
    @Test
    void theDaysFileIsTheOverviewAndTheWorksheets() {
        Paper paper = paper("plan/plan.pdf");
        int overview = paper.pages().size() - 2 * IDS.size();
        assertThat(overview).isBetween(1, 3);
        for (int i = 0; i < IDS.size(); i++) {
            assertThat(paper.pages().get(overview + 2 * i).text()).contains(IDS.get(i) + "\nSide 1", "page 1 of 2");
            assertThat(paper.pages().get(overview + 2 * i + 1).text()).contains(IDS.get(i) + "\nSide 2", "page 2 of 2");
        }
    }

    private static void assertPrintable(Paper paper, String what) {
        for (Paper.Page page : paper.pages()) {
            assertThat(page.size().getWidth()).isEqualTo(612);
            assertThat(page.size().getHeight()).isEqualTo(792);
            Rectangle2D printable = new Rectangle2D.Double(
                    NARROWER + UNPRINTABLE, UNPRINTABLE, 612 - 2 * (NARROWER + UNPRINTABLE), 792 - 2 * UNPRINTABLE);
            assertThat(page.glyphs()).as(what).isNotEmpty().allMatch(glyph -> printable.contains(glyph.getBounds2D()));
            assertThat(page.shapes())
                    .as(what)
                    .allMatch(shape -> shape.getMinX() >= printable.getMinX()
                            && shape.getMaxX() <= printable.getMaxX()
                            && shape.getMinY() >= printable.getMinY()
                            && shape.getMaxY() <= printable.getMaxY());
        }
    }

    /** Wherever a printer puts a Letter page on A4: in the middle, or at either edge. */
    @Test
    void nothingLiesWhereLetterOrA4CantBePrinted() {
        assertThat(papers).hasSize(4 + 2 * IDS.size());
        papers.forEach((name, paper) -> assertPrintable(paper, name));
    }

    /** From the lowest to the highest, each is compared with those that begin no higher than it ends. */
    @Test
    void noTextRunsIntoAnother() {
        for (Map.Entry<String, Paper> paper : papers.entrySet()) {
            for (Paper.Page page : paper.getValue().pages()) {
                List<Rectangle2D> glyphs = page.glyphs().stream()
                        // Neighbors touch by a hair where the file rounds.
                        .map(glyph -> (Rectangle2D) new Rectangle2D.Double(
                                glyph.getX() + 0.2,
                                glyph.getY() + 0.2,
                                Math.max(0.1, glyph.getWidth() - 0.4),
                                Math.max(0.1, glyph.getHeight() - 0.4)))
                        .sorted(Comparator.comparingDouble(Rectangle2D::getMinY))
                        .toList();
                for (int i = 0; i < glyphs.size(); i++) {
                    for (int j = i + 1;
                            j < glyphs.size()
                                    && glyphs.get(j).getMinY() < glyphs.get(i).getMaxY();
                            j++) {
                        if (glyphs.get(i).intersects(glyphs.get(j))) {
                            fail(paper.getKey() + ": " + glyphs.get(i) + " and " + glyphs.get(j) + " in\n"
                                    + page.text());
                        }
                    }
                }
            }
        }
    }

    @Test
    void boxesToWriteInAreAtLeastTenMillimetersHigh() throws IOException {
        String html = Run.text(plan.resolve("plan.html"));
        for (String id : IDS) {
            List<Double> uprights = paper("plan/trucks/" + id + ".pdf").pages().get(1).shapes().stream()
                    .filter(shape -> shape.getWidth() < 2 && shape.getHeight() > 2 * Paper.MILLIMETER)
                    .map(shape -> shape.getHeight() / Paper.MILLIMETER)
                    .toList();
            assertThat(uprights)
                    .as(id)
                    .hasSizeGreaterThanOrEqualTo(count(article(html, id), "<div class=\"box\">"))
                    .allMatch(height -> height > 10 && height < 14);
        }
    }

    @Test
    void everyFontIsEmbeddedAndHasEveryCharacter() {
        papers.forEach((name, paper) -> {
            assertThat(paper.text()).as(name).doesNotContain(PaperPage.UNKNOWN, "#");
            assertThat(paper.pages())
                    .as(name)
                    .allMatch(page -> page.notEmbedded().isEmpty());
        });
        assertThat(paper("report/report.pdf").text()).contains("−", "±", "●", "◆", "■", "×", "✓", "✗");
    }

    @Test
    void filesHaveTitleLanguageAndContents() throws IOException {
        Paper day = paper("report/report.pdf");
        assertThat(day.title()).isEqualTo("Kestrel County, north yard, calibration day 2026-10-19");
        assertThat(day.language()).isEqualTo("en");
        assertThat(day.outline())
                .startsWith(
                        "What needs doing first",
                        "The fleet, in the order of the day",
                        "Before anyone works on a truck")
                .containsAll(IDS);
        assertThat(paper("plan/plan.pdf").outline()).containsAll(IDS);
        Paper blank = paper("plan/blank-sheets.pdf");
        assertThat(blank.title()).isEqualTo("Blank sheets: range of a drive, across the road");
        assertThat(blank.language()).isEqualTo("en");
        assertThat(blank.outline()).containsExactly("Range of a drive", "Across the road");
        assertThat(paper("plan/trucks/T-07.pdf").title()).isEqualTo("T-07, worksheet for 2026-10-19");
        assertThat(new String(Files.readAllBytes(report.resolve("report.pdf")), StandardCharsets.ISO_8859_1))
                .contains("pdfuaid");
    }

    @Test
    void theSamePageGivesTheSameBytes() throws IOException {
        String page = page("", "<h2>A</h2><p>Ж ≤ 2 <i>µ</i> <b>²</b></p>");
        assertThat(Papers.load().pdf(page, DAY)).isEqualTo(Papers.load().pdf(page, DAY));
        assertThat(Papers.load().pdf(page, DAY)).isNotEqualTo(Papers.load().pdf(page, DAY.plusDays(1)));
    }

    private static String page(String head, String body) {
        return "<!DOCTYPE html>\n<html lang=\"en\"><head><title>x</title><meta name=\"description\" content=\"x\"/>"
                + "<style>@page { size: letter; margin: 20mm; } body { font: 10pt \"DejaVu Sans Condensed\"; }</style>"
                + head + "</head><body>" + body + "</body></html>";
    }

    /** What Pebble escapes can't get there; this is for what it doesn't. */
    @Test
    void nothingThatAPageNamesIsFetched(@TempDir Path folder) throws IOException {
        Path picture = Files.write(folder.resolve("dot.png"), DOT);
        Path style = Files.writeString(folder.resolve("style.css"), "p { display: none; }");
        Path text = Files.writeString(folder.resolve("text.txt"), "secret");

        Paper paper = Paper.of(Papers.load()
                .pdf(
                        page(
                                "<link rel=\"stylesheet\" href=\"" + style.toUri() + "\"/><style>@import url("
                                        + style.toUri() + "); body { background: url(" + picture.toUri()
                                        + "); }</style>",
                                "<p>shown</p><img src=\"" + picture.toUri() + "\" alt=\"dot\"/><object data=\""
                                        + text.toUri() + "\"></object><img alt=\"dot\" src=\"data:image/png;base64,"
                                        + Base64.getEncoder().encodeToString(DOT) + "\"/>"),
                        DAY));

        assertThat(paper.text()).contains("shown").doesNotContain("secret");
        assertThat(paper.pages()).hasSize(1).allMatch(page -> page.images() == 0);
    }

    @Test
    void noEntityIsReadFromAFile(@TempDir Path folder) throws IOException {
        Path text = Files.writeString(folder.resolve("text.txt"), "secret");
        String page = page("", "<p>&x;</p>")
                .replace("<!DOCTYPE html>", "<!DOCTYPE html [<!ENTITY x SYSTEM \"" + text.toUri() + "\">]>");
        assertThatThrownBy(() -> Papers.load().pdf(page, DAY))
                .isInstanceOf(IOException.class)
                .hasMessageContaining("isn't well-formed");
    }

    /** One truck's page fails: it is told of, and all others are there. */
    @Test
    void aPageThatCantBeSetLosesNoOther(@TempDir Path folder) throws Exception {
        List<String> told = new ArrayList<>();
        Papers papers = Papers.load();
        DayPapers.write(
                DemoDay.result(day -> DemoDay.cut(day, "T-01", "T-02", "T-03")), folder, told::add, (page, day) -> {
                    if (page.contains("<title>T-02,")) {
                        throw new IllegalStateException("no room");
                    }
                    return papers.pdf(page, day);
                });
        assertThat(told).containsExactly("No PDF of T-02: no room");
        assertThat(Run.names(folder)).containsExactly("cab.pdf", "report.pdf", "trucks/T-01.pdf", "trucks/T-03.pdf");
    }

    private static String bare(String text) {
        return text.replaceAll("[\\s\u200B]", "");
    }

    @Test
    void namesThatTryTheirWorstArePrintedAsFarAsTheFontsGo(@TempDir Path folder) throws IOException {
        String wide = "W".repeat(200);
        List<String> names = List.of(
                "<img src=\"file:///etc/passwd\"/>&amp;]]>",
                "\u4E2D\u56FD T-2",
                "\u0634\u0627\u062D\u0646\u0629 T-3",
                "Лев Ζεύς Łódź",
                "../../T-5\uFFFF\uFDD0\uD83D\uDE9B\u0007\u202E\u200B",
                wide);
        String worst = DemoDay.changed(day -> {
                    day.put("site", "W".repeat(180) + " & <b>yard</b>").put("technician", wide);
                    DemoDay.cut(day, "T-01", "T-04", "T-07", "T-10", "T-17", "T-20");
                    for (int i = 0; i < names.size(); i++) {
                        ((ObjectNode) day.get("trucks").get(i))
                                .put("id", names.get(i))
                                .put("notes", wide + wide);
                    }
                })
                .replace("road salt", "S".repeat(150))
                .replace("hopper 5", "H".repeat(150))
                .replace("\"slot\":\"", "\"slot\":\"" + "9".repeat(40));
        Path input = Files.writeString(folder.resolve("worst.json"), worst);
        for (String mode : List.of("report", "plan")) {
            Path output = folder.resolve(mode);
            Run run = Run.withPdf(input, output, mode);
            assertThat(run.exitCode()).as(run.err()).isZero();
            assertThat(run.err()).doesNotContain("No PDF");
            List<String> files = Run.names(output.resolve("run-0001")).stream()
                    .filter(name -> name.endsWith(".pdf"))
                    .toList();
            assertThat(files).hasSize(2 + names.size()).allMatch(name -> name.matches("[A-Za-z0-9._/-]+"));
            for (String file : files) {
                assertPrintable(Paper.of(output.resolve("run-0001").resolve(file)), mode + ": " + file);
            }
            String text = bare(
                    Paper.of(output.resolve("run-0001").resolve(mode + ".pdf")).text());
            assertThat(text)
                    .contains(bare(names.get(0)), bare(names.get(3)), wide)
                    .contains("\uFFFD\uFFFDT-2", "\uFFFD\uFFFD\uFFFD\uFFFDT-3", "../../T-5\uFFFD\uFFFD");
        }
    }
}
