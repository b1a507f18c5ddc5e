package org.gritwright.examples.fleetmemory;

import java.sql.SQLException;
import java.text.Normalizer;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.gritwright.core.history.Event;
import org.gritwright.core.history.History;
import org.gritwright.core.history.What;
import org.gritwright.core.history.due.DueSettings;

/** What may be a slip of whoever wrote it down, and would keep a truck from being due. */
final class Slips {
    /** Of more trucks than this, their number says enough. */
    private static final int MOST_TRUCKS = 5;

    private static final Pattern DECORATION = Pattern.compile("[\\p{Z}\\p{C}\\p{Pd}_.]+");
    private static final Pattern BESIDE_A_LETTER = Pattern.compile("(?<!\\d)-|-(?!\\d)");
    private static final Pattern LEADING_ZEROS = Pattern.compile("(?<!\\d)0+(?=\\d)");

    private Slips() {}

    /** Of a fleet that is looked at on a day. */
    static List<String> of(Overview fleet) {
        History history = fleet.history();
        LocalDate on = fleet.on();
        List<String> lines = new ArrayList<>(alike(history.trucks()));
        Instant end = FleetMemoryCommand.end(on, history.yard());
        Map<String, LocalDate> last = new TreeMap<>();
        for (String truck : history.trucks()) {
            history.standing(truck).stream()
                    // A calibration before winter names the day on which the season will begin.
                    .filter(event -> !(event.what() instanceof What.SeasonStarted))
                    .filter(event -> history.instant(event).isAfter(end))
                    .map(Event::at)
                    .map(at -> at.day())
                    .max(Comparator.naturalOrder())
                    .ifPresent(day -> last.put(truck, day));
        }
        lines.addAll(later(last, on + ", and so not counted:"));
        fleet.seasons().pages().stream()
                .filter(season -> season.to().isAfter(on))
                .map(season -> season.title() + " ends on " + season.to() + ", after " + on
                        + ", and so what its account finds doesn't count yet. Look whether its year is right.")
                .forEach(lines::add);
        lines.addAll(planned(fleet));
        return lines;
    }

    /** A plan that counts for nothing would put a truck at the end of the list. */
    private static List<String> planned(Overview fleet) {
        if (!fleet.isPlanned()) {
            return List.of();
        }
        Map<String, Set<String>> known = new TreeMap<>();
        for (TruckOverview truck : fleet.trucks()) {
            Set<String> materials = known.computeIfAbsent(truck.id(), id -> new TreeSet<>());
            truck.state()
                    .values()
                    .forEach(held -> materials.add(held.value().point().key().material()));
            truck.points()
                    .forEach(point -> materials.add(point.history().point().material()));
        }
        List<String> lines = new ArrayList<>();
        for (DueSettings.Planned one : fleet.planned()) {
            Set<String> materials = known.get(one.truck());
            if (materials == null || !materials.contains(one.material())) {
                lines.add("What is planned of truck \"" + one.truck() + "\" with \"" + one.material()
                        + "\" counts for nothing: known "
                        + (materials == null
                                ? "trucks are " + some(known.keySet())
                                : "of this truck " + (materials.isEmpty() ? "is no material" : "is " + some(materials)))
                        + ".");
            }
        }
        return lines;
    }

    private static String some(Collection<String> names) {
        return names.stream().map(name -> "\"" + name + "\"").collect(Collectors.joining(", "));
    }

    /** Of documents that were imported. */
    static List<String> of(Store store, Batch batch, LocalDate today) throws SQLException {
        List<String> lines = new ArrayList<>(alike(store.trucks()));
        Map<String, LocalDate> later = new TreeMap<>(batch.last());
        later.values().removeIf(day -> !day.isAfter(today));
        lines.addAll(later(later, "today, " + today + ":"));
        lines.addAll(offsets(store, batch));
        return lines;
    }

    /** Who sums up the same rows by another offset moves hours from day to day. */
    private static List<String> offsets(Store store, Batch batch) throws SQLException {
        if (batch.offsets().isEmpty()) {
            return List.of();
        }
        Map<String, String> all = new TreeMap<>(batch.offsets());
        String first = batch.offsets().keySet().iterator().next();
        store.sumByAnotherOffset(first)
                .ifPresent(other -> Batch.offset(other).ifPresent(offset -> all.putIfAbsent(offset, other.identity())));
        if (all.size() == 1) {
            return List.of();
        }
        return List.of("Days of sums begin by several offsets: "
                + all.entrySet().stream()
                        .map(one -> one.getKey() + " (such as \"" + one.getValue() + "\")")
                        .collect(Collectors.joining(", "))
                + ". Hours near midnight may be in two of them, or in none: sum all of it by the yard's offset.");
    }

    private static List<String> later(Map<String, LocalDate> last, String when) {
        if (last.isEmpty()) {
            return List.of();
        }
        int more = last.size() - MOST_TRUCKS;
        return List.of("Of days after " + when + " entries of "
                + last.entrySet().stream()
                        .limit(MOST_TRUCKS)
                        .map(one -> "truck \"" + one.getKey() + "\", the last of " + one.getValue())
                        .collect(Collectors.joining("; "))
                + (more > 0 ? "; and " + Words.count(more, "more truck") : "") + ". Look whether their year is right.");
    }

    /** Ids that are one but for capitals, blanks, dashes and leading zeros. */
    static List<String> alike(Collection<String> trucks) {
        return trucks.stream()
                .collect(Collectors.groupingBy(Slips::bare, TreeMap::new, Collectors.toList()))
                .values()
                .stream()
                .filter(group -> group.size() > 1)
                .map(group -> "Look whether these are one truck: "
                        + group.stream().sorted().map(id -> "\"" + id + "\"").collect(Collectors.joining(" and "))
                        + ". What is written down of one doesn't count for the other.")
                .toList();
    }

    private static String bare(String id) {
        String plain = Normalizer.normalize(id, Normalizer.Form.NFKC).toLowerCase(Locale.ROOT);
        String joined = BESIDE_A_LETTER
                .matcher(DECORATION.matcher(plain).replaceAll("-"))
                .replaceAll("");
        return LEADING_ZEROS.matcher(joined).replaceAll("");
    }
}
