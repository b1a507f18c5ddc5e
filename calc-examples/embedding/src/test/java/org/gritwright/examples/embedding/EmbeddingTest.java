package org.gritwright.examples.embedding;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.File;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.jar.JarFile;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The programs of the page "Embedding" print what it says, wherever it says that they run. */
class EmbeddingTest {
    @TempDir
    static Path folder;

    /** The page's program without a module descriptor. */
    private static Path program;

    /** The same as a module. */
    private static Path module;

    private static String document;
    private static String output;

    @BeforeAll
    static void compileThePagesProgram() throws Exception {
        Path trucks = source("Trucks.java", Text.block(Text.EMBEDDING, "example"));
        Path descriptor = source("module-info.java", Text.block(Text.EMBEDDING, "module-info"));
        program = Run.compile(folder.resolve("program"), List.of(trucks), "-cp", Jars.path(Jars.all()));
        module = Run.compile(folder.resolve("yard"), List.of(trucks, descriptor), "-p", Jars.path(Jars.all()));
        document = source("day.json", Text.block(Text.DOCUMENTS, "document")).toString();
        output = Text.block(Text.EMBEDDING, "example output");
    }

    private static Path source(String name, String text) throws IOException {
        return Files.writeString(folder.resolve(name), text);
    }

    @Test
    void classPath() throws Exception {
        Run.java("-cp", Jars.path(program, Jars.all()), "yard.Trucks", document).assertPrinted(output);
    }

    @Test
    void modulePath() throws Exception {
        Run.java("-p", Jars.path(module, Jars.all()), "-m", "yard/yard.Trucks", document)
                .assertPrinted(output);
    }

    /** The newest JDK beside the one that runs the tests, on both paths. */
    @Test
    void newestJdk() throws Exception {
        Optional<Path> newest = Jdks.newest();
        assumeTrue(newest.isPresent(), "no newer JDK beside the one that runs the tests");
        Path home = newest.orElseThrow();
        Run.java(home, "-cp", Jars.path(program, Jars.all()), "yard.Trucks", document)
                .assertPrinted(output);
        Run.java(home, "-p", Jars.path(module, Jars.all()), "-m", "yard/yard.Trucks", document)
                .assertPrinted(output);
    }

    @Test
    void runtimeImage() throws Exception {
        Path image = folder.resolve("image");
        Run.tool(
                "jlink",
                "--module-path",
                Jars.path(module, Jars.all()),
                "--add-modules",
                "yard",
                "--output",
                image.toString());
        Run.java(image, "-m", "yard/yard.Trucks", document).assertPrinted(output);
    }

    /** Merged services, as the page says, and nothing of the single jars. */
    @Test
    void fatJar() throws Exception {
        assertThat(Files.readString(Path.of("pom.xml"))).contains(Text.block(Text.EMBEDDING, "transformer"));
        try (JarFile fat = new JarFile(Jars.FAT.toFile())) {
            String providers = new String(
                    fat.getInputStream(fat.getEntry("META-INF/services/javax.measure.spi.ServiceProvider"))
                            .readAllBytes(),
                    StandardCharsets.UTF_8);
            assertThat(providers).contains("org.gritwright.units.spi", "tech.units.indriya.spi");
        }
        Run.java("-cp", Jars.path(program, List.of(Jars.FAT)), "yard.Trucks", document)
                .assertPrinted(output);
    }

    /** A thread whose context class loader knows nothing of the application makes the first use. */
    @Test
    void nestedJarsAndAForeignContextLoader() throws Exception {
        Path start = source("Start.java", NestedJar.START);
        Run.compile(program, List.of(start), "-cp", program.toString());
        Path jar = NestedJar.of(folder.resolve("nested.jar"), program, "yard.Start", Jars.all());
        Run.java("-jar", jar.toString(), document).assertPrinted(output);
    }

    @Test
    void withoutJackson() throws Exception {
        Path source = source("Yard.java", Text.block(Text.README, "example"));
        String jars = Jars.path(Jars.withoutJackson());
        Path mathematics = Run.compile(folder.resolve("mathematics"), List.of(source), "-cp", jars);

        Run.java("-cp", mathematics + File.pathSeparator + jars, "Yard")
                .assertPrinted(Text.block(Text.README, "example output"));
        Run documents = Run.java("-cp", program + File.pathSeparator + jars, "yard.Trucks", document);
        assertThat(documents.exit()).isPositive();
        assertThat(documents.printed()).contains("NoClassDefFoundError: com/fasterxml/jackson/core/");
    }

    /** The compiler runs on its own: it has more on its class path than an application should see. */
    @Test
    void kotlin() throws Exception {
        Path source = source("Rate.kt", Text.block(Text.EMBEDDING, "kotlin"));
        Path classes = folder.resolve("kotlin");
        String tests = System.getProperty("java.class.path");
        Run.java(
                        "-cp",
                        tests,
                        "org.jetbrains.kotlin.cli.jvm.K2JVMCompiler",
                        "-no-stdlib",
                        "-no-reflect",
                        "-Werror",
                        "-cp",
                        Jars.path(KotlinLibrary.jar(), Jars.all()),
                        "-d",
                        classes.toString(),
                        source.toString())
                .assertPrinted("");
        Run.java("-cp", classes + File.pathSeparator + Jars.path(KotlinLibrary.jar(), Jars.all()), "RateKt")
                .assertPrinted(Text.block(Text.EMBEDDING, "kotlin output"));
    }
}
