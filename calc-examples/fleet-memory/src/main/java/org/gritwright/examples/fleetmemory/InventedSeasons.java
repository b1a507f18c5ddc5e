package org.gritwright.examples.fleetmemory;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.function.BiConsumer;
import java.util.function.ToDoubleFunction;
import org.gritwright.core.calibration.Change;
import org.gritwright.core.calibration.Since;
import org.gritwright.core.fleet.day.FleetDay;
import org.gritwright.core.history.Event;
import org.gritwright.core.history.What;
import org.gritwright.core.observation.Material;
import org.gritwright.core.record.Document;
import org.gritwright.core.record.WrittenEvent;
import org.gritwright.core.record.WrittenSeason;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;

/**
 * The invented seasons of a county's fleet: each is calibrated in October and verified on days in winter. Among its trucks, if there are
 * enough of them, are one that drifts slowly, one that was repaired and calibrated after it, one that lost a slot, one that was
 * repaired and not calibrated, and two with two calibration points. The same seed gives the same documents.
 *
 * @param trucks how many
 * @param firstYear in whose autumn the first season begins
 * @param seasons how many
 * @param checks on how many days of a winter all trucks are verified, 1 to 3
 */
record InventedSeasons(int trucks, int firstYear, int seasons, int checks, long seed) {
    /** The demo's. */
    static final InventedSeasons DEMO = new InventedSeasons(24, 2023, 3, 3, 7);

    /** When the demo is looked at: in its last winter, before the last days on which trucks are verified. */
    static final LocalDate DEMO_DAY = LocalDate.of(2026, 2, 10);

    static final ZoneOffset YARD = ZoneOffset.ofHours(-6);

    private static final int DRIFTING = 7;
    private static final int REPAIRED = 12;
    private static final int LOST = 9;
    private static final int NOT_CALIBRATED = 20;
    private static final int MISTAKEN = 3;
    private static final Set<Integer> OF_TWO_POINTS = Set.of(5, 17);
    private static final double DRIFT_A_YEAR = -0.022;
    private static final LocalDate REPAIR = LocalDate.of(2024, 12, 9);
    private static final LocalDate REPAIR_FORGOTTEN = LocalDate.of(2026, 2, 2);
    private static final LocalDate LOSS = LocalDate.of(2026, 1, 27);

    /** From lot to lot, in lb/ft³. */
    private static final List<Double> DENSITIES = List.of(78.0, 77.0, 79.5);

    static String id(int number) {
        return String.format(Locale.ROOT, "C-%02d", number);
    }

    /** The fleet's days as they were written down, in the order of time. */
    List<FleetDay> days() {
        return days((day, fleet) -> {});
    }

    /** By how much each truck's display over-reports on a day, once all was done that was done until then. */
    Map<String, Double> trueErrors(LocalDate on) {
        return onDay(on, truck -> truck.trueError(on));
    }

    /** What each truck's display holds on a day, in pounds per revolution. */
    Map<String, Double> held(LocalDate on) {
        return onDay(on, truck -> truck.held(truck.openings().get(0)).poundsPerRevolution());
    }

    private Map<String, Double> onDay(LocalDate on, ToDoubleFunction<InventedTruck> number) {
        Map<String, Double> numbers = new LinkedHashMap<>();
        days((day, fleet) -> {
            if (!day.isAfter(on)) {
                fleet.forEach(truck -> numbers.put(truck.id(), number.applyAsDouble(truck)));
            }
        });
        return numbers;
    }

    /** @param after told of each day on which trucks were caught, with the whole fleet */
    private List<FleetDay> days(BiConsumer<LocalDate, List<InventedTruck>> after) {
        Random random = new Random(seed);
        List<InventedTruck> fleet = new ArrayList<>();
        LocalDate first = LocalDate.of(firstYear, 10, 1);
        for (int number = 1; number <= trucks; number++) {
            fleet.add(new InventedTruck(
                    id(number),
                    OF_TWO_POINTS.contains(number) ? List.of(2.0, 3.0) : List.of(2.0),
                    number == DRIFTING ? DRIFT_A_YEAR : 0,
                    number == REPAIRED ? Map.of(REPAIR, 0.065) : Map.of(),
                    first,
                    new Random(random.nextLong())));
        }
        List<FleetDay> days = new ArrayList<>();
        for (int season = 0; season < seasons; season++) {
            addSeason(season, fleet, days, after);
        }
        return days;
    }

    private void addSeason(
            int season,
            List<InventedTruck> fleet,
            List<FleetDay> days,
            BiConsumer<LocalDate, List<InventedTruck>> after) {
        int year = firstYear + season;
        int half = (fleet.size() + 1) / 2;
        for (int part = 0; part < 2; part++) {
            List<InventedTruck> some = fleet.subList(part == 0 ? 0 : half, part == 0 ? half : fleet.size());
            if (!some.isEmpty()) {
                Set<String> all = new HashSet<>();
                some.forEach(truck -> all.add(truck.id()));
                LocalDate on = LocalDate.of(year, 10, 14 + 7 * part);
                days.add(day(season, on).of(some, all));
                after.accept(on, fleet);
            }
        }
        List<LocalDate> verified =
                List.of(LocalDate.of(year, 12, 5), LocalDate.of(year + 1, 1, 16), LocalDate.of(year + 1, 2, 20));
        for (LocalDate on : verified.subList(0, checks)) {
            boolean isAfterDemo = season == 2 && this.equals(DEMO) && on.isAfter(DEMO_DAY);
            if (!isAfterDemo) {
                boolean isAfterRepair = on.isAfter(REPAIR) && on.isBefore(REPAIR.plusMonths(2));
                days.add(day(season, on).of(fleet, isAfterRepair ? Set.of(id(REPAIRED)) : Set.of()));
                after.accept(on, fleet);
            }
        }
    }

    private InventedDay day(int season, LocalDate on) {
        return new InventedDay(on, LocalDate.of(firstYear + season, 11, 1), density(season), YARD);
    }

    private static double density(int season) {
        return DENSITIES.get(season % DENSITIES.size());
    }

    /** What no record tells. */
    List<WrittenEvent> events() {
        List<Event> events = new ArrayList<>();
        for (int season = 0; season < seasons; season++) {
            int year = firstYear + season;
            events.add(Event.ofFleet(
                    "lot " + year,
                    Since.of(LocalDate.of(year, 10, 1)),
                    new What.Delivered(
                            Material.of(
                                    InventedDay.MATERIAL,
                                    Amounts.of(density(season), SpreadingUnits.POUND_PER_CUBIC_FOOT)),
                            "of " + year,
                            Optional.empty()),
                    "delivery tickets"));
        }
        Event mistaken = changed("shop 411", LocalDate.of(2025, 1, 8), MISTAKEN, Change.Part.GATE, "gate straightened");
        events.add(changed("shop 398", REPAIR, REPAIRED, Change.Part.CONVEYOR, "new chain and sprockets"));
        events.add(mistaken);
        events.add(Event.withdrawing(
                "shop 411 withdrawn",
                Since.of(LocalDate.of(2025, 1, 9)),
                mistaken,
                "that was a truck of the north yard",
                "shop book"));
        events.add(changed(
                "shop 536", REPAIR_FORGOTTEN, NOT_CALIBRATED, Change.Part.HYDRAULIC, "hydraulic motor replaced"));
        events.add(Event.of("shop 533", Since.of(LOSS), id(LOST), new What.SetBack(), "shop book")
                .by("D. Finch"));
        return events.stream()
                .filter(event ->
                        event.truck().isEmpty() || isOfFleet(event.truck().get()))
                .map(event -> WrittenEvent.of(event).orElseThrow())
                .toList();
    }

    private boolean isOfFleet(String truck) {
        return truck.compareTo(id(trucks)) <= 0;
    }

    private static Event changed(String id, LocalDate on, int truck, Change.Part part, String notes) {
        return Event.of(id, Since.of(on), id(truck), new What.Changed(part, Optional.of(notes)), "shop book")
                .by("D. Finch");
    }

    /** Writes a file a day and a file an event, and of the demo the account of a season and what telemetry summed up in it. */
    List<Path> write(Path folder) throws IOException {
        Files.createDirectories(folder);
        List<Path> files = new ArrayList<>();
        for (FleetDay day : days()) {
            files.add(write(folder.resolve("day-" + day.day() + ".json"), Document.FLEET_DAY, day));
        }
        for (WrittenEvent event : events()) {
            files.add(write(
                    folder.resolve("event-" + event.id().replace(' ', '-') + ".json"), Document.FLEET_EVENT, event));
        }
        if (equals(DEMO)) {
            WrittenSeason account = InventedAccount.DEMO.written();
            List<WrittenEvent> sums = InventedAccount.DEMO.sums(account);
            files.add(write(
                    folder.resolve("season-2024-25.json"),
                    Document.SEASON_ACCOUNT,
                    InventedAccount.asCounted(account)));
            files.add(folder.resolve("laid-sums-2024-25.jsonl"));
            Files.write(
                    files.get(files.size() - 1),
                    sums.stream().map(Document.FLEET_EVENT::toLine).toList());
        }
        return files;
    }

    private static <T> Path write(Path file, Document<T> format, T document) throws IOException {
        try (OutputStream out = Files.newOutputStream(file)) {
            format.write(document, out);
        }
        return file;
    }
}
