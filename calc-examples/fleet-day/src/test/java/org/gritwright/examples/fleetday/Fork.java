package org.gritwright.examples.fleetday;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.File;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.gritwright.core.metering.BuiltInTypes;
import org.gritwright.core.spi.SpreaderType;

/**
 * The program as it is started: in a Java virtual machine of its own, with the libraries of this very run, but without the
 * spreader plugin unless it is asked for.
 *
 * @param folder where the output's texts are kept
 */
record Fork(Path folder) {
    private static final String MODULE = "org.gritwright.examples.fleetday";
    private static final String MAIN = MODULE + ".FleetDayCommand";

    /** On the class path, everything and more entries. */
    static List<String> onClassPath(Path... more) {
        return List.of(
                "--class-path",
                with(more, Stream.concat(entries("jdk.module.path"), entries("java.class.path"))),
                MAIN);
    }

    /** As modules; what no module asks for by name, the logging backend, stays on the class path. */
    static List<String> onModulePath(Path... more) {
        return List.of(
                "--module-path",
                with(more, entries("jdk.module.path")),
                "--class-path",
                with(new Path[0], entries("java.class.path")),
                "--module",
                MODULE + "/" + MAIN);
    }

    /** The plugin's classes or jar, as this run found them. */
    static Path plugin() {
        SpreaderType type =
                BuiltInTypes.registry().withServices(FleetDayCommand.class.getClassLoader()).conveyors().stream()
                        .filter(conveyor -> conveyor.id().name().equals("example.org/reciprocating-floor"))
                        .findFirst()
                        .orElseThrow();
        return Path.of(URI.create(type.getClass()
                .getProtectionDomain()
                .getCodeSource()
                .getLocation()
                .toString()));
    }

    private static Stream<String> entries(String property) {
        Predicate<String> isPlugin = entry -> Path.of(entry).equals(plugin());
        return Arrays.stream(System.getProperty(property).split(File.pathSeparator, -1))
                .filter(entry -> !entry.isEmpty() && !entry.endsWith("test-classes"))
                .filter(isPlugin.negate());
    }

    private static String with(Path[] more, Stream<String> entries) {
        return Stream.concat(Arrays.stream(more).map(Path::toString), entries)
                .collect(Collectors.joining(File.pathSeparator));
    }

    /** Without PDF files, as {@link Run#of} does. */
    Run run(List<String> java, Path input, Path output) throws Exception {
        return run(java, Map.of(), input, output, "--no-pdf");
    }

    Run withPdf(List<String> java, Path input, Path output) throws Exception {
        return run(java, Map.of(), input, output);
    }

    Run run(List<String> java, Map<String, String> environment, Path input, Path output, String... more)
            throws Exception {
        List<String> command = new ArrayList<>();
        command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
        // As the program's own scripts do.
        command.add("-XX:TieredStopAtLevel=1");
        command.addAll(java);
        command.addAll(List.of("--input", input.toString(), "--output", output.toString()));
        command.addAll(List.of(more));
        ProcessBuilder builder = new ProcessBuilder(command);
        builder.environment().putAll(environment);
        return ended(builder);
    }

    /** Starts it and waits for its end. */
    Run ended(ProcessBuilder builder) throws Exception {
        Path out = Files.createTempFile(folder, "out", ".txt");
        Path err = Files.createTempFile(folder, "err", ".txt");
        Process process =
                builder.redirectOutput(out.toFile()).redirectError(err.toFile()).start();
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
