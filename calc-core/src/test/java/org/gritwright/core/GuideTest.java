package org.gritwright.core;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.net.URL;
import java.net.URLClassLoader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.spi.ToolProvider;
import java.util.stream.Collectors;
import org.gritwright.core.conformance.Conformance;
import org.gritwright.core.record.JsonConformance;
import org.gritwright.core.spi.ConveyorType;
import org.gritwright.core.spi.TypeId;
import org.gritwright.core.spi.TypeRegistry;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The guide "Add a spreader type", as it stands in DEVELOPERS.md, leads to a type that works. */
@Tag("jackson")
class GuideTest {

    private static String file(String name) throws IOException {
        String guide = Files.readString(Path.of("..", "DEVELOPERS.md"));
        String begin = "<!-- guide " + name + " -->";
        String end = "<!-- /guide " + name + " -->";
        String fenced = guide.substring(guide.indexOf(begin) + begin.length(), guide.indexOf(end));
        return fenced.strip().lines().filter(line -> !line.startsWith("```")).collect(Collectors.joining("\n"));
    }

    @Test
    void theGuidesTypeIsFoundAndObeysEveryLaw(@TempDir Path folder) throws Exception {
        Path classes = compile(folder);
        Path services = Files.createDirectories(classes.resolve("META-INF/services"));
        Files.writeString(services.resolve("org.gritwright.core.spi.ConveyorType"), file("services"));
        try (URLClassLoader loader =
                new URLClassLoader(new URL[] {classes.toUri().toURL()}, GuideTest.class.getClassLoader())) {
            TypeRegistry types = TypeRegistry.of(List.of(), List.of()).withServices(loader);
            ConveyorType tray = types.conveyor(TypeId.of("example.org/vibrating-tray", 1));

            assertThat(types.rejected()).isEmpty();
            assertThat(Conformance.check(tray)).isEmpty();
            assertThat(JsonConformance.check(tray)).isEmpty();
        }
    }

    /** The test file is compiled with the type, so that it can't fall behind it. */
    private static Path compile(Path folder) throws IOException {
        Path type = Files.writeString(folder.resolve("VibratingTray.java"), file("VibratingTray.java"));
        Path test = Files.writeString(folder.resolve("ConformanceTest.java"), file("ConformanceTest.java"));
        Path classes = Files.createDirectories(folder.resolve("classes"));
        int compiled = ToolProvider.findFirst("javac")
                .orElseThrow()
                .run(
                        System.out,
                        System.err,
                        "-cp",
                        ReadmeExampleTest.libraries(),
                        "-d",
                        classes.toString(),
                        type.toString(),
                        test.toString());
        assertThat(compiled).isZero();
        return classes;
    }

    @Test
    void theGuidesBuildAsksForWhatThisProjectBuilds() throws Exception {
        String pom = Files.readString(Path.of("pom.xml"));
        // The first version in it is the parent's, which is everybody's.
        String ours = pom.substring(pom.indexOf("<version>"), pom.indexOf("</version>"));

        assertThat(file("pom.xml")).contains("<artifactId>calc-core</artifactId>\n      " + ours + "</version>");
    }
}
