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
                slot.values().removeIf(other -> !isOfMaterial(other, entry));
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

    /**
     * What verifications found of a value as it was found. One that confirms what was entered at an hour of the same day is none; where only
     * the day of the value is known, it was held when the day began.
     */
    static List<AsFound> found(SlotBook book, History history) {
        List<AsFound> all = new ArrayList<>();
        for (SlotBook.Entry entry : book.entries()) {
            Instant left = entry.since();
            for (Event event : entry.verifications()) {
                Instant at = history.instant(event);
                if (at.isAfter(left)
                        && (entry.isSinceADay() || !history.day(left).equals(history.day(at)))) {
                    What.Verified verified = (What.Verified) event.what();
                    all.add(new AsFound(entry.slot(), entry.value().point().setting(), left, at, verified.error()));
                }
            }
        }
        all.sort(Comparator.comparing(AsFound::at));
        return List.copyOf(all);
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
