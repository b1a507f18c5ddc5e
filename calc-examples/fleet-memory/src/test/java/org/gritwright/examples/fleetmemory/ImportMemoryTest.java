package org.gritwright.examples.fleetmemory;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What is imported may be any amount: the memory that it takes doesn't grow with it. */
class ImportMemoryTest {
    /** Held in memory, these take more than the heap. */
    private static final int MANY = 30_000;

    private static final List<String> SMALL_HEAP = List.of("-Xmx48m", "-XX:+UseSerialGC");

    @TempDir
    private Path folder;

    private static Stream<String> sums(String mass) {
        return IntStream.range(0, MANY)
                .mapToObj(
                        i -> ("{\"format\": \"gritwright/fleet-event\", \"formatVersion\": 1, \"id\": \"telemetry %d\","
                                        + " \"at\": \"2026-01-08\", \"truck\": \"C-01\", \"source\": \"telemetry\","
                                        + " \"used\": {\"material\": \"road salt\", \"revolutions\": \"930 rev\", \"mass\": \"%s\"}}")
                                .formatted(i, mass));
    }

    private Path file(String name, String mass) throws Exception {
        return Files.write(folder.resolve(name), sums(mass).toList());
    }

    private String said(String command, Path... files) throws Exception {
        String database = folder.resolve(command.equals("restore") ? "again.db" : "fleet.db")
                .toString();
        return Program.said(
                SMALL_HEAP,
                Stream.concat(
                                Stream.of(command, "--database", database),
                                Stream.of(files).map(Path::toString))
                        .toArray(String[]::new));
    }

    @Test
    void moreThanMemoryHoldsIsImportedKnownRefusedBackedUpAndRestored() throws Exception {
        Path good = file("good.jsonl", "7093 lb");
        Path backup = folder.resolve("backup.jsonl");

        assertThat(said("import", file("bad.jsonl", "7093 mi")))
                .contains("more lines about ")
                .endsWith("2");
        assertThat(said("import", good)).contains(": 30000 new, 0 known").endsWith("0");
        assertThat(said("import", good)).contains(": 0 new, 30000 known").endsWith("0");
        assertThat(said("import", file("other.jsonl", "7094 lb")))
                .contains("and 29000 more documents that are other")
                .endsWith("2");
        assertThat(said("backup", backup)).contains("Wrote 30000 documents").endsWith("0");
        assertThat(said("restore", backup)).contains("Restored 30000 documents").endsWith("0");
    }
}
