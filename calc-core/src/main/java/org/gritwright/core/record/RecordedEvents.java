package org.gritwright.core.record;

import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.ToDoubleFunction;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import org.gritwright.core.calibration.Calibration;
import org.gritwright.core.calibration.CalibrationCatch;
import org.gritwright.core.calibration.CalibrationFactor;
import org.gritwright.core.calibration.CalibrationInForce;
import org.gritwright.core.calibration.Since;
import org.gritwright.core.fleet.assessment.DriveAssessment;
import org.gritwright.core.fleet.assessment.PointAssessment;
import org.gritwright.core.fleet.assessment.TruckAssessment;
import org.gritwright.core.fleet.day.ChangeEntry;
import org.gritwright.core.fleet.day.FleetDay;
import org.gritwright.core.history.Event;
import org.gritwright.core.history.What;
import org.gritwright.core.observation.ErrorSource;
import org.gritwright.core.observation.Observation;
import org.gritwright.core.observation.Repeatability;
import org.gritwright.core.range.DriveResponse;
import org.gritwright.core.statistics.Sample;
import org.gritwright.core.telemetry.SharedError;
import org.gritwright.core.uncertainty.Budget;
import org.gritwright.core.uncertainty.Component;
import org.gritwright.core.verification.Judgement;
import org.gritwright.core.verification.Verification;
import org.gritwright.core.verification.VerificationSeries;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.quantity.DischargePerRevolution;

/** What one truck's day tells a fleet's history. */
final class RecordedEvents {
    private final String source;
    private final FleetDay day;
    private final TruckAssessment truck;
    private final List<Event> events = new ArrayList<>();
    private final Set<String> ids = new HashSet<>();

    private RecordedEvents(String source, FleetDay day, TruckAssessment truck) {
        this.source = source;
        this.day = day;
        this.truck = truck;
    }

    /** The events of a day, each with an id that follows from the source alone. */
    static List<Event> of(String source, FleetDay day, TruckAssessment truck) {
        RecordedEvents read = new RecordedEvents(source, day, truck);
        read.season();
        read.changes();
        read.range();
        truck.points().forEach(read::point);
        return List.copyOf(read.events);
    }

    /** Every document of a season says when it began; it is one event. */
    private void season() {
        LocalDate start = day.seasonStart();
        events.add(Event.ofFleet(
                "season from " + start,
                Since.of(start),
                new What.SeasonStarted("from " + start),
                "days of the season"));
    }

    private void changes() {
        for (ChangeEntry change : truck.truck().changes()) {
            add(
                    change.part().term().words() + " changed " + change.on(),
                    Since.of(change.on()),
                    new What.Changed(change.part(), change.notes()),
                    Optional.empty());
        }
    }

    private void range() {
        truck.drive()
                .flatMap(DriveAssessment::response)
                .flatMap(DriveResponse::workingRange)
                .ifPresent(range -> add(
                        "range",
                        Since.of(day.day()),
                        new What.RangeMeasured(range.lowest(), range.highest()),
                        Optional.empty()));
    }

    private void point(PointAssessment point) {
        point.inForce().forEach(this::shown);
        point.calibration().ifPresent(this::calibrated);
        verifications(point);
    }

    /** A value that was entered on this day since then; an older one was seen on this day, with the claim since when it is held. */
    private void shown(CalibrationInForce held) {
        Optional<Since> entered = held.since().filter(since -> !since.day().isBefore(day.day()));
        add(
                entered.isPresent() ? "entered as " + held.factor() : "shown as " + held.factor(),
                entered.orElseGet(() -> Since.of(day.day())),
                entered.isPresent() ? new What.Entered(held, Optional.empty()) : new What.Shown(held),
                Optional.empty());
    }

    private void calibrated(Calibration calibration) {
        Observation last = calibration.catches().stream()
                .map(CalibrationCatch::observation)
                .max(Comparator.comparing(Observation::at))
                .orElseThrow();
        double discharge = Amounts.si(
                DischargePerRevolution.class,
                calibration.dischargePerRevolution().value());
        add(
                "calibrated",
                Since.of(last.at()),
                new What.Calibrated(
                        calibration.point(),
                        calibration.dischargePerRevolution(),
                        shared(
                                calibration.budget(),
                                part -> Amounts.si(DischargePerRevolution.class, part) / discharge),
                        calibration.catches().size(),
                        calibration.relativeScatter().isPresent()
                                ? repeatability(
                                        calibration.relativeScatter().getAsDouble(),
                                        calibration.scatterDegreesOfFreedom())
                                : Optional.empty()),
                last.by());
    }

    /** The catches with one value are one verification; another value in the display came there in between. */
    private void verifications(PointAssessment point) {
        Map<CalibrationFactor, List<Verification>> byValue = new LinkedHashMap<>();
        point.verifications().stream()
                .filter(one -> one.calibrationError().isPresent())
                .sorted(Comparator.comparing(RecordedEvents::at))
                .forEach(one -> byValue.computeIfAbsent(one.source().inForce().factor(), factor -> new ArrayList<>())
                        .add(one));
        Set<CalibrationFactor> known = new HashSet<>();
        point.inForce().forEach(held -> known.add(held.factor()));
        Optional<Event> before = Optional.empty();
        for (List<Verification> catches : byValue.values()) {
            Verification first = catches.get(0);
            CalibrationInForce value = placed(first.source().inForce(), point);
            if (known.add(value.factor())) {
                another(point, value, first, before);
            }
            before = verified(value, catches);
        }
    }

    /** In the slot in which the point's values are held; with several slots nobody can tell which. */
    private static CalibrationInForce placed(CalibrationInForce value, PointAssessment point) {
        Optional<String> slot = point.inForce().stream()
                .filter(held -> held.factor().equals(value.factor()))
                .findFirst()
                .or(() -> point.inForce().size() == 1
                        ? Optional.of(point.inForce().get(0))
                        : Optional.empty())
                .flatMap(CalibrationInForce::slot);
        return value.slot().isPresent() ? value : slot.map(value::inSlot).orElse(value);
    }

    /** A value that the display held at a catch, and not when the day began: by a correction, a calibration, or nobody says how. */
    private void another(PointAssessment point, CalibrationInForce value, Verification first, Optional<Event> before) {
        Observation seen = first.source().observation();
        CalibrationInForce now = value.since(Since.of(seen.at()));
        Optional<What.Verified> found = before.map(event -> (What.Verified) event.what())
                .filter(verified -> point.correction()
                        .filter(made -> made.asFound().equals(verified.inForce().factor()))
                        .flatMap(made -> made.asLeft())
                        .filter(value.factor()::equals)
                        .isPresent());
        boolean calibrated = point.calibration()
                .filter(made -> made.catches().stream()
                        .noneMatch(one -> one.observation().at().isAfter(seen.at())))
                .isPresent();
        if (found.isPresent()) {
            What.Corrected corrected = new What.Corrected(found.get().inForce(), value.factor(), before.map(Event::id));
            add("corrected to " + value.factor(), Since.of(seen.at()), corrected, seen.by());
        } else if (calibrated || before.isPresent()) {
            add(
                    "entered as " + value.factor(),
                    Since.of(seen.at()),
                    new What.Entered(now, Optional.of(value.factor())),
                    seen.by());
        } else {
            add("seen as " + value.factor(), Since.of(seen.at()), new What.Shown(value), seen.by());
        }
    }

    /** What the catches that nothing speaks against say together. */
    private Optional<Event> verified(CalibrationInForce value, List<Verification> catches) {
        List<Verification> sound =
                catches.stream().filter(one -> !one.isDoubted()).toList();
        if (sound.isEmpty()) {
            return Optional.empty();
        }
        VerificationSeries series = VerificationSeries.of(sound);
        Judgement judgement = series.withCalibration().judgement();
        Budget<Dimensionless> budget = series.judgement().budget();
        double grown = 1 + Amounts.si(Dimensionless.class, budget.result().value());
        double kilograms = sound.stream()
                .mapToDouble(one -> one.source().observation().kilograms())
                .sum();
        Observation last = series.last().source().observation();
        return Optional.of(add(
                "verified with " + value.factor(),
                Since.of(last.at()),
                new What.Verified(
                        value,
                        budget.result(),
                        shared(budget, part -> Amounts.si(Dimensionless.class, part) / grown),
                        judgement.verdict(),
                        sound.size(),
                        Amounts.ofSi(kilograms, last.massUnit()),
                        scatter(sound)),
                last.by()));
    }

    /** How what the catches imply scatters about its mean. */
    private static Optional<Repeatability> scatter(List<Verification> catches) {
        if (catches.size() < 2) {
            return Optional.empty();
        }
        Sample implied = Sample.of(catches.stream()
                .mapToDouble(one -> 1
                        / (1
                                + Amounts.si(
                                        Dimensionless.class,
                                        one.calibrationError().orElseThrow())))
                .toArray());
        return repeatability(implied.deviation().orElseThrow() / implied.mean(), catches.size() - 1.0);
    }

    /** None where catches scatter so much that nothing is repeated. */
    private static Optional<Repeatability> repeatability(double scatter, double degreesOfFreedom) {
        return scatter < 1
                ? Optional.of(new Repeatability(Amounts.ofSi(scatter, SpreadingUnits.PERCENT), degreesOfFreedom))
                : Optional.empty();
    }

    private static OffsetDateTime at(Verification one) {
        return one.source().observation().at();
    }

    /** What other catches have in common with these: the span of a scale with all of its, spillage and the like with those of the truck. */
    private <Q extends Quantity<Q>> List<SharedError> shared(Budget<Q> budget, ToDoubleFunction<Quantity<Q>> relative) {
        Map<String, Double> shared = new TreeMap<>();
        for (Component<Q> component : budget.components()) {
            boolean common = ErrorSource.of(component.key())
                    .filter(ErrorSource::isCommonToCatches)
                    .isPresent();
            if (common) {
                String id = component.key().subject().isPresent()
                        ? component.key().toString()
                        : component.key() + " of " + truck.truck().id();
                shared.merge(id, Math.abs(relative.applyAsDouble(component.contribution())), Double::sum);
            }
        }
        return shared.entrySet().stream()
                .map(one -> new SharedError(one.getKey(), Amounts.of(one.getValue(), SpreadingUnits.ONE)))
                .toList();
    }

    /**
     * An event whose id follows from what was written down, and not from what the library makes of it: another version gives it the same. What is
     * there twice gets a number.
     */
    private Event add(String kind, Since at, What what, Optional<String> by) {
        String of = what.point().map(point -> " " + point).orElse("");
        String id = source + ", " + truck.truck().id() + ", " + kind + of;
        int same = 1;
        while (!ids.add(same == 1 ? id : id + " (" + same + ")")) {
            same++;
        }
        Event event = Event.of(
                same == 1 ? id : id + " (" + same + ")", at, truck.truck().id(), what, source);
        Optional<String> who = by.or(day::technician).filter(name -> !name.isBlank());
        Event signed = who.map(event::by).orElse(event);
        events.add(signed);
        return signed;
    }
}
