package org.gritwright.core.history;

import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.gritwright.core.calibration.CalibrationInForce;
import org.gritwright.core.history.Contradiction.Kind;
import org.gritwright.core.observation.CalibrationPoint;

/** Follows what a truck's slots hold from event to event. */
final class SlotBook {
    private final History history;
    private final Map<String, Slot> slots = new TreeMap<>();
    private final Map<CalibrationPoint.Key, Event> calibrated = new HashMap<>();
    private final List<ValueChange> changes = new ArrayList<>();
    private final List<Contradiction> contradictions = new ArrayList<>();

    /** Where the open ones stand in that list: by slot, and by the point of the value with which they came up. */
    private final Map<String, Map<CalibrationPoint.Key, List<Integer>>> open = new HashMap<>();

    /** Every value that was ever held, in the order of time; a slot's current ones are among them. */
    private final List<Entry> entries = new ArrayList<>();

    SlotBook(History history) {
        this.history = history;
    }

    /** A slot, with what it holds now. */
    private static final class Slot {
        private Instant since;
        private final Map<CalibrationPoint.Key, Entry> values = new LinkedHashMap<>();
        private Optional<Event> lost = Optional.empty();

        Slot(Instant since) {
            this.since = since;
        }
    }

    /** A value in a slot. */
    static final class Entry {
        private final String slot;
        private final CalibrationInForce value;
        private final Instant since;
        private final Event entered;
        private final Optional<Event> found;
        private final List<Event> verifications = new ArrayList<>();
        private final List<Event> changed = new ArrayList<>();
        /** The last calibration before it was entered, and those while it was held. */
        private final List<Event> calibrations = new ArrayList<>();

        private Optional<Instant> until = Optional.empty();

        Entry(String slot, CalibrationInForce value, Instant since, Event entered, Optional<Event> found) {
            this.slot = slot;
            this.value = value;
            this.since = since;
            this.entered = entered;
            this.found = found;
        }

        String slot() {
            return slot;
        }

        CalibrationInForce value() {
            return value;
        }

        Instant since() {
            return since;
        }

        /** When another took its place; none while it is held. */
        Optional<Instant> until() {
            return until;
        }

        Event entered() {
            return entered;
        }

        /**
         * What says how uncertain the value is as it was left: the verifications of the first day at whose end it was still held, or else what
         * it was computed from. What a later day finds of it says what it has become.
         */
        Optional<Event> evidence(History history) {
            Optional<Event> first = verifications.stream()
                    .filter(event -> isHeldAfterDayOf(event, history))
                    .findFirst();
            return first.flatMap(day -> verifications.stream()
                            .filter(event -> isOfOneDay(event, day, history))
                            .reduce((one, other) -> other))
                    .or(() -> found)
                    .or(() -> calibrations.stream()
                            .filter(event -> isHeldAfterDayOf(event, history))
                            .findFirst());
        }

        private static Optional<Event> last(List<Event> events) {
            return events.isEmpty() ? Optional.empty() : Optional.of(events.get(events.size() - 1));
        }

        private boolean isHeldAfterDayOf(Event event, History history) {
            return until.map(end -> history.day(end).isAfter(history.day(history.instant(event))))
                    .orElse(true);
        }

        private static boolean isOfOneDay(Event one, Event other, History history) {
            return history.day(history.instant(one)).equals(history.day(history.instant(other)));
        }

        /** Whether it is only known since which day it is held: then it was held when that day began. */
        boolean isSinceADay() {
            return entered.at().time().isEmpty();
        }

        List<Event> verifications() {
            return verifications;
        }

        Held held() {
            return new Held(value, since, entered, last(calibrations), last(verifications), found, changed);
        }
    }

    void take(Step step) {
        if (step.isClaim()) {
            put(step.event(), step.at(), ((What.Shown) step.event().what()).seen(), Optional.empty());
        } else {
            apply(step.event());
        }
    }

    private void apply(Event event) {
        What what = event.what();
        if (what instanceof What.Entered entered) {
            enter(event, entered);
        } else if (what instanceof What.Corrected corrected) {
            correct(event, corrected);
        } else if (what instanceof What.Shown shown) {
            show(event, shown.seen(), Kind.CHANGED_BY_NOBODY);
        } else if (what instanceof What.Verified verified) {
            verify(event, verified);
        } else if (what instanceof What.Calibrated known) {
            calibrate(event, known);
        } else if (what instanceof What.Overwritten overwritten) {
            lose(event, overwritten.slot());
        } else if (what instanceof What.SetBack) {
            List.copyOf(slots.keySet()).forEach(slot -> lose(event, slot));
        } else if (what instanceof What.Changed changed && changed.concernsMass()) {
            current().forEach(entry -> entry.changed.add(event));
        } else if (what instanceof What.Delivered delivered) {
            current()
                    .filter(entry -> entry.value
                            .point()
                            .material()
                            .name()
                            .equals(delivered.material().name()))
                    .forEach(entry -> entry.changed.add(event));
        }
    }

    private void odd(Kind kind, CalibrationInForce about, Event... events) {
        open.computeIfAbsent(slot(about), slot -> new HashMap<>())
                .computeIfAbsent(about.point().key(), point -> new ArrayList<>())
                .add(contradictions.size());
        contradictions.add(new Contradiction(kind, List.of(events)));
    }

    /**
     * What contradicts nothing settles what was open in its place: for the same point, or, as it takes the place of all values of
     * another material, for those.
     */
    private void settle(Event event, CalibrationInForce entered, int before) {
        if (contradictions.size() > before) {
            return;
        }
        CalibrationPoint.Key now = entered.point().key();
        open.getOrDefault(slot(entered), new HashMap<>()).entrySet().removeIf(odd -> {
            CalibrationPoint.Key then = odd.getKey();
            boolean isReplaced = then.equals(now) || !then.material().equals(now.material());
            if (isReplaced) {
                odd.getValue()
                        .forEach(place -> contradictions.set(
                                place, contradictions.get(place).settledBy(event)));
            }
            return isReplaced;
        });
    }

    private Stream<Entry> current() {
        return slots.values().stream().flatMap(slot -> slot.values.values().stream());
    }

    private void calibrate(Event event, What.Calibrated known) {
        calibrated.put(known.at().key(), event);
        current()
                .filter(entry -> entry.value.point().key().equals(known.at().key()))
                .forEach(entry -> entry.calibrations.add(event));
    }

    private void enter(Event event, What.Entered entered) {
        int before = contradictions.size();
        if (!entered.held().factor().equals(entered.asked().factor())) {
            odd(Kind.READ_BACK_DIFFERS, entered.held(), event);
        }
        put(event, entered.held(), Optional.empty());
        settle(event, entered.held(), before);
    }

    private void correct(Event event, What.Corrected corrected) {
        int known = contradictions.size();
        Optional<Entry> before = entry(corrected.asFound());
        before.filter(entry -> !isSame(entry.value, corrected.asFound()) && !isSame(entry.value, corrected.held()))
                .ifPresent(entry -> odd(Kind.CORRECTED_ANOTHER, corrected.held(), entry.entered, event));
        Optional<Event> found = corrected
                .because()
                .flatMap(history::event)
                .filter(history::stands)
                .filter(other -> other.what() instanceof What.Verified);
        put(event, corrected.held(), found);
        settle(event, corrected.held(), known);
    }

    private void verify(Event event, What.Verified verified) {
        show(event, verified.inForce(), Kind.VERIFIED_ANOTHER);
        entry(verified.inForce()).ifPresent(entry -> {
            if (isSame(entry.value, verified.inForce())) {
                entry.verifications.add(event);
                entry.changed.clear();
            } else {
                // Which of both the display holds has to be looked at, however well this one was proven before.
                entry.changed.add(event);
            }
        });
    }

    /** What is seen where nothing is known is what is held. Where it contradicts what is known, only a look at the display counts. */
    private void show(Event event, CalibrationInForce seen, Kind odd) {
        Optional<Entry> known = entry(seen);
        if (known.isPresent() && !isSame(known.get().value, seen)) {
            odd(odd, seen, known.get().entered, event);
        }
        if (known.isEmpty() || odd == Kind.CHANGED_BY_NOBODY) {
            put(event, seen, Optional.empty());
        }
    }

    private void put(Event event, CalibrationInForce value, Optional<Event> found) {
        put(event, history.instant(event), value, found);
    }

    private void put(Event event, Instant at, CalibrationInForce value, Optional<Event> found) {
        Slot slot = slots.computeIfAbsent(slot(value), name -> new Slot(at));
        Optional<Entry> before = entry(value);
        if (before.filter(entry -> isSame(entry.value, value)).isPresent()) {
            return;
        }
        before.filter(entry -> entry.since.equals(at))
                .filter(entry -> event.what() instanceof What.Entered && entry.entered.what() instanceof What.Entered)
                .ifPresent(entry -> odd(Kind.TWO_AT_ONCE, value, entry.entered, event));
        before.ifPresent(entry -> entry.until = Optional.of(at));
        slot.values.values().removeIf(entry -> isReplaced(entry, value, at));
        Entry entry = new Entry(slot(value), value, at, event, found);
        Optional.ofNullable(calibrated.get(value.point().key())).ifPresent(entry.calibrations::add);
        slot.values.put(value.point().key(), entry);
        slot.lost = Optional.empty();
        slot.since = at;
        entries.add(entry);
        changes.add(new ValueChange(at, slot(value), before.map(one -> one.value), Optional.of(value), event));
    }

    /** Another material in the slot takes the place of all of one. */
    private static boolean isReplaced(Entry entry, CalibrationInForce value, Instant at) {
        boolean replaced = !entry.value
                .point()
                .material()
                .name()
                .equals(value.point().material().name());
        if (replaced) {
            entry.until = Optional.of(at);
        }
        return replaced;
    }

    private void lose(Event event, String name) {
        Instant at = history.instant(event);
        Slot slot = slots.computeIfAbsent(name, unknown -> new Slot(at));
        if (slot.values.isEmpty()) {
            changes.add(new ValueChange(at, name, Optional.empty(), Optional.empty(), event));
        }
        slot.values
                .values()
                .forEach(entry ->
                        changes.add(new ValueChange(at, name, Optional.of(entry.value), Optional.empty(), event)));
        slot.values.values().forEach(entry -> entry.until = Optional.of(at));
        slot.values.clear();
        slot.lost = Optional.of(event);
        slot.since = at;
    }

    private Optional<Entry> entry(CalibrationInForce value) {
        return Optional.ofNullable(slots.get(slot(value)))
                .map(slot -> slot.values.get(value.point().key()));
    }

    static String slot(CalibrationInForce value) {
        return value.slot().orElse(value.point().material().name());
    }

    private static boolean isSame(CalibrationInForce one, CalibrationInForce other) {
        return one.factor().equals(other.factor());
    }

    List<SlotState> slots() {
        return slots.entrySet().stream()
                .map(slot -> new SlotState(
                        slot.getKey(),
                        slot.getValue().since,
                        slot.getValue().values.values().stream()
                                .map(Entry::held)
                                .toList(),
                        slot.getValue().lost))
                .toList();
    }

    List<Entry> entries() {
        return entries;
    }

    List<ValueChange> changes() {
        return List.copyOf(changes);
    }

    List<Contradiction> contradictions() {
        return List.copyOf(contradictions);
    }
}
