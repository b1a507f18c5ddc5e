package org.gritwright.examples.fleetmemory;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/** The program in a Java virtual machine of its own. */
final class Program {
    private Program() {}

    static Process importing(Database database, List<Path> files) throws IOException {
        List<String> command = new ArrayList<>(List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-XX:TieredStopAtLevel=1",
                "-cp",
                System.getProperty("java.class.path"),
                FleetMemoryCommand.class.getName(),
                "import",
                "--database",
                database.url()));
        files.forEach(file -> command.add(file.toString()));
        return new ProcessBuilder(command)
                .redirectOutput(ProcessBuilder.Redirect.DISCARD)
                .redirectError(ProcessBuilder.Redirect.DISCARD)
                .start();
    }
}
