package org.gritwright.examples.fleetmemory;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.BufferedReader;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What a killed run leaves is cleaned away by the next one, and nothing else ever is. */
class KilledPagesTest {
    private static final Map<String, String> PAGES = Map.of("index.html", "page");

    @TempDir
    private Path folder;

    private List<String> names() throws Exception {
        try (Stream<Path> all = Files.list(folder)) {
            return all.map(path -> path.getFileName().toString()).sorted().toList();
        }
    }

    private Path part() throws Exception {
        return folder.resolve(names().stream()
                .filter(name -> name.endsWith(".part"))
                .findFirst()
                .orElseThrow());
    }

    @Test
    void aRunThatLivesIsLeftAloneAndWhatAKilledOneLeftIsCleanedAway() throws Exception {
        Process process = KilledPages.start(folder.resolve("never"));
        try (BufferedReader said = process.inputReader(StandardCharsets.UTF_8)) {
            assertThat(said.readLine()).isEqualTo("waiting");
            Path begun = part();
            PageFolder.write(folder.resolve("one"), PAGES);
            assertThat(begun.resolve(KilledPages.FIRST)).hasContent("page");
            assertThat(names()).hasSize(3).contains("one", begun.getFileName().toString());
        } finally {
            process.destroyForcibly().waitFor();
        }
        assertThat(names()).as("a killed run can't clean up").hasSize(3);
        PageFolder.write(folder.resolve("two"), PAGES);
        assertThat(names()).containsExactly("one", "two");
    }

    /** A lock file that nobody holds, as a killed run leaves it, beside what no run wrote. */
    @Test
    void whatNoRunWroteIsNeverTouched() throws Exception {
        String dead = ".fleet-memory_00000000-0000-4000-8000-00000000000";
        String end = "_00000000-0000-4000-8000-000000000000";
        Path mine = Files.createDirectory(folder.resolve("mine"));
        Files.writeString(mine.resolve("notes.html"), "mine");
        Files.createFile(folder.resolve(dead + "1" + end + ".lock"));
        Files.createSymbolicLink(folder.resolve(dead + "1" + end + ".part"), mine);
        Files.createFile(folder.resolve(dead + "2" + end + ".lock"));
        Files.createDirectories(folder.resolve(dead + "2" + end + ".part/inner"));
        Files.createDirectory(folder.resolve(dead + "3" + end + ".part"));
        Files.createDirectory(folder.resolve(".fleet-memory_notes.part"));
        Files.createFile(folder.resolve(".fleet-memory_notes.lock"));

        PageFolder.write(folder.resolve("one"), PAGES);

        assertThat(mine.resolve("notes.html")).hasContent("mine");
        assertThat(names())
                .contains(
                        "one",
                        dead + "1" + end + ".part",
                        dead + "2" + end + ".part",
                        dead + "3" + end + ".part",
                        ".fleet-memory_notes.lock",
                        ".fleet-memory_notes.part");
        assertThat(folder.resolve(dead + "2" + end + ".part/inner")).isDirectory();
    }

    /** Backups and exports are large: what a killed one left is cleaned away too. */
    @Test
    void aFileIsWrittenWholeAndCleansUpAsPagesDo() throws Exception {
        String dead = ".fleet-memory_00000000-0000-4000-8000-000000000001_00000000-0000-4000-8000-000000000000";
        Files.createFile(folder.resolve(dead + ".lock"));
        Files.writeString(Files.createDirectory(folder.resolve(dead + ".part")).resolve("unnamed"), "half");
        Path file = folder.resolve("backup.jsonl");

        WholeFile.write(
                file,
                out -> {
                    out.write('1');
                    return 1;
                },
                written -> assertThat(written).hasContent("1"));

        assertThat(names()).containsExactly("backup.jsonl");
        assertThatThrownBy(() -> WholeFile.write(
                        folder.resolve("other.jsonl"),
                        out -> {
                            throw new IOException("no more");
                        },
                        written -> {}))
                .hasMessage("no more");
        assertThat(names()).containsExactly("backup.jsonl");
        assertThat(file).hasContent("1");
    }

    @Test
    void aRunThatFailsLeavesNothing() throws Exception {
        try (Unfinished other = Unfinished.in(folder)) {
            PageFolder.write(folder.resolve("one"), PAGES);
            assertThat(other.folder()).isDirectory();
        }
        assertThat(names()).containsExactly("one");
    }
}
