package org.gritwright.examples.fleetday;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.awt.Color;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.function.Consumer;
import java.util.stream.Stream;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.FieldSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.openqa.selenium.By;
import org.openqa.selenium.OutputType;

/** The pages in a real browser, as wide as a phone, a tablet and a desk, with everything in the demo and with names that hurt. */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class PagesInBrowserTest {
    static final List<String> PAGES = List.of(
            "report",
            "cab",
            "plan",
            "blank",
            "hostile-report",
            "hostile-cab",
            "hostile-plan",
            "liquids-report",
            "liquids-plan");
    private static final List<Integer> WIDTHS = List.of(390, 800, 1300);

    private Path folder;
    private Browser browser;
    private String looks;

    static Stream<Arguments> pagesAndWidths() {
        return PAGES.stream().flatMap(page -> WIDTHS.stream().map(width -> Arguments.of(page, width)));
    }

    @BeforeAll
    void open(@TempDir Path made) throws IOException {
        folder = made;
        browser = Browser.open();
        looks = Browser.script("looks.js");
        make("", day -> {});
        make("hostile-", PagesInBrowserTest::hostile);
        run("liquids-report", withLongNames(), "report");
        run("liquids-plan", withLongNames(), "plan");
    }

    /** Tanks, sections and nozzles may be called anything too. */
    private Path withLongNames() throws IOException {
        return Files.writeString(
                folder.resolve("liquids.json"),
                Run.text(Run.LIQUIDS)
                        .replace("\"tote\"", "\"" + "M".repeat(200) + "\"")
                        .replace("\"north tank\"", "\"<script>document.title='run'</script>\"")
                        .replace("\"right lane\"", "\"" + "W".repeat(200) + "\"")
                        .replace("\"left half\"", "\"left, 12 ft, the half next to the shoulder\""));
    }

    private void run(String name, Path input, String mode) {
        Run run = Run.of(
                "--input", input.toString(), "--output", folder.resolve(name).toString(), "--mode", mode);
        assertThat(run.exitCode()).as(run.err()).isZero();
    }

    @AfterAll
    void close() {
        if (browser != null) {
            browser.close();
        }
    }

    /** Names as long as they may be, with nothing to break them at, right to left, and such as look like markup. */
    private static void hostile(ObjectNode day) {
        day.put("site", "W".repeat(200));
        day.put("technician", "<script>document.title='run'</script>");
        DemoDay.truck(day, "T-03").put("id", "M".repeat(200));
        DemoDay.truck(day, "T-05").put("id", "\u0634\u0627\u062d\u0646\u0629 7");
        DemoDay.truck(day, "T-09").put("id", "\"><img src=x onerror=document.title='run'>");
        DemoDay.truck(day, "T-16").put("notes", "n".repeat(1000));
    }

    private void make(String prefix, Consumer<ObjectNode> change) throws IOException {
        Path input = DemoDay.write(folder.resolve(prefix + "day.json"), change);
        for (String mode : List.of("report", "plan")) {
            Run run = Run.of(
                    "--input",
                    input.toString(),
                    "--output",
                    folder.resolve(prefix + mode).toString(),
                    "--mode",
                    mode);
            assertThat(run.exitCode()).as(run.err()).isZero();
        }
    }

    private void show(String page, int width) {
        String file = page.substring(page.indexOf('-') + 1).replace("blank", "blank-sheets") + ".html";
        String run = page.replace("cab", "report").replace("blank", "plan");
        browser.width(width);
        browser.goTo(folder.resolve(run).resolve("run-0001").resolve(file));
    }

    private List<String> look(String what) {
        return browser.texts(looks + "return looks." + what + "();");
    }

    @ParameterizedTest
    @MethodSource("pagesAndWidths")
    void nothingLiesBesideTheWindowAndNothingIsCutOff(String page, int width) {
        show(page, width);
        assertThat(look("sideways")).isEmpty();
        assertThat(look("cut")).isEmpty();
    }

    /** WCAG 2.2, 1.4.4: text twice as large; a window of 1300 px zoomed to 200 % is one of 650 px. */
    @ParameterizedTest
    @FieldSource("PAGES")
    void atTwiceTheSizeNothingLiesBesideTheWindowAndNothingIsCutOff(String page) {
        show(page, 650);
        assertThat(look("sideways")).isEmpty();
        show(page, 1300);
        browser.run("document.documentElement.style.fontSize = '200%'");
        assertThat(look("sideways")).isEmpty();
        assertThat(look("cut")).isEmpty();
    }

    @ParameterizedTest
    @FieldSource("PAGES")
    void theBrowserHasNothingToComplainOf(String page) {
        browser.complaints();
        show(page, 1300);
        assertThat(browser.complaints()).isEmpty();
        assertThat(browser.driver().getTitle()).isNotEqualTo("run");
        assertThat(browser.run("return document.querySelectorAll('img, script, link, iframe').length"))
                .isEqualTo(0L);
    }

    @ParameterizedTest
    @FieldSource("PAGES")
    void noRuleForPeopleWhoSeeOrReachLittleIsBroken(String page) throws IOException {
        show(page, 1300);
        browser.run("document.querySelectorAll('details').forEach(one => one.open = true)");
        Map<String, List<String>> rules = browser.rules();
        assertThat(rules.get("broken")).isEmpty();
        assertThat(rules.get("passed"))
                .contains("color-contrast", "html-has-lang", "document-title", "td-headers-attr");
    }

    @ParameterizedTest
    @FieldSource("PAGES")
    void tablesHaveHeadsAndPicturesHaveWordsThatCanBeRead(String page) {
        show(page, 1300);
        assertThat(look("headless")).isEmpty();
        assertThat(look("wordless")).isEmpty();
        assertThat(look("faintInPictures")).isEmpty();
    }

    /** As some phones do at night: they turn the page's own colors, but not those of what is drawn. */
    @Test
    void aPictureKeepsItsPaperWhereTheBrowserTurnsThePageDark() throws IOException {
        show("report", 1300);
        browser.driver().executeCdpCommand("Emulation.setAutoDarkModeOverride", Map.of("enabled", true));
        try {
            assertThat(brightness(By.tagName("h1"))).as("the page").isLessThan(60);
            assertThat(brightness(By.tagName("svg"))).as("the picture's corner").isGreaterThan(240);
        } finally {
            browser.driver().executeCdpCommand("Emulation.setAutoDarkModeOverride", Map.of());
        }
    }

    /** Of an element's upper left corner, from 0 for black to 255 for white. */
    private int brightness(By element) throws IOException {
        byte[] seen = browser.driver().findElement(element).getScreenshotAs(OutputType.BYTES);
        Color corner = new Color(ImageIO.read(new ByteArrayInputStream(seen)).getRGB(1, 1));
        return (corner.getRed() + corner.getGreen() + corner.getBlue()) / 3;
    }

    /** In the order of the page: the links of what needs doing first, then what opens and scrolls. */
    @Test
    void theTabKeyStopsFewTimesAndInTheOrderOfThePage() {
        show("report", 1300);
        assertThat(look("tabStops")).hasSizeLessThan(30).allMatch(stop -> stop.startsWith("<a "));
        show("plan", 1300);
        assertThat(look("tabStops")).hasSize(20).allMatch(stop -> stop.startsWith("<summary "));
        show("blank", 1300);
        assertThat(look("tabStops")).hasSize(2).allMatch(stop -> stop.startsWith("<a "));
        assertThat(browser.run(
                        "return [...document.querySelectorAll('[tabindex]')].filter(one => one.tabIndex > 0).length"))
                .isEqualTo(0L);
    }

    /** The tests of this class see what they are to see. */
    @Test
    void aPageThatIsWrongIsFoundOut() {
        show("report", 390);
        browser.run("document.querySelector('h1').style.cssText = 'width: 500px; color: #aaa'");
        browser.run("document.querySelector('.first li').style.cssText = 'height: 5px; overflow: hidden'");
        browser.run("document.querySelector('svg').removeAttribute('aria-label')");
        browser.run("document.querySelector('svg text').style.fill = '#999'");
        browser.run("document.querySelectorAll('table').forEach(table => table.deleteCaption())");
        assertThat(look("sideways")).anyMatch(one -> one.contains("the page is"));
        assertThat(look("cut")).hasSize(1);
        assertThat(look("wordless")).hasSize(1);
        assertThat(look("faintInPictures")).isNotEmpty();
        assertThat(look("headless")).isNotEmpty();
    }
}
