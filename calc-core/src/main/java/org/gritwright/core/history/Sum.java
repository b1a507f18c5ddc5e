package org.gritwright.core.history;

import java.time.Instant;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Collectors;
import javax.measure.quantity.Mass;
import org.gritwright.core.calibration.Since;
import org.gritwright.units.Amounts;
import org.gritwright.units.quantity.RevolutionCount;

/**
 * What a truck laid in a time, and when that was.
 *
 * @param event the event that says so
 * @param used what it says
 * @param from when the time begins
 * @param to when it ends, out of it; as it begins where nobody says since when
 */
record Sum(Event event, What.Used used, Instant from, Instant to) {
    /** By how much sums may be off turns × value: as much as rounded numbers are (common practice, no source). */
    private static final double ROUNDED = 0.02;

    /** Those of a truck that stand, by when they begin, the longest first. */
    static List<Sum> of(History history, String truck) {
        List<Sum> sums = new ArrayList<>();
        for (Event event : history.standing(truck)) {
            if (event.what() instanceof What.Used used) {
                sums.add(of(event, used, history));
            }
        }
        sums.sort(Comparator.comparing(Sum::from)
                .thenComparing(Comparator.comparing(Sum::to).reversed())
                .thenComparing(sum -> sum.event.id()));
        return sums;
    }

    private static Sum of(Event event, What.Used used, History history) {
        Instant end = used.from()
                .filter(since -> event.at().time().isEmpty())
                .map(since -> endOfDay(event, since, history))
                .orElseGet(() -> history.instant(event));
        Instant from = used.from()
                .map(since ->
                        since.time().map(OffsetDateTime::toInstant).orElseGet(() -> history.beginning(since.day())))
                .orElse(end);
        return new Sum(event, used, from, end);
    }

    /** Who says since when, with an offset, says by it what a day is, whatever the yard's is. */
    private static Instant endOfDay(Event event, Since since, History history) {
        LocalDate next = event.at().day().plusDays(1);
        return since.time()
                .map(time -> next.atStartOfDay().toInstant(time.getOffset()))
                .orElseGet(() -> history.beginning(next));
    }

    boolean isOf(String material) {
        return used.material().equals(material);
    }

    /** Whether any of it lies between two instants; the second is out of it. */
    boolean isPartlyIn(Instant begin, Instant end) {
        return from.isBefore(end) && (to.isAfter(begin) || (to.equals(from) && from.equals(begin)));
    }

    /** Whether all of it does. */
    boolean isIn(Instant begin, Instant end) {
        return isPartlyIn(begin, end) && !from.isBefore(begin) && !to.isAfter(end);
    }

    /** What sums of a truck say of each other and of its display that can't be so. */
    static List<Contradiction> contradictions(List<Sum> sums, List<SlotBook.Entry> entries) {
        List<Contradiction> all = new ArrayList<>();
        sums.stream()
                .collect(Collectors.groupingBy(sum -> sum.used.material(), TreeMap::new, Collectors.toList()))
                .values()
                .forEach(ofMaterial -> {
                    twice(ofMaterial, all);
                    again(ofMaterial, all);
                });
        Map<Event, List<Event>> otherwise = new LinkedHashMap<>();
        for (Sum sum : sums) {
            sum.otherwise(entries)
                    .ifPresent(entered -> otherwise
                            .computeIfAbsent(entered, first -> new ArrayList<>(List.of(first)))
                            .add(sum.event));
        }
        // Who sums with another value does so day after day: that is one thing.
        otherwise.values().forEach(events -> all.add(new Contradiction(Contradiction.Kind.SUMMED_OTHERWISE, events)));
        return all;
    }

    /** Two sums of which nobody says since when may well be of two times. */
    private static void twice(List<Sum> sums, List<Contradiction> all) {
        List<Event> group = new ArrayList<>();
        Instant reach = Instant.MIN;
        for (Sum sum : sums) {
            if (!sum.from.isBefore(reach)) {
                add(group, all);
                group = new ArrayList<>();
            }
            group.add(sum.event);
            reach = sum.to.isAfter(reach) ? sum.to : reach;
        }
        add(group, all);
    }

    /**
     * Of one moment or day, of which nobody says since when, two loads may well weigh the same; with the same turns too, or by two sources, they are
     * one.
     */
    private static void again(List<Sum> sums, List<Contradiction> all) {
        Map<List<Object>, List<Sum>> alike = new LinkedHashMap<>();
        for (Sum sum : sums) {
            if (sum.used.from().isEmpty()) {
                alike.computeIfAbsent(
                                List.of(
                                        sum.to,
                                        digits(Amounts.si(Mass.class, sum.used.mass())),
                                        sum.used
                                                .revolutions()
                                                .map(turns -> digits(Amounts.si(RevolutionCount.class, turns)))),
                                first -> new ArrayList<>())
                        .add(sum);
            }
        }
        for (List<Sum> group : alike.values()) {
            boolean isCounted = group.get(0).used.revolutions().isPresent();
            if (isCounted
                    || group.stream().map(sum -> sum.event.source()).distinct().count() > 1) {
                add(group.stream().map(Sum::event).toList(), all);
            }
        }
    }

    /** What was converted to another unit and back is no other number. */
    private static String digits(double number) {
        return String.format(Locale.ROOT, "%.6e", number);
    }

    private static void add(List<Event> group, List<Contradiction> all) {
        if (group.size() > 1) {
            all.add(new Contradiction(Contradiction.Kind.COUNTED_TWICE, group));
        }
    }

    /**
     * The first value that was held, if what was laid a turn isn't between the least and the greatest of them; nothing where not every value
     * of the time is known.
     */
    private Optional<Event> otherwise(List<SlotBook.Entry> entries) {
        double turns = used.revolutions()
                .map(count -> Amounts.si(RevolutionCount.class, count))
                .orElse(0.0);
        List<SlotBook.Entry> held = entries.stream()
                .filter(entry -> isOf(entry.value().point().material().name()))
                .filter(entry -> isPartlyIn(entry.since(), entry.until().orElse(Instant.MAX)))
                .toList();
        boolean isKnown = held.stream().anyMatch(entry -> !entry.since().isAfter(from));
        if (turns == 0 || !to.isAfter(from) || !isKnown) {
            return Optional.empty();
        }
        double each = Amounts.si(Mass.class, used.mass()) / turns;
        double least = Double.POSITIVE_INFINITY;
        double greatest = 0;
        for (SlotBook.Entry entry : held) {
            double value = entry.value().kilogramsPerRevolution();
            least = Math.min(least, value);
            greatest = Math.max(greatest, value);
        }
        boolean isBetween = each >= least * (1 - ROUNDED) && each <= greatest * (1 + ROUNDED);
        return isBetween ? Optional.empty() : Optional.of(held.get(0).entered());
    }
}
