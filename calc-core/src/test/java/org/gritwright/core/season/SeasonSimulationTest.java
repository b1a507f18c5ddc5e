package org.gritwright.core.season;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Mass;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.hipparchus.distribution.discrete.BinomialDistribution;
import org.junit.jupiter.api.Test;

/** Invented seasons with known truth, fixed seeds; limits were stated before the first run. */
class SeasonSimulationTest {
    private static final int SEASONS = 400;
    private static final int LOST_TICKETS = 200;
    private static final String PILE = "pile 1";
    private static final double SURE = 0.0005;
    private static final double COVERED = 1.959964;

    private static int least(int trials, double probability) {
        return new BinomialDistribution(trials, probability).inverseCumulativeProbability(SURE);
    }

    private static int most(int trials, double probability) {
        return new BinomialDistribution(trials, probability).inverseCumulativeProbability(1 - SURE);
    }

    /** One of the season's trucks. */
    private static String someTruck(SimulatedSeason season, long seed) {
        List<TruckSeason> trucks = season.season().trucks();
        return trucks.get(new SplittableRandom(seed + 1_000_000).nextInt(trucks.size()))
                .id();
    }

    private static boolean isOf(Suspicion suspicion, String truck) {
        return suspicion instanceof Suspicion.TruckReports one && one.truck().equals(truck);
    }

    private static List<Suspicion> named(FoundError found) {
        List<Suspicion> named = new ArrayList<>(List.of(found.what()));
        named.addAll(found.confusion().same());
        found.confusion().alike().forEach(one -> named.add(one.other()));
        return named;
    }

    @Test
    void healthySeasonsRaiseAlarmsAtAboutTheStatedRisk() {
        int alarms = 0;
        int worse = 0;
        for (long seed = 0; seed < SEASONS; seed++) {
            SeasonBalance balance = SimulatedSeason.healthy(seed).season().balance();
            alarms += balance.found().isEmpty() ? 0 : 1;
            worse += balance.asStated().test().holds(0.05) ? 0 : 1;
        }
        // Šidák's limit holds for any correlation, so that the risk may be less.
        assertThat(alarms).isBetween(least(SEASONS, 0.025), most(SEASONS, 0.05));
        assertThat(worse).isBetween(least(SEASONS, 0.05), most(SEASONS, 0.05));
    }

    @Test
    void ninetyFivePercentIntervalsHold() {
        int factors = 0;
        int closings = 0;
        for (long seed = 0; seed < SEASONS; seed++) {
            SimulatedSeason season = SimulatedSeason.healthy(seed);
            SeasonFigures figures = season.season().balance().asStated();
            String truck = someTruck(season, seed);
            Measured<Dimensionless> factor = figures.truck(truck).factor().orElseThrow();
            double off = Amounts.si(Dimensionless.class, factor.value()) - season.factor(truck);
            factors += Math.abs(off) <= COVERED * u(factor) ? 1 : 0;
            Flow drawn = figures.piles().get(0).flows().stream()
                    .filter(flow -> flow.kind() == Flow.Kind.TRUCK)
                    .findFirst()
                    .orElse(null);
            closings += drawn == null || isCovered(drawn, season) ? 1 : 0;
        }
        assertThat(factors).isBetween(least(SEASONS, 0.95), most(SEASONS, 0.95));
        assertThat(closings).isBetween(least(SEASONS, 0.95), most(SEASONS, 0.95));
    }

    private static double u(Measured<Dimensionless> measured) {
        return Amounts.si(Dimensionless.class, measured.standardUncertainty().orElseThrow());
    }

    private static boolean isCovered(Flow drawn, SimulatedSeason season) {
        double indicated = season.season().trucks().stream()
                .filter(truck -> truck.id().equals(drawn.name()))
                .flatMap(truck -> truck.draws().stream())
                .filter(draw -> draw.pile().equals(PILE))
                .mapToDouble(draw -> Amounts.in(draw.indicated(), SpreadingUnits.SHORT_TON))
                .sum();
        double off =
                Amounts.in(drawn.mass().value(), SpreadingUnits.SHORT_TON) - indicated * season.factor(drawn.name());
        Quantity<Mass> u = drawn.mass().standardUncertainty().orElseThrow();
        return Math.abs(off) <= COVERED * Amounts.in(u, SpreadingUnits.SHORT_TON);
    }

    @Test
    void theWrongTruckIsFirstWhereItCanBeToldAndNamedWhereItCannot() {
        int identifiable = 0;
        int first = 0;
        int confused = 0;
        int found = 0;
        int named = 0;
        int saidWhy = 0;
        for (long seed = 0; seed < SEASONS; seed++) {
            SimulatedSeason healthy = SimulatedSeason.healthy(seed);
            String truck = someTruck(healthy, seed);
            SeasonBalance before = healthy.season().balance();
            Optional<Quantity<Dimensionless>> smallest = before.smallestOverReport(truck);
            assertThat(smallest).isPresent();
            double overReport = Amounts.si(Dimensionless.class, smallest.get());
            SeasonBalance balance = SimulatedSeason.overReporting(seed, truck, overReport)
                    .season()
                    .balance();
            List<FoundError> errors = balance.found();
            if (before.confusedWith(truck).orElseThrow().isNone()) {
                identifiable++;
                first += !errors.isEmpty() && isOf(errors.get(0).what(), truck) ? 1 : 0;
            } else {
                confused++;
                if (!errors.isEmpty()) {
                    found++;
                    named += named(errors.get(0)).stream().anyMatch(one -> isOf(one, truck)) ? 1 : 0;
                    saidWhy += errors.get(0).confusion().reasons().isEmpty() ? 0 : 1;
                }
            }
        }
        assertThat(identifiable).isGreaterThan(100);
        assertThat(first).isGreaterThanOrEqualTo((int) Math.ceil(0.9 * identifiable));
        assertThat(confused).isGreaterThan(100);
        assertThat(named).isGreaterThanOrEqualTo((int) Math.ceil(0.9 * confused));
        assertThat(saidWhy).isGreaterThanOrEqualTo((int) Math.ceil(0.95 * found));
    }

    @Test
    void aLostTicketIsFoundAtItsPile() {
        int identifiable = 0;
        int first = 0;
        int named = 0;
        for (long seed = 0; seed < LOST_TICKETS; seed++) {
            // A pile that is larger at the end is known less well: what is found follows from the season as it was
            // written down.
            double tons = 0;
            for (int i = 0; i < 4; i++) {
                SeasonBalance written =
                        SimulatedSeason.ticketLost(seed, PILE, tons).season().balance();
                Quantity<Mass> u =
                        ofPile(written).missing().standardUncertainty().orElseThrow();
                tons = written.power().nonCentrality() * Amounts.in(u, SpreadingUnits.SHORT_TON);
            }
            SeasonBalance balance =
                    SimulatedSeason.ticketLost(seed, PILE, tons).season().balance();
            List<FoundError> errors = balance.found();
            boolean isFirst = !errors.isEmpty() && isOfPile(errors.get(0).what());
            boolean isNamed =
                    !errors.isEmpty() && named(errors.get(0)).stream().anyMatch(SeasonSimulationTest::isOfPile);
            if (balance.confusedWith(ofPile(balance)).isNone()) {
                identifiable++;
                first += isFirst ? 1 : 0;
            } else {
                named += isNamed ? 1 : 0;
            }
        }
        assertThat(identifiable).isGreaterThan(20);
        // Power 95 %, and now and then another error fits better by chance.
        assertThat(first).isGreaterThanOrEqualTo(least(identifiable, 0.9));
        assertThat(first + named).isGreaterThanOrEqualTo((int) Math.ceil(0.9 * LOST_TICKETS));
    }

    private static Suspicion.PileOff ofPile(SeasonBalance balance) {
        return balance.suspicions().stream()
                .filter(SeasonSimulationTest::isOfPile)
                .map(Suspicion.PileOff.class::cast)
                .findFirst()
                .orElseThrow();
    }

    private static boolean isOfPile(Suspicion suspicion) {
        return suspicion instanceof Suspicion.PileOff off && off.pile().equals(PILE);
    }
}
