package org.gritwright.examples.fleetday;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.apache.pdfbox.text.TextPosition;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.FieldSource;

/** The demo's papers as a real browser prints them, on the paper of both continents. */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class PrintInBrowserTest {
    static final List<Browser.Paper> PAPERS = List.of(Browser.Paper.LETTER, Browser.Paper.A4);

    private Browser browser;
    private Path folder;

    @BeforeAll
    void open(@TempDir Path made) {
        browser = Browser.open();
        folder = made;
        for (String mode : List.of("report", "plan")) {
            Run.of(
                    "--input",
                    Run.DEMO.toString(),
                    "--output",
                    made.resolve(mode).toString(),
                    "--mode",
                    mode);
        }
    }

    @AfterAll
    void close() {
        if (browser != null) {
            browser.close();
        }
    }

    /** What is on a side of paper: its words, and how far to the right and down they reach, as a part of width and height. */
    private record Side(String text, double right, double bottom) {}

    private void show(String page) {
        String run = page.replace("cab", "report").replace("blank-sheets", "plan");
        browser.goTo(folder.resolve(run).resolve("run-0001").resolve(page + ".html"));
    }

    private List<Side> sides(String mode, Browser.Paper paper) throws IOException {
        show(mode);
        List<Side> sides = new ArrayList<>();
        try (PDDocument document = Loader.loadPDF(browser.print(paper))) {
            for (int page = 1; page <= document.getNumberOfPages(); page++) {
                double width = document.getPage(page - 1).getMediaBox().getWidth();
                double height = document.getPage(page - 1).getMediaBox().getHeight();
                List<TextPosition> all = new ArrayList<>();
                PDFTextStripper words = new PDFTextStripper() {
                    @Override
                    protected void writeString(String text, List<TextPosition> positions) throws IOException {
                        all.addAll(positions);
                        super.writeString(text, positions);
                    }
                };
                words.setStartPage(page);
                words.setEndPage(page);
                String text = words.getText(document);
                sides.add(new Side(
                        text.replaceAll("\\s+", " ").strip(),
                        all.stream()
                                        .mapToDouble(at -> at.getTextMatrix().getTranslateX()
                                                + (at.getDir() == 0 ? at.getWidthDirAdj() : 0))
                                        .max()
                                        .orElse(0)
                                / width,
                        1
                                - all.stream()
                                                .mapToDouble(
                                                        at -> at.getTextMatrix().getTranslateY())
                                                .min()
                                                .orElse(height)
                                        / height));
            }
        }
        return sides;
    }

    @ParameterizedTest
    @FieldSource("PAPERS")
    void aWorksheetIsTwoSidesEachFromTheTopOfAPage(Browser.Paper paper) throws IOException {
        List<Side> sides = sides("plan", paper);
        List<String> heads = sides.stream()
                .map(Side::text)
                .filter(text -> text.contains("Side 1: what to do") || text.contains("Side 2: the numbers"))
                .toList();
        assertThat(heads).hasSize(40);
        for (int i = 0; i < heads.size(); i++) {
            assertThat(heads.get(i)).matches("\\S+ Side " + (i % 2 == 0 ? "1: what to do" : "2: the numbers") + ".*");
        }
        assertThat(heads)
                .filteredOn(text -> text.contains("Side 1"))
                .allSatisfy(text -> assertThat(text)
                        .contains("Before anyone works on a truck", "Level ground", "In this order", "To bring:"));
        int first = IntStream.range(0, sides.size())
                .filter(i -> sides.get(i).text().contains("Side 1: what to do"))
                .findFirst()
                .orElseThrow();
        assertThat(sides.size() - first).as("sides of paper for 20 trucks").isEqualTo(40);
    }

    @ParameterizedTest
    @FieldSource("PAPERS")
    void theBlankSheetsAreOneSideEach(Browser.Paper paper) throws IOException {
        List<Side> sides = sides("blank-sheets", paper);
        assertThat(sides).hasSize(2);
        assertThat(sides.get(0).text())
                .startsWith("Range of a drive ")
                .contains("Before you measure", "In this order", "As at work?", "Falling commands", "Lockout: 29 CFR");
        assertThat(sides.get(1).text())
                .startsWith("Across the road ")
                .contains("Before you lay the pans", "In this order", "Pans 13 to 24", "More pans: another sheet");
    }

    /** In tenths of a millimeter; a screen's lines are as wide as two or three of them. */
    @Test
    void whatIsWrittenInOnABlankSheetIsTenMillimetersHighInPrint() {
        show("blank-sheets");
        browser.driver().executeCdpCommand("Emulation.setEmulatedMedia", Map.of("media", "print"));
        try {
            assertThat((List<?>) browser.run("return [...document.querySelectorAll('.box, .fill td')]"
                            + ".map(one => Math.floor(one.getBoundingClientRect().height * 254 / 96))"))
                    .hasSize(2 * (16 + 24 * 4))
                    .allSatisfy(height -> assertThat((Long) height).isBetween(101L, 140L));
        } finally {
            browser.driver().executeCdpCommand("Emulation.setEmulatedMedia", Map.of("media", ""));
        }
    }

    @ParameterizedTest
    @FieldSource("PAPERS")
    void nothingIsPrintedBesideThePaper(Browser.Paper paper) throws IOException {
        for (String mode : List.of("report", "cab", "plan", "blank-sheets")) {
            assertThat(sides(mode, paper))
                    .allSatisfy(side -> assertThat(side.right()).isBetween(0.2, 0.96))
                    .allSatisfy(side -> assertThat(side.bottom()).isBetween(0.05, 0.97));
        }
    }

    /** So that each truck's page can go into its file; a truck with a curve, or a drive that is known, needs two. */
    @ParameterizedTest
    @FieldSource("PAPERS")
    void aTruckOfTheReportIsAPage(Browser.Paper paper) throws IOException {
        List<Side> sides = sides("report", paper);
        List<String> heads = sides.stream()
                .map(side -> side.text().replaceFirst("^Truck by truck, the most urgent first ", ""))
                .map(text -> text.replaceFirst(" .*", ""))
                .toList();
        List<String> trucks =
                heads.stream().filter(head -> head.matches("T-[0-9]+")).toList();
        assertThat(trucks).hasSize(20).doesNotHaveDuplicates();
        assertThat(heads.get(heads.indexOf("T-17") + 1)).isEqualTo("Uncertainty");
        // Whatever isn't a truck's first page is the second of one of these.
        List<String> two = List.of("T-01", "T-07", "T-12", "T-15", "T-17");
        for (int i = heads.indexOf(trucks.get(0)); i < heads.size(); i++) {
            assertThat(trucks.contains(heads.get(i)) || two.contains(heads.get(i - 1)))
                    .as(heads.get(i))
                    .isTrue();
        }
    }
}
