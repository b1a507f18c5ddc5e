package org.gritwright.core.season;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.SplittableRandom;
import javax.measure.quantity.Dimensionless;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;

/** How long a large season takes; not a test. Arguments: trucks, piles. */
final class SeasonSpeed {
    private SeasonSpeed() {}

    public static void main(String[] arguments) {
        int trucks = arguments.length > 0 ? Integer.parseInt(arguments[0]) : 10_000;
        int piles = arguments.length > 1 ? Integer.parseInt(arguments[1]) : 500;
        Season season = season(trucks, piles);
        long start = System.nanoTime();
        SeasonBalance balance = season.balance();
        int found = balance.found().size();
        double solved = seconds(start);
        SeasonFigures figures = balance.asStated();
        double stated = seconds(start);
        int suspicions = balance.suspicions().size();
        double suspected = seconds(start);
        long known = season.trucks().stream()
                .filter(truck -> balance.smallestOverReport(truck.id()).isPresent())
                .count();
        System.out.printf(
                Locale.ROOT,
                "%d trucks, %d piles, %s, %d places told apart: solved and searched (%d found) %.1f s, all factors and accounts"
                        + " %.1f s, all %d suspicions %.1f s, the power for %d trucks %.1f s%n",
                trucks,
                piles,
                figures.test(),
                balance.power().candidates(),
                found,
                solved,
                stated,
                suspicions,
                suspected,
                known,
                seconds(start));
    }

    private static double seconds(long start) {
        return (System.nanoTime() - start) / 1e9;
    }

    /** Trucks that draw from up to three piles; 20 tickets a pile; half of the trucks with loads on one of 100 loaders. */
    private static Season season(int trucks, int piles) {
        SplittableRandom random = new SplittableRandom(1);
        double[] drawn = new double[piles];
        List<TruckSeason> fleet = new ArrayList<>();
        for (int t = 0; t < trucks; t++) {
            double factor = 1 + 0.015 * random.nextGaussian();
            List<Draw> draws = new ArrayList<>();
            for (int k = 0; k < 3; k++) {
                int pile = k == 0 ? t % piles : random.nextInt(piles);
                double indicated = random.nextDouble(100, 300);
                drawn[pile] += indicated * factor;
                draws.add(Draw.of("p" + pile, Amounts.of(indicated, SpreadingUnits.SHORT_TON)));
            }
            List<WeighedLoads> loads = t % 2 == 0
                    ? List.of(new WeighedLoads(
                            mass(100 * factor, 0.005, "loader " + t % 100, 0.005, random),
                            Amounts.of(100, SpreadingUnits.SHORT_TON)))
                    : List.of();
            Measured<Dimensionless> error = Measured.of(
                    Amounts.of(0, SpreadingUnits.PERCENT),
                    Amounts.of(1.5, SpreadingUnits.PERCENT),
                    Double.POSITIVE_INFINITY);
            fleet.add(TruckSeason.verified("t" + t, error, draws, loads));
        }
        List<Pile> yard = new ArrayList<>();
        for (int p = 0; p < piles; p++) {
            List<Delivery> deliveries = new ArrayList<>();
            for (int i = 0; i < 20; i++) {
                deliveries.add(
                        Delivery.of(p + "/" + i, mass(drawn[p] / 20, 0.003, "supplier " + i % 5, 0.002, random)));
            }
            yard.add(Pile.of(
                            "p" + p,
                            "salt",
                            mass(800, 0.015, "crew " + p % 20, 0.01, random),
                            deliveries,
                            mass(800, 0.015, "crew " + p % 20, 0.01, random))
                    .losing(Amounts.of(5, SpreadingUnits.SHORT_TON)));
        }
        return new Season(yard, fleet);
    }

    private static StatedMass mass(double tons, double own, String common, double shared, SplittableRandom random) {
        return new StatedMass(
                Amounts.of(tons * (1 + own * random.nextGaussian()), SpreadingUnits.SHORT_TON),
                Amounts.of(own * tons, SpreadingUnits.SHORT_TON),
                Optional.of(new CommonError(common, Amounts.of(shared, SpreadingUnits.ONE))));
    }
}
