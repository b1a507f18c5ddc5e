package org.gritwright.core;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.net.URL;
import java.net.URLClassLoader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.gritwright.core.conformance.Conformance;
import org.gritwright.core.metering.Gate;
import org.gritwright.core.record.JsonConformance;
import org.gritwright.core.spi.ConveyorType;
import org.gritwright.core.spi.GateType;
import org.gritwright.core.spi.Setting;
import org.gritwright.core.spi.TypeId;
import org.gritwright.core.spi.TypeRegistry;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The guide "Add a spreader type", as it stands in DEVELOPERS.md, leads to a type that works. */
@Tag("jackson")
class GuideTest {

    /** The blocks that are Java. */
    static final List<String> JAVA =
            List.of("guide VibratingTray.java", "guide PercentGate.java", "guide ConformanceTest.java", "guide use");

    private static String file(String name) throws IOException {
        return Page.DEVELOPERS.code("guide " + name);
    }

    static String ourVersion() throws IOException {
        String pom = Files.readString(Path.of("pom.xml"));
        // The first version in it is the parent's, which is everybody's.
        return pom.substring(pom.indexOf("<version>"), pom.indexOf("</version>")) + "</version>";
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

    @Test
    void theGuidesGateIsSetInPercent(@TempDir Path folder) throws Exception {
        Path classes = compile(folder);
        try (URLClassLoader loader =
                new URLClassLoader(new URL[] {classes.toUri().toURL()}, GuideTest.class.getClassLoader())) {
            GateType type = (GateType) loader.loadClass("org.example.tray.PercentGate")
                    .getConstructor()
                    .newInstance();
            Gate gate = Gate.of(type, Map.of("wideOpen", Amounts.of(0.1, SpreadingUnits.SQUARE_METER)));

            assertThat(Conformance.check(type)).isEmpty();
            assertThat(JsonConformance.check(type)).isEmpty();
            assertThat(gate.accepts(Setting.percent(40))).isTrue();
            assertThat(gate.accepts(Setting.mark(40))).isFalse();
        }
    }

    /** The other Java is compiled with the type, so that it can't fall behind it. */
    private static Path compile(Path folder) throws IOException {
        List<Path> sources = List.of(
                Files.writeString(folder.resolve("VibratingTray.java"), file("VibratingTray.java")),
                Files.writeString(folder.resolve("PercentGate.java"), file("PercentGate.java")),
                Files.writeString(folder.resolve("ConformanceTest.java"), file("ConformanceTest.java")),
                Files.writeString(folder.resolve("Use.java"), """
                        import org.gritwright.core.metering.BuiltInTypes;
                        import org.gritwright.core.spi.TypeRegistry;
                        class Use {
                            void use() {
                        %s
                            }
                        }
                        """.formatted(file("use"))));
        Path classes = Files.createDirectories(folder.resolve("classes"));
        PageExamplesTest.compile(classes, sources, "-cp", PageExamplesTest.libraries());
        return classes;
    }

    @Test
    void theGuidesBuildAsksForWhatThisProjectBuilds() throws Exception {
        assertThat(file("pom.xml")).contains("<artifactId>calc-core</artifactId>\n      " + ourVersion());
    }
}
