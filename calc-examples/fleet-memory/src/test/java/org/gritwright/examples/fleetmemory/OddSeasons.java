package org.gritwright.examples.fleetmemory;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.stream.Collectors;
import org.gritwright.core.calibration.Since;
import org.gritwright.core.fleet.day.FleetDay;
import org.gritwright.core.fleet.day.TruckDay;
import org.gritwright.core.history.Event;
import org.gritwright.core.history.What;
import org.gritwright.core.judgement.Tolerance;
import org.gritwright.core.record.Document;
import org.gritwright.core.record.WrittenEvent;

/**
 * Eight seasons of a truck with a long name and three openings, of which one has no calibration and one has two, the second of which nobody
 * entered; and a truck that was caught once.
 */
final class OddSeasons {
    static final String LONG = "Spreader 14 of the north yard, with the long body and the wing plow";
    static final String ONCE = "T-1";
    static final LocalDate ON = LocalDate.of(2026, 2, 20);
    static final int SEASONS = 8;

    private static final int FIRST = 2018;

    /** The season from this autumn on has no calibration. */
    static final int NOT_CALIBRATED = 2023;

    private static final LocalDate NOT_ENTERED = LocalDate.of(2024, 11, 12);

    private OddSeasons() {}

    static Overview overview(Path folder) throws Exception {
        Database database = Database.of(folder.resolve("odd.db").toString());
        List<Filed> all = new ArrayList<>();
        for (FleetDay day : days()) {
            all.addAll(Fixtures.filed(Document.FLEET_DAY, day, "day"));
        }
        Event named = Event.ofFleet(
                "winter book 2025",
                Since.of(LocalDate.of(FIRST + SEASONS - 1, 11, 1)),
                new What.SeasonStarted("from 2025-11-01, the first with the new salt shed and the second loader"),
                "calendar");
        all.addAll(Fixtures.filed(Document.FLEET_EVENT, WrittenEvent.of(named).orElseThrow(), "event"));
        Fixtures.keep(database, all);
        try (Store store = Store.open(database)) {
            Memory memory = new Memory(store, Fixtures.DOCUMENTS, InventedSeasons.YARD);
            return Overview.of(memory.ofFleet(), Tolerance.percent(4), 1, List.of(), ON)
                    .with(memory.curves());
        }
    }

    private static List<FleetDay> days() {
        InventedTruck truck = new InventedTruck(
                LONG, List.of(1.5, 2.5, 4.0), -0.02, Map.of(), LocalDate.of(FIRST, 10, 1), new Random(3));
        InventedTruck once =
                new InventedTruck(ONCE, List.of(2.0), 0, Map.of(), LocalDate.of(FIRST, 10, 1), new Random(4));
        List<FleetDay> days = new ArrayList<>();
        for (int year = FIRST; year < FIRST + SEASONS; year++) {
            Set<String> calibrated = year == NOT_CALIBRATED ? Set.of() : Set.of(LONG);
            days.add(day(LocalDate.of(year, 10, 14), year).of(List.of(truck), calibrated));
            if (year == NOT_ENTERED.getYear()) {
                days.add(notEntered(truck, year));
            }
        }
        days.add(day(LocalDate.of(2026, 1, 16), FIRST + SEASONS - 1).of(List.of(truck, once), Set.of()));
        return days;
    }

    private static InventedDay day(LocalDate on, int year) {
        return new InventedDay(on, LocalDate.of(year, 11, 1), 78, InventedSeasons.YARD);
    }

    /** Caught once more; the display goes on with what it held, and nothing is caught with it. */
    private static FleetDay notEntered(InventedTruck truck, int year) {
        Map<Double, InventedTruck.Held> held =
                truck.openings().stream().collect(Collectors.toMap(opening -> opening, truck::held));
        FleetDay day = day(NOT_ENTERED, year).of(List.of(truck), Set.of(LONG));
        held.forEach((opening, value) -> truck.enter(opening, value.poundsPerRevolution(), value.since()));
        TruckDay written = day.trucks().get(0);
        return day.withOnly(written.inForce(List.of()).verificationCatches(List.of()));
    }
}
