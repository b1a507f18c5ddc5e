package org.gritwright.core.history;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import javax.measure.quantity.Dimensionless;
import org.gritwright.core.calibration.CalibrationInForce;
import org.gritwright.core.observation.CalibrationPoint;
import org.gritwright.core.telemetry.AsFound;
import org.gritwright.core.telemetry.SharedError;
import org.gritwright.core.telemetry.Timeline;
import org.gritwright.core.telemetry.TimelineEntry;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.check.Require;

/** From what slots held to what telemetry needs. */
final class Timelines {
    private Timelines() {}

    static Timeline of(SlotBook book, String truck, History history) {
        Require.that(!book.changes().isEmpty(), "events of truck " + truck, "ones that say what a slot held", "none");
        Map<String, Map<CalibrationPoint.Key, SlotBook.Entry>> held = new LinkedHashMap<>();
        Map<String, TreeMap<Instant, List<TimelineEntry>>> times = new LinkedHashMap<>();
        int next = 0;
        for (ValueChange change : book.changes()) {
            Map<CalibrationPoint.Key, SlotBook.Entry> slot =
                    held.computeIfAbsent(change.slot(), name -> new LinkedHashMap<>());
            List<TimelineEntry> now;
            if (change.to().isPresent()) {
                SlotBook.Entry entry = book.entries().get(next++);
                slot.values().removeIf(other -> !isOfMaterial(other, entry) || !isOfSensor(other, entry));
                slot.put(entry.value().point().key(), entry);
                now = slot.values().stream()
                        .map(one ->
                                TimelineEntry.value(change.at(), one.value()).withErrors(errors(one, truck, history)))
                        .toList();
            } else {
                slot.clear();
                now = List.of(TimelineEntry.nothing(change.at(), change.slot()));
            }
            times.computeIfAbsent(change.slot(), name -> new TreeMap<>()).put(change.at(), now);
        }
        return Timeline.of(times.values().stream()
                .flatMap(slot -> slot.values().stream())
                .flatMap(List::stream)
                .toList());
    }

    private static boolean isOfMaterial(SlotBook.Entry one, SlotBook.Entry other) {
        return one.value()
                .point()
                .material()
                .name()
                .equals(other.value().point().material().name());
    }

    /** Rows count the pulses of the sensor that is there now: what those of another stood for, nobody has said since. */
    private static boolean isOfSensor(SlotBook.Entry one, SlotBook.Entry other) {
        return one.value()
                .point()
                .metering()
                .feedback()
                .pulsesPerTurn()
                .equals(other.value().point().metering().feedback().pulsesPerTurn());
    }

    /** What verifications found of values as they were found. */
    static List<AsFound> found(SlotBook book, History history) {
        List<AsFound> all = new ArrayList<>();
        book.entries().forEach(entry -> all.addAll(found(entry, history)));
        all.sort(Comparator.comparing(AsFound::at));
        return List.copyOf(all);
    }

    /**
     * One that confirms what was entered at an hour of the same day is none; where only the day of the value is known, it was held when the day
     * began. What one doesn't show to be off was right for the last time then; what several show, and nobody adjusted, is off as the last of them
     * says. So they can all correct rows, and none twice.
     */
    private static List<AsFound> found(SlotBook.Entry entry, History history) {
        List<AsFound> all = new ArrayList<>();
        Instant entered = entry.since();
        for (Event event : entry.verifications()) {
            Instant at = history.instant(event);
            if (at.isAfter(entered)
                    && (entry.isSinceADay() || !history.day(entered).equals(history.day(at)))) {
                Measured<Dimensionless> error = ((What.Verified) event.what()).error();
                AsFound since = new AsFound(entry.slot(), entry.value().point().setting(), entered, at, error);
                add(all, since);
            }
        }
        return all;
    }

    private static void add(List<AsFound> all, AsFound now) {
        AsFound last = all.isEmpty() ? now : all.get(all.size() - 1);
        if (!last.at().isBefore(now.at())) {
            // The first; or two of one time, which can't both correct anything.
            all.add(now);
        } else if (last.isShown() && now.isShown()) {
            all.set(all.size() - 1, from(last.asLeft(), now));
        } else {
            all.add(from(last.at(), now));
        }
    }

    private static AsFound from(Instant left, AsFound found) {
        return new AsFound(found.slot(), found.setting(), left, found.at(), found.error());
    }

    /** How uncertain a value is, by what is known of it: what others share apart from what is its own. */
    private static List<SharedError> errors(SlotBook.Entry entry, String truck, History history) {
        CalibrationInForce value = entry.value();
        String own = "calibration of " + truck + ", " + value.point().material().name() + ", "
                + value.point().setting() + ", " + entry.entered().at();
        Optional<Event> source = entry.evidence(history);
        if (source.isEmpty()) {
            return List.of();
        }
        Measured<Dimensionless> error = Held.errorBy(value, source.get());
        double off = Amounts.si(Dimensionless.class, error.value());
        double total = error.standardUncertainty()
                        .map(u -> Amounts.si(Dimensionless.class, u))
                        .orElse(0.0)
                / (1 + off);
        List<SharedError> shared = shared(source.get().what());
        double apart = total * total;
        for (SharedError one : shared) {
            double u = Amounts.si(Dimensionless.class, one.standardUncertainty());
            apart -= u * u;
        }
        List<SharedError> all = new ArrayList<>(shared);
        all.add(new SharedError(own, Amounts.of(Math.hypot(Math.sqrt(Math.max(0, apart)), off), SpreadingUnits.ONE)));
        return all;
    }

    static List<SharedError> shared(What what) {
        return what instanceof What.Verified verified ? verified.shared() : ((What.Calibrated) what).shared();
    }
}
