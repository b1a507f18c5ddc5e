package org.gritwright.core.fleet;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
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
        Optional<Correction> correction = correction(verifications);
        Optional<StartUp> startUp = startUp(verifications);
        Optional<RoadSpeedCheck> roadSpeed = truck.roadSpeed().map(this::roadSpeed);

        Set<Finding> findings = new LinkedHashSet<>(standing);
        verifications.forEach(v -> findings.addAll(v.findings()));
        correction.ifPresent(c -> findings.addAll(c.findings()));
        startUp.ifPresent(s -> findings.addAll(s.findings()));
        roadSpeed.ifPresentOrElse(
                r -> findings.addAll(r.findings()), () -> findings.add(Finding.of(FindingCode.ROAD_SPEED_NOT_CHECKED)));
        List<Finding> age = age(correction);
        findings.addAll(age);

        MassProof massProof = massProof(verifications, correction);
        RoadProof roadProof = roadSpeed
                .map(r -> r.verdict() == Verdict.WITHIN_TOLERANCE ? RoadProof.PROVEN : RoadProof.NOT_PROVEN)
                .orElse(RoadProof.NOT_CHECKED);
        List<Finding> current = currentFindings(standing, verifications, correction, startUp);
        return new TruckAssessment(
                truck,
                Optional.empty(),
                calibrations,
                verifications,
                correction,
                startUp,
                roadSpeed,
                massProof,
                roadProof,
                nextStep(current, correction, massProof, roadProof, !age.isEmpty()),
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
        record Place(String material, Optional<Quantity<Length>> opening) {}
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

    /** Follows the day: a catch outside tolerance proposes, a later catch with another value in force shows what was entered. */
    private static Optional<Correction> correction(List<Verification> inOrder) {
        Correction current = null;
        for (Verification verification : inOrder) {
            CalibrationFactor inForce = verification.source().inForce().factor();
            if (current != null
                    && current.status() == Correction.Status.PROPOSED
                    && !inForce.equals(current.asFound())) {
                current = current.entered(inForce);
            }
            if (current != null && current.isConfirmableBy(verification.source())) {
                current = current.confirmedBy(verification);
            }
            if (verification.verdict() == Verdict.OUTSIDE_TOLERANCE) {
                current = verification.proposedCorrection().orElse(current);
            }
        }
        return Optional.ofNullable(current);
    }

    private Optional<StartUp> startUp(List<Verification> verifications) {
        List<VerificationCatch> catches =
                verifications.stream().map(Verification::source).toList();
        return StartUp.isSeparable(catches)
                ? Optional.of(StartUp.separate(catches, yard.tolerance()))
                : Optional.empty();
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
    private List<Finding> age(Optional<Correction> correction) {
        boolean renewed = !truck.calibrationCatches().isEmpty()
                || correction.flatMap(Correction::asLeft).isPresent();
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

    private static MassProof massProof(List<Verification> verifications, Optional<Correction> correction) {
        if (verifications.isEmpty()) {
            return MassProof.NOT_CHECKED;
        }
        Verification last = verifications.get(verifications.size() - 1);
        boolean open = correction.isPresent() && correction.get().status() != Correction.Status.CONFIRMED;
        boolean doubted = last.findings().stream().anyMatch(f -> f.code().doubtsData());
        if (last.verdict() == Verdict.OUTSIDE_TOLERANCE || open || doubted) {
            return MassProof.NOT_PROVEN;
        }
        return last.calibrationError().isPresent() ? MassProof.PROVEN : MassProof.DELIVERY_ONLY;
    }

    /** Findings of what still stands: an earlier catch that a confirmed correction has settled is history. */
    private static List<Finding> currentFindings(
            List<Finding> standing,
            List<Verification> verifications,
            Optional<Correction> correction,
            Optional<StartUp> startUp) {
        List<Finding> current = new ArrayList<>(standing);
        if (!verifications.isEmpty()) {
            current.addAll(verifications.get(verifications.size() - 1).findings());
        }
        correction.ifPresent(c -> current.addAll(c.findings()));
        startUp.ifPresent(s -> current.addAll(s.findings()));
        return current;
    }

    private NextStep nextStep(
            List<Finding> current,
            Optional<Correction> correction,
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
        Optional<Correction.Status> status = correction.map(Correction::status);
        if (fault) {
            return NextStep.FIND_FAULT;
        }
        if (status.equals(Optional.of(Correction.Status.PROPOSED))) {
            return NextStep.ENTER_CORRECTION;
        }
        if (status.equals(Optional.of(Correction.Status.UNCONFIRMED))) {
            return NextStep.CONFIRM_CORRECTION;
        }
        if (roadProof == RoadProof.NOT_PROVEN) {
            return NextStep.MEND_ROAD_SPEED;
        }
        boolean proven = massProof == MassProof.PROVEN;
        boolean nothingToWorkWith = truck.inForce().isEmpty() && truck.calibrationCatches().isEmpty();
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
