package org.gritwright.examples.fleetday;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.FileSystem;
import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.jar.JarEntry;
import java.util.jar.JarOutputStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A truck whose types come from a jar of their own: with the jar in each of the places it may be in, and without. */
class PluginForkedRunTest {
    @TempDir
    private Path folder;

    private Path input;

    @BeforeEach
    void writeTheDay() throws IOException {
        input = DemoDay.write(folder.resolve("plugin.json"), day -> {
            ObjectNode other = DemoDay.truck(day, "T-12").deepCopy();
            giveItTheTypesOfThePlugin(DemoDay.only(day, "T-01"));
            day.withArray("trucks").add(other);
        });
    }

    /** As much is swept as by the truck's own types: 36 in² × 24.0625 in are 55 in² × 15.75 in. */
    private static void giveItTheTypesOfThePlugin(ObjectNode truck) {
        truck.putObject("conveyor")
                .put("type", "example.org/reciprocating-floor")
                .put("version", 1)
                .putObject("parameters")
                .put("stroke", "24.0625 in");
        truck.putObject("gate")
                .put("type", "example.org/diamond-gate")
                .put("version", 1)
                .putObject("parameters")
                .put("diagonal", "16 in");
        truck.findParents("setting").forEach(entry -> ((ObjectNode) entry).put("setting", "6 in"));
    }

    private Run run(String name, List<String> java) throws Exception {
        Run run = new Fork(folder).run(java, input, folder.resolve(name));
        assertThat(run.exitCode()).as(run.err()).isZero();
        return run;
    }

    private void assertAssessed(String name, Run run) throws IOException {
        assertThat(run.errLines()).first().isEqualTo("Reading " + input);
        assertThat(run.errLines()).noneMatch(line -> line.startsWith("Left out"));
        assertThat(run.outLines())
                .anyMatch(line -> line.startsWith(
                        "T-01   right        right        6.59 lb/rev   +0.5 +/-1.8 %;  Nothing to do"));
        assertThat(Run.text(folder.resolve(name).resolve("run-0001/records/T-01.json")))
                .contains("\"example.org/diamond-gate\"", "\"apparentFill\": \"0.8")
                .doesNotContain("\"refusals\"");
    }

    @Test
    void onClassPathAndModulePathItIsFoundAndTheResultsAreTheSame() throws Exception {
        assertAssessed("class path", run("class path", Fork.onClassPath(Fork.plugin())));
        assertAssessed("module path", run("module path", Fork.onModulePath(Fork.plugin())));
        assertSameFiles("class path", "module path");
    }

    /** A jar without module descriptor is a module of its own there, by its name. */
    @Test
    void aPlainJarOnTheModulePathIsFoundToo() throws Exception {
        Path jar = plainJar(folder.resolve("reciprocating-floor-1.0.jar"));
        assertAssessed("plain jar", run("plain jar", Fork.onModulePath(jar)));
    }

    @Test
    void withoutItTheTruckIsRefusedNamingTheKnownTypesAndTheOthersAreNot() throws Exception {
        run("no plugin on class path", Fork.onClassPath());
        run("no plugin on module path", Fork.onModulePath());
        assertThat(Run.text(folder.resolve("no plugin on class path/run-0001/records/T-01.json")))
                .contains(
                        "\"field\": \"conveyor type\"",
                        "\"accepted\": \"one of the registry: auger, version 1; belt, version 1; drag-chain, version 1;"
                                + " feed-roller, version 1; twin-auger, version 1\"",
                        "\"value\": \"example.org/reciprocating-floor, version 1\"");
        assertThat(Run.text(folder.resolve("no plugin on class path/run-0001/records/T-12.json")))
                .doesNotContain("\"refusals\"");
        assertSameFiles("no plugin on class path", "no plugin on module path");
    }

    @Test
    void aBrokenServicesFileIsToldAndHindersNothing() throws Exception {
        Path broken = folder.resolve("broken");
        Path services = Files.createDirectories(broken.resolve("META-INF/services"));
        Files.writeString(services.resolve("org.gritwright.core.spi.ConveyorType"), "org.example.Missing\n");
        Files.writeString(services.resolve("org.gritwright.core.spi.GateType"), "not a class name\n");
        run("whole", Fork.onClassPath(Fork.plugin()));
        Run run = run("beside broken", Fork.onClassPath(broken, Fork.plugin()));
        assertThat(run.errLines())
                .filteredOn(line -> line.startsWith("Left out"))
                .hasSize(2)
                .allMatch(line -> line.startsWith("Left out spreader type service provider: "))
                .satisfiesExactly(
                        line -> assertThat(line).contains("ConveyorType: Provider org.example.Missing not found"),
                        line -> assertThat(line).contains("GateType: ", "Illegal configuration-file syntax"));
        assertThat(run.err()).doesNotContain("\tat ");
        assertSameFiles("whole", "beside broken");
    }

    /** Why a type is missing stands in the refusal as well. */
    @Test
    void aRefusalTellsWhatWasLeftOut() throws Exception {
        Path broken = folder.resolve("broken");
        Path services = Files.createDirectories(broken.resolve("META-INF/services"));
        Files.writeString(services.resolve("org.gritwright.core.spi.ConveyorType"), "org.example.Missing\n");
        run("broken alone", Fork.onClassPath(broken));
        assertThat(Run.text(folder.resolve("broken alone/run-0001/records/T-01.json")))
                .contains("(left out: service provider: ", "Provider org.example.Missing not found");
    }

    private void assertSameFiles(String name, String other) throws IOException {
        Path first = folder.resolve(name);
        Path second = folder.resolve(other);
        assertThat(Run.names(second)).isEqualTo(Run.names(first)).hasSize(8);
        for (String file : Run.names(first)) {
            assertThat(second.resolve(file)).hasSameBinaryContentAs(first.resolve(file));
        }
    }

    private static Path plainJar(Path jar) throws IOException {
        Path plugin = Fork.plugin();
        if (Files.isDirectory(plugin)) {
            return packed(plugin, jar);
        }
        try (FileSystem files = FileSystems.newFileSystem(plugin)) {
            return packed(files.getPath("/"), jar);
        }
    }

    private static Path packed(Path root, Path jar) throws IOException {
        try (OutputStream out = Files.newOutputStream(jar);
                JarOutputStream entries = new JarOutputStream(out);
                Stream<Path> files = Files.walk(root)) {
            for (Path file : files.filter(Files::isRegularFile).toList()) {
                String name = root.relativize(file).toString().replace('\\', '/');
                if (!name.equals("module-info.class") && !name.equals("META-INF/MANIFEST.MF")) {
                    entries.putNextEntry(new JarEntry(name));
                    Files.copy(file, entries);
                }
            }
        }
        return jar;
    }
}
