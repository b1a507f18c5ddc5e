package org.gritwright.core.record;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.gritwright.core.calibration.CalibrationInForce;
import org.gritwright.core.fleet.assessment.FleetAssessor;
import org.gritwright.core.fleet.assessment.TruckAssessment;
import org.gritwright.core.fleet.day.CalibrationCatchEntry;
import org.gritwright.core.fleet.day.FleetDay;
import org.gritwright.core.fleet.day.TruckDay;
import org.gritwright.core.fleet.day.VerificationCatchEntry;
import org.gritwright.core.history.Contradiction;
import org.gritwright.core.history.Event;
import org.gritwright.core.history.History;
import org.gritwright.core.history.What;
import org.gritwright.core.spi.TypeRegistry;
import org.gritwright.core.telemetry.AsFound;
import org.gritwright.core.telemetry.Timeline;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.check.Require;

/**
 * What a truck's records say for its telemetry: which values its slots held when, how uncertain they are, and what verifications found
 * before anything was adjusted. Immutable, thread-safe, a value.
 *
 * <p>A value holds from the first catch that showed it in the display, or from the day that the record names for it. It is as uncertain as the
 * catches of that day show; what a verification found and nobody adjusted is added to that in quadrature (common practice, no source). The spans of
 * scales and the marks of containers keep their ids, so that they are one error wherever the same scale was used.
 *
 * @param timeline the values
 * @param found what verifications found of a value before it was changed, in the order of time, as {@link History#found} has it; how it came
 *     about the caller says: {@link Timeline#correctedBackBy}
 * @param contradictions what the records say of the truck that can't all be so, in the order of time, as {@link History#contradictions} has it:
 *     where one is open, nobody knows what the display held, and the timeline holds the last that somebody saw or entered
 */
public record RecordedTimeline(Timeline timeline, List<AsFound> found, List<Contradiction> contradictions) {
    /** Copies the lists. */
    public RecordedTimeline {
        Require.given(RecordedTimeline.class, timeline, found, contradictions);
        found = List.copyOf(found);
        contradictions = List.copyOf(contradictions);
    }

    /**
     * Reads a truck's records.
     *
     * @param records all of one truck, in any order; one that is there twice counts once
     * @param types the conveyor, gate, pump and meter types that are known
     * @param offset the yard's offset: where only a day is known, a value is held from its beginning on
     * @return the timeline
     * @throws InvalidInputException if there is no record, they are of several trucks, one can't be computed with, they name no value, two tell
     *     of a catch at one time, as a day and the same day set right do, or two say different things of one slot and time
     */
    public static RecordedTimeline of(List<CalibrationRecord> records, TypeRegistry types, ZoneOffset offset) {
        Objects.requireNonNull(types, "types");
        Objects.requireNonNull(offset, "offset");
        Require.that(!records.isEmpty(), "calibration records", "at least one", 0);
        List<String> trucks =
                records.stream().map(RecordedTimeline::truck).distinct().toList();
        Require.that(trucks.size() == 1, "trucks of the calibration records", "one", trucks);
        List<Event> events = new ArrayList<>();
        List<FleetDay> days = records.stream()
                .map(CalibrationRecord::entered)
                .distinct()
                .sorted(Comparator.comparing(FleetDay::day))
                .toList();
        requireOnce(days);
        for (int i = 0; i < days.size(); i++) {
            events.addAll(RecordedEvents.of(
                    "record " + (i + 1) + " of " + days.get(i).day(),
                    days.get(i),
                    computed(
                            FleetAssessor.of(types).assess(days.get(i)).get(0),
                            days.get(i).day())));
        }
        requireOneValue(events);
        History history = History.of(events, offset);
        String truck = trucks.get(0);
        Require.that(!history.changes(truck).isEmpty(), "values in the calibration records", "at least one", 0);
        return new RecordedTimeline(history.timeline(truck), history.found(truck), history.contradictions(truck));
    }

    private static String truck(CalibrationRecord record) {
        return record.entered().trucks().get(0).id();
    }

    /** What two records tell of one catch would count twice, and may not be the same. */
    private static void requireOnce(List<FleetDay> days) {
        Set<Instant> told = new HashSet<>();
        for (FleetDay day : days) {
            TruckDay truck = day.trucks().get(0);
            Set<Instant> catches = Stream.concat(
                            truck.calibrationCatches().stream().map(CalibrationCatchEntry::entry),
                            truck.verificationCatches().stream().map(VerificationCatchEntry::entry))
                    .map(entry -> entry.at().toInstant())
                    .collect(Collectors.toSet());
            for (Instant at : catches) {
                Require.that(
                        told.add(at),
                        "calibration records of " + truck.id(),
                        "each catch in one of them",
                        "two with a catch at " + at);
            }
        }
    }

    /** A slot shows one value for a point at a time. */
    private static void requireOneValue(List<Event> events) {
        Map<List<Object>, CalibrationInForce> shown = new HashMap<>();
        for (Event event : events) {
            if (event.what() instanceof What.Shown what) {
                CalibrationInForce value = what.seen();
                CalibrationInForce other = shown.putIfAbsent(
                        List.of(event.at(), value.slot(), value.point().key()), value);
                Require.that(
                        other == null || other.factor().equals(value.factor()),
                        "calibration records of " + event.truck().orElseThrow(),
                        "one value for " + value.point() + " in the display on " + event.at(),
                        () -> other.factor() + " and " + value.factor());
            }
        }
    }

    private static TruckAssessment computed(TruckAssessment assessment, LocalDate day) {
        if (assessment.isRefused()) {
            throw new InvalidInputException(
                    "calibration record of " + assessment.truck().id() + ", " + day,
                    "one that can be computed with",
                    assessment.refusals().get(0).toString());
        }
        return assessment;
    }
}
