package org.gritwright.core.fleet;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import javax.measure.Quantity;
import javax.measure.quantity.Length;
import org.gritwright.core.calibration.Calibration;
import org.gritwright.core.calibration.CalibrationAge;
import org.gritwright.core.calibration.CalibrationCatch;
import org.gritwright.core.calibration.CalibrationFactor;
import org.gritwright.core.calibration.CalibrationInForce;
import org.gritwright.core.calibration.Change;
import org.gritwright.core.finding.Finding;
import org.gritwright.core.finding.FindingCode;
import org.gritwright.core.finding.Severity;
import org.gritwright.core.spi.TypeId;
import org.gritwright.core.spreader.Conveyor;
import org.gritwright.core.spreader.DriveFeedback;
import org.gritwright.core.spreader.Gate;
import org.gritwright.core.spreader.NoSensor;
import org.gritwright.core.spreader.ShaftSensor;
import org.gritwright.core.spreader.Spreader;
import org.gritwright.core.verification.Correction;
import org.gritwright.core.verification.RoadSpeedCheck;
import org.gritwright.core.verification.RoadSpeedRun;
import org.gritwright.core.verification.StartUp;
import org.gritwright.core.verification.TestRun;
import org.gritwright.core.verification.Verdict;
import org.gritwright.core.verification.Verification;
import org.gritwright.core.verification.VerificationCatch;
import org.gritwright.core.weighing.CaughtMass;
import org.gritwright.core.weighing.Weighing;
import org.gritwright.units.InvalidInputException;

/** Turns one truck's entries into calibrations, verifications and what to do next. */
final class TruckAssessor {

    /** What a calibration is for. */
    private record Place(String material, Optional<Quantity<Length>> opening) {}

    private final FleetAssessor settings;
    private final Yard yard;
    private final TruckDay truck;
    private final Spreader spreader;

    TruckAssessor(FleetAssessor settings, Yard yard, TruckDay truck) {
        this.settings = settings;
        this.yard = yard;
        this.truck = truck;
        this.spreader = spreader();
    }

    TruckAssessment assess() {
        List<Calibration> calibrations = calibrations();
        List<Finding> standing =
                calibrations.stream().flatMap(c -> c.findings().stream()).toList();
        List<Verification> verifications = verifications(standing);
        List<Proof> proofs = proofs(verifications);
        List<Correction> corrections =
                proofs.stream().flatMap(p -> p.correction().stream()).toList();
        List<StartUp> startUps =
                proofs.stream().flatMap(p -> p.startUp().stream()).toList();
        Optional<RoadSpeedCheck> roadSpeed = truck.roadSpeed().map(this::roadSpeed);

        Set<Finding> findings = new LinkedHashSet<>(standing);
        verifications.forEach(v -> findings.addAll(v.findings()));
        corrections.forEach(c -> findings.addAll(c.findings()));
        startUps.forEach(s -> findings.addAll(s.findings()));
        roadSpeed.ifPresentOrElse(
                r -> findings.addAll(r.findings()), () -> findings.add(Finding.of(FindingCode.ROAD_SPEED_NOT_CHECKED)));
        List<Finding> age = age(corrections);
        findings.addAll(age);

        MassProof massProof = massProof(proofs);
        RoadProof roadProof = roadSpeed
                .map(r -> r.verdict() == Verdict.WITHIN_TOLERANCE ? RoadProof.PROVEN : RoadProof.NOT_PROVEN)
                .orElse(RoadProof.NOT_CHECKED);
        List<Finding> current = new ArrayList<>(standing);
        proofs.forEach(p -> current.addAll(p.currentFindings()));
        return new TruckAssessment(
                truck,
                Optional.empty(),
                calibrations,
                verifications,
                corrections,
                startUps,
                roadSpeed,
                massProof,
                roadProof,
                nextStep(current, corrections, massProof, roadProof, !age.isEmpty()),
                List.copyOf(findings));
    }

    private Spreader spreader() {
        DriveFeedback feedback = truck.pulsesPerRevolution().isPresent()
                ? new ShaftSensor(truck.pulsesPerRevolution().get(), truck.gearRatio())
                : new NoSensor(truck.gearRatio());
        TypedEntry conveyor = truck.conveyor();
        TypedEntry gate = truck.gate();
        return new Spreader(
                Conveyor.of(
                        settings.types().conveyor(TypeId.of(conveyor.type(), conveyor.version())),
                        conveyor.parameters()),
                Gate.of(settings.types().gate(TypeId.of(gate.type(), gate.version())), gate.parameters()),
                feedback);
    }

    private CaughtMass caught(CatchEntry entry) {
        List<Weighing> weighings = entry.containers().stream()
                .map(c -> new Weighing(c.container(), c.gross(), c.tare()))
                .toList();
        return new CaughtMass(yard.scale(entry.scale()), entry.at().toLocalDate(), weighings);
    }

    /** One calibration for each material and gate opening, as the mean over different openings belongs to none. */
    private List<Calibration> calibrations() {
        Map<Place, List<CalibrationCatch>> byPlace = new LinkedHashMap<>();
        for (CalibrationCatchEntry one : truck.calibrationCatches()) {
            CatchEntry entry = one.entry();
            CountEntry counted = entry.counted()
                    .orElseThrow(() -> new InvalidInputException("count of a calibration catch", "given", "nothing"));
            byPlace.computeIfAbsent(new Place(entry.material(), entry.opening()), place -> new ArrayList<>())
                    .add(new CalibrationCatch(
                            caught(entry), counted.count(), entry.opening(), one.primed(), one.coasting()));
        }
        List<Calibration> calibrations = new ArrayList<>();
        byPlace.forEach((place, catches) -> calibrations.add(Calibration.from(
                spreader,
                yard.material(place.material()),
                catches,
                settings.estimator(),
                settings.limits().catches())));
        return calibrations;
    }

    private List<Verification> verifications(List<Finding> standing) {
        return truck.verificationCatches().stream()
                .sorted(Comparator.comparing(v -> v.entry().at()))
                .map(v -> verificationCatch(v).assess(yard.tolerance(), settings.limits(), standing))
                .toList();
    }

    private VerificationCatch verificationCatch(VerificationCatchEntry one) {
        CatchEntry entry = one.entry();
        CalibrationInForce inForce = new CalibrationInForce(
                spreader,
                yard.material(entry.material()),
                entry.opening(),
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

    /** Verifications of one material and gate opening belong together: a correction of one says nothing of another. */
    private List<Proof> proofs(List<Verification> inOrder) {
        Map<Place, List<Verification>> byPlace = new LinkedHashMap<>();
        for (Verification one : inOrder) {
            CalibrationInForce inForce = one.source().inForce();
            Place place = new Place(inForce.material().name(), inForce.opening());
            byPlace.computeIfAbsent(place, key -> new ArrayList<>()).add(one);
        }
        return byPlace.values().stream()
                .map(one -> Proof.of(one, yard.tolerance()))
                .toList();
    }

    private RoadSpeedCheck roadSpeed(RoadSpeedEntry entry) {
        List<RoadSpeedRun> runs = entry.runs().stream()
                .map(r -> new RoadSpeedRun(r.course(), r.pulses()))
                .toList();
        return RoadSpeedCheck.of(runs, entry.inForce(), yard.tolerance());
    }

    /**
     * Findings about the value in force when the day began; none if the day renewed it. A change of tyres is a matter of
     * the road speed, which a later check of it settles.
     */
    private List<Finding> age(List<Correction> corrections) {
        boolean renewed = !truck.calibrationCatches().isEmpty()
                || corrections.stream().anyMatch(c -> c.asLeft().isPresent());
        if (truck.inForce().isEmpty() || renewed) {
            return List.of();
        }
        Optional<LocalDate> roadSpeedChecked = truck.roadSpeed().map(RoadSpeedEntry::on);
        List<Change> changes = truck.changes().stream()
                .map(c -> new Change(c.on(), c.part()))
                .filter(c -> c.part() != Change.Part.TYRE
                        || roadSpeedChecked.isEmpty()
                        || roadSpeedChecked.get().isBefore(c.on()))
                .toList();
        return CalibrationAge.findings(
                truck.inForce().get().dated(), yard.day().seasonStart(), settings.preparation(), changes);
    }

    /** A truck is as proven as the least proven of its materials and gate openings. */
    private static MassProof massProof(List<Proof> proofs) {
        Set<MassProof> found = EnumSet.noneOf(MassProof.class);
        proofs.forEach(p -> found.add(p.massProof()));
        return Stream.of(MassProof.NOT_PROVEN, MassProof.DELIVERY_ONLY, MassProof.PROVEN)
                .filter(found::contains)
                .findFirst()
                .orElse(MassProof.NOT_CHECKED);
    }

    private NextStep nextStep(
            List<Finding> current,
            List<Correction> corrections,
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
