package org.gritwright.examples.fleetday;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

/** The folder that the build leaves, as somebody would copy and start it. */
class ProgramFolderTest {
    private static final Path BUILT = Path.of("target/program").toAbsolutePath();

    @TempDir
    private Path folder;

    private Path program;

    @BeforeEach
    void copyItToWhereItIsWanted() throws IOException {
        program = folder.resolve("yard tools/fleet day");
        try (Stream<Path> files = Files.walk(BUILT)) {
            for (Path file : files.toList()) {
                Path copy = program.resolve(BUILT.relativize(file).toString());
                Files.createDirectories(copy.getParent());
                Files.copy(file, copy, StandardCopyOption.COPY_ATTRIBUTES);
            }
        }
    }

    private Run start(Path script, Map<String, String> environment, String... arguments) throws Exception {
        List<String> command = new ArrayList<>();
        command.add(script.toString());
        command.addAll(List.of(arguments));
        ProcessBuilder builder = new ProcessBuilder(command).directory(folder.toFile());
        builder.environment().put("JAVA_HOME", System.getProperty("java.home"));
        builder.environment().putAll(environment);
        return new Fork(folder).ended(builder);
    }

    private Run start(String... arguments) throws Exception {
        return start(program.resolve("bin/fleet-day"), Map.of(), arguments);
    }

    @Test
    @EnabledOnOs({OS.LINUX, OS.MAC})
    void itRunsFromAnyFolderWithPathsSeenFromThere() throws Exception {
        Files.copy(program.resolve("demo/demo-fleet.json"), folder.resolve("my day.json"));

        Run run = start("--input", "my day.json", "--output", "my results");

        assertThat(run.exitCode()).as(run.err()).isZero();
        assertThat(run.err()).doesNotContain("SLF4J", "WARNING");
        assertThat(folder.resolve("my results/run-0001/report.html")).isNotEmptyFile();
        assertThat(run.outLines()).contains("Report: my results/run-0001/report.html");
        assertThat(folder.resolve("my results/run-0001/report.pdf")).isNotEmptyFile();
        assertThat(folder.resolve("my results/run-0001/trucks/T-20.pdf")).isNotEmptyFile();
    }

    @Test
    @EnabledOnOs({OS.LINUX, OS.MAC})
    void theDocumentedExitCodesReachTheShell() throws Exception {
        Files.writeString(folder.resolve("slip.json"), "{\"type\": }");

        Run bad = start("--input", "slip.json", "--output", "results");
        Run attention = start(
                "--input",
                program.resolve("demo/demo-fleet.json").toString(),
                "--output",
                "results",
                "--fail-on-attention");

        assertThat(bad.exitCode()).isEqualTo(2);
        assertThat(bad.err()).contains("line 1, column").doesNotContain("Exception", "at org.", "Maven");
        assertThat(bad.err().lines()).hasSizeLessThan(5);
        assertThat(attention.exitCode()).isEqualTo(1);
        assertThat(start("--nonsense").exitCode()).isEqualTo(2);
    }

    @Test
    @EnabledOnOs({OS.LINUX, OS.MAC})
    void aLinkToTheScriptStartsItToo() throws Exception {
        Path far = Files.createDirectories(folder.resolve("far"));
        Path link = Files.createSymbolicLink(folder.resolve("fleet"), Path.of("far/link"));
        Files.createSymbolicLink(far.resolve("link"), program.resolve("bin/fleet-day"));

        assertThat(start(link, Map.of(), "--version").out()).startsWith("fleet-day ");
    }

    @Test
    @EnabledOnOs({OS.LINUX, OS.MAC})
    void withoutJavaItSaysWhatItNeeds() throws Exception {
        Run run = start(program.resolve("bin/fleet-day"), Map.of("JAVA_HOME", folder.toString()), "--version");

        assertThat(run.exitCode()).isEqualTo(127);
        assertThat(run.err()).startsWith("fleet-day needs Java 17 or newer: none at " + folder);
    }

    @Test
    void itHoldsAllThatItNeedsAndNothingOfTheTests() throws IOException {
        assertThat(Run.names(program))
                .contains(
                        "LICENSE",
                        "NOTICE",
                        "FLEET-DAY.md",
                        "bin/fleet-day",
                        "bin/fleet-day.cmd",
                        "demo/demo-fleet.json")
                .noneMatch(name -> name.contains("junit") || name.contains("assertj") || name.contains("databind"));
    }

    @Test
    void everyLibraryOfOthersIsInTheNotice() throws IOException {
        String notice = Run.text(program.resolve("NOTICE")).toLowerCase(Locale.ROOT);
        List<String> jars = Run.names(program.resolve("lib"));

        assertThat(jars).hasSizeGreaterThan(15);
        assertThat(jars)
                .filteredOn(jar -> !jar.startsWith("calc-") && !jar.startsWith("fleet-day-"))
                .allSatisfy(jar -> assertThat(notice)
                        .contains(jar.replaceFirst("^commons-", "").replaceFirst("-.*", "")));
    }

    /** It can't be run here. */
    @Test
    void theScriptForWindowsStartsTheSame() throws IOException {
        String main = " org.gritwright.examples.fleetday.FleetDayCommand ";
        assertThat(Run.text(program.resolve("bin/fleet-day")))
                .contains("-XX:TieredStopAtLevel=1 -cp \"$home/lib/*\"" + main + "\"$@\"");
        assertThat(Run.text(program.resolve("bin/fleet-day.cmd")))
                .contains("-XX:TieredStopAtLevel=1 -cp \"%~dp0..\\lib\\*\"" + main + "%*\r\n", "exit /b %ERRORLEVEL%");
    }
}
