package org.gritwright.examples.fleetmemory;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The demo finds what was invented, and nothing else. */
class DemoTest {
    @TempDir
    private Path folder;

    @Test
    void theDemoFindsWhatWasInvented() {
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
        String drift = run.out().substring(run.out().indexOf("What leaves per revolution"));
        // The chain that wears by 2.2 % a year. What the new chain of C-12 changed is known since its calibration.
        assertThat(drift).contains("C-07, road salt at 2 in:", " a year, by ", "No more: 25 points");
        assertThat(drift.lines().filter(line -> line.startsWith("C-"))).hasSize(1);

        String database = folder.resolve("run-0001/fleet-memory.db").toString();
        assertThat(Fixtures.Run.of("check", "--database", database).out())
                .contains("all whole")
                .contains("Nothing contradicts itself.");
        assertThat(Fixtures.Run.of("truck", "C-09", "--database", database).out())
                .contains("slot 1: nobody knows, since 2026-01-27, controller set back");
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
                        .lines()
                        .toList())
                .isEqualTo(drift.lines().toList());
        assertThat(Fixtures.Run.of("demo", "--output", folder.toString()).out()).contains("run-0002");
    }
}
