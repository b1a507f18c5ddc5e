package org.gritwright.core;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.File;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.spi.ToolProvider;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.gritwright.core.fleet.assessment.FleetAssessor;
import org.gritwright.core.fleet.assessment.NextStep;
import org.gritwright.core.fleet.assessment.TruckAssessment;
import org.gritwright.core.fleet.day.FleetDay;
import org.gritwright.core.metering.BuiltInTypes;
import org.gritwright.core.record.Document;
import org.gritwright.core.record.WrittenSeason;
import org.gritwright.core.season.SeasonBalance;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** The programs and documents that the pages show compile, run, and do what the pages say. */
class PageExamplesTest {
    private static final String EXAMPLE = "example";
    private static final String OUTPUT = "example output";

    /** The lines before Java that this test, {@link GuideTest} or the example "embedding" compiles. */
    static final Set<String> COMPILED = Stream.concat(Stream.of(EXAMPLE, "module-info"), GuideTest.JAVA.stream())
            .map(name -> "<!-- " + name + " -->")
            .collect(Collectors.toUnmodifiableSet());

    /** A page with one program, and the name of its class. */
    record Program(Page page, String className) {}

    static List<Program> programs() {
        return List.of(
                new Program(Page.README, "Yard"),
                new Program(Page.UNITS, "Rate"),
                new Program(Page.BOOMS, "Spray"),
                new Program(Page.CHARTS, "Cab"),
                new Program(Page.CURVES, "Openings"),
                new Program(Page.ENVELOPE, "Limits"),
                new Program(Page.HISTORY, "Memory"),
                new Program(Page.LATERAL, "Pans"),
                new Program(Page.LIQUIDS, "Brine"),
                new Program(Page.PLANNING, "Plan"),
                new Program(Page.RANGE, "Valve"),
                new Program(Page.SEASON, "Salt"),
                new Program(Page.SOLUTIONS, "Brine"),
                new Program(Page.TELEMETRY, "Storm"));
    }

    /** The libraries, wherever the run has put them. */
    static String libraries() {
        return path("java.class.path", "jdk.module.path", "jdk.module.main.path");
    }

    private static String path(String... properties) {
        return Stream.of(properties)
                .map(System::getProperty)
                .filter(Objects::nonNull)
                .collect(Collectors.joining(File.pathSeparator));
    }

    static void compile(Path into, List<Path> sources, String... options) {
        List<String> arguments = new ArrayList<>(List.of(options));
        arguments.addAll(List.of("-encoding", "UTF-8", "-d", into.toString()));
        sources.forEach(source -> arguments.add(source.toString()));
        int compiled = ToolProvider.findFirst("javac")
                .orElseThrow()
                .run(System.out, System.err, arguments.toArray(String[]::new));
        assertThat(compiled).isZero();
    }

    /** What a program prints in a fresh JVM. */
    private static String printed(List<String> arguments) throws Exception {
        List<String> command = new ArrayList<>();
        command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
        command.add("-Dfile.encoding=UTF-8");
        command.addAll(arguments);
        Process process = new ProcessBuilder(command).redirectErrorStream(true).start();
        String printed = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        assertThat(process.waitFor()).as(printed).isZero();
        return printed.strip();
    }

    private static String fenced(String text) {
        return "```\n" + text + "\n```\n";
    }

    @ParameterizedTest
    @MethodSource("programs")
    void aPagesProgramCompilesAndPrintsWhatThePageSays(Program program, @TempDir Path folder) throws Exception {
        Path source = folder.resolve(program.className() + ".java");
        Files.writeString(source, program.page().code(EXAMPLE));
        compile(folder, List.of(source), "-cp", libraries());
        String classPath = folder + File.pathSeparator + libraries();

        program.page().assertHolds(OUTPUT, fenced(printed(List.of("-cp", classPath, program.className()))));
    }

    @Test
    @Tag("jackson")
    void theDocumentOfTheirPageIsReadAndComputed() throws Exception {
        byte[] document = Page.DOCUMENTS.code("document").getBytes(StandardCharsets.UTF_8);
        FleetDay day = Document.FLEET_DAY.read(new ByteArrayInputStream(document));
        assertThat(FleetAssessor.of(BuiltInTypes.registry()).assess(day))
                .singleElement()
                .satisfies(truck -> assertThat(truck.refusals()).isEmpty())
                .extracting(TruckAssessment::nextStep)
                .isEqualTo(NextStep.VERIFY);
    }

    @Test
    @Tag("jackson")
    void theSeasonsAccountOfThatPageIsReadAndAddsUp() throws Exception {
        byte[] document = Page.DOCUMENTS.code("season account").getBytes(StandardCharsets.UTF_8);
        WrittenSeason account = Document.SEASON_ACCOUNT.read(new ByteArrayInputStream(document));
        SeasonBalance balance = account.toSeason().balance();

        assertThat(account.findings()).isEmpty();
        assertThat(balance.found()).isEmpty();
        assertThat(balance.asStated().test().holds(0.05)).isTrue();
    }

    @Test
    void theEmbeddingPageAsksForWhatThisProjectBuilds() throws IOException {
        assertThat(Page.EMBEDDING.code("dependency"))
                .contains("<artifactId>calc-core</artifactId>\n  " + GuideTest.ourVersion());
    }
}
