package org.gritwright.units.loaders;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.File;
import java.io.IOException;
import java.io.InputStream;
import java.io.ObjectOutputStream;
import java.io.Serializable;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.concurrent.TimeUnit;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import javax.measure.Unit;
import org.gritwright.units.Amounts;
import tech.units.indriya.AbstractUnit;

/**
 * Fresh Java virtual machines that have this library, what it needs, and nothing else.
 *
 * @param folder where classes and outputs are put
 */
record Jvm(Path folder) {

    /** The library and the tasks in one class loader with the program, on the class path. */
    List<String> onClassPath(String... tasks) throws Exception {
        return run(Probe.Home.PROGRAM, List.of("--class-path", path(program(), tasks(), libraries())), tasks);
    }

    /** The libraries as modules; the program and the tasks, which are in none, on the class path. */
    List<String> onModulePath(String... tasks) throws Exception {
        List<String> java = List.of(
                "--module-path",
                libraries(),
                "--add-modules",
                "org.gritwright.units",
                "--class-path",
                path(program(), tasks()));
        return run(Probe.Home.PROGRAM, java, tasks);
    }

    /** The library and the tasks in a class loader below the program's. */
    List<String> nested(String... tasks) throws Exception {
        return run(Probe.Home.NESTED, List.of("--class-path", program()), tasks);
    }

    /** The libraries as a module layer below the program's class loader. */
    List<String> inLayer(String... tasks) throws Exception {
        return run(Probe.Home.LAYER, List.of("--class-path", program()), tasks);
    }

    private List<String> run(Probe.Home home, List<String> java, String... tasks) throws Exception {
        List<String> command = new ArrayList<>();
        command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
        command.addAll(java);
        command.addAll(List.of(Probe.class.getName(), home.name(), tasks(), libraries()));
        command.addAll(List.of(tasks));
        Path out = Files.createTempFile(folder, "out", ".txt");
        Path err = Files.createTempFile(folder, "err", ".txt");
        Process process = new ProcessBuilder(command)
                .redirectOutput(out.toFile())
                .redirectError(err.toFile())
                .start();
        try {
            assertThat(process.waitFor(120, TimeUnit.SECONDS))
                    .as("ended in time")
                    .isTrue();
        } finally {
            process.destroyForcibly();
        }
        assertThat(process.exitValue()).as(() -> "exit value; " + text(err)).isZero();
        return text(out).lines().toList();
    }

    private static String text(Path file) {
        try {
            return Files.readString(file, StandardCharsets.UTF_8);
        } catch (IOException e) {
            return e.toString();
        }
    }

    private String program() throws IOException {
        Path place = folder.resolve("program");
        for (String type : List.of("Probe", "Probe$Home", "Probe$Stopped", "Probe$1")) {
            copy(type, place);
        }
        return place.toString();
    }

    private String tasks() throws IOException {
        Path place = folder.resolve("tasks");
        for (String type : List.of(
                "FirstUse",
                "EmbedderView",
                "EmbedderSettings",
                "EmbedderSettings$1",
                "EmbedderSettings$2",
                "Crate",
                "Arrival",
                "ArrivalOfQuantities")) {
            copy(type, place);
        }
        return place.toString();
    }

    /** Puts a serialized object where the tasks find it. */
    void ship(Serializable object, String file) throws IOException {
        Path place =
                Path.of(tasks(), Jvm.class.getPackageName().split("\\.", -1)).resolve(file);
        try (ObjectOutputStream out = new ObjectOutputStream(Files.newOutputStream(place))) {
            out.writeObject(object);
        }
    }

    /** A class of this package, by its name without the package. */
    private static void copy(String type, Path place) throws IOException {
        Path file = place.resolve(Jvm.class.getPackageName().replace('.', '/')).resolve(type + ".class");
        if (!Files.exists(file)) {
            Files.createDirectories(file.getParent());
            try (InputStream bytes = Jvm.class.getResourceAsStream(type + ".class")) {
                Files.copy(Objects.requireNonNull(bytes, type), file);
            }
        }
    }

    private static String libraries() throws ClassNotFoundException {
        return Stream.of(
                        Amounts.class,
                        Unit.class,
                        AbstractUnit.class,
                        Class.forName("tech.uom.lib.common.function.Nameable"),
                        Class.forName("jakarta.inject.Named"))
                .map(type -> URI.create(
                        type.getProtectionDomain().getCodeSource().getLocation().toString()))
                .map(place -> Path.of(place).toString())
                .collect(Collectors.joining(File.pathSeparator));
    }

    private static String path(String... parts) {
        return String.join(File.pathSeparator, parts);
    }
}
