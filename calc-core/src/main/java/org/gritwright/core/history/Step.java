package org.gritwright.core.history;

import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.gritwright.core.calibration.CalibrationInForce;
import org.gritwright.core.observation.CalibrationPoint;

/**
 * An event in its turn; or the claim of a display's value that it has been held since an earlier time.
 *
 * @param at when it takes its turn
 * @param event the event
 * @param isClaim whether it is the claim, and not the event itself
 */
record Step(Instant at, Event event, boolean isClaim) {
    /** A value's place: the slot and the point in it. */
    private record Place(String slot, CalibrationPoint.Key point) {}

    /**
     * The steps of a truck's events. A claim is heard only if nothing else is known of its place from then until the value was seen, but
     * that it was held: a later document often names just the day on which something was corrected, and the record of that day knows the
     * hour.
     */
    static List<Step> of(History history, List<Event> events) {
        List<Step> steps = new ArrayList<>();
        Map<Place, List<Step>> known = new HashMap<>();
        List<Step> losses = new ArrayList<>();
        for (Event event : events) {
            Step step = new Step(history.instant(event), event, false);
            steps.add(step);
            value(event.what())
                    .ifPresent(value -> known.computeIfAbsent(place(value), place -> new ArrayList<>())
                            .add(step));
            if (event.what() instanceof What.SetBack || event.what() instanceof What.Overwritten) {
                losses.add(step);
            }
        }
        boolean any = false;
        for (Step step : List.copyOf(steps)) {
            Optional<Instant> claimed = step.claimed(history);
            if (claimed.isPresent()) {
                CalibrationInForce seen = ((What.Shown) step.event.what()).seen();
                boolean heard = known.getOrDefault(place(seen), List.of()).stream()
                                .filter(other -> other.isBetween(claimed.get(), step.at))
                                .allMatch(other -> isLookAt(seen, other.event.what()))
                        && losses.stream().noneMatch(other -> other.isBetween(claimed.get(), step.at));
                if (heard) {
                    steps.add(new Step(claimed.get(), step.event, true));
                    any = true;
                }
            }
        }
        if (any) {
            steps.sort(Comparator.comparing(Step::at)
                    .thenComparing(step -> history.rank(step.event))
                    .thenComparing(step -> step.event.id()));
        }
        return steps;
    }

    /** Whether a display was seen to hold the same, which says nothing of how the value came there. */
    private static boolean isLookAt(CalibrationInForce seen, What what) {
        return (what instanceof What.Shown shown && shown.seen().factor().equals(seen.factor()))
                || (what instanceof What.Verified verified
                        && verified.inForce().factor().equals(seen.factor()));
    }

    private Optional<Instant> claimed(History history) {
        return event.what() instanceof What.Shown shown
                ? shown.seen()
                        .since()
                        .map(since -> since.time()
                                .map(OffsetDateTime::toInstant)
                                .orElseGet(() -> since.day().atStartOfDay().toInstant(history.yard())))
                        .filter(from -> from.isBefore(at))
                : Optional.empty();
    }

    private boolean isBetween(Instant from, Instant to) {
        return !at.isBefore(from) && at.isBefore(to);
    }

    /** The value that an event says a slot to hold. */
    private static Optional<CalibrationInForce> value(What what) {
        if (what instanceof What.Entered entered) {
            return Optional.of(entered.held());
        } else if (what instanceof What.Corrected corrected) {
            return Optional.of(corrected.held());
        } else if (what instanceof What.Shown shown) {
            return Optional.of(shown.seen());
        }
        return what instanceof What.Verified verified ? Optional.of(verified.inForce()) : Optional.empty();
    }

    private static Place place(CalibrationInForce value) {
        return new Place(SlotBook.slot(value), value.point().key());
    }
}
