package org.gritwright.core.history;

import java.time.Instant;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.Collectors;
import org.gritwright.core.telemetry.AsFound;
import org.gritwright.core.telemetry.Timeline;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.check.Require;

/**
 * What a fleet's events say together. The order in which they come doesn't matter, an event that comes twice is there once, and none is ever
 * taken out: one that was superseded stays readable and says nothing any more. Immutable, thread-safe, a value.
 *
 * <p>Events of one instant are taken in this order: seasons, deliveries, changes, losses of what slots hold, what displays show, calibrations,
 * entries and corrections, verifications. So a change is taken to have been made before a calibration of the same day, and a correction before
 * what confirms it; only a correction that names a verification of its own instant comes after it.
 */
public final class History {
    /** Of more conflicts than this, their number says enough. */
    private static final int MOST_CONFLICTS = 5;

    private final ZoneOffset yard;
    private final Map<String, Event> byId;
    private final Set<String> superseded;
    private final List<Event> ordered;
    private final List<Event> ofFleet;
    /** With those of the fleet. */
    private final Map<String, List<Event>> ofTrucks;

    /** Follows from the events alone, and each account of a season asks for it. */
    private final Map<String, List<Step>> steps = new ConcurrentHashMap<>();

    /** The same, which each draw asks for. */
    private final Map<String, Summed> summed = new ConcurrentHashMap<>();

    /** What telemetry summed up of a truck, and what contradicts itself; nothing is looked for where there is no sum. */
    record Summed(List<Sum> sums, List<Contradiction> contradictions) {}

    /** An event with its place in the order. */
    private record Placed(Event event, Instant at, int rank) {}

    private History(Map<String, Event> byId, ZoneOffset yard) {
        this.yard = yard;
        this.byId = byId;
        superseded = new HashSet<>();
        for (Event event : byId.values()) {
            event.supersedes().ifPresent(one -> superseded.add(one.id()));
        }
        ordered = byId.values().stream()
                .map(event -> new Placed(event, instant(event), rank(event)))
                .sorted(Comparator.comparing(Placed::at)
                        .thenComparing(Placed::rank)
                        .thenComparing(placed -> placed.event.id()))
                .map(Placed::event)
                .toList();
        Map<String, List<Event>> trucks = new TreeMap<>();
        List<Event> fleet = new ArrayList<>();
        for (Event event : ordered) {
            if (stands(event)) {
                event.truck()
                        .map(truck -> trucks.computeIfAbsent(truck, name -> new ArrayList<>()))
                        .orElse(fleet)
                        .add(event);
            }
        }
        ofFleet = List.copyOf(fleet);
        trucks.replaceAll((truck, own) -> List.copyOf(merged(own)));
        ofTrucks = trucks;
    }

    /**
     * What events say together.
     *
     * @param events the events, in any order; one that is there twice counts once
     * @param yard the yard's offset: where only a day is known, it counts from its beginning there
     * @return the history
     * @throws InvalidInputException if one id has two contents, or events supersede each other in a circle
     */
    public static History of(Collection<Event> events, ZoneOffset yard) {
        Objects.requireNonNull(yard, "yard");
        Map<String, Event> byId = new LinkedHashMap<>();
        add(events, byId);
        return new History(byId, yard);
    }

    /**
     * The same with further events.
     *
     * @param events further events, in any order; one that is there already changes nothing
     * @return the history
     * @throws InvalidInputException if one id has two contents, or events supersede each other in a circle
     */
    public History with(Collection<Event> events) {
        Map<String, Event> all = new LinkedHashMap<>(byId);
        add(events, all);
        return new History(all, yard);
    }

    private static void add(Collection<Event> events, Map<String, Event> byId) {
        List<String> conflicts = new ArrayList<>();
        int more = 0;
        for (Event event : events) {
            Event before = byId.putIfAbsent(event.id(), event);
            if (before != null && !before.isSameAs(event)) {
                if (conflicts.size() < MOST_CONFLICTS) {
                    conflicts.add(event.id() + " (" + before + "; " + event + ")");
                } else {
                    more++;
                }
            }
        }
        String others = more == 0 ? "" : ", and " + more + " more";
        Require.that(
                conflicts.isEmpty(),
                "ids of events",
                "of one content each",
                () -> String.join(", ", conflicts) + others);
        requireNoCircle(byId);
    }

    private static void requireNoCircle(Map<String, Event> byId) {
        Set<String> open = new HashSet<>();
        for (Event start : byId.values()) {
            Set<String> path = new HashSet<>();
            Optional<Event> event = Optional.of(start);
            while (event.isPresent() && !open.contains(event.get().id())) {
                String id = event.get().id();
                Require.that(path.add(id), "events that supersede each other", "in no circle", id);
                event = event.get().supersedes().map(one -> byId.get(one.id()));
            }
            open.addAll(path);
        }
    }

    /** The order of events of one instant. */
    int rank(Event event) {
        What what = event.what();
        if (what instanceof What.SeasonStarted) {
            return 0;
        } else if (what instanceof What.Delivered) {
            return 1;
        } else if (what instanceof What.Changed || what instanceof What.RangeMeasured || what instanceof What.Used) {
            return 2;
        } else if (what instanceof What.SetBack || what instanceof What.Overwritten) {
            return 3;
        } else if (what instanceof What.Shown) {
            return 4;
        } else if (what instanceof What.Calibrated) {
            return 5;
        } else if (what instanceof What.Corrected corrected) {
            return corrected
                    .because()
                    .flatMap(this::event)
                    .filter(found -> instant(found).equals(instant(event)))
                    .map(found -> 8)
                    .orElse(6);
        }
        return what instanceof What.Verified ? 7 : 6;
    }

    /**
     * When an event happened.
     *
     * @param event an event
     * @return its time; where only its day is known, the beginning of that day in the yard
     */
    public Instant instant(Event event) {
        return event.at()
                .time()
                .map(OffsetDateTime::toInstant)
                .orElseGet(() -> beginning(event.at().day()));
    }

    /** When a day begins in the yard. */
    Instant beginning(LocalDate day) {
        return day.atStartOfDay().toInstant(yard);
    }

    /** The day of an instant in the yard. */
    LocalDate day(Instant at) {
        return at.atOffset(yard).toLocalDate();
    }

    /**
     * The yard's offset.
     *
     * @return where days begin
     */
    public ZoneOffset yard() {
        return yard;
    }

    /**
     * All events, those that were superseded too.
     *
     * @return in the order of time
     */
    public List<Event> events() {
        return ordered;
    }

    /**
     * An event.
     *
     * @param id what it is known by
     * @return the event, superseded or not; none if there is no such
     */
    public Optional<Event> event(String id) {
        return Optional.ofNullable(byId.get(Objects.requireNonNull(id, "id")));
    }

    /**
     * Whether an event still says something. One that was superseded never does again: if the one in its place was mistaken too, a third
     * says what is right.
     *
     * @param event an event of this history
     * @return false if another stands in its place, or it only withdraws one
     */
    public boolean stands(Event event) {
        return !superseded.contains(event.id()) && !(event.what() instanceof What.Withdrawn);
    }

    /**
     * The trucks that anything stands of.
     *
     * @return their ids, in the order of the alphabet
     */
    public List<String> trucks() {
        return List.copyOf(ofTrucks.keySet());
    }

    /**
     * What stands of a truck and of the fleet.
     *
     * @param truck the truck's id
     * @return in the order of time
     */
    public List<Event> standing(String truck) {
        Objects.requireNonNull(truck, "truck");
        return ofTrucks.getOrDefault(truck, ofFleet);
    }

    /**
     * What stands of the fleet as a whole.
     *
     * @return seasons and deliveries, in the order of time
     */
    public List<Event> standingOfFleet() {
        return ofFleet;
    }

    private List<Event> merged(List<Event> events) {
        List<Event> all = new ArrayList<>(events.size() + ofFleet.size());
        int next = 0;
        for (Event event : events) {
            while (next < ofFleet.size() && isBefore(ofFleet.get(next), event)) {
                all.add(ofFleet.get(next++));
            }
            all.add(event);
        }
        all.addAll(ofFleet.subList(next, ofFleet.size()));
        return all;
    }

    /** What concerns the fleet comes first in its instant, as its ranks are the lowest. */
    private boolean isBefore(Event fleet, Event truck) {
        return !instant(fleet).isAfter(instant(truck));
    }

    /**
     * What a truck's slots held at an instant.
     *
     * @param truck the truck's id
     * @param at the instant; what happened at it counts
     * @return the slots that anything is known of
     */
    public TruckState asOf(String truck, Instant at) {
        Objects.requireNonNull(at, "at");
        return new TruckState(truck, at, replayed(truck, at).slots());
    }

    /**
     * Who changed what a truck's slots hold, when, and from what.
     *
     * @param truck the truck's id
     * @return in the order of time
     */
    public List<ValueChange> changes(String truck) {
        return replayed(truck).changes();
    }

    /**
     * What can't all be as it was written down: of all trucks, and of superseding.
     *
     * @return truck by truck, in the order of time, and at the end those of superseding
     */
    public List<Contradiction> contradictions() {
        return contradictions(Instant.MAX);
    }

    /**
     * The same of what had happened at an instant. What settles it later isn't known then; that an event was superseded is, as always.
     *
     * @param at the instant; what happened at it counts
     * @return truck by truck, in the order of time, and at the end those of superseding
     */
    public List<Contradiction> contradictions(Instant at) {
        Objects.requireNonNull(at, "at");
        Map<String, List<Event>> instead = new LinkedHashMap<>();
        List<Contradiction> all = new ArrayList<>();
        trucks().forEach(truck -> all.addAll(contradictions(truck, at)));
        for (Event event : ordered) {
            if (instant(event).isAfter(at)) {
                continue;
            }
            event.supersedes().ifPresent(one -> {
                if (!byId.containsKey(one.id())) {
                    all.add(new Contradiction(Contradiction.Kind.SUPERSEDES_UNKNOWN, List.of(event)));
                }
                if (!superseded.contains(event.id())) {
                    instead.computeIfAbsent(one.id(), id -> new ArrayList<>()).add(event);
                }
            });
        }
        instead.values().stream()
                .filter(events -> events.size() > 1)
                .forEach(events -> all.add(new Contradiction(Contradiction.Kind.SUPERSEDED_TWICE, events)));
        return all;
    }

    /**
     * What a truck's events say of its slots, and of what it laid, that can't all be so.
     *
     * @param truck the truck's id
     * @return in the order of time
     */
    public List<Contradiction> contradictions(String truck) {
        return contradictions(truck, Instant.MAX);
    }

    /**
     * The same of what had happened at an instant.
     *
     * @param truck the truck's id
     * @param at the instant; what happened at it counts
     * @return in the order of time
     */
    public List<Contradiction> contradictions(String truck, Instant at) {
        Objects.requireNonNull(at, "at");
        SlotBook book = replayed(truck, at);
        // A value may be claimed to have been held long before it was seen.
        List<Contradiction> all = book.contradictions().stream()
                .filter(one ->
                        one.events().stream().noneMatch(event -> instant(event).isAfter(at)))
                .collect(Collectors.toCollection(ArrayList::new));
        List<Sum> sums = Sum.of(this, truck).stream()
                .filter(sum -> !instant(sum.event()).isAfter(at))
                .toList();
        List<Contradiction> ofSums = Sum.contradictions(sums, book.entries());
        if (!ofSums.isEmpty()) {
            all.addAll(ofSums);
            all.sort(Comparator.comparing(
                    one -> instant(one.events().get(one.events().size() - 1))));
        }
        return List.copyOf(all);
    }

    /** The sums of a truck, found once. */
    Summed summed(String truck) {
        return summed.computeIfAbsent(truck, one -> {
            List<Sum> sums = List.copyOf(Sum.of(this, one));
            return new Summed(sums, sums.isEmpty() ? List.of() : contradictions(one));
        });
    }

    /**
     * What telemetry is evaluated with: what a truck's slots held when, and how uncertain it was. What a slot lost is nothing to rely on from
     * then on. It is not corrected backwards: {@link #found} and the caller say by what and how.
     *
     * @param truck the truck's id
     * @return the timeline
     * @throws InvalidInputException if nothing is known of the truck's slots, or a drive gives no pulses
     */
    public Timeline timeline(String truck) {
        return Timelines.of(replayed(truck), truck, this);
    }

    /**
     * What verifications found of a value before it was changed, since it was right for the last time: entered, or verified and not shown to
     * be off. Of verifications that show the same value to be off one after the other it is the last.
     *
     * @param truck the truck's id
     * @return in the order of time
     */
    public List<AsFound> found(String truck) {
        return Timelines.found(replayed(truck), this);
    }

    private SlotBook replayed(String truck) {
        return replayed(truck, Instant.MAX);
    }

    private SlotBook replayed(String truck, Instant until) {
        SlotBook book = new SlotBook(this);
        for (Step step : steps.computeIfAbsent(truck, one -> List.copyOf(Step.of(this, standing(one))))) {
            if (!step.at().isAfter(until)) {
                book.take(step);
            }
        }
        return book;
    }

    @Override
    public boolean equals(Object other) {
        return this == other
                || (other instanceof History that && yard.equals(that.yard) && ordered.equals(that.ordered));
    }

    @Override
    public int hashCode() {
        return ordered.hashCode();
    }

    /**
     * How much is in it.
     *
     * @return for example "12 events of 3 trucks"
     */
    @Override
    public String toString() {
        return ordered.size() + " events of " + ofTrucks.size() + " trucks";
    }
}
