package org.gritwright.examples.telemetry;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.NavigableMap;
import java.util.Optional;
import org.gritwright.core.curve.DischargeCurve;
import org.gritwright.core.telemetry.SharedError;
import org.gritwright.core.telemetry.Timeline;
import org.gritwright.core.telemetry.TimelineEntry;

/**
 * Curves in the place of values at several settings: where a slot holds values for more than one opening at a time, and the truck was caught
 * at them, openings between them are evaluated by the curve through those catches. A slot with one value stays with it.
 *
 * @param byDay the curves of each calibration day
 * @param offset the yard's
 */
record CurvesInForce(NavigableMap<LocalDate, List<DischargeCurve>> byDay, ZoneOffset offset) {
    private record Place(String slot, Instant from) {}

    Timeline in(Timeline timeline) {
        Map<Place, List<TimelineEntry>> places = new LinkedHashMap<>();
        for (TimelineEntry entry : timeline.entries()) {
            places.computeIfAbsent(new Place(entry.slot(), entry.from()), none -> new ArrayList<>())
                    .add(entry);
        }
        List<TimelineEntry> entries = new ArrayList<>();
        places.forEach((place, held) -> {
            Optional<DischargeCurve> curve = held.size() < 2 ? Optional.empty() : curve(place, held);
            if (curve.isPresent()) {
                entries.add(TimelineEntry.curve(place.from(), place.slot(), curve.get())
                        .withErrors(common(held)));
            } else {
                entries.addAll(held);
            }
        });
        return Timeline.of(entries);
    }

    /** Of the newest day before, or of, the one since which the values are held. */
    private Optional<DischargeCurve> curve(Place place, List<TimelineEntry> held) {
        var until = byDay.headMap(place.from().atOffset(offset).toLocalDate(), true);
        return until.descendingMap().values().stream()
                .flatMap(List::stream)
                .filter(curve -> held.stream().allMatch(entry -> isOn(curve, entry)))
                .findFirst();
    }

    private static boolean isOn(DischargeCurve curve, TimelineEntry entry) {
        return entry.held() instanceof TimelineEntry.Value value
                && value.inForce().point().material().equals(curve.material())
                && curve.settings().stream()
                        .anyMatch(caught ->
                                caught.isSameAs(value.inForce().point().setting()));
    }

    /** What all values share, such as the scale: it is in the curve's own uncertainty too, so that it counts twice, on the safe side. */
    private static List<SharedError> common(List<TimelineEntry> held) {
        return held.get(0).errors().stream()
                .filter(error -> held.stream()
                        .allMatch(entry -> entry.errors().stream()
                                .anyMatch(other -> other.id().equals(error.id()))))
                .toList();
    }
}
