package org.gritwright.examples.telemetry;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.gritwright.core.spi.Setting;
import org.gritwright.core.telemetry.AsFound;
import org.gritwright.core.telemetry.Onset;
import org.gritwright.core.telemetry.Timeline;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** An error that grew with turns: how many there were in all has to be known before the first row is corrected. */
class TwoPassesTest {
    private static final ZoneOffset YARD = ZoneOffset.ofHours(-6);

    @TempDir
    private static Path folder;

    @Test
    void whatTrulyFellIsFoundByTheSecondPassAndMissedByTheFirst() throws Exception {
        Map<String, TruckPlan> plans = Fixtures.plans(Fixtures.records(folder));
        TruckPlan plan = plans.get("K-08");
        InventedTrips trips = Fixtures.trips(Fixtures.truck("K-08"));
        List<InventedRow> rows = Fixtures.all(trips);
        TruckTotals first = Fixtures.plain(plan.setup(), rows.stream()).totals();
        TruckSetup setup = plan.secondPass(first.sums());
        TruckTotals second = Fixtures.plain(setup, rows.stream()).totals();
        double half = UsUnits.expandedPounds(setup.shaft().total(second.sums()));

        assertThat(plans.values().stream().filter(TruckPlan::isOfTwoPasses)).containsExactly(plan);
        assertThat(UsUnits.pounds(second.sums().laid())).isCloseTo(trips.poundsSeen(), within(half));
        assertThat(UsUnits.pounds(first.sums().laid())).isGreaterThan(trips.poundsSeen() + 2 * half);
        assertThat(second.sums().turned()).isEqualTo(first.sums().turned());
    }

    private static String sentence(double percent, Onset onset, Optional<Corrected.Passes> passes) {
        AsFound found = new AsFound(
                "1",
                Setting.none(),
                Instant.parse("2026-10-19T15:30:00Z"),
                Instant.parse("2027-01-12T14:20:00Z"),
                Measured.of(
                        Amounts.of(percent, SpreadingUnits.PERCENT),
                        Amounts.of(0.5, SpreadingUnits.PERCENT),
                        Double.POSITIVE_INFINITY));
        return new Corrected("K-08", new Timeline.Correction(found, onset), passes).sentence(YARD);
    }

    @Test
    void twoPassesAreToldWithWhatEachCameTo() {
        assertThat(sentence(
                        8,
                        Onset.Gradually.WITH_TURNS,
                        Optional.of(new Corrected.Passes(1_234_567, 453_592_370_000L, 430_000_000_000L))))
                .isEqualTo("K-08, slot 1: on 2027-01-12 a verification found that its display counted 8.0 % +/- 1.0 %"
                        + " (95 %) more than fell. It is taken to have grown with the turns of its shaft since"
                        + " 2026-10-19, in two passes: the first counted 1,234,567 pulse and 1,000,000 lb over the whole season; the"
                        + " second made of that 947,988 lb.");
    }

    @Test
    void whatIsntCorrectedIsToldToo() {
        assertThat(sentence(-0.4, Onset.Gradually.WITH_TURNS, Optional.empty()))
                .endsWith("0.4 % +/- 1.0 % (95 %) less than fell. That may be none: nothing is corrected.");
        assertThat(sentence(8, new Onset.AtOnce(Instant.parse("2027-01-12T14:20:00Z")), Optional.empty()))
                .endsWith("It is taken to have come just then: what was laid before isn't corrected.");
        assertThat(sentence(8, new Onset.AtOnce(Instant.parse("2026-10-19T15:30:00Z")), Optional.empty()))
                .endsWith("It is taken to have been there since 2026-10-19: all since then is corrected by it.");
        assertThat(sentence(8, Onset.Gradually.WITH_TIME, Optional.empty()))
                .endsWith("It is taken to have grown with time since 2026-10-19.");
    }
}
