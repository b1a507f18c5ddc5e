package org.gritwright.examples.fleetday;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.File;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

/** The program as it is started: in a Java virtual machine of its own, on the class path and on the module path. */
class ForkedRunTest {
    private static final String MODULE = "org.gritwright.examples.fleetday";
    private static final String MAIN = MODULE + ".FleetDayCommand";

    @TempDir
    private Path folder;

    @Test
    void classPathAndModulePathGiveTheSame() throws Exception {
        Run here = Run.of(Run.DEMO, folder.resolve("here"));
        Run onClassPath = fork(onClassPath(), Map.of(), Run.DEMO, folder.resolve("class path"));
        Run onModulePath = fork(onModulePath(), Map.of(), Run.DEMO, folder.resolve("module path"));
        for (Run run : List.of(onClassPath, onModulePath)) {
            assertThat(run.exitCode()).as(run.err()).isZero();
            assertThat(withoutReport(run)).isEqualTo(withoutReport(here)).hasSizeGreaterThan(30);
        }
        assertSameFiles("class path");
        assertSameFiles("module path");
    }

    @Test
    void neitherLanguageNorCharacterSetMatters() throws Exception {
        Path input = DemoDay.write(folder.resolve("umlaut.json"), day -> day.put("site", "Grafschaft Füchsen, 3 °C"));
        Run here = Run.of(input, folder.resolve("here"));
        List<String> german = List.of(
                "-Duser.language=de",
                "-Duser.country=DE",
                "-Dfile.encoding=US-ASCII",
                "-Dsun.stdout.encoding=US-ASCII",
                "-Dsun.stderr.encoding=US-ASCII",
                "-Duser.timezone=Asia/Kathmandu");
        Run run = fork(with(german, onModulePath()), Map.of(), input, folder.resolve("german"));
        assertThat(run.exitCode()).as(run.err()).isZero();
        assertThat(withoutReport(run))
                .isEqualTo(withoutReport(here))
                .first()
                .asString()
                .contains("Füchsen, 3 °C");
        assertSameFiles("german");
        Run arabic = fork(
                with(List.of("-Duser.language=ar", "-Duser.country=EG"), onClassPath()),
                Map.of(),
                input,
                folder.resolve("arabic"));
        assertThat(arabic.exitCode()).as(arabic.err()).isZero();
        assertSameFiles("arabic");
    }

    @Test
    void exitCodesReachTheCaller() throws Exception {
        Run refused = fork(onModulePath(), Map.of(), Run.TARE_MISSING, folder.resolve("refused"));
        assertThat(refused.exitCode()).isEqualTo(2);
        assertThat(refused.out()).isEmpty();
        assertThat(refused.err())
                .contains("/trucks/0/calibrationCatches/0/containers/1/tare")
                .doesNotContain("\tat ");
    }

    /** The JDK remembers the fonts it found in the user's home. */
    @Test
    @EnabledOnOs(OS.LINUX)
    void aMachineWithoutFontsGetsAReportWithoutChart() throws Exception {
        Path fonts = Files.writeString(
                folder.resolve("fonts.conf"),
                "<!DOCTYPE fontconfig SYSTEM \"fonts.dtd\"><fontconfig><dir>" + folder.resolve("nothing")
                        + "</dir></fontconfig>");
        Path output = folder.resolve("no fonts");
        Run run = fork(
                with(List.of("-Duser.home=" + folder), onModulePath()),
                Map.of("FONTCONFIG_FILE", fonts.toString()),
                Run.DEMO,
                output);
        assertThat(run.exitCode()).as(run.err()).isZero();
        assertThat(run.err()).contains("The report goes without its chart").doesNotContain("\tat ");
        assertThat(Run.text(output.resolve("report.html")))
                .contains("There is no chart", "T-16")
                .doesNotContain("<svg");
    }

    private void assertSameFiles(String name) throws IOException {
        Path here = folder.resolve("here");
        Path there = folder.resolve(name);
        assertThat(Run.names(there)).isEqualTo(Run.names(here)).hasSize(18);
        for (String file : Run.names(here)) {
            assertThat(there.resolve(file)).hasSameBinaryContentAs(here.resolve(file));
        }
    }

    private static List<String> withoutReport(Run run) {
        return run.outLines().stream()
                .filter(line -> !line.startsWith("Report: "))
                .toList();
    }

    private static List<String> with(List<String> first, List<String> then) {
        return Stream.concat(first.stream(), then.stream()).toList();
    }

    private static List<String> onClassPath() {
        return List.of("--class-path", String.join(File.pathSeparator, allEntries()), MAIN);
    }

    /** The modules of this very run; what no module asks for by name, the logging backend, stays on the class path. */
    private static List<String> onModulePath() {
        return List.of(
                "--module-path",
                System.getProperty("jdk.module.path"),
                "--class-path",
                System.getProperty("java.class.path"),
                "--module",
                MODULE + "/" + MAIN);
    }

    private static List<String> allEntries() {
        return Stream.of("jdk.module.path", "java.class.path")
                .map(System::getProperty)
                .flatMap(path -> Arrays.stream(path.split(File.pathSeparator, -1)))
                .filter(entry -> !entry.isEmpty() && !entry.endsWith("test-classes"))
                .toList();
    }

    private Run fork(List<String> java, Map<String, String> environment, Path input, Path output) throws Exception {
        List<String> command = new ArrayList<>();
        command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
        command.addAll(java);
        command.addAll(List.of("--input", input.toString(), "--output", output.toString()));
        Path out = Files.createTempFile(folder, "out", ".txt");
        Path err = Files.createTempFile(folder, "err", ".txt");
        ProcessBuilder builder =
                new ProcessBuilder(command).redirectOutput(out.toFile()).redirectError(err.toFile());
        builder.environment().putAll(environment);
        Process process = builder.start();
        try {
            assertThat(process.waitFor(120, TimeUnit.SECONDS))
                    .as("ended in time")
                    .isTrue();
        } finally {
            process.destroyForcibly();
        }
        return new Run(
                process.exitValue(),
                Files.readString(out, StandardCharsets.UTF_8),
                Files.readString(err, StandardCharsets.UTF_8));
    }
}
