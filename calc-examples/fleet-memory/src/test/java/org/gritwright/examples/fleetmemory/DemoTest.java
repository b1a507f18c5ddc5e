package org.gritwright.examples.fleetmemory;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The demo finds what was invented, and nothing else. */
class DemoTest {
    private static final Pattern ISO_TIME = Pattern.compile("-[0-9]{2}T[0-9]{2}:[0-9]{2}");

    @TempDir
    private Path folder;

    @Test
    void theDemoFindsWhatWasInvented() throws IOException {
        Fixtures.Run run = Fixtures.Run.of("demo", "--output", folder.toString());

        assertThat(run.err()).isEmpty();
        assertThat(run.code()).isZero();
        String due = run.out().substring(run.out().indexOf("Due on"), run.out().indexOf("What leaves per revolution"));
        // The slot that was lost, and the repair nobody calibrated after.
        assertThat(due)
                .startsWith(
                        "Due on 2026-02-10 or within a month, with a tolerance of ±4 %: 2 calibration points of 24 trucks")
                .contains(Caution.line())
                .contains("C-09, road salt at 2 in", "nobody knows what the display holds")
                .contains("C-20, road salt at 2 in", "hydraulic motor replaced");
        assertThat(due).contains("expected error unknown, counted as 100 %");
        // What a season found, although each catch of the truck is right; the suspects of a pile's missing salt aren't
        // accused.
        assertThat(due)
                .contains("in doubt all the same:\nC-16\n  Season 2024/25: Truck C-16 over-reports by 7.3 ± 0.7 %")
                .contains("doesn't show it", "to do: one more verification catch first")
                .doesNotContain("C-01", "C-12", "C-22");
        int pages = run.out().indexOf("Wrote 24 pages of trucks; begin with ");
        String drift = run.out()
                .substring(
                        run.out().indexOf("What leaves per revolution"),
                        run.out().indexOf("\nSeason "));
        // The chain that wears by 2.2 % a year. What the new chain of C-12 changed is known since its calibration.
        assertThat(drift).contains("C-07, road salt at 2 in:", " a year, by ", "No more: 25 points");
        assertThat(drift.lines().filter(line -> line.startsWith("C-"))).hasSize(1);

        assertThat(run.out().substring(pages).strip())
                .endsWith(folder.resolve("run-0001/pages/index.html").toString());
        assertThat(folder.resolve("run-0001/pages/truck-c-07.html")).isNotEmptyFile();

        // Times are written for people.
        assertThat(run.out())
                .contains("not checked before 2025-01-16 10:24 (UTC−6)")
                .doesNotContainPattern(ISO_TIME);
        try (DirectoryStream<Path> made = Files.newDirectoryStream(folder.resolve("run-0001/pages"))) {
            for (Path page : made) {
                assertThat(page).content(UTF_8).doesNotContainPattern(ISO_TIME);
            }
        }

        String database = folder.resolve("run-0001/fleet-memory.db").toString();
        assertThat(Fixtures.Run.of("check", "--database", database).out())
                .contains("all whole")
                .contains("Nothing contradicts itself.");
        assertThat(Fixtures.Run.of("truck", "C-09", "--database", database).out())
                .contains("slot 1: nobody knows, since 2026-01-27, controller reset or replaced");
        assertThat(Fixtures.Run.of("truck", "C-03", "--database", database).out())
                .doesNotContain("straightened");
        assertThat(Fixtures.Run.of("truck", "C-05", "--database", database).out())
                .contains("slot 1, road salt at 2 in: ", "slot 2, road salt at 3 in: ");
        // What came later doesn't count.
        assertThat(Fixtures.Run.of("drift", "--on", "2023-11-30", "--database", database)
                        .out())
                .contains("26 points show nothing; 26 of them with fewer than 5 values");
        assertThat(Fixtures.Run.of("drift", "--on", "2026-02-10", "--database", database)
                        .out()
                        .strip())
                .isEqualTo(drift.strip());
        String season = Fixtures.Run.of("season", "--database", database).out();
        assertThat(run.out()).contains(season.strip());
        // What weighed loads show of C-16 is found first, then what the lost ticket left.
        // One error has two sizes, which would else contradict each other.
        assertThat(season)
                .contains(
                        "Pile north: 93 ± 29 ton",
                        "Here each is taken alone, and above together",
                        "Pile north: 97 ± 29 ton")
                .doesNotContain("which says −0.00", "which says -0.00");
        assertThat(season)
                .contains("Truck C-16 over-reports by 7", "Ticket 2045 isn't in the season's list")
                .containsSubsequence(
                        "Truck C-16 over-reports by 7",
                        "Pile north: ",
                        " aren't written down: a delivery ticket is missing");
        // The other truck that is as far off isn't found, and isn't said to be right.
        assertThat(season.lines().filter(line -> line.startsWith("Of 19 trucks not even an over-report of 10 %")))
                .singleElement()
                .asString()
                .contains("C-22", "Weigh some loads of each");
        assertThat(season.lines().filter(line -> line.startsWith("Truck "))).noneMatch(line -> line.contains("C-22"));
        assertThat(Fixtures.Run.of("demo", "--output", folder.toString()).out()).contains("run-0002");
    }
}
