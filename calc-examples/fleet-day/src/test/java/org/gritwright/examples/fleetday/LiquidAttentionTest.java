package org.gritwright.examples.fleetday;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.gritwright.core.document.RejectedDocumentException;
import org.gritwright.core.fleet.day.FleetDay;
import org.gritwright.core.record.Document;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What a boom or a tank wants is attention as a truck's is, and no part of an output says otherwise. */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class LiquidAttentionTest {
    private FleetDay day;

    @TempDir
    Path folder;

    @BeforeAll
    void read() throws IOException, RejectedDocumentException {
        try (InputStream in = Files.newInputStream(Run.LIQUIDS)) {
            day = Document.FLEET_DAY.read(in);
        }
    }

    /** The day with one truck that is right, another, and one tank, and a slip of the pen if there is one. */
    private Run run(String truck, String tank, String right, String wrong) throws IOException {
        FleetDay some = day.withTrucks(day.trucks().stream()
                        .filter(one -> one.id().equals("T-31") || one.id().equals(truck))
                        .toList())
                .withTanks(day.tanks().stream()
                        .filter(one -> one.name().equals(tank))
                        .toList());
        // Routes are for trucks that aren't all there.
        String text = Document.FLEET_DAY.toText(some.withRoutes(List.of()));
        assertThat(text).contains(right);
        Path file = Files.writeString(folder.resolve("day.json"), text.replace(right, wrong));
        return Run.of(
                "--input", file.toString(), "--output", folder.resolve("out").toString(), "--fail-on-attention");
    }

    private String report() throws IOException {
        return Run.text(folder.resolve("out/run-0001/report.html"));
    }

    /** North tank is as strong as is wanted, and so near to the eutectic that nobody can tell the side. */
    @ParameterizedTest
    @ValueSource(strings = {"", "north tank"})
    void whereNothingIsToBeDoneItSucceeds(String tank) throws IOException {
        Run run = run("", tank, "", "");
        assertThat(run.exitCode()).as(run.out() + run.err()).isZero();
        assertThat(run.out()).contains("1 truck: 0 need attention", "1 has nothing to do");
        assertThat(report()).doesNotContain("Tanks that want something");
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '\'', textBlock = """
            brine maker  | ''                          | ''                          | Add 634.7 lb
            calcium tank | ''                          | ''                          | Add 139.3 gal
            tote         | ''                          | ''                          | Too weak, and can
            north tank   | "level": "4100 gal"         | "level": "41000 gal"        | Correct what was written down
            north tank   | "standardUncertainty": "0.3"| "standardUncertainty": "3"  | Read it again, more finely: nobody can tell whether it is off
            north tank   | "9.82 lb/gal"               | "9.4 lb/gal"                | Check liquid, salt and reading
            calcium tank | "target": "29 %"            | "target": "32.4 %"          | Keep it from the cold, or thin it
            """)
    void aTankThatWantsSomethingIsAttention(String tank, String right, String wrong, String words) throws IOException {
        Run run = run("", tank, right, wrong);
        assertThat(run.exitCode()).as(run.out() + run.err()).isEqualTo(FleetDayCommand.NEEDS_ATTENTION);
        String out = run.out().replaceAll("\\s+", " ");
        assertThat(out).contains("1 truck: 0 need attention", "1 tank: 1 needs attention.", words);
        assertThat(out.substring(out.indexOf("Tank " + tank))).doesNotContain("Nothing to do");
        String report = report();
        assertThat(report).contains("Tanks that want something", "1 tank: 1 needs attention.", words);
        int tanks = report.indexOf("<h2>Tanks</h2>");
        assertThat(report.substring(tanks, report.indexOf("</section>", tanks))).doesNotContain("Nothing to do");
    }

    /** As a road-speed check that is still open: it can be used, and nobody can say how good it is. */
    @Test
    void whatNobodyWantedIsToldAndNoFailure() throws IOException {
        Run run = run("", "tote", "\"target\": \"23.3 %\",\n      \"tolerance\": \"0.5 %\",", "");
        // Its density is not the stated one.
        assertThat(run.exitCode()).isEqualTo(FleetDayCommand.NEEDS_ATTENTION);
        Run bare = run("", "brine maker", "\"target\": \"23.3 %\",\n      \"tolerance\": \"0.5 %\",", "");
        assertThat(bare.exitCode()).as(bare.out()).isZero();
        assertThat(bare.out().replaceAll("\\s+", " "))
                .contains("Nothing to compare it with: write down what is wanted");
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '\'', textBlock = """
            A-41 | ''                   | ''                   | Clean, compare or replace the nozzles that are off
            A-41 | "caught": "119 fl oz"| "caught": "96 fl oz" | ''
            A-41 | "caught": "119 fl oz"| "caught": "106 fl oz"| Catch the nozzles for longer
            A-43 | ''                   | ''                   | liquid that it sprays
            """)
    void aBoomThatWantsSomethingIsAttention(String truck, String right, String wrong, String words) throws IOException {
        Run run = run(truck, "", right, wrong);
        boolean wants = !words.isEmpty();
        assertThat(run.exitCode())
                .as(run.out() + run.err())
                .isEqualTo(wants ? FleetDayCommand.NEEDS_ATTENTION : FleetDayCommand.DONE);
        assertThat(run.out()).contains(wants ? "1 needs attention" : "0 need attention");
        assertThat(run.out().replaceAll("\\s+", " ")).contains(wants ? "1 has nothing to do" : "2 have nothing to do");
        String report = report();
        int sheet = report.indexOf("<h3>" + truck + "</h3>");
        String ofTruck = report.substring(sheet, report.indexOf("</article>", sheet));
        if (wants) {
            assertThat(ofTruck).contains(words).doesNotContain("Nothing to do");
        } else {
            assertThat(ofTruck).contains("Nothing to do").doesNotContain("gives too much: worn", "can’t tell");
        }
    }
}
