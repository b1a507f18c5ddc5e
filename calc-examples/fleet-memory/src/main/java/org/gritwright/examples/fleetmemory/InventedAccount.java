package org.gritwright.examples.fleetmemory;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import javax.measure.Quantity;
import javax.measure.quantity.Mass;
import org.gritwright.core.record.WrittenPile;
import org.gritwright.core.record.WrittenSeason;
import org.gritwright.core.record.WrittenTruckSeason;
import org.gritwright.core.season.CommonError;
import org.gritwright.core.season.StatedMass;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;

/**
 * The account of an invented season, with known truth: two piles, half of the fleet at each. At the north pile a delivery ticket is
 * lost. At the south pile two trucks report more than they lay, as trucks do in whose hoppers the salt bridges: their verifications in the yard don't
 * show it. Of one of them loads were weighed, of the other none.
 *
 * @param fleet the trucks
 * @param year in whose autumn it begins
 * @param overReport by how much the two trucks over-report, beside what their displays do
 * @param lost the ticket that is lost; 0 where none is
 */
record InventedAccount(InventedSeasons fleet, int year, double overReport, int lost, long seed) {
    static final int WEIGHED = 16;
    static final int NOT_WEIGHED = 22;
    static final String NORTH = "north";
    static final String SOUTH = "south";

    private static final int FIRST_TICKET = 2031;

    /** The demo's. */
    static final InventedAccount DEMO = new InventedAccount(InventedSeasons.DEMO, 2024, 0.07, FIRST_TICKET + 14, 11);

    private static final List<Integer> WITH_LOADS = List.of(2, 5, 9, WEIGHED, 19);
    private static final double TONS_A_MONTH = 55;
    private static final double TONS_A_TICKET = 98;
    private static final double SURVEY = 0.02;
    private static final double TICKET = 0.002;
    private static final double LOADS = 0.003;
    private static final double ALL_LOADS = 58;
    private static final int MONTHS = 5;
    private static final int CENTURY = 100;
    private static final List<CommonError> LOADERS = List.of(
            new CommonError("loader 2", Amounts.of(0.5, SpreadingUnits.PERCENT)),
            new CommonError("loader 3", Amounts.of(0.5, SpreadingUnits.PERCENT)));
    private static final CommonError MINE =
            new CommonError("truck scale of the mine", Amounts.of(0.2, SpreadingUnits.PERCENT));

    WrittenSeason written() {
        Random random = new Random(seed);
        LocalDate from = LocalDate.of(year, 11, 1);
        LocalDate to = from.plusMonths(MONTHS).minusDays(1);
        Map<String, Double> errors = fleet.trueErrors(from.plusMonths(2));
        List<Double> loaders = LOADERS.stream()
                .map(error -> 1 + ratio(error) * random.nextGaussian())
                .toList();
        Map<String, Double> laid = new LinkedHashMap<>(Map.of(NORTH, 0.0, SOUTH, 0.0));
        List<WrittenTruckSeason> trucks = new ArrayList<>();
        for (int number = 1; number <= fleet.trucks(); number++) {
            String pile = number <= fleet.trucks() / 2 ? NORTH : SOUTH;
            boolean isOff = number == WEIGHED || number == NOT_WEIGHED;
            double indicatedPerTrue =
                    (1 + errors.getOrDefault(InventedSeasons.id(number), 0.0)) * (1 + (isOff ? overReport : 0));
            List<WrittenTruckSeason.Drawn> draws = new ArrayList<>();
            for (int month = 0; month < MONTHS; month++) {
                double tons = TONS_A_MONTH * (0.7 + 0.6 * random.nextDouble());
                laid.merge(pile, tons, Double::sum);
                draws.add(new WrittenTruckSeason.Drawn(
                        pile,
                        from.plusMonths(month),
                        from.plusMonths(month + 1L).minusDays(1),
                        tons(tons * indicatedPerTrue),
                        WrittenTruckSeason.Source.CONTROLLER));
            }
            List<WrittenTruckSeason.Loads> loads = new ArrayList<>();
            for (int i = 0; i < LOADERS.size() && WITH_LOADS.contains(number); i++) {
                double tons = ALL_LOADS * (1 + LOADS * random.nextGaussian()) * loaders.get(i);
                LocalDate first = from.plusDays(40L + 30L * i);
                loads.add(new WrittenTruckSeason.Loads(
                        first,
                        first.plusDays(20),
                        new StatedMass(tons(tons), tons(ALL_LOADS * LOADS), Optional.of(LOADERS.get(i))),
                        tons(ALL_LOADS * indicatedPerTrue)));
            }
            trucks.add(new WrittenTruckSeason(InventedSeasons.id(number), Optional.empty(), draws, loads));
        }
        double mine = 1 + ratio(MINE) * random.nextGaussian();
        return new WrittenSeason(
                String.format(Locale.ROOT, "%d/%02d", year, (year + 1) % CENTURY),
                from,
                to,
                List.of(
                        pile(NORTH, from, to, 350, FIRST_TICKET, laid.getOrDefault(NORTH, 0.0), mine, random),
                        pile(
                                SOUTH,
                                from,
                                to,
                                1800,
                                FIRST_TICKET + CENTURY,
                                laid.getOrDefault(SOUTH, 0.0),
                                mine,
                                random)),
                trucks);
    }

    private WrittenPile pile(
            String id,
            LocalDate from,
            LocalDate to,
            double opening,
            int first,
            double laid,
            double mine,
            Random random) {
        int count = (int) (laid / TONS_A_TICKET);
        List<WrittenPile.Ticket> tickets = new ArrayList<>();
        double came = 0;
        for (int i = 0; i < count; i++) {
            double tons = TONS_A_TICKET * (0.97 + 0.06 * random.nextDouble());
            double read = tons * (1 + TICKET * random.nextGaussian()) * mine;
            came += tons;
            if (first + i != lost) {
                tickets.add(new WrittenPile.Ticket(
                        String.valueOf(first + i),
                        from.plusDays((long) i * (MONTHS * 30 - 10) / count),
                        new StatedMass(tons(read), tons(TICKET * TONS_A_TICKET), Optional.of(MINE))));
            }
        }
        double brine = 20;
        return new WrittenPile(
                id,
                InventedDay.MATERIAL,
                surveyed(opening, random),
                List.of(new WrittenPile.Survey(to, surveyed(opening + came - laid - brine, random))),
                tickets,
                List.of(new WrittenPile.Use("brine making", from.plusDays(60), StatedMass.of(tons(brine), tons(1)))),
                Optional.empty());
    }

    /** To a ton, and as uncertain as surveys of salt piles are ({@link StatedMass#surveyed} has the source). */
    private static StatedMass surveyed(double truth, Random random) {
        double found = Math.rint(truth * (1 + SURVEY * random.nextGaussian()));
        return StatedMass.of(tons(found), tons(SURVEY * found));
    }

    /** To a tenth, as controllers and tickets have it. */
    private static Quantity<Mass> tons(double tons) {
        return Amounts.of(Math.max(Math.rint(10 * tons), 1) / 10, SpreadingUnits.SHORT_TON);
    }

    private static double ratio(CommonError error) {
        return Amounts.in(error.standardUncertainty(), SpreadingUnits.ONE);
    }
}
