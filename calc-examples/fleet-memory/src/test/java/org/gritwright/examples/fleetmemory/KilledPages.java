package org.gritwright.examples.fleetmemory;

import java.io.IOException;
import java.nio.file.Path;
import java.util.AbstractMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** A program that writes pages and doesn't come to the end of them: it waits to be killed. */
final class KilledPages {
    static final String FIRST = "first.html";

    private KilledPages() {}

    /** Starts it in a Java virtual machine of its own. It says "waiting" when the first page is written. */
    static Process start(Path output) throws IOException {
        return new ProcessBuilder(List.of(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-XX:TieredStopAtLevel=1",
                        "-cp",
                        System.getProperty("java.class.path"),
                        KilledPages.class.getName(),
                        output.toString()))
                .redirectError(ProcessBuilder.Redirect.DISCARD)
                .start();
    }

    public static void main(String[] arguments) throws Exception {
        PageFolder.write(Path.of(arguments[0]), new Pages());
    }

    /** The second page never comes. */
    private static final class Pages extends AbstractMap<String, String> {
        @Override
        public Set<Map.Entry<String, String>> entrySet() {
            return Stream.of(FIRST, "second.html")
                    .map(name -> (Map.Entry<String, String>) new AbstractMap.SimpleEntry<>(name, "") {
                        @Override
                        public String getValue() {
                            return name.equals(FIRST) ? "page" : never();
                        }
                    })
                    .collect(Collectors.toCollection(java.util.LinkedHashSet::new));
        }

        private static String never() {
            System.out.println("waiting");
            while (true) {
                try {
                    Thread.sleep(1000);
                } catch (InterruptedException e) {
                    Thread.currentThread().interrupt();
                }
            }
        }
    }
}
