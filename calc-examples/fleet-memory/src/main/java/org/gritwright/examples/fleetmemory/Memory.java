package org.gritwright.examples.fleetmemory;

import java.sql.SQLException;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import org.gritwright.core.curve.DischargeCurve;
import org.gritwright.core.history.Event;
import org.gritwright.core.history.History;
import org.gritwright.core.record.WrittenSeason;
import org.gritwright.units.InvalidInputException;

/** What the kept documents say together. */
final class Memory {
    private final Store store;
    private final Documents documents;
    private final ZoneOffset yard;

    Memory(Store store, Documents documents, ZoneOffset yard) {
        this.store = store;
        this.documents = documents;
        this.yard = yard;
    }

    History ofFleet() throws SQLException, BadInputException {
        List<Kept> all = new ArrayList<>();
        store.reading(() -> {
            store.forEach(all::add);
            return all;
        });
        return of(all);
    }

    /** The curves of all records that have some. */
    FittedCurves curves() throws SQLException, BadInputException {
        List<Kept> records = store.reading(() -> store.ofKind(Kind.RECORD));
        Map<String, List<DischargeCurve>> byRecord = new ConcurrentHashMap<>();
        Map<Kept.Name, BadInputException> failures = new ConcurrentHashMap<>();
        records.parallelStream().forEach(one -> {
            try {
                List<DischargeCurve> curves = documents.curves(one);
                if (!curves.isEmpty()) {
                    byRecord.put(one.name().toString(), curves);
                }
            } catch (BadInputException e) {
                failures.put(one.name(), e);
            }
        });
        requireNone(failures);
        return new FittedCurves(byRecord);
    }

    /** The accounts of all seasons, the latest first. */
    List<WrittenSeason> seasons() throws SQLException, BadInputException {
        List<WrittenSeason> seasons = new ArrayList<>();
        for (Kept one : store.reading(() -> store.ofKind(Kind.SEASON))) {
            seasons.add(0, Documents.season(one));
        }
        return seasons;
    }

    /** Of one truck; refuses one of which nothing is known. */
    History ofTruck(String truck) throws SQLException, BadInputException {
        List<Kept> all = store.reading(() -> {
            List<Kept> found = store.ofTruck(truck);
            if (found.stream().allMatch(one -> one.truck().isEmpty())) {
                List<String> trucks = store.trucks();
                throw new BadInputException("nothing is known of truck \"" + truck + "\"; "
                        + (trucks.isEmpty() ? "nothing was imported yet" : "known are " + String.join(", ", trucks)));
            }
            return found;
        });
        return of(all);
    }

    private History of(List<Kept> all) throws BadInputException {
        Map<Kept.Name, BadInputException> failures = new ConcurrentHashMap<>();
        List<Event> events = all.parallelStream()
                .flatMap(one -> events(one, failures).stream())
                .toList();
        requireNone(failures);
        try {
            return History.of(events, yard);
        } catch (InvalidInputException e) {
            throw new BadInputException("the kept documents make no history: " + e.getMessage());
        }
    }

    private static void requireNone(Map<Kept.Name, BadInputException> failures) throws BadInputException {
        if (!failures.isEmpty()) {
            List<String> lines = new ArrayList<>();
            failures.values().forEach(failure -> lines.addAll(failure.lines()));
            lines.sort(null);
            lines.add("Say check to see all that is wrong.");
            throw new BadInputException(lines);
        }
    }

    private List<Event> events(Kept one, Map<Kept.Name, BadInputException> failures) {
        try {
            return documents.events(one);
        } catch (BadInputException e) {
            failures.put(one.name(), e);
            return List.of();
        }
    }
}
