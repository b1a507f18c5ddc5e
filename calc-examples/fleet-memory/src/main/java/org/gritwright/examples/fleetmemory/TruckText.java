package org.gritwright.examples.fleetmemory;

import java.time.Instant;
import java.time.LocalTime;
import java.time.OffsetDateTime;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.gritwright.core.calibration.CalibrationInForce;
import org.gritwright.core.history.Event;
import org.gritwright.core.history.Held;
import org.gritwright.core.history.History;
import org.gritwright.core.history.SlotState;
import org.gritwright.core.history.TruckState;
import org.gritwright.core.history.ValueChange;

/** What is known of a truck, in lines. */
final class TruckText {
    private final History history;
    private final String truck;
    private final Instant at;

    TruckText(History history, String truck, Instant at) {
        this.history = history;
        this.truck = truck;
        this.at = at;
    }

    /**
     * @param doubt that the account of a season found it off, if nothing answered it
     * @param silent why accounts that have it say nothing of it yet
     */
    List<String> lines(Optional<SeasonDoubts.Doubt> doubt, List<String> silent) {
        List<String> lines = new ArrayList<>();
        lines.add("Truck " + truck + " on " + day(at));
        lines.add("");
        doubt.ifPresent(one -> {
            lines.add(Caution.line());
            lines.add("");
            lines.add("What a season found:");
            one.words().forEach(word -> lines.add("  " + Words.minus(word)));
            lines.add("  to do: " + one.toDo());
            lines.add("");
        });
        if (!silent.isEmpty()) {
            lines.add(DueText.SILENT);
            silent.forEach(one -> lines.add("  " + Words.minus(one)));
            lines.add("");
        }
        lines.add("What its display holds:");
        TruckState state = history.asOf(truck, at);
        for (SlotState slot : state.slots()) {
            for (Held held : slot.values()) {
                lines.add("  " + held(slot, held));
                held.changed().forEach(change -> lines.add("    since then: " + event(change)));
            }
            slot.lost().ifPresent(lost -> lines.add("  slot " + slot.slot() + ": nobody knows, since " + event(lost)));
        }
        if (state.slots().isEmpty()) {
            lines.add("  nothing is known");
        }
        lines.add("");
        lines.add("Who changed what:");
        List<String> changes = changes();
        changes.forEach(change -> lines.add("  " + change));
        if (changes.isEmpty()) {
            lines.add("  no change is known");
        }
        lines.add("");
        lines.addAll(Contradictions.of(history.contradictions(truck, at)).lines());
        doubt.ifPresent(one -> lines.add("What a season found beside that stands above."));
        return lines;
    }

    /** Who changed what, when, from what. */
    List<String> changes() {
        return history.changes(truck).stream()
                .filter(change -> !change.at().isAfter(at))
                .map(this::change)
                .toList();
    }

    static String held(SlotState slot, Held held) {
        return "slot " + slot.slot() + ", " + held.value().point() + ": "
                + held.value().factor() + ", " + held.standing().words()
                + held.error().map(error -> ", error " + Words.error(error)).orElse("")
                + "; since " + held.entered().at();
    }

    private String change(ValueChange change) {
        String point = change.to()
                .or(change::from)
                .map(CalibrationInForce::point)
                .map(one -> one + ": ")
                .orElse("");
        return time(change.at()) + ", slot " + change.slot() + ", " + point
                + change.from().map(value -> value.factor().toString()).orElse("unknown")
                + " → " + change.to().map(value -> value.factor().toString()).orElse("unknown")
                + by(change)
                + (change.isWrittenDown() ? "" : ", noticed then; nobody wrote the change down");
    }

    static String by(ValueChange change) {
        return change.by().who().map(who -> ", " + who).orElse("") + " ("
                + change.by().source() + ")";
    }

    static String event(Event event) {
        return event.at() + ", " + event.what().words();
    }

    private String time(Instant instant) {
        OffsetDateTime time = instant.atOffset(history.yard()).truncatedTo(ChronoUnit.MINUTES);
        // Of a day alone nobody wrote a time down.
        return time.toLocalTime().equals(LocalTime.MIDNIGHT)
                ? time.toLocalDate().toString()
                : time.toString();
    }

    private String day(Instant instant) {
        return instant.atOffset(history.yard()).toLocalDate().toString();
    }
}
