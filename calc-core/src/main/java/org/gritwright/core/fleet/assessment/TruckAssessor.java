package org.gritwright.core.fleet.assessment;

import static org.gritwright.core.finding.Argument.date;

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
import java.util.function.Supplier;
import java.util.stream.Stream;
import org.gritwright.core.calibration.Calibration;
import org.gritwright.core.calibration.CalibrationAge;
import org.gritwright.core.calibration.CalibrationCatch;
import org.gritwright.core.calibration.CalibrationInForce;
import org.gritwright.core.calibration.Change;
import org.gritwright.core.finding.Finding;
import org.gritwright.core.finding.FindingCode;
import org.gritwright.core.fleet.day.ChangeEntry;
import org.gritwright.core.fleet.day.DriveEntry;
import org.gritwright.core.fleet.day.RoadSpeedEntry;
import org.gritwright.core.fleet.day.TargetEntry;
import org.gritwright.core.fleet.day.TruckDay;
import org.gritwright.core.fleet.day.Yard;
import org.gritwright.core.fleet.review.DeliverySlips;
import org.gritwright.core.fleet.review.FleetReview;
import org.gritwright.core.fleet.review.ProbableSlips;
import org.gritwright.core.fleet.review.Sketch;
import org.gritwright.core.judgement.Verdict;
import org.gritwright.core.observation.CalibrationPoint;
import org.gritwright.core.observation.Observation;
import org.gritwright.core.roadspeed.RoadSpeedCheck;
import org.gritwright.core.verification.Verification;
import org.gritwright.core.verification.VerificationCatch;
import org.gritwright.core.verification.VerificationLimits;

/** Turns one truck's entries into what they show about each calibration point, and into what to do next. */
final class TruckAssessor {
    private final FleetAssessor settings;
    private final Yard yard;
    private final TruckDay truck;
    private final Optional<TruckDay> wetted;
    private final TruckReader read;
    private final VerificationLimits limits;
    private final List<PointHistory> histories;
    private final Optional<Sketch> sketch;
    private final List<Finding> sameTickets;

    /**
     * Reads a truck's entries and gathers them by point.
     *
     * @param index the truck's place in the day
     * @param wetted the truck whose grains its liquid wets
     * @param sameTickets what is known of its tickets by a look at the whole fleet's
     * @param unusable why it can't be computed with, as far as one look shows
     */
    TruckAssessor(
            FleetAssessor settings,
            Yard yard,
            TruckDay truck,
            int index,
            Optional<TruckDay> wetted,
            List<Finding> sameTickets,
            List<Refusal> unusable) {
        this.sameTickets = sameTickets;
        this.wetted = wetted;
        this.settings = settings;
        this.yard = yard;
        this.truck = truck;
        this.read = new TruckReader(yard, yard.day().trucks().get(index), index, wetted, settings.types());
        unusable.forEach(read::refuse);
        this.limits = new VerificationLimits(
                settings.limits().catches().withAllowances(yard.day().allowances()),
                settings.limits().greatestCorrection());
        this.histories = attempt(this::histories, List.of());
        this.sketch = attempt(this::sketched, Optional.empty());
    }

    /** What can't be computed is this truck's refusal, so that it stops no other. */
    private <T> T attempt(Supplier<T> computing, T otherwise) {
        if (read.refusals().isEmpty()) {
            try {
                return computing.get();
            } catch (RuntimeException e) {
                read.refuse("", e);
            }
        }
        return otherwise;
    }

    /** What other trucks are compared with; none where there is nothing to compare. */
    Optional<FleetReview.Truck> comparable() {
        return sketch.map(day ->
                new FleetReview.Truck(truck.id(), truck.spreader().machine().type() + " " + day.material(), day));
    }

    private Optional<Sketch> sketched() {
        boolean tells = !read.calibrationCatches().isEmpty()
                || !read.inForce().isEmpty()
                || histories.stream().flatMap(PointHistory::standing).findAny().isPresent();
        return tells
                ? Optional.of(Sketch.of(
                        read.calibrationCatches(),
                        histories.stream().flatMap(PointHistory::standing).toList(),
                        histories.stream()
                                .flatMap(h -> h.calibration().stream())
                                .toList(),
                        read.inForce(),
                        limits.catches()))
                : Optional.empty();
    }

    TruckAssessment assess(FleetReview fleet) {
        return attempt(() -> Optional.of(computed(fleet)), Optional.<TruckAssessment>empty())
                .orElseGet(() -> TruckAssessment.refused(truck, read.refusals()));
    }

    private TruckAssessment computed(FleetReview fleet) {
        Curves curves = Curves.of(
                truck,
                histories.stream().flatMap(h -> h.calibration().stream()).toList(),
                settings.estimator(),
                limits.catches());
        CurveProof byCurve = new CurveProof(
                curves, histories, yard.tolerance(), truck.spreader().gateReading());
        Optional<DriveAssessment> drive = read.drive()
                .map(entry -> DriveCheck.of(
                        entry.response(), entry.stated(), truck.spreader().gearRatio()))
                .map(one ->
                        one.with(DriveAge.of(one, truck.drive().flatMap(DriveEntry::statedRange), truck.changes())));
        DriveLimits driveLimits = new DriveLimits(
                drive, histories.stream().flatMap(PointHistory::assessedCatches).toList());
        List<PointAssessment> points = histories.stream()
                .map(h -> h.assessed(byCurve.of(h), drive.flatMap(DriveAssessment::range), driveLimits))
                .toList();
        RouteCheck routeCheck = new RouteCheck(drive, points, yard);
        List<RouteAssessment> routes =
                yard.day().routesOf(truck).stream().map(routeCheck::assess).toList();
        Optional<Finding> changedTires = changedTires();
        Map<PointHistory, List<Finding>> ages = new LinkedHashMap<>();
        histories.forEach(h -> ages.put(h, age(h)));
        RoadProof roadProof = changedTires.isPresent()
                ? RoadProof.NOT_CHECKED
                : read.roadSpeed().map(TruckAssessor::proof).orElse(RoadProof.NOT_CHECKED);
        List<Finding> ofMass = new ArrayList<>();
        sketch.flatMap(day -> ProbableSlips.of(
                        day,
                        truck.spreader(),
                        settings.types(),
                        fleet.swapped(truck.id()),
                        ToDoList.isContradicted(histories, curves.findings())))
                .ifPresent(ofMass::add);
        fleet.unlikeOthers(truck.id()).ifPresent(ofMass::add);
        ofMass.addAll(sameTickets);
        List<Observation> inOrder = Stream.concat(
                        read.calibrationCatches().stream().map(CalibrationCatch::observation),
                        read.verificationCatches().stream().map(VerificationCatch::observation))
                .sorted(Comparator.comparing(Observation::at))
                .toList();
        // Revolutions that come from a table are as wrong as the table.
        drive.stream()
                .flatMap(one -> DriveCheck.controlSettings(one, truck.spreader().controlSettings()))
                .forEach(ofMass::add);
        ofMass.addAll(OddTimes.of(read, inOrder, histories));
        OddTares.of(inOrder).ifPresent(ofMass::add);
        OddTares.leftOut(inOrder).ifPresent(ofMass::add);
        List<Finding> contradictions = new ArrayList<>(ofMass);
        DeliverySlips.of(
                        points.stream()
                                .flatMap(p -> p.verifications().stream())
                                .filter(one -> !driveLimits.isExplained(one))
                                .toList(),
                        this::target)
                .or(() -> OtherTon.of(points, this::target))
                .ifPresent(contradictions::add);
        drive.ifPresent(one -> {
            DriveCheck.contradictions(one).forEach(contradictions::add);
            DriveCheck.neverTurned(one, inOrder).ifPresent(contradictions::add);
            contradictions.addAll(catchSpeeds(one));
        });
        read.roadSpeed().flatMap(RoadSpeedCheck::doubt).ifPresent(contradictions::add);

        Set<Finding> findings = new LinkedHashSet<>(contradictions);
        histories.forEach(h -> findings.addAll(h.outOfPlace()));
        points.forEach(p -> findings.addAll(p.findings()));
        drive.ifPresent(one -> findings.addAll(one.findings()));
        read.boom().ifPresent(one -> findings.addAll(one.findings()));
        routes.forEach(one -> findings.addAll(routeCheck.findings(one)));
        findings.addAll(nearMisses(histories));
        findings.addAll(curves.findings());
        read.roadSpeed()
                .map(RoadSpeedCheck::findings)
                .or(() -> truck.wets().isPresent()
                        ? Optional.of(List.of())
                        : Optional.of(List.of(Finding.of(FindingCode.ROAD_SPEED_NOT_CHECKED))))
                .ifPresent(findings::addAll);
        changedTires.ifPresent(findings::add);
        ages.values().forEach(findings::addAll);
        return new TruckAssessment(
                truck,
                List.of(),
                points,
                curves.curves(),
                read.roadSpeed(),
                drive,
                read.boom(),
                routes,
                Optional.empty(),
                leastProven(points, !ofMass.isEmpty()),
                roadProof,
                new ToDoList(
                                truck,
                                curves.findings(),
                                contradictions,
                                roadProof,
                                drive,
                                read.boom(),
                                routes,
                                driveLimits)
                        .of(histories, points, ages),
                List.copyOf(findings));
    }

    private TargetEntry target(Verification one) {
        return truck.verificationCatches().stream()
                .filter(written ->
                        written.entry().at().equals(one.source().observation().at()))
                .findFirst()
                .orElseThrow()
                .target();
    }

    private List<Finding> catchSpeeds(DriveAssessment drive) {
        return read.feedback()
                .map(feedback -> {
                    CatchSpeeds speeds = new CatchSpeeds(drive, feedback, yard.tolerance());
                    read.calibrationCatches().forEach(speeds::add);
                    read.verificationCatches().forEach(speeds::add);
                    return speeds.findings();
                })
                .orElse(List.of());
    }

    private static RoadProof proof(RoadSpeedCheck check) {
        if (check.doubt().isPresent()) {
            return RoadProof.UNDECIDED;
        }
        return check.verdict() == Verdict.WITHIN_TOLERANCE ? RoadProof.PROVEN : RoadProof.NOT_PROVEN;
    }

    /** What belongs to one point, while it is gathered. */
    private static final class Gathered {
        private final CalibrationPoint point;
        private final List<CalibrationCatch> calibrationCatches = new ArrayList<>();
        private final List<VerificationCatch> verificationCatches = new ArrayList<>();
        private final List<CalibrationInForce> inForce = new ArrayList<>();

        Gathered(CalibrationPoint point) {
            this.point = point;
        }
    }

    private List<PointHistory> histories() {
        Map<CalibrationPoint.Key, Gathered> byPoint = new LinkedHashMap<>();
        read.calibrationCatches()
                .forEach(one -> gather(byPoint, one.point()).calibrationCatches.add(one));
        read.verificationCatches()
                .forEach(one -> gather(byPoint, one.point()).verificationCatches.add(one));
        read.inForce().forEach(one -> gather(byPoint, one.point()).inForce.add(one));
        DisplaySets sets = new DisplaySets(truck, read.verificationCatches(), read.inForce());
        List<PointHistory> histories = new ArrayList<>();
        for (Gathered gathered : byPoint.values()) {
            history(gathered, sets).ifPresent(histories::add);
        }
        return histories;
    }

    private static Gathered gather(Map<CalibrationPoint.Key, Gathered> byPoint, CalibrationPoint point) {
        return byPoint.computeIfAbsent(point.key(), key -> new Gathered(point));
    }

    private Optional<PointHistory> history(Gathered gathered, DisplaySets sets) {
        try {
            Optional<Calibration> calibration = gathered.calibrationCatches.isEmpty()
                    ? Optional.empty()
                    : Optional.of(
                            Calibration.from(gathered.calibrationCatches, settings.estimator(), limits.catches()));
            List<Verification> verifications = gathered.verificationCatches.stream()
                    .sorted(Comparator.comparing(one -> one.observation().at()))
                    .map(one -> one.assess(yard.tolerance(), yard.day().decisionRule(), limits, calibration))
                    .toList();
            return Optional.of(new PointHistory(
                    gathered.point,
                    gathered.inForce,
                    calibration,
                    verifications,
                    sets::elsewhere,
                    yard.tolerance(),
                    yard.day().day()));
        } catch (RuntimeException e) {
            read.refuse(gathered.calibrationCatches.isEmpty() ? "/verificationCatches" : "/calibrationCatches", e);
            return Optional.empty();
        }
    }

    /** Two positions so close that one spelling is probably a slip: among neighbors only, so that many points cost little. */
    private static List<Finding> nearMisses(List<PointHistory> histories) {
        List<CalibrationPoint> sorted = histories.stream()
                .map(PointHistory::point)
                .sorted(Comparator.comparing(
                                (CalibrationPoint p) -> p.material().name())
                        .thenComparing((CalibrationPoint p) -> p.setting().scale())
                        .thenComparing(
                                (CalibrationPoint p) -> p.setting().position().exact()))
                .toList();
        List<Finding> findings = new ArrayList<>();
        for (int i = 1; i < sorted.size(); i++) {
            if (sorted.get(i).isNearMiss(sorted.get(i - 1))) {
                findings.add(Mismatch.nearMiss(sorted.get(i - 1), sorted.get(i)));
            }
        }
        return findings;
    }

    /** Findings about the value that the display holds for a point, by the day on which it was last made new. */
    private List<Finding> age(PointHistory history) {
        Stream<LocalDate> inForce = history.inForce().stream()
                .flatMap(entry -> entry.since().stream())
                .map(since -> since.day());
        List<Change> changes = truck.changes().stream()
                .filter(c -> c.part() != Change.Part.TIRE)
                .map(c -> new Change(c.on(), c.part()))
                .toList();
        return Stream.concat(history.renewedOn().stream(), inForce)
                .max(Comparator.naturalOrder())
                .map(renewed ->
                        CalibrationAge.findings(renewed, yard.day().seasonStart(), settings.preparation(), changes))
                .orElse(List.of());
    }

    /** New tires affect the road speed: a check made before they were fitted says nothing. */
    private Optional<Finding> changedTires() {
        Optional<LocalDate> checked =
                truck.roadSpeed().or(() -> wetted.flatMap(TruckDay::roadSpeed)).map(RoadSpeedEntry::on);
        return Stream.concat(truck.changes().stream(), wetted.stream().flatMap(one -> one.changes().stream()))
                .filter(c -> c.part() == Change.Part.TIRE)
                .map(ChangeEntry::on)
                .max(Comparator.naturalOrder())
                .filter(changed -> checked.isEmpty() || checked.get().isBefore(changed))
                .map(changed -> Finding.of(FindingCode.ROAD_SPEED_BEFORE_CHANGE, Map.of("changed", date(changed))));
    }

    /** A truck is as proven as the least proven of its calibration points. */
    private static MassProof leastProven(List<PointAssessment> points, boolean doubtful) {
        Set<MassProof> found = EnumSet.noneOf(MassProof.class);
        if (doubtful) {
            found.add(MassProof.UNDECIDED);
        }
        points.forEach(p -> found.add(p.proof()));
        return Stream.of(
                        MassProof.NOT_PROVEN,
                        MassProof.UNDECIDED,
                        MassProof.NOT_CHECKED,
                        MassProof.DELIVERY_ONLY,
                        MassProof.PROVEN_BY_CURVE,
                        MassProof.PROVEN)
                .filter(found::contains)
                .findFirst()
                .orElse(MassProof.NOT_CHECKED);
    }
}
