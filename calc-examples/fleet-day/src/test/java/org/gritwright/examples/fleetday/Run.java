package org.gritwright.examples.fleetday;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;

/**
 * One run of the program.
 *
 * @param exitCode its exit code
 * @param out what it said on standard output
 * @param err what it said on standard error
 */
record Run(int exitCode, String out, String err) {
    static final Path DEMO = Path.of("src/demo/demo-fleet.json");
    /** Prewets, anti-icing trucks with booms, and tanks. */
    static final Path LIQUIDS = Path.of("src/demo/demo-liquids.json");

    static final Path TARE_MISSING = Path.of("src/demo/tare-missing.json");

    /** In this Java virtual machine, without PDF files, which take longer than all else. */
    static Run of(String... arguments) {
        return as(Stream.concat(Stream.of(arguments), Stream.of("--no-pdf")).toArray(String[]::new));
    }

    /** With PDF files. */
    static Run withPdf(Path input, Path output, String mode) {
        return as("--input", input.toString(), "--output", output.toString(), "--mode", mode);
    }

    private static Run as(String... arguments) {
        StringWriter out = new StringWriter();
        StringWriter err = new StringWriter();
        int exitCode = FleetDayCommand.run(new PrintWriter(out), new PrintWriter(err), arguments);
        return new Run(exitCode, out.toString(), err.toString());
    }

    static Run of(Path input, Path output) {
        return of("--input", input.toString(), "--output", output.toString());
    }

    List<String> outLines() {
        return out.lines().toList();
    }

    List<String> errLines() {
        return err.lines().toList();
    }

    static String text(Path file) throws IOException {
        return Files.readString(file, StandardCharsets.UTF_8);
    }

    /** All files below a folder, by their names in it, in order. */
    static List<String> names(Path folder) throws IOException {
        try (Stream<Path> files = Files.walk(folder)) {
            return files.filter(Files::isRegularFile)
                    .map(file -> folder.relativize(file).toString().replace('\\', '/'))
                    .sorted()
                    .toList();
        }
    }
}
