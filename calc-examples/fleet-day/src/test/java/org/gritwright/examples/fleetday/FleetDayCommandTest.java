package org.gritwright.examples.fleetday;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.io.InputStream;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.io.Writer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class FleetDayCommandTest {
    @TempDir
    private Path folder;

    private Path output;

    @BeforeEach
    void nameTheOutput() {
        output = folder.resolve("made/on/the/way");
    }

    @Test
    void theDemoFleetEndsWellAndLeavesEverything() throws IOException {
        Run run = Run.of(Run.DEMO, output);
        assertThat(run.exitCode()).as(run.err()).isZero();
        List<String> expected = new ArrayList<>(
                List.of(".lock", "current.json", "run-0001/cab.csv", "run-0001/cab.html", "run-0001/fleet-day.csv"));
        IntStream.rangeClosed(1, 20).forEach(i -> expected.add("run-0001/records/T-%02d.json".formatted(i)));
        expected.add("run-0001/report.html");
        assertThat(Run.names(output)).isEqualTo(expected);
        assertThat(output.resolve("current.json")).hasContent("""
                {
                  "run": "run-0001",
                  "mode": "report",
                  "day": "2026-10-19",
                  "page": "run-0001/report.html"
                }
                """);
        assertThat(run.errLines())
                .containsExactly(
                        "Reading src/demo/demo-fleet.json",
                        "Assessing 20 trucks",
                        "Writing 20 records into " + output.resolve("run-0001/records"),
                        "Writing " + output.resolve("run-0001/fleet-day.csv"),
                        "Writing " + output.resolve("run-0001/report.html"),
                        "Writing " + output.resolve("run-0001/cab.html") + " and "
                                + output.resolve("run-0001/cab.csv"));
    }

    @Test
    void theTableShowsEachTruckTheMostUrgentFirstAndSaysSo() {
        Run run = Run.of(Run.DEMO, output);
        List<String> ids = run.outLines().stream()
                .filter(line -> line.startsWith("T-"))
                .map(line -> line.substring(0, 4))
                .toList();
        assertThat(ids)
                .containsExactly(
                        "T-10", "T-11", "T-06", "T-07", "T-12", "T-13", "T-05", "T-14", "T-09", "T-15", "T-02", "T-08",
                        "T-01", "T-03", "T-04", "T-16", "T-17", "T-18", "T-19", "T-20");
        assertThat(run.out().replace('\n', ' ')).contains("most urgent trucks first");
        assertThat(run.outLines())
                .contains("20 trucks: 10 need attention, 2 lack only a road-speed check, 8 have nothing to do.")
                .endsWith(
                        "Report: " + output.resolve("run-0001/report.html"),
                        "For the cabs: " + output.resolve("run-0001/cab.html"));
        assertThat(row(run, "T-04")).contains("4.83 lb/rev", "+1.6 +/-1.6 %;", "right        right", "Nothing to do");
        assertThat(run.out()).contains("(gate opening /", "(two digits").doesNotContain("÷");
        assertThat(row(run, "T-12")).contains("4.500 lb/rev", "-0.9");
        assertThat(row(run, "T-15")).contains("2.47 kg/rev", "delivery -3.1");
    }

    private static String row(Run run, String id) {
        return run.outLines().stream()
                .filter(line -> line.startsWith(id))
                .findFirst()
                .orElseThrow();
    }

    @Test
    void theTableFitsAHundredColumns() {
        assertThat(Run.of(Run.DEMO, output).outLines().stream()
                        .filter(line -> !line.matches("(Report|For the cabs): .*")))
                .hasSizeGreaterThan(30)
                .allSatisfy(line -> assertThat(line).hasSizeLessThanOrEqualTo(100));
    }

    @Test
    void theTableFitsAHundredColumnsWithLongNamesToo() throws IOException {
        String longId = "plow-and-spreader-of-the-north-yard-" + "x".repeat(120);
        Path input = DemoDay.write(folder.resolve("long.json"), day -> {
            DemoDay.truck(day, "T-11").put("id", longId);
            DemoDay.truck(day, "T-10").put("id", "two\nlines and \u001b[31mred and \u202eback to front");
            DemoDay.truck(day, "T-13")
                    .withArray("calibrationCatches")
                    .forEach(one -> one.get("containers")
                            .forEach(container -> ((ObjectNode) container).put("container", "barrel".repeat(30))));
            day.put("site", "A county with a name that goes on ".repeat(5).strip());
        });
        Run run = Run.of(input, output);
        assertThat(run.exitCode()).as(run.err()).isZero();
        assertThat(run.outLines().stream().filter(line -> !line.matches("(Report|For the cabs): .*")))
                .hasSizeGreaterThan(30)
                .allSatisfy(line -> assertThat(line).hasSizeLessThanOrEqualTo(100));
        assertThat(run.out().replace("\n", "").replaceAll("[^x]", "")).hasSizeGreaterThanOrEqualTo(120);
        assertThat(run.out()).doesNotContain("\u001b", "\u202e").contains("two?lines");
    }

    @Test
    void twoRunsOnTheSameInputGiveTheSameBytes() throws IOException {
        Path second = folder.resolve("second");
        Run.of(Run.DEMO, output);
        Run.of(Run.DEMO, second);
        assertThat(Run.names(second)).isEqualTo(Run.names(output)).hasSize(26);
        for (String name : Run.names(output)) {
            assertThat(second.resolve(name)).hasSameBinaryContentAs(output.resolve(name));
        }
    }

    @Test
    void aSecondRunLeavesTheFirstAndIsNamedInItsPlace() throws IOException {
        Files.createDirectories(output.resolve("records"));
        Files.writeString(output.resolve("report.html"), "old");
        Files.writeString(output.resolve("records/T-01.json"), "old");
        assertThat(Run.of(Run.DEMO, output).exitCode()).isZero();
        String first = Run.text(output.resolve("run-0001/records/T-01.json"));
        Path input = DemoDay.write(folder.resolve("one.json"), day -> DemoDay.only(day, "T-04"));
        assertThat(Run.of(input, output).exitCode()).isZero();

        assertThat(output.resolve("report.html")).hasContent("old");
        assertThat(output.resolve("records/T-01.json")).hasContent("old");
        assertThat(Run.text(output.resolve("run-0001/records/T-01.json"))).isEqualTo(first);
        assertThat(Run.names(output.resolve("run-0002")))
                .containsExactly("cab.csv", "cab.html", "fleet-day.csv", "records/T-04.json", "report.html");
        assertThat(Run.text(output.resolve("current.json"))).contains("\"page\": \"run-0002/report.html\"");
    }

    /** As a run that was killed leaves it. */
    @Test
    void whatAStoppedRunLeftIsRemovedByTheNext() throws IOException {
        assertThat(Run.of(Run.DEMO, output).exitCode()).isZero();
        Files.createDirectories(output.resolve("run-0002.part/records"));
        Files.writeString(output.resolve("run-0002.part/records/T-01.json"), "half");
        Files.writeString(output.resolve(".0123.part"), "half");
        assertThat(Run.text(output.resolve("current.json"))).contains("run-0001");

        assertThat(Run.of(Run.DEMO, output).exitCode()).isZero();
        assertThat(Run.names(output)).noneMatch(name -> name.contains(".part"));
        assertThat(Run.text(output.resolve("current.json"))).contains("run-0002");
    }

    @Test
    void twoRunsDoNotWriteIntoOneFolderAtOnce() throws Exception {
        try (OutputFolder open = OutputFolder.open(output, line -> {})) {
            assertThat(open).isNotNull();
            Run second = Run.of(Run.DEMO, output);
            assertThat(second.exitCode()).isEqualTo(3);
            assertThat(second.errLines())
                    .last()
                    .isEqualTo("fleet-day failed: " + output + ": another run is writing there");
        }
        assertThat(Run.of(Run.DEMO, output).exitCode()).isZero();
    }

    @Test
    void aRefusedDocumentIsExplainedByPointerAndNothingIsWritten() {
        Run run = Run.of(Run.TARE_MISSING, output);
        assertThat(run.exitCode()).isEqualTo(2);
        assertThat(run.out()).isEmpty();
        assertThat(run.errLines())
                .containsExactly(
                        "Reading src/demo/tare-missing.json",
                        "src/demo/tare-missing.json can't be used: 1 problem",
                        "  /trucks/0/calibrationCatches/0/containers/1/tare (truck T-01, line 103, column 13): missing;"
                                + " expected mass with its unit, for example \"1 lb\"");
        assertThat(output).doesNotExist();
    }

    @Test
    void allProblemsAreListedNotTheFirst() throws IOException {
        Path input = DemoDay.write(folder.resolve("bad.json"), day -> {
            day.put("tolerance", "4");
            DemoDay.truck(day, "T-03").put("gearRatio", "NaN");
            DemoDay.truck(day, "T-04").put("color", "orange");
        });
        Run run = Run.of(input, output);
        assertThat(run.exitCode()).isEqualTo(2);
        assertThat(run.err())
                .contains("can't be used: 3 problems")
                .containsPattern("  /tolerance \\(line \\d+, column \\d+\\): ")
                .containsPattern("  /trucks/2/gearRatio \\(truck T-03, line \\d+, column \\d+\\): ")
                .containsPattern("  /trucks/3/color \\(truck T-04, line \\d+, column \\d+\\): ")
                .doesNotContain("\tat ", "Exception");
    }

    @Test
    void whatAllTrucksShareIsBadInputToo() throws IOException {
        Path input = DemoDay.write(folder.resolve("bad.json"), day -> day.put("tolerance", "0 %"));
        Run run = Run.of(input, output);
        assertThat(run.exitCode()).isEqualTo(2);
        assertThat(run.err())
                .contains("): expected percentage: above 0 % and below 100 %, written with %, found \"0 %\"")
                .doesNotContain("\tat ");
    }

    @Test
    void aMissingFile() {
        Path missing = folder.resolve("missing.json");
        Run run = Run.of(missing, output);
        assertThat(run.exitCode()).isEqualTo(2);
        assertThat(run.errLines())
                .last()
                .isEqualTo("can't read " + missing + ": " + missing + ": no such file or folder");
    }

    @Test
    void brokenJson() throws IOException {
        Path input = Files.writeString(folder.resolve("broken.json"), "{ \"format\": \"gritwright/fleet-day\", ");
        Run run = Run.of(input, output);
        assertThat(run.exitCode()).isEqualTo(2);
        assertThat(run.err()).contains("broken.json can't be used: 1 problem\n").doesNotContain("\tat ", "Exception");
    }

    /** Ten thousand trucks are a million values and more; only what nobody has is refused for its size. */
    @Test
    void aLargeDocumentIsRefusedOnlyBeyondFiveMillionValues() throws IOException {
        String start = "{\"format\": \"gritwright/fleet-day\", \"extra\": [0";
        Path large = Files.writeString(folder.resolve("large.json"), start + ",0".repeat(2_000_000) + "]}");
        assertThat(Run.of(large, output).err()).contains("/formatVersion").doesNotContain("at most");
        Path larger = Files.writeString(folder.resolve("larger.json"), start + ",0".repeat(5_000_000) + "]}");
        Run refused = Run.of(larger, output);
        assertThat(refused.exitCode()).isEqualTo(2);
        assertThat(refused.err()).contains("expected at most 5000000 values");
    }

    @Test
    void theInputIsAFolder() {
        Run run = Run.of(folder, output);
        assertThat(run.exitCode()).isEqualTo(2);
        assertThat(run.errLines()).last().isEqualTo("can't read " + folder + ": it is a folder");
    }

    @Test
    void theOutputIsAFile() throws IOException {
        Path file = Files.writeString(folder.resolve("file"), "mine");
        Run run = Run.of(Run.DEMO, file);
        assertThat(run.exitCode()).isEqualTo(2);
        assertThat(run.errLines()).last().asString().startsWith("can't make the output folder " + file + ": ");
        assertThat(file).hasContent("mine");
    }

    @Test
    void badOptions() {
        assertThat(Run.of("--input", Run.DEMO.toString(), "--output", output.toString(), "--color"))
                .satisfies(run -> assertThat(run.err()).contains("Unknown option: '--color'", "Usage: fleet-day"))
                .extracting(Run::exitCode)
                .isEqualTo(2);
        assertThat(Run.of("--input", Run.DEMO.toString()))
                .satisfies(run -> assertThat(run.err()).contains("--output"))
                .extracting(Run::exitCode)
                .isEqualTo(2);
        assertThat(output).doesNotExist();
    }

    @Test
    void attentionFailsOnlyWhenAskedTo() throws IOException {
        String[] asked = {"--output", output.toString(), "--fail-on-attention", "--input"};
        assertThat(Run.of(append(asked, Run.DEMO)).exitCode()).isEqualTo(1);
        assertThat(output.resolve("run-0001/report.html")).exists();
        Path good = DemoDay.write(folder.resolve("good.json"), day -> DemoDay.only(day, "T-04"));
        assertThat(Run.of(append(asked, good)).exitCode()).isZero();
        Path open = DemoDay.write(folder.resolve("open.json"), day -> DemoDay.only(day, "T-02"));
        assertThat(Run.of(append(asked, open)).exitCode()).isZero();
    }

    private static String[] append(String[] arguments, Path input) {
        String[] all = Arrays.copyOf(arguments, arguments.length + 1);
        all[arguments.length] = input.toString();
        return all;
    }

    @Test
    void aFleetWithoutTrucksIsBadInput() throws IOException {
        Path input = DemoDay.write(folder.resolve("none.json"), day -> day.putArray("trucks"));
        Run run = Run.of(input, output);
        assertThat(run.exitCode()).isEqualTo(2);
        assertThat(run.errLines()).last().asString().endsWith("): expected one truck or more, found none");
        assertThat(output).doesNotExist();
    }

    @Test
    void resultsThatCantBeWrittenAreToldInOneSentence() throws IOException {
        Files.createDirectories(output.resolve("current.json/in the way"));
        Run run = Run.of(Run.DEMO, output);
        assertThat(run.exitCode()).isEqualTo(3);
        assertThat(run.errLines())
                .last()
                .asString()
                .startsWith("fleet-day failed: " + output.resolve("current.json") + ": ");
        assertThat(run.err()).doesNotContain("\tat ");
        assertThat(Run.names(output.resolve("run-0001"))).hasSize(24);
    }

    @Test
    void aFolderThatCantBeWrittenToIsNoBadInput() throws IOException {
        assumeTrue(Files.exists(Path.of("/proc/self")), "Linux, where nobody can write there");
        Run run = Run.of(Run.DEMO, Path.of("/proc/fleet-day"));
        assertThat(run.exitCode()).isEqualTo(3);
        assertThat(run.errLines()).last().asString().startsWith("fleet-day failed: /proc");
    }

    /** As a full disk or a closed pipe does. */
    @Test
    void outputThatCantBeWrittenIsNoSuccess() {
        Writer full = new Writer() {
            @Override
            public void write(char[] text, int offset, int length) throws IOException {
                throw new IOException("No space left on device");
            }

            @Override
            public void flush() {}

            @Override
            public void close() {}
        };
        StringWriter err = new StringWriter();
        int exitCode = FleetDayCommand.run(
                new PrintWriter(full),
                new PrintWriter(err),
                "--input",
                Run.DEMO.toString(),
                "--output",
                output.toString());
        assertThat(exitCode).isEqualTo(3);
        assertThat(err.toString()).contains("fleet-day failed: can't write to standard output");
    }

    @Test
    void standardInputIsRead() throws IOException {
        InputStream before = System.in;
        try {
            System.setIn(Files.newInputStream(Run.DEMO));
            Run run = Run.of(Path.of("-"), output);
            assertThat(run.exitCode()).as(run.err()).isZero();
            assertThat(run.err()).startsWith("Reading -");
        } finally {
            System.setIn(before);
        }
    }

    /** To open a pipe that nobody writes into would wait for ever. */
    @Test
    void aNamedPipeIsRefusedAndNotWaitedFor() throws Exception {
        Path pipe = folder.resolve("pipe");
        boolean made;
        try {
            made = new ProcessBuilder("mkfifo", pipe.toString()).start().waitFor() == 0;
        } catch (IOException e) {
            made = false;
        }
        assumeTrue(made, "there are named pipes here");
        Run run = assertTimeoutPreemptively(Duration.ofSeconds(60), () -> Run.of(pipe, output));
        assertThat(run.exitCode()).isEqualTo(2);
        assertThat(run.errLines())
                .last()
                .isEqualTo("can't read " + pipe + ": it is no regular file; to pipe a document in, say --input -");
    }

    @Test
    void noByteOfAPathOrAnOptionReachesTheTerminalAsAControl() {
        Run run = Run.of(folder.resolve("a\u001b[31mb\u202ec\u0007.json"), output);
        assertThat(run.exitCode()).isEqualTo(2);
        assertThat(run.err()).contains("a?[31mb?c?.json").doesNotContain("\u001b", "\u202e", "\u0007");
        Run option = Run.of("--input", Run.DEMO.toString(), "--output", output.toString(), "--m\u001b[31m");
        assertThat(option.exitCode()).isEqualTo(2);
        assertThat(option.err()).doesNotContain("\u001b").contains("--m?[31m", "Usage: fleet-day");
    }

    @Test
    void helpAndVersion() {
        Run help = Run.of("--help");
        assertThat(help.exitCode()).isZero();
        assertThat(help.out())
                .contains(
                        "--input=FILE",
                        "--output=FOLDER",
                        "--mode=report|plan|check",
                        "--fail-on-attention",
                        "--version",
                        "Exit codes:");
        Run version = Run.of("--version");
        assertThat(version.exitCode()).isZero();
        assertThat(version.out().strip()).matches("fleet-day \\d+\\.\\d+\\.\\d+(-SNAPSHOT)?");
    }
}
