package org.gritwright.examples.fleetmemory;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/** A program that keeps documents and kills itself, without any farewell, in the middle of its transaction. */
final class KilledImport {
    /** What it ends with, and nothing else does. */
    static final int KILLED = 99;

    private KilledImport() {}

    /** Starts it in a Java virtual machine of its own, to be killed when a part of the documents is written. */
    static Process start(Database database, List<Filed> all, int kill) throws IOException {
        int written = 1 + kill * (all.size() - 1) / 5;
        List<String> command = new ArrayList<>(List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-XX:TieredStopAtLevel=1",
                "-cp",
                System.getProperty("java.class.path"),
                KilledImport.class.getName(),
                database.url(),
                String.valueOf(written)));
        return new ProcessBuilder(command)
                .redirectOutput(ProcessBuilder.Redirect.DISCARD)
                .redirectError(ProcessBuilder.Redirect.DISCARD)
                .start();
    }

    public static void main(String[] arguments) throws Exception {
        List<Filed> all = Fixtures.all();
        int written = Integer.parseInt(arguments[1]);
        try (Store store = Store.make(Database.of(arguments[0]))) {
            store.writing(() -> {
                // What is there already was written before.
                for (Filed one : all.subList(1, Math.min(all.size(), written + 1))) {
                    store.add(List.of(one.document()));
                }
                Runtime.getRuntime().halt(KILLED);
                return all;
            });
        }
    }
}
