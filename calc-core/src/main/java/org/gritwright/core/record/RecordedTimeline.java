package org.gritwright.core.record;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.stream.Collectors;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import org.gritwright.core.calibration.CalibrationInForce;
import org.gritwright.core.calibration.Since;
import org.gritwright.core.fleet.assessment.FleetAssessor;
import org.gritwright.core.fleet.assessment.PointAssessment;
import org.gritwright.core.fleet.assessment.TruckAssessment;
import org.gritwright.core.observation.CalibrationPoint;
import org.gritwright.core.spi.TypeRegistry;
import org.gritwright.core.telemetry.AsFound;
import org.gritwright.core.telemetry.SharedError;
import org.gritwright.core.telemetry.Timeline;
import org.gritwright.core.telemetry.TimelineEntry;
import org.gritwright.core.uncertainty.Budget;
import org.gritwright.core.uncertainty.Component;
import org.gritwright.core.uncertainty.ComponentKey;
import org.gritwright.core.verification.Verification;
import org.gritwright.core.verification.VerificationSeries;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.check.Require;
import org.gritwright.units.quantity.DischargePerRevolution;

/**
 * What a truck's records say for its telemetry: which values its slots held when, how uncertain they are, and what verifications found
 * before anything was adjusted. Immutable, thread-safe, a value.
 *
 * <p>A value holds from the first catch that showed it in the display, or from the day that the record names for it. It is as uncertain as the
 * catches of that day show; what a verification found and nobody adjusted is added to that in quadrature (common practice, no source). The spans of
 * scales and the marks of containers keep their ids, so that they are one error wherever the same scale was used.
 *
 * @param timeline the values
 * @param found what verifications found of a value before it was changed, in the order of time; how it came about the caller says:
 *     {@link Timeline#correctedBackBy}
 */
public record RecordedTimeline(Timeline timeline, List<AsFound> found) {
    /** Copies the list. */
    public RecordedTimeline {
        Require.given(RecordedTimeline.class, timeline, found);
        found = List.copyOf(found);
    }

    /**
     * Reads a truck's records.
     *
     * @param records all of one truck, in any order; one that is there twice counts once
     * @param types the conveyor, gate, pump and meter types that are known
     * @param offset the yard's offset: where only a day is known, a value is held from its beginning on
     * @return the timeline
     * @throws InvalidInputException if there is no record, they are of several trucks, one can't be computed with, they name no value, or two say
     *     different things of one slot and time
     */
    public static RecordedTimeline of(List<CalibrationRecord> records, TypeRegistry types, ZoneOffset offset) {
        Objects.requireNonNull(types, "types");
        Objects.requireNonNull(offset, "offset");
        Require.that(!records.isEmpty(), "calibration records", "at least one", 0);
        List<String> trucks =
                records.stream().map(RecordedTimeline::truck).distinct().toList();
        Require.that(trucks.size() == 1, "trucks of the calibration records", "one", trucks);
        Reader reader = new Reader(offset);
        records.stream()
                .map(CalibrationRecord::entered)
                .distinct()
                .sorted(Comparator.comparing(day -> day.day()))
                .forEach(day -> reader.read(
                        day.day(), computed(FleetAssessor.of(types).assess(day).get(0), day.day())));
        return new RecordedTimeline(Timeline.of(reader.all()), reader.found);
    }

    private static String truck(CalibrationRecord record) {
        return record.entered().trucks().get(0).id();
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

    /** Follows one truck from day to day. */
    private static final class Reader {
        private final ZoneOffset offset;

        /** By slot and time what the slot holds at each setting. */
        private final Map<String, TreeMap<Instant, List<TimelineEntry>>> slots = new LinkedHashMap<>();

        private final List<AsFound> found = new ArrayList<>();

        Reader(ZoneOffset offset) {
            this.offset = offset;
        }

        void read(LocalDate day, TruckAssessment truck) {
            for (PointAssessment point : truck.points()) {
                point.inForce().forEach(held -> enter(day, held, List.of()));
                point.inForce().forEach(held -> asFound(point, held));
            }
            for (PointAssessment point : truck.points()) {
                point.held().forEach(held -> enter(day, held, errors(truck, point, held)));
            }
        }

        List<TimelineEntry> all() {
            List<TimelineEntry> all = slots.values().stream()
                    .flatMap(times -> times.values().stream())
                    .flatMap(List::stream)
                    .toList();
            Require.that(!all.isEmpty(), "values in the calibration records", "at least one", 0);
            return all;
        }

        private TimelineEntry entry(LocalDate day, CalibrationInForce held) {
            return TimelineEntry.entered(held.since().isPresent() ? held : held.since(Since.of(day)), offset);
        }

        /**
         * A value that is held already is no new one, whatever a later record says since when; how uncertain it is may be known only now.
         */
        private void enter(LocalDate day, CalibrationInForce held, List<SharedError> errors) {
            TimelineEntry entry = entry(day, held).withErrors(errors);
            TreeMap<Instant, List<TimelineEntry>> times = slots.computeIfAbsent(entry.slot(), slot -> new TreeMap<>());
            List<TimelineEntry> before = Optional.ofNullable(times.floorEntry(entry.from()))
                    .map(Map.Entry::getValue)
                    .orElse(List.of());
            if (before.stream().anyMatch(one -> isSame(one, held))) {
                times.replaceAll((time, all) -> all.stream()
                        .map(one -> isSame(one, held) && one.errors().isEmpty() ? one.withErrors(errors) : one)
                        .toList());
                return;
            }
            List<TimelineEntry> now = before.stream()
                    .filter(one ->
                            inForce(one).point().material().equals(held.point().material()))
                    .filter(one -> !isOf(one, held.point()))
                    .map(one -> TimelineEntry.value(entry.from(), inForce(one)).withErrors(one.errors()))
                    .collect(Collectors.toCollection(ArrayList::new));
            now.add(entry);
            times.put(entry.from(), now);
        }

        private static CalibrationInForce inForce(TimelineEntry entry) {
            return ((TimelineEntry.Value) entry.held()).inForce();
        }

        private static boolean isSame(TimelineEntry entry, CalibrationInForce held) {
            return inForce(entry).factor().equals(held.factor()) && isOf(entry, held.point());
        }

        private static boolean isOf(TimelineEntry entry, CalibrationPoint point) {
            CalibrationPoint of = inForce(entry).point();
            return of.material().equals(point.material()) && of.setting().isSameAs(point.setting());
        }

        /** What the catches of the day say together about the value with which it began. */
        private void asFound(PointAssessment point, CalibrationInForce held) {
            Instant left = slots.values().stream()
                    .flatMap(times -> times.values().stream())
                    .flatMap(List::stream)
                    .filter(one -> isSame(one, held))
                    .map(TimelineEntry::from)
                    .min(Comparator.naturalOrder())
                    .orElseThrow();
            List<Verification> catches = point.verifications().stream()
                    .filter(one -> one.source().inForce().factor().equals(held.factor()))
                    .filter(one -> one.calibrationError().isPresent() && at(one).isAfter(left))
                    .toList();
            if (!catches.isEmpty()) {
                VerificationSeries series = VerificationSeries.of(catches);
                String slot = held.slot().orElse(point.point().material().name());
                found.add(new AsFound(
                        slot,
                        point.point().setting(),
                        left,
                        at(series.last()),
                        series.judgement().budget().result()));
            }
        }

        private static Instant at(Verification one) {
            return one.source().observation().at().toInstant();
        }

        /** How uncertain a value is that the day's catches showed. */
        private List<SharedError> errors(TruckAssessment truck, PointAssessment point, CalibrationInForce held) {
            String own = "calibration of " + truck.truck().id() + ", "
                    + point.point().material().name() + ", " + point.point().setting() + ", "
                    + held.since().map(Since::toString).orElse("");
            Optional<VerificationSeries> judged = point.judged()
                    .filter(series -> series.last().calibrationError().isPresent())
                    .filter(series -> series.last().source().inForce().factor().equals(held.factor()));
            if (judged.isPresent()) {
                Budget<Dimensionless> budget = judged.get().judgement().budget();
                double error = Amounts.si(Dimensionless.class, budget.result().value());
                return errors(own, budget, part -> Amounts.si(Dimensionless.class, part) / (1 + error), error);
            }
            return point.calibration()
                    .map(calibration -> errors(
                            own,
                            calibration.budget(),
                            part -> Amounts.si(DischargePerRevolution.class, part) / held.kilogramsPerRevolution(),
                            0))
                    .orElse(List.of());
        }

        private static <Q extends Quantity<Q>> List<SharedError> errors(
                String own, Budget<Q> budget, Function<Quantity<Q>, Double> relative, double uncorrected) {
            Map<String, Double> shared = new TreeMap<>();
            Set<ComponentKey> apart = new HashSet<>();
            for (Component<Q> component : budget.components()) {
                if (component.key().subject().isPresent()) {
                    double part = Math.abs(relative.apply(component.contribution()));
                    shared.merge(component.key().toString(), part, Double::sum);
                    apart.add(component.key());
                }
            }
            double alone = budget.without(apart)
                    .result()
                    .standardUncertainty()
                    .map(relative)
                    .orElse(0.0);
            shared.put(own, Math.hypot(alone, uncorrected));
            return shared.entrySet().stream()
                    .map(one -> new SharedError(one.getKey(), Amounts.of(one.getValue(), SpreadingUnits.ONE)))
                    .toList();
        }
    }
}
