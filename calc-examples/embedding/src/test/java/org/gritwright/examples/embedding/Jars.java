package org.gritwright.examples.embedding;

import java.io.File;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** The jars that an application gets with the library. */
final class Jars {
    private static final Path FOLDER = Path.of("target", "jars");

    /** All of them in one, made by the Maven Shade plugin. */
    static final Path FAT = Path.of("target", "fat", "fat.jar");

    private Jars() {}

    static List<Path> all() throws IOException {
        return those(name -> true);
    }

    static List<Path> withoutJackson() throws IOException {
        return those(name -> !name.startsWith("jackson-"));
    }

    /** Of the two libraries. */
    static List<Path> ours() throws IOException {
        return those(name -> name.startsWith("calc-"));
    }

    private static List<Path> those(Predicate<String> wanted) throws IOException {
        try (Stream<Path> jars = Files.list(FOLDER)) {
            return jars.filter(jar -> wanted.test(jar.getFileName().toString()))
                    .sorted()
                    .toList();
        }
    }

    /** As a class path or a module path. */
    static String path(List<Path> jars) {
        return jars.stream().map(Path::toString).collect(Collectors.joining(File.pathSeparator));
    }

    static String path(Path first, List<Path> jars) {
        return first + File.pathSeparator + path(jars);
    }
}
