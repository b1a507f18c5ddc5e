package org.gritwright.examples.fleetmemory;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Random;
import javax.measure.Quantity;
import javax.measure.quantity.Mass;
import org.gritwright.core.calibration.Since;
import org.gritwright.core.history.Event;
import org.gritwright.core.history.What;
import org.gritwright.core.record.WrittenEvent;
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

    /** Their rows are kept and summed up by days. */
    private static final List<Integer> COUNTED = List.of(3, 4, 15, WEIGHED);

    private static final int STORMS_A_MONTH = 3;
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
                        Optional.of(tons(tons * indicatedPerTrue)),
                        COUNTED.contains(number)
                                ? WrittenTruckSeason.Source.TELEMETRY
                                : WrittenTruckSeason.Source.CONTROLLER));
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

    /** The same account, where what telemetry counted is left to its sums. */
    static WrittenSeason asCounted(WrittenSeason account) {
        return new WrittenSeason(
                account.season(),
                account.from(),
                account.to(),
                account.piles(),
                account.trucks().stream()
                        .map(truck -> new WrittenTruckSeason(
                                truck.id(),
                                truck.calibrationError(),
                                truck.draws().stream()
                                        .map(InventedAccount::asCounted)
                                        .toList(),
                                truck.weighedLoads()))
                        .toList());
    }

    private static WrittenTruckSeason.Drawn asCounted(WrittenTruckSeason.Drawn draw) {
        return draw.source() == WrittenTruckSeason.Source.TELEMETRY
                ? new WrittenTruckSeason.Drawn(draw.pile(), draw.from(), draw.to(), Optional.empty(), draw.source())
                : draw;
    }

    /** What telemetry summed up of an account's draws: each in some storms, a sum a day. */
    List<WrittenEvent> sums(WrittenSeason account) {
        List<WrittenEvent> sums = new ArrayList<>();
        Map<LocalDate, Map<String, Double>> held = new HashMap<>();
        for (WrittenTruckSeason truck : account.trucks()) {
            for (WrittenTruckSeason.Drawn draw : truck.draws()) {
                if (draw.source() == WrittenTruckSeason.Source.TELEMETRY) {
                    double pounds = Amounts.in(draw.indicated().orElseThrow(), SpreadingUnits.POUND) / STORMS_A_MONTH;
                    for (int storm = 0; storm < STORMS_A_MONTH; storm++) {
                        LocalDate day = draw.from().plusDays(3 + 9L * storm);
                        double value = Objects.requireNonNull(
                                held.computeIfAbsent(day, fleet::held).get(truck.id()), "value");
                        sums.add(sum(truck.id(), day, pounds, pounds / value));
                    }
                }
            }
        }
        return sums;
    }

    private static WrittenEvent sum(String truck, LocalDate day, double pounds, double revolutions) {
        What.Used used = new What.Used(
                InventedDay.MATERIAL,
                Optional.of(Since.of(day)),
                Optional.of(Amounts.of(Math.rint(revolutions), SpreadingUnits.REVOLUTION)),
                Optional.empty(),
                Amounts.of(pounds, SpreadingUnits.POUND),
                1);
        String id = "telemetry " + truck + " " + day + " " + InventedDay.MATERIAL;
        return WrittenEvent.of(Event.of(id, Since.of(day), truck, used, "telemetry"))
                .orElseThrow();
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
