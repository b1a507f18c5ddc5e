package org.gritwright.core.fleet.assessment;

import java.time.LocalDate;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Supplier;
import java.util.stream.Stream;
import javax.measure.Quantity;
import org.gritwright.core.calibration.Calibration;
import org.gritwright.core.calibration.CalibrationAge;
import org.gritwright.core.calibration.CalibrationCatch;
import org.gritwright.core.calibration.CalibrationFactor;
import org.gritwright.core.calibration.CalibrationInForce;
import org.gritwright.core.calibration.Change;
import org.gritwright.core.finding.Finding;
import org.gritwright.core.finding.FindingCode;
import org.gritwright.core.finding.Severity;
import org.gritwright.core.fleet.day.CalibrationCatchEntry;
import org.gritwright.core.fleet.day.CatchEntry;
import org.gritwright.core.fleet.day.ChangeEntry;
import org.gritwright.core.fleet.day.CountEntry;
import org.gritwright.core.fleet.day.InForceEntry;
import org.gritwright.core.fleet.day.RoadSpeedEntry;
import org.gritwright.core.fleet.day.TruckDay;
import org.gritwright.core.fleet.day.VerificationCatchEntry;
import org.gritwright.core.fleet.day.Yard;
import org.gritwright.core.judgement.Verdict;
import org.gritwright.core.metering.ShaftCount;
import org.gritwright.core.metering.Spreader;
import org.gritwright.core.roadspeed.RoadSpeedCheck;
import org.gritwright.core.roadspeed.RoadSpeedRun;
import org.gritwright.core.verification.Advice;
import org.gritwright.core.verification.Correction;
import org.gritwright.core.verification.TestRun;
import org.gritwright.core.verification.VerificationCatch;
import org.gritwright.core.verification.VerificationLimits;
import org.gritwright.core.verification.VerificationSeries;
import org.gritwright.core.weighing.CaughtMass;
import org.gritwright.core.weighing.Weighing;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.check.Require;

/** Turns one truck's entries into calibrations, verifications and what to do next. */
final class TruckAssessor {
    private final FleetAssessor settings;
    private final Yard yard;
    private final TruckDay truck;
    private final Spreader spreader;
    private final VerificationLimits limits;

    TruckAssessor(FleetAssessor settings, Yard yard, TruckDay truck) {
        this.settings = settings;
        this.yard = yard;
        this.truck = truck;
        this.spreader = truck.spreader(settings.types());
        this.limits = new VerificationLimits(
                settings.limits().catches().withAllowances(yard.day().allowances()),
                settings.limits().greatestCorrection());
    }

    TruckAssessment assess() {
        requireNotAfterTheDay();
        truck.inForce()
                .flatMap(InForceEntry::opening)
                .ifPresent(opening -> Require.naming(
                        "calibration in force", () -> spreader.sweptCubicMetresPerRevolution(Optional.of(opening))));
        List<PlaceAssessment> places = places();
        Optional<RoadSpeedCheck> roadSpeed = truck.roadSpeed().map(this::roadSpeed);
        Optional<Finding> changedTyres = changedTyres();
        List<Finding> age = age(places);

        Set<Finding> findings = new LinkedHashSet<>();
        places.forEach(p -> findings.addAll(p.findings()));
        Curves curves = Curves.of(truck, places, settings.estimator(), limits.catches());
        findings.addAll(curves.findings());
        roadSpeed.ifPresentOrElse(
                r -> findings.addAll(r.findings()), () -> findings.add(Finding.of(FindingCode.ROAD_SPEED_NOT_CHECKED)));
        changedTyres.ifPresent(findings::add);
        findings.addAll(age);

        MassProof massProof = massProof(places);
        RoadProof roadProof = changedTyres.isPresent()
                ? RoadProof.NOT_CHECKED
                : roadSpeed
                        .map(r -> r.verdict() == Verdict.WITHIN_TOLERANCE ? RoadProof.PROVEN : RoadProof.NOT_PROVEN)
                        .orElse(RoadProof.NOT_CHECKED);
        List<Finding> current = Stream.concat(
                        places.stream().flatMap(p -> p.currentFindings().stream()), curves.findings().stream())
                .toList();
        List<Correction> corrections =
                places.stream().flatMap(p -> p.correction().stream()).toList();
        List<VerificationSeries> judged =
                places.stream().flatMap(p -> p.judged().stream()).toList();
        return new TruckAssessment(
                truck,
                Optional.empty(),
                places.stream().flatMap(p -> p.calibration().stream()).toList(),
                curves.curves(),
                places.stream()
                        .flatMap(p -> p.verifications().stream())
                        .sorted(Comparator.comparing(PlaceAssessment.Timed::at))
                        .map(PlaceAssessment.Timed::verification)
                        .toList(),
                judged,
                corrections,
                places.stream().flatMap(p -> p.startUp().stream()).toList(),
                roadSpeed,
                massProof,
                roadProof,
                nextStep(
                        current,
                        corrections,
                        judged.stream().anyMatch(j -> j.judgement().advice() == Advice.CATCH_MORE),
                        massProof,
                        roadProof,
                        !age.isEmpty()),
                List.copyOf(findings));
    }

    /** A date after the day is a slip of the pen that would make an old calibration look new. */
    private void requireNotAfterTheDay() {
        truck.inForce().ifPresent(i -> requireNotAfterTheDay("date of the calibration in force", i.dated()));
        truck.roadSpeed().ifPresent(r -> requireNotAfterTheDay("date of the road-speed check", r.on()));
        truck.changes().forEach(c -> requireNotAfterTheDay("date of a change", c.on()));
        catchEntries().forEach(e -> requireNotAfterTheDay("date of a catch", e.at().toLocalDate()));
    }

    private void requireNotAfterTheDay(String field, LocalDate date) {
        LocalDate day = yard.day().day();
        if (date.isAfter(day)) {
            throw new InvalidInputException(field, "not after the day, " + day, date.toString());
        }
    }

    private Stream<CatchEntry> catchEntries() {
        return Stream.concat(
                truck.calibrationCatches().stream().map(CalibrationCatchEntry::entry),
                truck.verificationCatches().stream().map(VerificationCatchEntry::entry));
    }

    private CaughtMass caught(CatchEntry entry) {
        List<Weighing> weighings = entry.containers().stream()
                .map(c -> new Weighing(c.container(), c.gross(), c.tare()))
                .toList();
        return new CaughtMass(yard.scale(entry.scale()), entry.at().toLocalDate(), weighings);
    }

    private List<PlaceAssessment> places() {
        return catchEntries().map(Place::of).distinct().map(this::place).toList();
    }

    /** All catches of a place go by its first catch's spelling of the opening, which others may write in other units. */
    private PlaceAssessment place(Place place) {
        Optional<Quantity<?>> opening = catchEntries()
                .filter(entry -> Place.of(entry).equals(place))
                .findFirst()
                .flatMap(CatchEntry::opening);
        List<CalibrationCatchEntry> calibrationCatches = truck.calibrationCatches().stream()
                .filter(one -> Place.of(one.entry()).equals(place))
                .toList();
        Optional<Calibration> calibration =
                calibrationCatches.isEmpty() ? Optional.empty() : Optional.of(calibration(calibrationCatches, opening));
        List<PlaceAssessment.Timed> verifications = truck.verificationCatches().stream()
                .filter(one -> Place.of(one.entry()).equals(place))
                .sorted(Comparator.comparing(one -> one.entry().at()))
                .map(one -> new PlaceAssessment.Timed(
                        one.entry().at(),
                        naming(one.entry(), () -> verificationCatch(one, opening))
                                .assess(yard.tolerance(), yard.day().decisionRule(), limits, calibration)))
                .toList();
        return new PlaceAssessment(
                calibration,
                calibrationCatches.stream().map(one -> one.entry().at()).max(Comparator.naturalOrder()),
                verifications,
                yard.tolerance());
    }

    private Calibration calibration(List<CalibrationCatchEntry> entries, Optional<Quantity<?>> opening) {
        List<CalibrationCatch> catches = entries.stream()
                .map(one -> naming(one.entry(), () -> calibrationCatch(one, opening)))
                .toList();
        return Calibration.from(
                spreader,
                yard.material(entries.get(0).entry().material()),
                catches,
                settings.estimator(),
                limits.catches());
    }

    private CalibrationCatch calibrationCatch(CalibrationCatchEntry one, Optional<Quantity<?>> opening) {
        CountEntry counted = one.entry()
                .counted()
                .orElseThrow(() -> new InvalidInputException("count of a calibration catch", "given", "nothing"));
        ShaftCount count = counted.count();
        // What the spreader can't take is refused here, where the catch is known.
        spreader.sweptCubicMetresPerRevolution(opening);
        count.revolutions(spreader.feedback());
        return new CalibrationCatch(caught(one.entry()), count, opening, one.primed(), one.coasting());
    }

    /** Containers have the same names in every catch: a refusal says which catch it is about. */
    private static <T> T naming(CatchEntry entry, Supplier<T> reading) {
        return Require.naming("catch of " + entry.at().toLocalTime(), reading);
    }

    private VerificationCatch verificationCatch(VerificationCatchEntry one, Optional<Quantity<?>> opening) {
        CatchEntry entry = one.entry();
        CalibrationInForce inForce = new CalibrationInForce(
                spreader,
                yard.material(entry.material()),
                opening,
                CalibrationFactor.of(one.inForce()),
                truck.inForce().flatMap(InForceEntry::displayStep));
        VerificationCatch result = VerificationCatch.of(
                inForce,
                new TestRun(one.target().perDistance(), one.testSpeed(), one.runTime(), one.testDistance()),
                caught(entry));
        if (entry.counted().isPresent()) {
            result = result.counted(entry.counted().get().count());
        }
        if (one.indicated().isPresent()) {
            result = result.indicated(
                    one.indicated().get(),
                    one.indicatedStep()
                            .orElseThrow(() -> new InvalidInputException(
                                    "step of the indicated mass", "given with the indicated mass", "nothing")));
        }
        return result;
    }

    private RoadSpeedCheck roadSpeed(RoadSpeedEntry entry) {
        List<RoadSpeedRun> runs = entry.runs().stream()
                .map(r -> new RoadSpeedRun(r.course(), r.pulses()))
                .toList();
        return RoadSpeedCheck.of(runs, entry.inForce(), yard.tolerance());
    }

    /** Findings about the value that the display holds, by the day on which it was last made new. */
    private List<Finding> age(List<PlaceAssessment> places) {
        Stream<LocalDate> renewals = places.stream().flatMap(p -> p.renewedOn().stream());
        Stream<LocalDate> inForce = truck.inForce().map(InForceEntry::dated).stream();
        List<Change> changes = truck.changes().stream()
                .filter(c -> c.part() != Change.Part.TYRE)
                .map(c -> new Change(c.on(), c.part()))
                .toList();
        return Stream.concat(renewals, inForce)
                .max(Comparator.naturalOrder())
                .map(renewed ->
                        CalibrationAge.findings(renewed, yard.day().seasonStart(), settings.preparation(), changes))
                .orElse(List.of());
    }

    /** New tyres are a matter of the road speed: a check made before them says nothing. */
    private Optional<Finding> changedTyres() {
        Optional<LocalDate> checked = truck.roadSpeed().map(RoadSpeedEntry::on);
        return truck.changes().stream()
                .filter(c -> c.part() == Change.Part.TYRE)
                .map(ChangeEntry::on)
                .max(Comparator.naturalOrder())
                .filter(changed -> checked.isEmpty() || checked.get().isBefore(changed))
                .map(changed -> new Finding(
                        FindingCode.ROAD_SPEED_BEFORE_CHANGE, Map.of(), Map.of("changed", changed.toString())));
    }

    /** A truck is as proven as the least proven of its materials and gate openings. */
    private static MassProof massProof(List<PlaceAssessment> places) {
        Set<MassProof> found = EnumSet.noneOf(MassProof.class);
        places.forEach(p -> found.add(p.massProof()));
        return Stream.of(
                        MassProof.NOT_PROVEN,
                        MassProof.UNDECIDED,
                        MassProof.NOT_CHECKED,
                        MassProof.DELIVERY_ONLY,
                        MassProof.PROVEN)
                .filter(found::contains)
                .findFirst()
                .orElse(MassProof.NOT_CHECKED);
    }

    private NextStep nextStep(
            List<Finding> current,
            List<Correction> corrections,
            boolean catchMore,
            MassProof massProof,
            RoadProof roadProof,
            boolean outOfDate) {
        boolean fault = current.stream().anyMatch(f -> f.severity() == Severity.ERROR);
        boolean missesDelivery = current.stream()
                .map(Finding::code)
                .anyMatch(c -> c == FindingCode.SHORTFALL
                        || c == FindingCode.OVERRUN
                        || c == FindingCode.START_UP_LOSS
                        || c == FindingCode.STEADY_FLOW_OFF);
        Set<Correction.Status> open = EnumSet.noneOf(Correction.Status.class);
        corrections.forEach(c -> open.add(c.status()));
        if (fault) {
            return NextStep.FIND_FAULT;
        }
        if (open.contains(Correction.Status.PROPOSED)) {
            return NextStep.ENTER_CORRECTION;
        }
        if (open.contains(Correction.Status.UNCONFIRMED)) {
            return NextStep.CONFIRM_CORRECTION;
        }
        if (catchMore) {
            return NextStep.CATCH_MORE;
        }
        if (roadProof == RoadProof.NOT_PROVEN) {
            return NextStep.MEND_ROAD_SPEED;
        }
        boolean proven = massProof == MassProof.PROVEN;
        boolean nothingToWorkWith =
                truck.inForce().isEmpty() && truck.calibrationCatches().isEmpty();
        if (!proven && (outOfDate || nothingToWorkWith)) {
            return NextStep.CALIBRATE;
        }
        if (missesDelivery) {
            return NextStep.CHECK_DELIVERY;
        }
        if (!proven && massProof != MassProof.DELIVERY_ONLY) {
            return NextStep.VERIFY;
        }
        return roadProof == RoadProof.NOT_CHECKED ? NextStep.CHECK_ROAD_SPEED : NextStep.NOTHING;
    }
}
