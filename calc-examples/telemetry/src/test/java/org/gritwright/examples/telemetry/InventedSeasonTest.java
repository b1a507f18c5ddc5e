package org.gritwright.examples.telemetry;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.gritwright.core.telemetry.RateShares;
import org.gritwright.core.telemetry.RowStatus;
import org.gritwright.core.telemetry.RowSums;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Invented trucks whose truth is known, without the engine. */
class InventedSeasonTest {
    @TempDir
    private static Path folder;

    private static Map<String, TruckSetup> setups;

    @BeforeAll
    static void readRecords() throws Exception {
        setups = Fixtures.setups(Fixtures.records(folder));
    }

    @Test
    void theSameSeedGivesTheSameRowsAndAnotherGivesOthers() {
        InventedTruck truck = InventedFleet.trucks().get(4);
        assertThat(Fixtures.all(Fixtures.trips(truck))).isEqualTo(Fixtures.all(Fixtures.trips(truck)));
        assertThat(Fixtures.all(InventedFleet.season(truck, 4, 2, 7)))
                .isNotEqualTo(Fixtures.all(Fixtures.trips(truck)));
    }

    @Test
    void whatTrulyFellIsWithinTheUncertaintyOfWhatWasCounted() {
        for (InventedTruck truck : InventedFleet.trucks()) {
            InventedTrips trips = Fixtures.trips(truck);
            TruckSeason season = Fixtures.plain(setups.get(truck.id()), Fixtures.all(trips).stream());
            Summary.Line line = line(truck.id(), season.totals());
            assertThat(UsUnits.pounds(line.laid().amount()))
                    .as(truck.id())
                    .isBetween(trips.poundsSeen() - line.expandedPounds(), trips.poundsSeen() + line.expandedPounds());
            // What nobody sees is missing, and isn't small where the radio was lost for minutes.
            assertThat(trips.poundsLaid()).isGreaterThanOrEqualTo(trips.poundsSeen());
        }
    }

    private static Summary.Line line(String truck, TruckTotals totals) {
        return Summary.of(Map.of(truck, totals), setups, new TreeMap<>(), List.of())
                .trucks()
                .get(0);
    }

    @Test
    void aScaleThatTrucksShareDoesNotAverageOut() {
        Summary summary = Fixtures.summary(Fixtures.plainFleet(setups), setups);
        double independent = Math.sqrt(summary.trucks().stream()
                .mapToDouble(line -> line.expandedPounds() * line.expandedPounds())
                .sum());
        assertThat(summary.fleet().expandedPounds()).isGreaterThan(1.02 * independent);
        assertThat(summary.fleet().laid().sharedErrors())
                .containsKeys("scale-span of platform 1", "scale-span of hanging 2");
    }

    @Test
    void everyTroubleIsThereAndGetsItsStatus() {
        Map<String, TruckSeason> fleet = Fixtures.plainFleet(setups);
        assertThat(reasons(fleet.get("K-01"))).containsOnly("gap", "no reading", "laid where no road is named");
        assertThat(reasons(fleet.get("K-02"))).containsOnly("gap", "laid where no road is named");
        assertThat(reasons(fleet.get("K-07"))).contains("no such setting");
        assertThat(reasons(fleet.get("K-03"))).contains("gap", "restarted");
        assertThat(reasons(fleet.get("K-04"))).contains("unknown slot");
        assertThat(reasons(fleet.get("K-05"))).contains("out of order", "duplicate", "impossible time");
        RowSums ofFirst = fleet.get("K-01").totals().sums();
        // A pause between trips each; and a counter of 16 bits that was around many times.
        assertThat(ofFirst.rows(RowStatus.GAP)).isEqualTo(3);
        assertThat(ofFirst.turned()).isGreaterThan(5 * 65_536L);
        assertThat(ofFirst.unattributed()).isZero();
        assertThat(fleet.get("K-02").totals().sums().unattributed()).isGreaterThan(10_000);
    }

    private static Set<String> reasons(TruckSeason season) {
        return season.badRows().stream().map(BadRow::why).collect(Collectors.toSet());
    }

    @Test
    void piecesAndHoursAddUpToWhatWasLaid() {
        Fixtures.plainFleet(setups).forEach((id, season) -> {
            long laid = season.totals().sums().laid();
            assertThat(season.hours().amount()).as(id).isEqualTo(laid);
            assertThat(season.trips().stream()
                            .mapToLong(trip -> trip.all().amount())
                            .sum())
                    .as(id)
                    .isEqualTo(laid);
            assertThat(season.trips()).as(id).hasSize(4);
        });
    }

    @Test
    void verdictsOfPiecesAddUpToTheSharesOfTheSeason() {
        TruckSeason worn = Fixtures.plainFleet(setups).get("K-06");
        long below = worn.trips().stream()
                .flatMap(trip -> trip.pieces(worn.target()).stream())
                .filter(piece -> piece.verdict() == Verdict.BELOW)
                .mapToLong(Trip.Piece::spreadingMillimeters)
                .sum();
        assertThat(below).isEqualTo(worn.totals().shares().below()).isGreaterThan(50_000_000);
    }

    @Test
    void aTruckThatCanFollowIsWithinItsBandWhereSpreadingWasOnAndTheRestIsNoShortfall() {
        RateShares shares = Fixtures.plainFleet(setups).get("K-01").totals().shares();
        long spreading = shares.below() + shares.within() + shares.above();

        assertThat(shares.within()).isGreaterThan(spreading * 9 / 10);
        assertThat(shares.below()).isLessThan(spreading / 50);
    }

    @Test
    void aNewChainIsEvaluatedWithItsOwnValueFromWhenItWasEntered() {
        InventedTruck truck = InventedFleet.trucks().get(1);
        TruckSeason season = Fixtures.plain(setups.get("K-02"), Fixtures.all(Fixtures.trips(truck)).stream());
        // Both calibrations' own errors are in it: each laid something.
        assertThat(line("K-02", season.totals()).laid().sharedErrors().keySet())
                .anyMatch(id -> id.contains(", 2026-10-19"))
                .anyMatch(id -> id.contains(", 2027-01-12"));
    }
}
