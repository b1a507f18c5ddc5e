package org.gritwright.core;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.File;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Objects;
import java.util.spi.ToolProvider;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.gritwright.core.fleet.assessment.FleetAssessor;
import org.gritwright.core.fleet.assessment.NextStep;
import org.gritwright.core.fleet.assessment.TruckAssessment;
import org.gritwright.core.fleet.day.FleetDay;
import org.gritwright.core.metering.BuiltInTypes;
import org.gritwright.core.record.Document;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class ReadmeExampleTest {

    /** The libraries, wherever the run has put them. */
    static String libraries() {
        return Stream.of("java.class.path", "jdk.module.path", "jdk.module.main.path")
                .map(System::getProperty)
                .filter(Objects::nonNull)
                .collect(Collectors.joining(File.pathSeparator));
    }

    private static String block(String name) throws IOException {
        String readme = Files.readString(Path.of("..", "README.md"));
        String begin = "<!-- " + name + " -->";
        String end = "<!-- /" + name + " -->";
        String fenced = readme.substring(readme.indexOf(begin) + begin.length(), readme.indexOf(end));
        return fenced.strip().lines().filter(line -> !line.startsWith("```")).collect(Collectors.joining("\n"));
    }

    @Test
    void theReadmesExampleCompilesAndPrintsWhatTheReadmeSays(@TempDir Path folder) throws Exception {
        assertThat(printed(folder, "Yard", block("example"))).isEqualTo(block("example output"));
    }

    @Test
    void theReadmesPlanCompilesAndPrintsWhatTheReadmeSays(@TempDir Path folder) throws Exception {
        assertThat(printed(folder, "Plan", block("planning example"))).isEqualTo(block("planning output"));
    }

    private static String printed(Path folder, String name, String text) throws Exception {
        Path source = Files.writeString(folder.resolve(name + ".java"), text);
        int compiled = ToolProvider.findFirst("javac")
                .orElseThrow()
                .run(System.out, System.err, "-cp", libraries(), "-d", folder.toString(), source.toString());
        assertThat(compiled).isZero();

        String java = Path.of(System.getProperty("java.home"), "bin", "java").toString();
        Process process = new ProcessBuilder(List.of(java, "-cp", folder + File.pathSeparator + libraries(), name))
                .redirectErrorStream(true)
                .start();
        String printed = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        assertThat(process.waitFor()).as(printed).isZero();
        return printed.strip();
    }

    @Test
    @Tag("jackson")
    void theReadmesDocumentIsReadAndComputed() throws Exception {
        byte[] document = block("document").getBytes(StandardCharsets.UTF_8);
        FleetDay day = Document.FLEET_DAY.read(new ByteArrayInputStream(document));
        assertThat(FleetAssessor.of(BuiltInTypes.registry()).assess(day))
                .singleElement()
                .satisfies(truck -> assertThat(truck.refusal()).isEmpty())
                .extracting(TruckAssessment::nextStep)
                .isEqualTo(NextStep.VERIFY);
    }
}
