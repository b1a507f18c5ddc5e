package org.gritwright.core.record;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.File;
import java.io.IOException;
import java.io.InputStream;
import java.net.URI;
import java.net.URL;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Objects;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.gritwright.core.document.DocumentLimits;
import org.gritwright.core.document.RejectedDocumentException;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A document of any shape is read, or refused, in 64 MB and eight times its size. */
@Tag("jackson")
class ReadingMemoryTest {

    /** Says how a document of so many parts is refused. */
    public static final class Reader {
        private Reader() {}

        public static void main(String[] arguments) throws IOException {
            String head =
                    "{\"format\": \"gritwright/fleet-day\", \"formatVersion\": " + arguments[2] + ", \"trucks\": [";
            try (InputStream in = new Repeated(head, arguments[0], Integer.parseInt(arguments[1]))) {
                Document.FLEET_DAY.read(in);
                System.out.println("read");
            } catch (RejectedDocumentException e) {
                System.out.println(e.problems().size() + " " + e.problems().get(0));
            }
        }
    }

    /** A text and many times another, which are never held in memory. */
    private static final class Repeated extends InputStream {
        private final byte[] part;
        private int times;
        private InputStream now;

        Repeated(String head, String part, int times) {
            this.part = (part + ",").getBytes(StandardCharsets.UTF_8);
            this.times = times;
            this.now = new ByteArrayInputStream(head.getBytes(StandardCharsets.UTF_8));
        }

        @Override
        public int read() {
            throw new UnsupportedOperationException("never asked byte by byte");
        }

        @Override
        public int read(byte[] buffer, int offset, int length) throws IOException {
            int read = now.read(buffer, offset, length);
            while (read < 0 && times > 0) {
                times--;
                now = new ByteArrayInputStream(times == 0 ? "0]}".getBytes(StandardCharsets.UTF_8) : part);
                read = now.read(buffer, offset, length);
            }
            return read;
        }
    }

    /** These classes and the libraries, wherever the run has put them. */
    private static String classPath() {
        URL here = Objects.requireNonNull(ReadingMemoryTest.class.getResource("ReadingMemoryTest.class"));
        Path root = Path.of(URI.create(here.toString()));
        for (String ignored : ReadingMemoryTest.class.getName().split("\\.", -1)) {
            root = root.getParent();
        }
        return Stream.concat(
                        Stream.of(root.toString()),
                        Stream.of("java.class.path", "jdk.module.path", "jdk.module.main.path")
                                .map(System::getProperty)
                                .filter(Objects::nonNull))
                .collect(Collectors.joining(File.pathSeparator));
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '`', textBlock = """
            {}                  | 22000000 | 2 | too large
            {}                  |   499000 | 2 | whole
            0                   |   499000 | 2 | whole
            {"a":0}             |   249000 | 2 | whole
            {"a":0}             |   249000 | 1 | whole
            ""                  |   499000 | 2 | whole
            [[[[[[[[[[0]]]]]]]]]] |  45000 | 2 | whole
            """)
    void noShapeTakesMoreMemoryThanItsSizeAllows(String part, int times, int version, String outcome)
            throws IOException, InterruptedException {
        long bytes = Math.min((part.length() + 1L) * times, DocumentLimits.COMMON.bytes());
        long readable = outcome.equals("whole") ? bytes : (part.length() + 1L) * DocumentLimits.COMMON.nodes();
        Process process = new ProcessBuilder(List.of(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-Xmx" + (64 + 8 * readable / 1_000_000) + "m",
                        "-XX:+UseSerialGC",
                        "-cp",
                        classPath(),
                        Reader.class.getName(),
                        part,
                        String.valueOf(times),
                        String.valueOf(version)))
                .redirectErrorStream(true)
                .start();
        String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);

        assertThat(process.waitFor()).as(said).isZero();
        if (outcome.equals("whole")) {
            assertThat(said).doesNotContain("values, found more");
        } else {
            assertThat(said)
                    .contains("): expected at most 500000 values, found more")
                    .startsWith("1 document (line 1, column ");
        }
    }
}
