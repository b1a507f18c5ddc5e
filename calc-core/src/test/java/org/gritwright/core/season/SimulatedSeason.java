package org.gritwright.core.season;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SplittableRandom;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Mass;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;

/**
 * An invented season with known truth. All errors are drawn from what is stated, but for one that may be put in: a truck that reports more than
 * its verification says, or a delivery that isn't written down. With the same seed all else is the same.
 */
final class SimulatedSeason {
    private static final double VERIFICATION = 0.015;
    private static final double SCALE = 0.005;
    private static final double LOAD = 0.004;
    private static final double DENSITY = 0.01;
    private static final double SURVEY = 0.015;
    private static final double SUPPLIER = 0.002;
    private static final double TICKET = 0.003;
    private static final double LOST = 4;

    private final Map<String, Double> factors = new HashMap<>();
    private final Map<String, Double> commonErrors = new HashMap<>();
    private final List<String> piles = new ArrayList<>();
    private final SplittableRandom random;
    private final Season season;

    /** Nothing is wrong. */
    static SimulatedSeason healthy(long seed) {
        return new SimulatedSeason(seed, "", 0, "", 0);
    }

    /** A truck reports so much more than its verification says. */
    static SimulatedSeason overReporting(long seed, String truck, double ratio) {
        return new SimulatedSeason(seed, truck, ratio, "", 0);
    }

    /** So many tons came to a pile and aren't written down. */
    static SimulatedSeason ticketLost(long seed, String pile, double tons) {
        return new SimulatedSeason(seed, "", 0, pile, tons);
    }

    private SimulatedSeason(long seed, String wrong, double overReport, String lostAt, double lostTons) {
        this.random = new SplittableRandom(seed);
        int pileCount = random.nextInt(3, 6);
        int truckCount = random.nextInt(6, 12);
        for (int i = 1; i <= pileCount; i++) {
            piles.add("pile " + i);
        }
        for (String name : List.of("crew", "loader 1", "loader 2", "supplier 1", "supplier 2")) {
            commonErrors.put(name, random.nextGaussian());
        }
        Map<String, Double> drawn = new HashMap<>();
        List<TruckSeason> trucks = new ArrayList<>();
        for (int i = 1; i <= truckCount; i++) {
            trucks.add(truck(String.valueOf(i), String.valueOf(i).equals(wrong) ? overReport : 0, drawn));
        }
        List<Pile> all = new ArrayList<>();
        for (String pile : piles) {
            all.add(pile(pile, drawn.getOrDefault(pile, 0.0), pile.equals(lostAt) ? lostTons : 0));
        }
        this.season = new Season(all, trucks);
    }

    private static Quantity<Mass> tons(double tons) {
        return Amounts.of(tons, SpreadingUnits.SHORT_TON);
    }

    private static Quantity<Dimensionless> ratio(double ratio) {
        return Amounts.of(ratio, SpreadingUnits.ONE);
    }

    private TruckSeason truck(String id, double overReport, Map<String, Double> drawn) {
        double error = 0.02 * random.nextGaussian();
        double verified = error + VERIFICATION * random.nextGaussian();
        double factor = 1 / ((1 + error) * (1 + overReport));
        factors.put(id, factor);
        List<Draw> draws = new ArrayList<>();
        int visited = random.nextInt(1, 4);
        int first = random.nextInt(piles.size());
        for (int k = 0; k < visited; k++) {
            String pile = piles.get((first + k) % piles.size());
            double tons = random.nextDouble(80, 300);
            drawn.merge(pile, tons, Double::sum);
            draws.add(Draw.of(pile, tons(tons / factor)));
        }
        List<WeighedLoads> loads = new ArrayList<>();
        // On both loaders, on one, or not at all.
        double weigh = random.nextDouble();
        for (int loader = 1; loader <= 2; loader++) {
            double tons = random.nextDouble(40, 120);
            StatedMass weighed = stated(tons, LOAD, "loader " + loader, SCALE);
            if (weigh < 0.45 || (weigh < 0.7 && loader == 1)) {
                loads.add(new WeighedLoads(weighed, tons(tons / factor)));
            }
        }
        return TruckSeason.verified(
                id, Measured.of(ratio(verified), ratio(VERIFICATION), Double.POSITIVE_INFINITY), draws, loads);
    }

    /** What is written down for a true mass. */
    private StatedMass stated(double tons, double own, String common, double shared) {
        double u = own * tons;
        double read = (tons + u * random.nextGaussian()) * (1 + shared * commonErrors.get(common));
        return new StatedMass(tons(read), tons(u), Optional.of(new CommonError(common, ratio(shared))));
    }

    private Pile pile(String id, double drawn, double lost) {
        double opening = random.nextDouble(200, 400);
        double unexplained = LOST * random.nextGaussian();
        int tickets = (int) Math.ceil(drawn / 30);
        List<Delivery> deliveries = new ArrayList<>();
        double came = 0;
        for (int i = 1; i <= tickets; i++) {
            double tons = random.nextDouble(22, 38);
            came += tons;
            deliveries.add(Delivery.of(
                    id + "/" + i, stated(tons, TICKET, "supplier " + (random.nextBoolean() ? 1 : 2), SUPPLIER)));
        }
        StatedMass before = stated(opening, SURVEY, "crew", DENSITY);
        StatedMass after = stated(opening + came + lost - drawn - unexplained, SURVEY, "crew", DENSITY);
        return Pile.of(id, "salt", before, deliveries, after).losing(tons(LOST));
    }

    Season season() {
        return season;
    }

    /** True ÷ indicated. */
    double factor(String truck) {
        return factors.get(truck);
    }
}
