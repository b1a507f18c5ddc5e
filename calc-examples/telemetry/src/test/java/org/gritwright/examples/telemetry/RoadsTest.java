package org.gritwright.examples.telemetry;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.SortedMap;
import java.util.TreeMap;
import org.gritwright.core.telemetry.PieceAxis;
import org.gritwright.core.telemetry.RateShares;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What was laid on which road, by one truck or several. */
class RoadsTest {
    private static final double MILLIGRAMS_PER_POUND = 453_592.37;

    @TempDir
    private static Path folder;

    private static Map<String, TruckSetup> setups;
    private static Map<String, TruckSeason> fleet;

    @BeforeAll
    static void evaluate() throws Exception {
        setups = Fixtures.setups(Fixtures.records(folder));
        fleet = Fixtures.plainFleet(setups);
    }

    @Test
    void roadsAndWhatHasNoneAreAllThatWasLaidAndAllOfTheWay() {
        fleet.forEach((id, season) -> {
            long laid = 0;
            long liquid = 0;
            Way way = Way.NONE;
            for (RoadTotals road : season.roads().values()) {
                laid += road.laid().amount();
                liquid += road.liquid().amount();
                way = way.plus(road.way());
            }
            TruckTotals totals = season.totals();
            assertThat(laid)
                    .as(id)
                    .isEqualTo(totals.sums().laid())
                    .isEqualTo(season.hours().amount());
            assertThat(liquid).as(id).isEqualTo(totals.liquid().laid().amount());
            assertThat(way).as(id).isEqualTo(totals.way());
            assertThat(season.roads().get("").laid().amount())
                    .isEqualTo(totals.nowhere())
                    .isPositive();
            assertThat(season.roads().get("").way().spreading()).as(id).isPositive();
        });
    }

    /** The display holds 6.19 lb/rev at 60 pulse/rev, and no counter that rolls over. */
    @Test
    void rowsOfAllRoadsAddUpToTheRoundedWhole() {
        TruckSetup setup = setups.get("K-06");
        TruckPass pass = new TruckPass(setup, PieceAxis.everyLength(Fixtures.OPTIONS.piece()), new Buffers());
        Random random = new Random(7);
        String[] names = {"Heron Road", "", "Mill Road", "Alder Road"};
        long start = 1_796_000_000_000L;
        long pulses = 40_000;
        long first = pulses;
        int road = TruckPass.NO_ROAD;
        for (int i = 0; i < 10_000; i++) {
            if (random.nextInt(37) == 0) {
                road = pass.road(names[random.nextInt(names.length)]);
            }
            pass.add(start + 1000L * i, pulses, 100L * i, Double.NaN, setup.slot("1"), 0, road, BadRow.NO_READING);
            pulses += i + 1 < 10_000 ? random.nextInt(3) : 0;
        }
        double perPulse = 6.19 * MILLIGRAMS_PER_POUND / 60;
        long whole = Math.round(perPulse * pulses) - Math.round(perPulse * first);
        TruckSeason season = pass.finish();

        assertThat(season.roads()).hasSize(4);
        assertThat(season.roads().values().stream()
                        .mapToLong(one -> one.laid().amount())
                        .sum())
                .isEqualTo(whole);
    }

    @Test
    void whatTrulyFellOnARoadIsWithinTheUncertaintyOfWhatWasCounted() {
        Map<String, Double> truth = new TreeMap<>();
        for (InventedTruck truck : InventedFleet.trucks()) {
            InventedTrips trips = Fixtures.trips(truck);
            trips.forEachRemaining(trip -> {});
            trips.poundsSeenByRoad().forEach((road, pounds) -> truth.merge(road, pounds, Double::sum));
        }
        SortedMap<String, RoadTotals> roads = Fixtures.roads(fleet.values());

        assertThat(roads).hasSize(6);
        assertThat(truth).hasSize(5);
        truth.forEach((name, pounds) -> {
            RoadTotals road = roads.get(name);
            assertThat(UsUnits.pounds(road.laid().amount()))
                    .as(name)
                    .isCloseTo(pounds, within(UsUnits.expandedPounds(road.laid())));
        });
    }

    @Test
    void itDoesntMatterInWhichOrderTrucksAreAdded() {
        SortedMap<String, RoadTotals> roads = Fixtures.roads(fleet.values());
        Random random = new Random(3);
        for (int i = 0; i < 20; i++) {
            List<TruckSeason> shuffled = new ArrayList<>(fleet.values());
            Collections.shuffle(shuffled, random);
            assertThat(Fixtures.roads(shuffled)).isEqualTo(roads);
        }
        // Three trucks of either round go over the bridge.
        assertThat(roads.get("Ferry Bridge").way().spreading())
                .isGreaterThan(fleet.get("K-01")
                                .roads()
                                .get("Ferry Bridge")
                                .way()
                                .spreading()
                        + fleet.get("K-02").roads().get("Ferry Bridge").way().spreading());
    }

    @Test
    void theTruckThatCantFollowIsBelowItsBandOnEachOfItsRoads() {
        fleet.get("K-06").roads().forEach((name, road) -> {
            RateShares shares = road.shares();
            if (!name.isEmpty()) {
                assertThat(shares.below()).as(name).isGreaterThan(road.way().spreading() / 5);
                assertThat(UsUnits.pounds(road.placed())).isLessThan(UsUnits.pounds(road.wantedMilligrams()));
            }
            assertThat(shares.below() + shares.within() + shares.above())
                    .isEqualTo(name.isEmpty() ? 0 : road.way().spreading());
        });
    }

    @Test
    void aRoadThatIsntNamedWhileSomethingIsLaidIsTold() {
        TruckSeason season = fleet.get("K-02");
        assertThat(season.badRows()).anySatisfy(row -> {
            assertThat(row.reason()).isEqualTo("road id: laid where no road is named");
            assertThat(row.isUncounted()).isFalse();
        });
        assertThat(season.totals().reasons()).doesNotContainKey("road id: laid where no road is named");
    }
}
