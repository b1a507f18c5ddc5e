package org.gritwright.core;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * A page of documentation. What comes from the code stands in blocks between {@code <!-- name -->} and
 * {@code <!-- /name -->}, and a test compares each with what the code gives.
 *
 * @param path the page's place in the project
 */
public record Page(String path) {
    public static final Page README = new Page("README.md");
    public static final Page DEVELOPERS = new Page("DEVELOPERS.md");
    public static final Page UNITS = new Page("calc-units/UNITS.md");
    public static final Page BOOMS = new Page("calc-core/BOOMS.md");
    public static final Page CHARTS = new Page("calc-core/CHARTS.md");
    public static final Page CHECKS = new Page("calc-core/CHECKS.md");
    public static final Page CURVES = new Page("calc-core/CURVES.md");
    public static final Page DOCUMENTS = new Page("calc-core/DOCUMENTS.md");
    public static final Page EMBEDDING = new Page("calc-core/EMBEDDING.md");
    public static final Page FIELDS = new Page("calc-core/FIELDS.md");
    public static final Page FINDINGS = new Page("calc-core/FINDINGS.md");
    public static final Page ENVELOPE = new Page("calc-core/ENVELOPE.md");
    public static final Page LIQUIDS = new Page("calc-core/LIQUIDS.md");
    public static final Page HISTORY = new Page("calc-core/HISTORY.md");
    public static final Page LATERAL = new Page("calc-core/LATERAL.md");
    public static final Page PLANNING = new Page("calc-core/PLANNING.md");
    public static final Page RANGE = new Page("calc-core/RANGE.md");
    public static final Page SEASON = new Page("calc-core/SEASON.md");
    public static final Page SIMULATION = new Page("calc-core/SIMULATION.md");
    public static final Page SOLUTIONS = new Page("calc-core/SOLUTIONS.md");
    public static final Page TELEMETRY = new Page("calc-core/TELEMETRY.md");
    public static final Page UNCERTAINTY = new Page("calc-core/UNCERTAINTY.md");

    /** Tests run in the folder of their module. */
    static final Path PROJECT = Path.of("..");

    private static final Path CHANGED = Path.of("target", "pages");

    /** Every page there is, wherever it stands. */
    static List<Page> all() throws IOException {
        try (Stream<Path> files = Files.walk(PROJECT)) {
            return files.filter(file -> file.toString().endsWith(".md"))
                    .map(file -> PROJECT.relativize(file).toString().replace('\\', '/'))
                    .filter(path -> !path.matches("(.*/)?(target|\\..*)/.*"))
                    .sorted()
                    .map(Page::new)
                    .toList();
        }
    }

    Path file() {
        return PROJECT.resolve(path);
    }

    String text() throws IOException {
        return Files.readString(file());
    }

    private static String begin(String block) {
        return "<!-- " + block + " -->\n";
    }

    private static String end(String block) {
        return "<!-- /" + block + " -->";
    }

    /** What stands in a block. */
    String block(String name) throws IOException {
        return block(text(), name);
    }

    private String block(String text, String name) {
        int from = text.indexOf(begin(name)) + begin(name).length();
        int to = text.indexOf(end(name), from);
        boolean once = from >= begin(name).length() && to >= 0 && text.indexOf(begin(name), from) < 0;
        assertThat(once)
                .as("%s has one block from <!-- %s --> to <!-- /%s -->", path, name, name)
                .isTrue();
        return text.substring(from, to);
    }

    /** What stands in a block without the fence around it. */
    String code(String name) throws IOException {
        return block(name)
                .strip()
                .lines()
                .filter(line -> !line.startsWith("```"))
                .collect(Collectors.joining("\n"));
    }

    /** Fails unless a block holds this text, and leaves the page as it should be where the message says. */
    public void assertHolds(String name, String wanted) throws IOException {
        Path changed = CHANGED.resolve(path);
        Files.createDirectories(changed.getParent());
        // One file for all blocks of the page, so that copying it once fixes them all.
        String text = isNewerThanPage(changed) ? Files.readString(changed) : text();
        String old = begin(name) + block(text, name) + end(name);
        Files.writeString(changed, text.replace(old, begin(name) + wanted + end(name)));

        assertThat(block(name))
                .as(
                        "%s has fallen behind between <!-- %s --> and <!-- /%s -->; copy calc-core/%s over it",
                        path, name, name, changed.toString().replace('\\', '/'))
                .isEqualTo(wanted);
    }

    private boolean isNewerThanPage(Path changed) throws IOException {
        return Files.exists(changed)
                && Files.getLastModifiedTime(changed).compareTo(Files.getLastModifiedTime(file())) > 0;
    }
}
