package org.gritwright.examples.fleetmemory;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/** The program in a Java virtual machine of its own. */
final class Program {
    private Program() {}

    static Process importing(Database database, List<Path> files) throws IOException {
        List<String> arguments = new ArrayList<>(List.of("import", "--database", database.url()));
        files.forEach(file -> arguments.add(file.toString()));
        return program(List.of(), arguments)
                .redirectOutput(ProcessBuilder.Redirect.DISCARD)
                .redirectError(ProcessBuilder.Redirect.DISCARD)
                .start();
    }

    /** All that it says, and then its exit code. */
    static String said(List<String> options, String... arguments) throws IOException, InterruptedException {
        Process process =
                program(options, List.of(arguments)).redirectErrorStream(true).start();
        String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        return said + process.waitFor();
    }

    private static ProcessBuilder program(List<String> options, List<String> arguments) {
        List<String> command = new ArrayList<>(
                List.of(Path.of(System.getProperty("java.home"), "bin", "java").toString(), "-XX:TieredStopAtLevel=1"));
        command.addAll(options);
        command.addAll(List.of("-cp", System.getProperty("java.class.path"), FleetMemoryCommand.class.getName()));
        command.addAll(arguments);
        return new ProcessBuilder(command);
    }
}
