package org.gritwright.examples.telemetry;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import org.gritwright.core.telemetry.TimelineEntry;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A truck that was caught at 2, 3 and 4 in: 2.80 lb/rev an inch truly fall, less 0.14 in. */
class CurvesTest {
    @TempDir
    private static Path folder;

    private static Map<String, TruckPlan> plans;

    @BeforeAll
    static void readRecords() throws Exception {
        plans = Fixtures.plans(Fixtures.records(folder));
    }

    /** A revolution a second, 90 pulses each. */
    private static TruckSeason tenRevolutions(double gateInches) {
        return Fixtures.plain(
                plans.get("K-07").setup(),
                IntStream.rangeClosed(0, 10)
                        .mapToObj(i -> new InventedRow(
                                1_796_000_000_000L + 1000L * i,
                                90L * i,
                                50L * i,
                                gateInches,
                                "road salt",
                                0,
                                "Heron Road",
                                null)));
    }

    @Test
    void betweenTheCaughtOpeningsTheCurveCounts() {
        for (double inches : new double[] {2, 2.5, 3, 3.7, 4}) {
            TruckTotals totals = tenRevolutions(inches).totals();
            assertThat(UsUnits.pounds(totals.sums().laid()))
                    .as("%s in", inches)
                    .isCloseTo(10 * 2.80 * (inches - 0.14), within(0.6));
            assertThat(totals.reasons()).isEmpty();
        }
    }

    @Test
    void beyondThemEachRowSaysSo() {
        for (double inches : new double[] {1.9, 4.6}) {
            TruckTotals totals = tenRevolutions(inches).totals();
            assertThat(totals.sums().laid()).isZero();
            assertThat(totals.reasons()).isEqualTo(Map.of("shaft: no such setting", 10L));
        }
    }

    @Test
    void aSlotWithOneValueStaysWithIt() {
        assertThat(held("K-07")).hasSize(1).allMatch(TimelineEntry.Curve.class::isInstance);
        // Caught at two openings, and each has a slot of its own.
        assertThat(held("K-04")).hasSize(2).allMatch(TimelineEntry.Value.class::isInstance);
    }

    private static List<TimelineEntry.Held> held(String truck) {
        return plans.get(truck).timeline().entries().stream()
                .map(TimelineEntry::held)
                .toList();
    }
}
