package org.gritwright.examples.embedding;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.jar.Attributes;
import java.util.jar.JarEntry;
import java.util.jar.JarFile;
import java.util.jar.JarOutputStream;
import java.util.jar.Manifest;
import java.util.stream.Stream;
import java.util.zip.CRC32;
import java.util.zip.ZipEntry;
import org.springframework.boot.loader.launch.JarLauncher;

/** An application in one jar that keeps its libraries whole, as Spring Boot's loader wants it. */
final class NestedJar {

    /** Runs the page's program on a thread that can't see the application through its context class loader. */
    static final String START = """
            package yard;

            class Start {
                public static void main(String[] arguments) throws Exception {
                    Thread.currentThread().setContextClassLoader(ClassLoader.getPlatformClassLoader());
                    Trucks.main(arguments);
                }
            }
            """;

    private NestedJar() {}

    static Path of(Path jar, Path classes, String start, List<Path> libraries) throws Exception {
        Manifest manifest = new Manifest();
        manifest.getMainAttributes().put(Attributes.Name.MANIFEST_VERSION, "1.0");
        manifest.getMainAttributes().put(Attributes.Name.MAIN_CLASS, JarLauncher.class.getName());
        manifest.getMainAttributes().putValue("Start-Class", start);
        try (JarOutputStream out = new JarOutputStream(Files.newOutputStream(jar), manifest)) {
            putLoader(out);
            // The loader opens it as a folder.
            put(out, "BOOT-INF/classes/", new byte[0]);
            try (Stream<Path> files = Files.walk(classes)) {
                for (Path file : files.filter(Files::isRegularFile).toList()) {
                    String name = classes.relativize(file).toString().replace('\\', '/');
                    put(out, "BOOT-INF/classes/" + name, Files.readAllBytes(file));
                }
            }
            for (Path library : libraries) {
                put(out, "BOOT-INF/lib/" + library.getFileName(), Files.readAllBytes(library));
            }
        }
        return jar;
    }

    private static void putLoader(JarOutputStream out) throws Exception {
        Path place = Path.of(JarLauncher.class
                .getProtectionDomain()
                .getCodeSource()
                .getLocation()
                .toURI());
        try (JarFile loader = new JarFile(place.toFile())) {
            for (JarEntry entry : loader.stream()
                    .filter(e -> e.getName().startsWith("org/springframework/") && !e.isDirectory())
                    .toList()) {
                try (InputStream in = loader.getInputStream(entry)) {
                    put(out, entry.getName(), in.readAllBytes());
                }
            }
        }
    }

    /** Not compressed: the loader reads nested jars in place. */
    private static void put(JarOutputStream out, String name, byte[] bytes) throws IOException {
        CRC32 sum = new CRC32();
        sum.update(bytes);
        JarEntry entry = new JarEntry(name);
        entry.setMethod(ZipEntry.STORED);
        entry.setSize(bytes.length);
        entry.setCrc(sum.getValue());
        out.putNextEntry(entry);
        out.write(bytes);
        out.closeEntry();
    }
}
