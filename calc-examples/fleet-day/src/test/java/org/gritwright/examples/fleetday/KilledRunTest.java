package org.gritwright.examples.fleetday;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.BufferedReader;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * A run that is killed (SIGKILL where there are signals) while it writes: nothing of an earlier run is lost, and what stands
 * under a run's name is whole. A few kills in the build; {@code -Dgritwright.kills=500} makes as many, spread evenly over the
 * time that a run takes to write.
 */
class KilledRunTest {
    private static final int KILLS = Integer.getInteger("gritwright.kills", 4);
    private static final Pattern MANIFEST =
            Pattern.compile("\\{\\s+\"run\": \"(run-(\\d{4}))\",\\s+\"mode\": \"report\",.*\\}\\s", Pattern.DOTALL);
    private static final Pattern TOP =
            Pattern.compile("\\.lock|current\\.json|run-\\d{4}(\\.part)?|\\.[-0-9a-f]{36}\\.part");

    @TempDir
    private Path folder;

    @Test
    void whateverIsKilledLeavesOnlyWholeRuns() throws Exception {
        Path whole = folder.resolve("whole");
        assertThat(Run.of(Run.DEMO, whole).exitCode()).isZero();
        Path output = folder.resolve("output");
        long writing = runUntil(output, Long.MAX_VALUE);
        int current = current(output);
        int unfinished = 0;

        for (int kill = 0; kill < KILLS; kill++) {
            runUntil(output, writing * kill / KILLS);
            assertThat(current(output)).isGreaterThanOrEqualTo(current);
            current = current(output);
            assertSame(whole.resolve("run-0001"), output.resolve(String.format(Locale.ROOT, "run-%04d", current)));
            for (Path one : list(output)) {
                String name = one.getFileName().toString();
                assertThat(name).matches(TOP);
                unfinished += name.matches("run-\\d{4}\\.part") ? 1 : 0;
            }
        }

        assertThat(unfinished).as("kills while files were written").isPositive();
        assertThat(Run.of(Run.DEMO, output).exitCode()).isZero();
        assertThat(current(output)).isGreaterThan(current);
        for (Path one : list(output)) {
            assertThat(one.toString()).doesNotEndWith(".part");
            if (Files.isDirectory(one)) {
                assertSame(whole.resolve("run-0001"), one);
            }
        }
    }

    /** How long it wrote, in nanoseconds, unless it was killed before. */
    private long runUntil(Path output, long nanoseconds) throws Exception {
        List<String> command = new ArrayList<>();
        command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
        command.addAll(Fork.onClassPath());
        command.addAll(List.of("--input", Run.DEMO.toString(), "--output", output.toString(), "--no-pdf"));
        Process process = new ProcessBuilder(command)
                .redirectOutput(ProcessBuilder.Redirect.DISCARD)
                .start();
        try (BufferedReader progress = process.errorReader(StandardCharsets.UTF_8)) {
            for (String line = progress.readLine(); line != null; line = progress.readLine()) {
                if (line.startsWith("Writing")) {
                    break;
                }
            }
            long start = System.nanoTime();
            if (nanoseconds == Long.MAX_VALUE) {
                assertThat(process.waitFor()).isZero();
            } else {
                Thread.sleep(nanoseconds / 1_000_000, (int) (nanoseconds % 1_000_000));
            }
            return System.nanoTime() - start;
        } finally {
            process.destroyForcibly().waitFor();
        }
    }

    private static int current(Path output) throws IOException {
        Matcher manifest = MANIFEST.matcher(Run.text(output.resolve(OutputFolder.MANIFEST)));
        assertThat(manifest.matches()).as("the manifest is whole").isTrue();
        assertThat(output.resolve(manifest.group(1))).isDirectory();
        return Integer.parseInt(manifest.group(2));
    }

    private static List<Path> list(Path output) throws IOException {
        try (Stream<Path> all = Files.list(output)) {
            return all.toList();
        }
    }

    private static void assertSame(Path whole, Path run) throws IOException {
        assertThat(Run.names(run)).isEqualTo(Run.names(whole));
        for (String file : Run.names(whole)) {
            assertThat(run.resolve(file)).hasSameBinaryContentAs(whole.resolve(file));
        }
    }
}
