package org.gritwright.examples.fleetmemory;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.gritwright.core.history.Event;
import org.gritwright.core.history.History;
import org.gritwright.core.history.What;
import org.gritwright.core.record.WrittenPile;
import org.gritwright.core.record.WrittenSeason;
import org.gritwright.core.record.WrittenTruckSeason;

/** Kept sums that no draw takes, or that draws of two accounts take. A truck may draw in two yards, and each has its account. */
final class UndrawnSums {
    /** More trucks, nobody reads. */
    private static final int MOST_TRUCKS = 5;

    private final History history;
    private final WrittenSeason written;
    private final List<WrittenSeason> all;
    private final Map<String, List<Drawn>> byTruck = new HashMap<>();

    /** Which account draws what. */
    private record Drawn(String season, DrawDays days) {}

    UndrawnSums(History history, WrittenSeason written, List<WrittenSeason> all) {
        this.history = history;
        this.written = written;
        this.all = all;
        for (WrittenSeason one : all) {
            for (DrawDays days : DrawDays.of(one)) {
                byTruck.computeIfAbsent(days.truck(), truck -> new ArrayList<>())
                        .add(new Drawn(one.season(), days));
            }
        }
    }

    /** A material by another name, a day between two draws, or a truck is easily left out. */
    List<String> inNoDraw() {
        Set<String> own =
                written.trucks().stream().map(WrittenTruckSeason::id).collect(Collectors.toCollection(TreeSet::new));
        Set<String> materials =
                written.piles().stream().map(WrittenPile::material).collect(Collectors.toSet());
        Map<String, List<Event>> left = new TreeMap<>();
        Map<String, List<Event>> ofOthers = new TreeMap<>();
        for (String truck : history.trucks()) {
            List<Drawn> its = byTruck.getOrDefault(truck, List.of());
            for (Event event : history.standing(truck)) {
                if (event.what() instanceof What.Used used
                        && isLeft(used.material(), event.at().day(), its)) {
                    if (own.contains(truck)) {
                        left.computeIfAbsent(used.material(), none -> new ArrayList<>())
                                .add(event);
                    } else if (materials.contains(used.material())) {
                        ofOthers.computeIfAbsent(used.material(), none -> new ArrayList<>())
                                .add(event);
                    }
                }
            }
        }
        List<String> texts = new ArrayList<>();
        left.forEach((material, events) -> texts.add("In no draw of "
                + (all.size() > 1 ? "any" : "this") + " account: "
                + Words.count(events.size(), "sum") + " of what its trucks laid of " + material + ", such as "
                + events.get(0) + ". Is that a pile's material by another name, or days that were left out?"));
        ofOthers.forEach((material, events) -> texts.add("Of trucks that aren't in this account, and in no draw of "
                + "another: " + Words.count(events.size(), "sum") + " of what " + trucks(events) + " laid of "
                + material
                + " in these days. Did they draw from these piles?"));
        return texts;
    }

    private boolean isLeft(String material, LocalDate day, List<Drawn> its) {
        return !day.isBefore(written.from())
                && !day.isAfter(written.to())
                && its.stream()
                        .map(Drawn::days)
                        .noneMatch(draw -> draw.material().equals(material) && draw.has(day));
    }

    private static String trucks(List<Event> events) {
        Set<String> trucks =
                events.stream().flatMap(event -> event.truck().stream()).collect(Collectors.toCollection(TreeSet::new));
        int more = trucks.size() - MOST_TRUCKS;
        return (trucks.size() == 1 ? "truck " : "trucks ")
                + trucks.stream().limit(MOST_TRUCKS).collect(Collectors.joining(", "))
                + (more > 0 ? " and " + more + " more" : "");
    }

    /** Where a draw that takes sums isn't the only one that does. */
    List<String> inTwoAccounts(DrawDays draw) {
        return byTruck.getOrDefault(draw.truck(), List.of()).stream()
                .filter(there -> !there.season.equals(written.season()) && draw.isSummedWith(there.days))
                .map(there -> draw.words() + ": the account of season " + there.season + " has its draw of "
                        + there.days.from() + " to " + there.days.to() + " from pile " + there.days.pile()
                        + ", and what it laid in the days of both counts in both.")
                .toList();
    }
}
