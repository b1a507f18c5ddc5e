package org.gritwright.examples.fleetday;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The program as it is started: in a Java virtual machine of its own, on the class path and on the module path. */
class ForkedRunTest {
    @TempDir
    private Path folder;

    @Test
    void classPathAndModulePathGiveTheSame() throws Exception {
        Run here = Run.withPdf(Run.DEMO, folder.resolve("here"), "report");
        Run onClassPath = new Fork(folder).withPdf(Fork.onClassPath(), Run.DEMO, folder.resolve("class path"));
        Run onModulePath = new Fork(folder).withPdf(Fork.onModulePath(), Run.DEMO, folder.resolve("module path"));
        for (Run run : List.of(onClassPath, onModulePath)) {
            assertThat(run.exitCode()).as(run.err()).isZero();
            assertThat(run.errLines()).allMatch(line -> line.matches("(Reading|Assessing|Writing) .*"));
            assertThat(withoutReport(run)).isEqualTo(withoutReport(here)).hasSizeGreaterThan(30);
        }
        assertSameFiles("class path", 20);
        assertSameFiles("module path", 20);
    }

    @Test
    void neitherLanguageNorCharacterSetMatters() throws Exception {
        Path input = DemoDay.write(folder.resolve("umlaut.json"), day -> {
            day.put("site", "Grafschaft Füchsen, 3 °C");
            DemoDay.cut(day, "T-01", "T-10", "T-17");
        });
        Run here = Run.withPdf(input, folder.resolve("here"), "report");
        List<String> german = List.of(
                "-Duser.language=de",
                "-Duser.country=DE",
                "-Dfile.encoding=US-ASCII",
                "-Dsun.stdout.encoding=US-ASCII",
                "-Dsun.stderr.encoding=US-ASCII",
                "-Duser.timezone=Asia/Kathmandu");
        Run run = new Fork(folder).withPdf(with(german, Fork.onModulePath()), input, folder.resolve("german"));
        assertThat(run.exitCode()).as(run.err()).isZero();
        assertThat(withoutReport(run))
                .isEqualTo(withoutReport(here))
                .first()
                .asString()
                .contains("Füchsen, 3 °C");
        assertSameFiles("german", 3);
        Run arabic = new Fork(folder)
                .withPdf(
                        with(List.of("-Duser.language=ar", "-Duser.country=EG"), Fork.onClassPath()),
                        input,
                        folder.resolve("arabic"));
        assertThat(arabic.exitCode()).as(arabic.err()).isZero();
        assertSameFiles("arabic", 3);
    }

    @Test
    void exitCodesReachTheCaller() throws Exception {
        Run refused = new Fork(folder).run(Fork.onModulePath(), Run.TARE_MISSING, folder.resolve("refused"));
        assertThat(refused.exitCode()).isEqualTo(2);
        assertThat(refused.out()).isEmpty();
        assertThat(refused.err())
                .contains("/trucks/0/calibrationCatches/0/containers/1/tare")
                .doesNotContain("\tat ");
    }

    private void assertSameFiles(String name, int trucks) throws IOException {
        Path here = folder.resolve("here");
        Path there = folder.resolve(name);
        assertThat(Run.names(there)).isEqualTo(Run.names(here)).hasSize(8 + 2 * trucks);
        for (String file : Run.names(here)) {
            assertThat(there.resolve(file)).hasSameBinaryContentAs(here.resolve(file));
        }
    }

    private static List<String> withoutReport(Run run) {
        return run.outLines().stream()
                .filter(line -> !line.matches("(Report|For the cabs): .*"))
                .toList();
    }

    private static List<String> with(List<String> first, List<String> then) {
        return Stream.concat(first.stream(), then.stream()).toList();
    }
}
