package org.gritwright.examples.fleetday;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class WholeFileTest {
    private static final byte[] HALF = "half of the new ".getBytes(UTF_8);

    @TempDir
    private Path folder;

    private Path file;

    @BeforeEach
    void nameTheFile() {
        file = folder.resolve("record.json");
    }

    @Test
    void writesTheContent() throws IOException {
        WholeFile.write(file, out -> out.write("new".getBytes(UTF_8)));
        assertThat(file).hasContent("new");
        assertThat(Run.names(folder)).containsExactly("record.json");
    }

    @Test
    void aFailureLeavesTheOldFileAndNoHalfOne() throws IOException {
        Files.writeString(file, "old");
        assertThatThrownBy(() -> WholeFile.write(file, out -> {
                    out.write(HALF);
                    throw new IOException("the disk is full");
                }))
                .hasMessage(file + ": the disk is full");
        assertThat(file).hasContent("old");
        assertThat(Run.names(folder)).containsExactly("record.json");
    }

    @Test
    void aFailureOfTheProgramItselfDoesNeither() throws IOException {
        assertThatThrownBy(() -> WholeFile.write(file, out -> {
                    out.write(HALF);
                    throw new IllegalStateException("a mistake");
                }))
                .isInstanceOf(IllegalStateException.class);
        assertThat(Run.names(folder)).isEmpty();
    }

    /** As a crash would find it: nothing of the new content is under the file's name before all of it is there. */
    @Test
    void theOldFileStandsUntilTheLastByteIsWritten() throws IOException {
        Files.writeString(file, "old");
        WholeFile.write(file, out -> {
            for (byte one : HALF) {
                out.write(one);
                out.flush();
                assertThat(file).hasContent("old");
            }
        });
        assertThat(Files.readAllBytes(file)).isEqualTo(HALF);
    }

    @Test
    void aLargeFileIsWhole() throws IOException {
        byte[] large = new byte[3_000_000];
        Arrays.fill(large, (byte) 'x');
        WholeFile.write(file, out -> out.write(large));
        assertThat(Files.readAllBytes(file)).isEqualTo(large);
    }

    @Test
    void inAFolderThatIsntCompleteAFailureLeavesNoFile() throws IOException {
        assertThatThrownBy(() -> WholeFile.writeUnforced(file, out -> {
                    out.write(HALF);
                    throw new IOException("the disk is full");
                }))
                .hasMessage(file + ": the disk is full");
        assertThatThrownBy(() -> WholeFile.writeUnforced(file, out -> {
                    out.write(HALF);
                    throw new IllegalStateException("a mistake");
                }))
                .isInstanceOf(IllegalStateException.class);
        assertThat(Run.names(folder)).isEmpty();
    }

    @Test
    void allFilesOfAFolderAreForcedAndStayAsTheyAre() throws IOException {
        Path inner = Files.createDirectories(folder.resolve("records"));
        WholeFile.writeUnforced(file, out -> out.write(HALF));
        WholeFile.writeUnforced(inner.resolve("one.json"), out -> out.write('1'));
        WholeFile.force(folder);
        assertThat(Files.readAllBytes(file)).isEqualTo(HALF);
        assertThat(inner.resolve("one.json")).hasContent("1");
        assertThatThrownBy(() -> WholeFile.force(folder.resolve("nowhere"))).isInstanceOf(IOException.class);
    }
}
