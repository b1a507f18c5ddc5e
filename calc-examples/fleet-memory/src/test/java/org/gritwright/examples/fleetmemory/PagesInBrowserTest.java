package org.gritwright.examples.fleetmemory;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.File;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Base64;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.logging.Level;
import java.util.stream.Stream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.apache.pdfbox.text.TextPosition;
import org.gritwright.core.judgement.Tolerance;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.FieldSource;
import org.openqa.selenium.chrome.ChromeDriver;
import org.openqa.selenium.chrome.ChromeDriverService;
import org.openqa.selenium.chrome.ChromeOptions;
import org.openqa.selenium.logging.LogType;
import org.openqa.selenium.logging.LoggingPreferences;

/** The pages in the system's Chromium, as wide as a phone and a desk, and on paper; skipped, with the reason, where there is none. */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class PagesInBrowserTest {
    /** By kind: the demo's, those of ids that hurt, a season's. */
    static final List<String> PAGES = List.of(
            "demo/index.html",
            "demo/truck-c-05.html",
            "demo/truck-c-07.html",
            "demo/truck-c-09.html",
            "demo/truck-c-12.html",
            "hostile/index.html",
            "hostile/" + PageNames.of("truck", PagesTest.HOSTILE.get(0)),
            "hostile/truck-z-99.html",
            "odd/" + PageNames.of("truck", OddSeasons.LONG),
            "hostile/" + PageNames.of("season", "2025/26"));

    /** Phones, a desk at 200 % (WCAG 2.2, 1.4.4), just above and below where rows become blocks, a desk. */
    private static final List<Integer> WIDTHS = List.of(320, 390, 650, 768, 955, 985, 1000, 1300);

    /** In CSS pixels. */
    private static final double LEAST_ON_SCREEN = 11;

    /** 11 pt and 9 pt; an inch has 72 of them and 96 CSS pixels. */
    private static final double LEAST_ON_PAPER = 11 * 96.0 / 72;

    private static final double LEAST_IN_PICTURES_ON_PAPER = 9 * 96.0 / 72;

    /** What the margins of 14 mm leave of 8.5 in, and a scroll bar that paper doesn't have. */
    private static final int ON_LETTER = 710 + 15;

    private static final double LETTER_WIDTH = 8.5;
    private static final double LETTER_HEIGHT = 11;

    private Path folder;
    private ChromeDriver driver;
    private String looks;

    @BeforeAll
    void open(@TempDir Path made) throws Exception {
        Optional<Path> browser = found("chromium", "chromium-browser", "google-chrome");
        Optional<Path> service = found("chromedriver");
        if (browser.isEmpty() || service.isEmpty()) {
            String missing = "SKIPPED: no Chromium with its driver on the PATH (Debian: chromium, chromium-driver)";
            System.out.println(missing);
            Assumptions.abort(missing);
        }
        ChromeOptions options = new ChromeOptions();
        options.setBinary(browser.orElseThrow().toString());
        options.addArguments(
                "--headless=new", "--no-sandbox", "--disable-gpu", "--disable-dev-shm-usage", "--lang=en-US");
        LoggingPreferences logging = new LoggingPreferences();
        logging.enable(LogType.BROWSER, Level.ALL);
        options.setCapability("goog:loggingPrefs", logging);
        driver = new ChromeDriver(
                new ChromeDriverService.Builder()
                        .usingDriverExecutable(service.orElseThrow().toFile())
                        .withSilent(true)
                        .build(),
                options);
        folder = made;
        looks = resource("looks.js");
        Fixtures.Run demo = Fixtures.Run.of("demo", "--output", made.toString());
        assertThat(demo.code()).as(demo.err()).isZero();
        Files.move(made.resolve("run-0001/pages"), made.resolve("demo"));
        Overview hostile = Overview.of(
                PagesTest.history(PagesTest.hostile(made)), Tolerance.percent(4), 1, List.of(), Fixtures.TODAY);
        PageFolder.write(made.resolve("odd"), Pages.of(OddSeasons.overview(made), List.of()));
        SeasonPage season = InventedSeason.page(InventedSeason.of(0.07, 61.37, 9));
        PageFolder.write(made.resolve("hostile"), Pages.of(hostile, List.of(season)));
    }

    private static Optional<Path> found(String... names) {
        return Stream.of(names)
                .flatMap(name -> Arrays.stream(
                                System.getenv().getOrDefault("PATH", "").split(File.pathSeparator, -1))
                        .map(place -> Path.of(place, name)))
                .filter(Files::isExecutable)
                .findFirst();
    }

    private static String resource(String name) throws IOException {
        try (InputStream in = Objects.requireNonNull(PagesInBrowserTest.class.getResourceAsStream(name), name)) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        }
    }

    @AfterAll
    void close() {
        if (driver != null) {
            driver.quit();
        }
    }

    private void show(String page, int width) {
        driver.executeCdpCommand(
                "Emulation.setDeviceMetricsOverride",
                Map.of("width", width, "height", 900, "deviceScaleFactor", 1, "mobile", false));
        driver.get(folder.resolve(page).toUri().toString());
    }

    @SuppressWarnings("unchecked") // what the script gives
    private List<String> look(String what, Object... more) {
        return (List<String>)
                Objects.requireNonNull(driver.executeScript(looks + "return looks." + what + "(...arguments);", more));
    }

    @ParameterizedTest
    @FieldSource("PAGES")
    void nothingLiesBesideTheWindowAndNothingIsCutOff(String page) {
        for (int width : WIDTHS) {
            show(page, width);
            assertThat(look("sideways")).as(page + " at " + width).isEmpty();
            assertThat(look("cutInPictures")).as(page + " at " + width).isEmpty();
            assertThat(look("broken")).as(page + " at " + width).isEmpty();
        }
    }

    /** In gloves, in a yard, in bad light. */
    @ParameterizedTest
    @FieldSource("PAGES")
    void wordsArentSmall(String page) {
        for (int width : WIDTHS) {
            show(page, width);
            assertThat(look("small", LEAST_ON_SCREEN, LEAST_ON_SCREEN))
                    .as(page + " at " + width)
                    .isEmpty();
        }
        try {
            driver.executeCdpCommand("Emulation.setEmulatedMedia", Map.of("media", "print"));
            show(page, ON_LETTER);
            assertThat(look("small", LEAST_ON_PAPER, LEAST_IN_PICTURES_ON_PAPER))
                    .as(page + " on paper")
                    .isEmpty();
            assertThat(look("broken")).as(page + " on paper").isEmpty();
            assertThat(look("sideways"))
                    .as(page + " on paper, which a browser would shrink")
                    .isEmpty();
        } finally {
            driver.executeCdpCommand("Emulation.setEmulatedMedia", Map.of("media", ""));
        }
    }

    /** What stays together is found as it is typed. */
    @Test
    void whatStaysTogetherIsFoundAndCopiedAsItIsTyped() throws IOException {
        show("demo/truck-c-12.html", 320);
        for (String typed : List.of("C-12", "2024-12-09", "±4 %", "conveyor changed: new chain")) {
            assertThat(driver.executeScript(
                            "getSelection().removeAllRanges(); return window.find(arguments[0])", typed))
                    .as(typed)
                    .isEqualTo(true);
        }
        assertThat(driver.executeScript(
                                "getSelection().selectAllChildren(document.body); return getSelection().toString()")
                        .toString())
                .contains("Truck C-12", "2024-12-09", "Tolerance ±4 %.")
                .doesNotContain("\u00A0", "\u2011", "\u2060");
    }

    @ParameterizedTest
    @FieldSource("PAGES")
    void aPageNeedsNothingElseAndTheBrowserHasNothingToComplainOf(String page) {
        driver.manage().logs().get(LogType.BROWSER);
        show(page, 1300);
        assertThat(driver.manage().logs().get(LogType.BROWSER).getAll()).isEmpty();
        assertThat(driver.getTitle()).isNotEqualTo("run").isNotBlank();
        assertThat(driver.executeScript("return performance.getEntriesByType('resource').length"))
                .isEqualTo(0L);
        assertThat(driver.executeScript(
                        "return document.querySelectorAll('img, script, link, iframe, object, form').length"))
                .isEqualTo(0L);
    }

    @ParameterizedTest
    @FieldSource("PAGES")
    @SuppressWarnings("unchecked") // what the rules give
    void noRuleForPeopleWhoSeeOrReachLittleIsBroken(String page) throws IOException {
        for (int width : List.of(390, 1300)) {
            show(page, width);
            try (InputStream in = Objects.requireNonNull(
                    PagesInBrowserTest.class.getClassLoader().getResourceAsStream("axe.min.js"))) {
                driver.executeScript(new String(in.readAllBytes(), StandardCharsets.UTF_8));
            }
            Map<String, List<String>> rules =
                    (Map<String, List<String>>) Objects.requireNonNull(driver.executeAsyncScript(
                            "const done = arguments[0]; axe.run(document, {runOnly: ['wcag2a', 'wcag2aa',"
                                    + " 'wcag21a', 'wcag21aa', 'wcag22aa']}).then(all => done({passed: all.passes.map(one =>"
                                    + " one.id), broken: all.violations.flatMap(rule => rule.nodes.map(node => rule.id + ': ' +"
                                    + " node.html + ' ' + node.failureSummary))}))"));
            assertThat(rules.get("broken")).as(page + " at " + width).isEmpty();
            assertThat(rules.get("passed")).contains("color-contrast", "html-has-lang", "document-title");
        }
    }

    @ParameterizedTest
    @FieldSource("PAGES")
    void picturesHaveWordsThatCanBeRead(String page) {
        show(page, 1300);
        assertThat(look("wordless")).isEmpty();
        assertThat(look("headless")).isEmpty();
    }

    @ParameterizedTest
    @FieldSource("PAGES")
    void onPaperNothingLiesBesideTheSheet(String page) throws IOException {
        show(page, 1300);
        Map<String, Object> printed = driver.executeCdpCommand(
                "Page.printToPDF", Map.of("paperWidth", LETTER_WIDTH, "paperHeight", LETTER_HEIGHT));
        byte[] pdf = Base64.getDecoder().decode((String) Objects.requireNonNull(printed.get("data")));
        try (PDDocument document = Loader.loadPDF(pdf)) {
            Edges edges = new Edges();
            edges.setSortByPosition(true);
            String text = edges.getText(document).replaceAll("\\s+", " ");
            assertThat(edges.right).isBetween(0.3, 0.97);
            assertThat(edges.bottom).isLessThan(0.97);
            assertThat(text).contains(Caution.FIRST);
            if (page.startsWith("demo/truck")) {
                assertThat(text).as("no cell breaks a date or a word").contains("2023-10-14 what: verification ");
            }
            assertThat(text).contains("Lock out first:", "they come before this page.");
            assertThat(edges.smallest).as("points").isGreaterThanOrEqualTo(9);
        }
    }

    /** How far words reach to the right and down, as parts of the sheet. */
    private static final class Edges extends PDFTextStripper {
        private double right;
        private double bottom;
        private double smallest = Double.MAX_VALUE;

        @Override
        protected void processTextPosition(TextPosition at) {
            if (at.getDir() == 0 && !at.getUnicode().isBlank()) {
                right = Math.max(right, (at.getX() + at.getWidth()) / at.getPageWidth());
                bottom = Math.max(bottom, at.getY() / at.getPageHeight());
                smallest = Math.min(smallest, at.getFontSizeInPt());
            }
            super.processTextPosition(at);
        }
    }

    /** The tests of this class see what they are to see. */
    @Test
    void aPageThatIsWrongIsFoundOut() {
        show("demo/truck-c-07.html", 390);
        driver.executeScript("document.querySelector('h1').style.width = '500px';"
                + "document.querySelector('svg').removeAttribute('aria-label');"
                + "document.querySelector('.narrow svg text').setAttribute('x', '900');"
                + "document.querySelector('table').deleteCaption();"
                + "document.querySelector('.narrow svg').style.width = '200px';"
                + "document.querySelector('.caution').innerHTML = 'a '.repeat(20) + 'C-1<br>2 and 7.1<br> %';");
        assertThat(look("sideways")).anyMatch(one -> one.contains("the page is"));
        assertThat(look("wordless")).hasSize(1);
        assertThat(look("cutInPictures")).hasSize(1);
        assertThat(look("headless")).hasSize(1);
        assertThat(look("small", LEAST_ON_SCREEN, LEAST_ON_SCREEN)).isNotEmpty();
        assertThat(look("broken")).isNotEmpty();
    }
}
