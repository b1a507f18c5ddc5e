package org.gritwright.examples.fleetday;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Arrays;
import java.util.Base64;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.logging.Level;
import org.junit.jupiter.api.Assumptions;
import org.openqa.selenium.chrome.ChromeDriver;
import org.openqa.selenium.chrome.ChromeDriverService;
import org.openqa.selenium.chrome.ChromeOptions;
import org.openqa.selenium.logging.LogEntry;
import org.openqa.selenium.logging.LogType;
import org.openqa.selenium.logging.LoggingPreferences;

/**
 * A real browser, without a window: the system's Chromium. A test that can't have it is skipped, and says why.
 *
 * @param driver what drives it
 */
record Browser(ChromeDriver driver) implements AutoCloseable {
    /** What WCAG 2.2 asks for at levels A and AA, as far as a program can tell. */
    private static final List<String> AXE_TAGS = List.of("wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa");

    private static final Duration SCRIPT_TIMEOUT = Duration.ofMinutes(10);

    private static final List<String> BROWSERS = List.of("chromium", "chromium-browser", "google-chrome");

    /** Inches, as the browser's print asks for them. */
    record Paper(String name, double width, double height) {
        static final Paper LETTER = new Paper("Letter", 8.5, 11);
        static final Paper A4 = new Paper("A4", 210 / 25.4, 297 / 25.4);

        @Override
        public String toString() {
            return name;
        }
    }

    static Browser open() {
        return open(Path.of(System.getProperty("java.io.tmpdir")));
    }

    /** @param downloads where what a page saves goes */
    static Browser open(Path downloads) {
        Optional<Path> browser = found(BROWSERS);
        Optional<Path> service = found(List.of("chromedriver"));
        if (browser.isEmpty() || service.isEmpty()) {
            String missing = "SKIPPED: no Chromium with its driver on the PATH (Debian: chromium, chromium-driver)";
            System.out.println(missing);
            Assumptions.abort(missing);
        }
        ChromeOptions options = new ChromeOptions();
        options.setBinary(browser.orElseThrow().toString());
        options.addArguments(
                "--headless=new", "--no-sandbox", "--disable-gpu", "--disable-dev-shm-usage", "--lang=en-US");
        options.setExperimentalOption(
                "prefs",
                Map.of("download.default_directory", downloads.toString(), "download.prompt_for_download", false));
        LoggingPreferences logging = new LoggingPreferences();
        logging.enable(LogType.BROWSER, Level.ALL);
        options.setCapability("goog:loggingPrefs", logging);
        ChromeDriver driver = new ChromeDriver(
                new ChromeDriverService.Builder()
                        .usingDriverExecutable(service.orElseThrow().toFile())
                        .withSilent(true)
                        .build(),
                options);
        // A busy machine isn't a fault of the page.
        driver.manage().timeouts().scriptTimeout(SCRIPT_TIMEOUT).pageLoadTimeout(SCRIPT_TIMEOUT);
        return new Browser(driver);
    }

    private static Optional<Path> found(List<String> names) {
        List<Path> folders = Arrays.stream(
                        System.getenv().getOrDefault("PATH", "").split(java.io.File.pathSeparator, -1))
                .filter(folder -> !folder.isEmpty())
                .map(Path::of)
                .toList();
        return names.stream()
                .flatMap(name -> folders.stream().map(folder -> folder.resolve(name)))
                .filter(Files::isExecutable)
                .findFirst();
    }

    /** Sets how wide the window is, in CSS pixels; narrower than any window of the desktop can be. */
    void width(int pixels) {
        driver.executeCdpCommand(
                "Emulation.setDeviceMetricsOverride",
                Map.of("width", pixels, "height", 900, "deviceScaleFactor", 1, "mobile", false));
    }

    void goTo(Path page) {
        driver.get(page.toAbsolutePath().toUri().toString());
    }

    /** What a script gives back. */
    Object run(String script, Object... arguments) {
        return driver.executeScript(script, arguments);
    }

    /** The same, of a script that gives a list of texts. */
    @SuppressWarnings("unchecked") // what the script gives
    List<String> texts(String script, Object... arguments) {
        return (List<String>) run(script, arguments);
    }

    /** What the browser complained of since it was last asked: script errors, what the page's policy forbids, missing files. */
    List<String> complaints() {
        return driver.manage().logs().get(LogType.BROWSER).getAll().stream()
                .map(LogEntry::getMessage)
                .toList();
    }

    /** The page as it is printed. */
    byte[] print(Paper paper) {
        Map<String, Object> printed = driver.executeCdpCommand(
                "Page.printToPDF",
                Map.of("paperWidth", paper.width(), "paperHeight", paper.height(), "preferCSSPageSize", false));
        return Base64.getDecoder().decode((String) printed.get("data"));
    }

    /** What axe-core says of the page as it stands: the rules that were kept as "passed", what breaks one as "broken". */
    @SuppressWarnings("unchecked") // what the rules give
    Map<String, List<String>> rules() throws IOException {
        try (InputStream in = ClassLoader.getSystemResourceAsStream("axe.min.js")) {
            run(new String(in.readAllBytes(), StandardCharsets.UTF_8));
        }
        return (Map<String, List<String>>) driver.executeAsyncScript(
                "const done = arguments[1]; axe.run(document, {runOnly: arguments[0], resultTypes: ['violations']})"
                        + ".then(all => done({passed: all.passes.map(one => one.id), broken: all.violations.flatMap("
                        + "rule => rule.nodes.map(node => rule.id + ': ' + node.html + ' ' + node.failureSummary))}))",
                AXE_TAGS);
    }

    /** A script that lies beside the tests. */
    static String script(String name) throws IOException {
        try (InputStream in = Browser.class.getResourceAsStream(name)) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        }
    }

    @Override
    public void close() {
        driver.quit();
    }
}
