package org.gritwright.examples.telemetry;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.gritwright.core.telemetry.RowStatus;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The brine that wets the salt. */
class LiquidsTest {
    @TempDir
    private static Path folder;

    private static Map<String, TruckSetup> setups;

    @BeforeAll
    static void readRecords() throws Exception {
        setups = Fixtures.setups(Fixtures.records(folder));
    }

    private static TruckSeason season(String truck, List<InventedRow> rows) {
        return Fixtures.plain(setups.get(truck), rows.stream());
    }

    private static double gallonsPerTon(TruckSeason season) {
        return UsUnits.gallonsPerTon(season.totals().liquid().wetted()).orElseThrow();
    }

    @Test
    void whatTrulyRanIsWithinTheUncertaintyOfWhatWasCounted() {
        for (String truck : List.of("K-01", "K-03")) {
            InventedTrips trips = Fixtures.trips(Fixtures.truck(truck));
            TruckSeason season = season(truck, Fixtures.all(trips));
            Liquid liquid = season.totals().liquid();
            assertThat(UsUnits.gallons(liquid.laid().amount()))
                    .as(truck)
                    .isCloseTo(trips.gallonsSeen(), within(UsUnits.expandedGallons(liquid.laid())));
            assertThat(UsUnits.expandedGallons(liquid.laid())).isLessThan(trips.gallonsSeen() / 50);
        }
    }

    @Test
    void howMuchWetsATonIsToldBesideWhatIsAskedFor() {
        assertThat(setups.get("K-03").liquid().orElseThrow().statedGallonsPerTon())
                .isCloseTo(10, within(1e-9));
        assertThat(gallonsPerTon(season("K-01", Fixtures.all(Fixtures.trips(Fixtures.truck("K-01"))))))
                .isCloseTo(10, within(0.15));
        assertThat(gallonsPerTon(season("K-03", Fixtures.all(Fixtures.trips(Fixtures.truck("K-03"))))))
                .isCloseTo(6.5, within(0.1));
    }

    /** The liquid's controller alone drops out: what both lost is in neither part of the ratio. */
    @Test
    void aCounterThatRestartsOrIsntReadLosesItsRowAndNotTheRatio() {
        List<InventedRow> rows =
                new ArrayList<>(Fixtures.trips(Fixtures.truck("K-01")).next());
        long zero = rows.get(5000).liquidPulses() - 3;
        for (int i = 5000; i < rows.size(); i++) {
            rows.set(
                    i,
                    withLiquid(
                            rows.get(i),
                            rows.get(i).liquidPulses() == null
                                    ? null
                                    : Math.floorMod(rows.get(i).liquidPulses() - zero, 65_536L)));
        }
        for (int i = 3000; i < 3100; i++) {
            rows.set(i, withLiquid(rows.get(i), null));
        }
        TruckSeason season = season("K-01", rows);

        assertThat(season.totals().reasons())
                .containsEntry("liquid: restarted", 1L)
                .hasEntrySatisfying(
                        "liquid: no reading", many -> assertThat(many).isBetween(100L, 110L));
        assertThat(gallonsPerTon(season)).isCloseTo(10, within(0.15));
    }

    private static InventedRow withLiquid(InventedRow row, Long pulses) {
        return new InventedRow(
                row.millis(),
                row.shaftPulses(),
                row.roadPulses(),
                row.gateInches(),
                row.slot(),
                row.mode(),
                row.roadId(),
                pulses);
    }

    /** 20 gal/min is the most: 645 pulses in a second, and rows that say a second may be two apart. The display holds 0.0155 gal/rev at 30 pulse/rev. */
    @Test
    void moreThanCanRunIsToldAndNotCounted() {
        List<InventedRow> rows =
                new ArrayList<>(Fixtures.trips(Fixtures.truck("K-01")).next().subList(2000, 2100));
        for (int i = 0; i < rows.size(); i++) {
            rows.set(i, withLiquid(rows.get(i), i < 50 ? 600L * i : 600L * i + 1400));
        }
        TruckSeason season = season("K-01", rows);

        assertThat(season.totals().reasons()).isEqualTo(Map.of("liquid: leap", 1L));
        assertThat(UsUnits.gallons(season.totals().liquid().laid().amount()))
                .isCloseTo(98 * 600 / 30.0 * 0.0155, within(1e-6));
    }

    @Test
    void aCounterThatNobodyCalibratedIsTold() {
        List<InventedRow> rows = new ArrayList<>();
        for (InventedRow row : Fixtures.trips(Fixtures.truck("K-06")).next()) {
            rows.add(withLiquid(row, row.shaftPulses() / 7));
        }
        TruckSeason season = season("K-06", rows);

        assertThat(season.totals().reasons()).containsKey("liquid: no calibration");
        assertThat(season.totals().liquid().isMetered()).isFalse();
    }

    @Test
    void whatOneCounterPassesOverWaitsForTheOther() {
        Wetting wetting = new Wetting();
        wetting.add(RowStatus.FIRST, 0, RowStatus.FIRST, 0);
        wetting.add(RowStatus.LAID, 10, RowStatus.IMPOSSIBLE_READING, 0);
        assertThat(wetting.taken()).isEqualTo(Wetting.Sums.NONE);
        wetting.add(RowStatus.LAID, 10, RowStatus.LAID, 8);
        wetting.add(RowStatus.DUPLICATE, 0, RowStatus.DUPLICATE, 0);
        wetting.add(RowStatus.LAID, 10, RowStatus.RESTARTED, 0);
        wetting.add(RowStatus.GAP, 0, RowStatus.LAID, 4);
        wetting.add(RowStatus.LAID, 5, RowStatus.STANDING, 0);

        assertThat(wetting.taken()).isEqualTo(new Wetting.Sums(25, 8));
    }
}
