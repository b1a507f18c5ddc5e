package org.gritwright.examples.embedding;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.Optional;
import java.util.Properties;
import java.util.stream.Stream;

/** The JDKs that stand beside the one that runs the tests. */
final class Jdks {
    private Jdks() {}

    /** The newest, if it is newer than the one that runs the tests. */
    static Optional<Path> newest() throws IOException {
        Path running = Path.of(System.getProperty("java.home")).toRealPath();
        try (Stream<Path> beside = Files.list(running.getParent())) {
            return beside.filter(home -> feature(home) > Runtime.version().feature())
                    .max(Comparator.comparingInt(Jdks::feature));
        }
    }

    /** From the file that every JDK has; 0 for what is none. */
    private static int feature(Path home) {
        Path release = home.resolve("release");
        if (!Files.isExecutable(home.resolve("bin").resolve("java")) || !Files.isRegularFile(release)) {
            return 0;
        }
        Properties properties = new Properties();
        try (InputStream in = Files.newInputStream(release)) {
            properties.load(in);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        String version = properties.getProperty("JAVA_VERSION", "0").replace("\"", "");
        return Runtime.Version.parse(version).feature();
    }
}
