package org.gritwright.examples.fleetmemory;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.NavigableSet;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.gritwright.core.history.Event;
import org.gritwright.core.history.History;
import org.gritwright.core.history.What;

/**
 * Weeks in which trucks laid nothing, as far as their sums tell, while others did. Storms come to all: such a truck stood, or its radio fell silent, was
 * fitted later, or says another name. Nobody can tell that from sums, and nothing is filled in.
 */
final class SilentTrucks {
    /** A truck that is silent for so much longer than others isn't only at rest (common practice, no source). */
    static final long SILENT_DAYS = 21;

    /** On fewer days others had work that there needn't have been for all (common practice, no source). */
    private static final int WORKED_DAYS = 3;

    private static final String QUESTION = ". Did it stand, or wasn't it heard?";

    private record Days(LocalDate from, LocalDate to) {}

    private record Name(String truck, String pile) {}

    /** What a truck drew from one pile in all of its draws, with the days of its sums and those on which others laid something. */
    private record Line(
            List<DrawDays> draws, LocalDate first, LocalDate last, List<Days> holes, NavigableSet<LocalDate> others) {
        String truck() {
            return draws.get(0).truck();
        }

        String material() {
            return draws.get(0).material();
        }

        String words() {
            DrawDays one = draws.get(0);
            return new DrawDays(
                            one.truck(),
                            one.material(),
                            one.pile(),
                            one.from(),
                            draws.get(draws.size() - 1).to())
                    .words();
        }

        boolean isLate() {
            return !others.isEmpty() && ChronoUnit.DAYS.between(others.first(), first) >= SILENT_DAYS;
        }

        boolean isEarly() {
            return !others.isEmpty() && ChronoUnit.DAYS.between(last, others.last()) >= SILENT_DAYS;
        }

        /** Whether another truck's sums begin where those of this one end. */
        boolean isFollowedBy(Line other) {
            return isEarly()
                    && other.isLate()
                    && !other.truck().equals(truck())
                    && other.material().equals(material())
                    && !other.first.isBefore(last)
                    && ChronoUnit.DAYS.between(last, other.first) < SILENT_DAYS;
        }
    }

    private SilentTrucks() {}

    /**
     * Questions about trucks that others' sums go on without.
     *
     * @param silent the draws that take kept sums
     * @param all all draws of the account
     */
    static List<String> questions(History history, List<DrawDays> silent, List<DrawDays> all) {
        Map<Name, List<DrawDays>> byName = silent.stream()
                .sorted(Comparator.comparing(DrawDays::from))
                .collect(Collectors.groupingBy(
                        one -> new Name(one.truck(), one.pile()), LinkedHashMap::new, Collectors.toList()));
        Map<DrawDays, List<LocalDate>> laid = new HashMap<>();
        all.forEach(draw -> laid.computeIfAbsent(draw, one -> laid(history, one)));
        List<Line> lines = new ArrayList<>();
        byName.values().forEach(draws -> line(history, draws, laid).ifPresent(lines::add));
        List<String> questions = new ArrayList<>();
        Set<Line> renamed = new LinkedHashSet<>();
        for (Line line : lines) {
            List<Line> next = lines.stream().filter(line::isFollowedBy).toList();
            if (next.size() == 1
                    && lines.stream()
                                    .filter(one -> one.isFollowedBy(next.get(0)))
                                    .count()
                            == 1) {
                renamed.add(next.get(0));
                questions.add(line.words() + ": its last sum is of " + line.last() + ", and those of truck "
                        + next.get(0).truck() + " begin on " + next.get(0).first() + ", while others have some from "
                        + next.get(0).others().first() + " until "
                        + line.others().last()
                        + ". Is that one truck by two names, or wasn't one of both heard?");
            } else if (line.isEarly()) {
                questions.add(line.words() + ": its last sum is of " + line.last() + ", and others have some until "
                        + line.others().last() + (next.isEmpty() ? QUESTION : follow(next)));
            }
        }
        for (Line line : lines) {
            if (line.isLate() && !renamed.contains(line)) {
                questions.add(line.words() + ": its first sum is of " + line.first() + ", and others have some from "
                        + line.others().first() + " on" + QUESTION);
            }
            for (Days hole : line.holes()) {
                NavigableSet<LocalDate> worked = line.others().subSet(hole.from(), false, hole.to(), false);
                if (worked.size() >= WORKED_DAYS) {
                    questions.add(line.words() + ": it has no sum between " + hole.from() + " and " + hole.to()
                            + ", and others have some of " + worked.size() + " days in between" + QUESTION);
                }
            }
        }
        return questions;
    }

    private static String follow(List<Line> next) {
        return ". Those of trucks " + next.stream().map(Line::truck).distinct().collect(Collectors.joining(", "))
                + " begin there: is it one of them by another name, did it stand, or wasn't it heard?";
    }

    /** On which days of a draw its truck laid something of its material. */
    private static List<LocalDate> laid(History history, DrawDays draw) {
        return sums(history, draw.truck(), draw.material()).stream()
                .map(Days::to)
                .filter(draw::has)
                .toList();
    }

    private static Optional<Line> line(History history, List<DrawDays> draws, Map<DrawDays, List<LocalDate>> laid) {
        DrawDays one = draws.get(0);
        List<Days> sums = sums(history, one.truck(), one.material()).stream()
                .filter(days -> draws.stream().anyMatch(draw -> draw.has(days.to())))
                .sorted(Comparator.comparing(Days::from))
                .toList();
        if (sums.isEmpty()) {
            return Optional.empty();
        }
        List<Days> holes = new ArrayList<>();
        LocalDate last = sums.get(0).to();
        for (Days days : sums) {
            if (ChronoUnit.DAYS.between(last, days.from()) >= SILENT_DAYS) {
                holes.add(new Days(last, days.from()));
            }
            last = days.to().isAfter(last) ? days.to() : last;
        }
        return Optional.of(new Line(draws, sums.get(0).from(), last, holes, others(draws, laid)));
    }

    /** When other trucks laid the same material in these days, or, where no other draws it, any. */
    private static NavigableSet<LocalDate> others(List<DrawDays> draws, Map<DrawDays, List<LocalDate>> laid) {
        DrawDays one = draws.get(0);
        List<DrawDays> others = laid.keySet().stream()
                .filter(other -> !other.truck().equals(one.truck()))
                .toList();
        List<DrawDays> alike = others.stream()
                .filter(other -> other.material().equals(one.material()))
                .toList();
        NavigableSet<LocalDate> days = new TreeSet<>();
        for (DrawDays other : alike.isEmpty() ? others : alike) {
            Objects.requireNonNull(laid.get(other)).stream()
                    .filter(day -> draws.stream().anyMatch(draw -> draw.has(day)))
                    .forEach(days::add);
        }
        return days;
    }

    private static List<Days> sums(History history, String truck, String material) {
        List<Days> days = new ArrayList<>();
        for (Event event : history.standing(truck)) {
            if (event.what() instanceof What.Used used && used.material().equals(material)) {
                LocalDate day = event.at().day();
                days.add(new Days(used.from().map(since -> since.day()).orElse(day), day));
            }
        }
        return days;
    }
}
