package org.gritwright.core.fleet.assessment;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Supplier;
import java.util.stream.Stream;
import javax.measure.Quantity;
import javax.measure.Unit;
import org.gritwright.core.calibration.CalibrationCatch;
import org.gritwright.core.calibration.CalibrationFactor;
import org.gritwright.core.calibration.CalibrationInForce;
import org.gritwright.core.fleet.day.CalibrationCatchEntry;
import org.gritwright.core.fleet.day.CatchEntry;
import org.gritwright.core.fleet.day.CountEntry;
import org.gritwright.core.fleet.day.DriveEntry;
import org.gritwright.core.fleet.day.InForceEntry;
import org.gritwright.core.fleet.day.PumpEntry;
import org.gritwright.core.fleet.day.ReadEntry;
import org.gritwright.core.fleet.day.RoadSpeedEntry;
import org.gritwright.core.fleet.day.SpreaderEntry;
import org.gritwright.core.fleet.day.StatedRangeEntry;
import org.gritwright.core.fleet.day.TruckDay;
import org.gritwright.core.fleet.day.VerificationCatchEntry;
import org.gritwright.core.fleet.day.Yard;
import org.gritwright.core.metering.Conveyor;
import org.gritwright.core.metering.DriveFeedback;
import org.gritwright.core.metering.Gate;
import org.gritwright.core.metering.Metering;
import org.gritwright.core.metering.Pump;
import org.gritwright.core.metering.PumpMetering;
import org.gritwright.core.metering.ShaftCount;
import org.gritwright.core.metering.Spreader;
import org.gritwright.core.observation.CalibrationPoint;
import org.gritwright.core.observation.Conditions;
import org.gritwright.core.observation.Material;
import org.gritwright.core.observation.Observation;
import org.gritwright.core.roadspeed.RoadSpeedCheck;
import org.gritwright.core.roadspeed.RoadSpeedRun;
import org.gritwright.core.spi.Setting;
import org.gritwright.core.spi.TypeRegistry;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.core.verification.IndicatedAmount;
import org.gritwright.core.verification.TestRun;
import org.gritwright.core.verification.VerificationCatch;
import org.gritwright.core.weighing.Caught;
import org.gritwright.core.weighing.CaughtMass;
import org.gritwright.core.weighing.ReadVolume;
import org.gritwright.core.weighing.WeighedVolume;
import org.gritwright.core.weighing.Weighing;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.RefusalCode;
import org.gritwright.units.check.Require;
import org.gritwright.units.quantity.BulkDensity;

/**
 * Turns one truck's entries into values to compute with, and collects every reason why an entry can't be used. What
 * depends on something refused is left out without a reason of its own.
 */
final class TruckReader {
    /** Nobody mends more before trying again. */
    private static final int MOST_REFUSALS = 100;

    private final Yard yard;
    private final TruckDay truck;
    private final Optional<TruckDay> wetted;
    private final String root;
    private final List<Refusal> refusals = new ArrayList<>();
    /** All catches of a point take its first spelling; others may be in other units. */
    private final Map<CalibrationPoint.Key, CalibrationPoint> points = new HashMap<>();

    /** The first display step of a point's values in force, and the first of any in a unit. */
    private final Map<CalibrationPoint, Quantity<?>> stepsOfPoints = new HashMap<>();

    private final Map<Unit<?>, Quantity<?>> stepsInUnits = new HashMap<>();

    /** What is being read, for people. */
    private String subject = "";

    private final Optional<Metering> metering;
    private final List<CalibrationInForce> inForce;
    private final List<CalibrationCatch> calibrationCatches;
    private final List<VerificationCatch> verificationCatches;
    private final Optional<RoadSpeedCheck> roadSpeed;
    private final Optional<DriveReader> drive;
    private final Optional<BoomAssessment> boom;

    /**
     * Reads all entries.
     *
     * @param index the truck's place in the day, for pointers
     * @param wetted the truck whose grains its liquid wets
     */
    TruckReader(Yard yard, TruckDay truck, int index, Optional<TruckDay> wetted, TypeRegistry types) {
        this.yard = yard;
        this.wetted = wetted;
        this.truck = truck;
        this.root = "/trucks/" + index;
        this.metering = metering(types);
        this.calibrationCatches = each("/calibrationCatches", truck.calibrationCatches(), this::calibrationCatch);
        List<Optional<Observation>> verifications = new ArrayList<>();
        for (int i = 0; i < truck.verificationCatches().size(); i++) {
            verifications.add(observation(
                    "/verificationCatches/" + i,
                    truck.verificationCatches().get(i).entry()));
        }
        this.inForce = each("/inForce", truck.inForce(), this::inForce);
        this.inForce.forEach(entry -> entry.displayStep().ifPresent(step -> {
            stepsOfPoints.putIfAbsent(entry.point(), step);
            stepsInUnits.putIfAbsent(step.getUnit(), step);
        }));
        requireOneEntryASlot();
        this.verificationCatches = each(
                "/verificationCatches",
                truck.verificationCatches(),
                (at, entry) -> verifications
                        .get(Integer.parseInt(at.substring(at.lastIndexOf('/') + 1)))
                        .flatMap(observation -> verificationCatch(at, entry, observation)));
        this.roadSpeed = readRoadSpeed();
        subject = "drive";
        this.drive = truck.drive().map(entry -> new DriveReader(this::attempt, entry));
        truck.drive()
                .flatMap(DriveEntry::statedRange)
                .flatMap(StatedRangeEntry::on)
                .ifPresent(on -> requireNotAfterTheDay("/drive/statedRange/on", "date of a stated range", on));
        subject = "boom";
        this.boom = truck.boom().flatMap(entry -> new BoomReader(this::attempt, truck, yard).read(entry));
        subject = "";
        for (int i = 0; i < truck.changes().size(); i++) {
            requireNotAfterTheDay(
                    "/changes/" + i + "/on",
                    "date of a change",
                    truck.changes().get(i).on());
        }
    }

    private interface Reading<E, T> {
        Optional<T> read(String at, E entry);
    }

    private static <E, T> List<T> each(String at, List<E> entries, Reading<E, T> reading) {
        List<T> read = new ArrayList<>();
        for (int i = 0; i < entries.size(); i++) {
            reading.read(at + "/" + i, entries.get(i)).ifPresent(read::add);
        }
        return List.copyOf(read);
    }

    /** The result, or none and one more refusal. */
    private <T> Optional<T> attempt(String at, Supplier<T> reading) {
        try {
            return Optional.of(reading.get());
        } catch (RuntimeException e) {
            refusals.add(Refusal.of(root + at, subject, e));
            return Optional.empty();
        }
    }

    private Optional<Metering> metering(TypeRegistry types) {
        if (truck.spreader() instanceof SpreaderEntry entry) {
            Optional<Conveyor> conveyor = attempt("/conveyor", () -> entry.conveyor(types));
            Optional<Gate> gate = attempt("/gate", () -> entry.gate(types));
            Optional<DriveFeedback> feedback = attempt("", entry::feedback);
            return conveyor.isPresent() && gate.isPresent() && feedback.isPresent()
                    ? attempt("/gate", () -> new Spreader(conveyor.get(), gate.get(), feedback.get()))
                    : Optional.empty();
        }
        if (truck.spreader() instanceof PumpEntry entry) {
            Optional<Pump> pump = attempt("/pump", () -> entry.pump(types));
            Optional<DriveFeedback> feedback = attempt("", entry::feedback);
            return pump.isPresent() && feedback.isPresent()
                    ? attempt("/pump", () -> new PumpMetering(pump.get(), feedback.get()))
                    : Optional.empty();
        }
        return attempt("/flowMeter", () -> truck.spreader().metering(types));
    }

    /**
     * A date after the day is a slip of the pen that would make an old calibration look new. It may be the day's own: with a wrong year there
     * every date of the document is refused.
     */
    private void requireNotAfterTheDay(String at, String field, LocalDate date) {
        Refusal.ofDateAfter(yard.day().day(), date, root + at, subject, field).ifPresent(refusals::add);
    }

    private Optional<Observation> observation(String at, CatchEntry entry) {
        subject = subjectOf(entry);
        requireNotAfterTheDay(at + "/at", "date of a catch", entry.at().toLocalDate());
        Optional<Caught> caught = caught(at, entry);
        Optional<ShaftCount> counted = entry.counted().flatMap(count -> attempt(at + "/counted", count::count));
        Optional<CalibrationPoint> point = point(at, entry.material(), entry.setting());
        if (caught.isEmpty()
                || point.isEmpty()
                || counted.isPresent() != entry.counted().isPresent()) {
            return Optional.empty();
        }
        return attempt(
                at + "/counted",
                () -> new Observation(
                        entry.at(),
                        entry.operator(),
                        point.get(),
                        caught.get(),
                        counted,
                        entry.conditions().orElse(Conditions.NONE)));
    }

    private static String subjectOf(CatchEntry entry) {
        return "catch of " + entry.at().toLocalTime();
    }

    private Optional<CalibrationPoint> point(String at, String name, Optional<Quantity<?>> reading) {
        Optional<Material> material = attempt(at + "/material", () -> yard.material(name));
        Optional<Setting> setting =
                attempt(at + "/setting", () -> reading.map(Setting::of).orElse(Setting.none()));
        if (metering.isEmpty() || material.isEmpty() || setting.isEmpty()) {
            return Optional.empty();
        }
        return attempt(at + "/setting", () -> CalibrationPoint.of(material.get(), metering.get(), setting.get()))
                .map(point -> points.computeIfAbsent(point.key(), key -> point));
    }

    /** Weighed or, of a liquid, read or weighed: one of the two. */
    private Optional<Caught> caught(String at, CatchEntry entry) {
        if (entry.read().isPresent()) {
            return attempt(at + "/read", () -> readVolume(entry, entry.read().get()));
        }
        Optional<CaughtMass> mass = weighed(at, entry);
        if (!truck.spreader().isForLiquids() && entry.density().isEmpty()) {
            return mass.map(one -> one);
        }
        return attempt(at + "/density", () -> density(entry))
                .flatMap(density ->
                        mass.flatMap(one -> attempt(at + "/density", () -> new WeighedVolume(one, density))));
    }

    private ReadVolume readVolume(CatchEntry entry, ReadEntry read) {
        Require.that(
                entry.scale().isEmpty()
                        && entry.containers().isEmpty()
                        && entry.density().isEmpty(),
                "what was read of a catch",
                "left out, or scale, containers and density are",
                "both");
        return new ReadVolume(yard.graduate(read.container()), entry.at().toLocalDate(), read.fills());
    }

    private Measured<BulkDensity> density(CatchEntry entry) {
        Require.that(
                truck.spreader().isForLiquids(),
                "density of what was weighed",
                "left out, as it is no liquid",
                "a density");
        return entry.density()
                .orElseThrow(() -> new InvalidInputException(
                        RefusalCode.MISSING, "density of what was weighed", "given, as it is a liquid", "nothing"))
                .density();
    }

    private Optional<CaughtMass> weighed(String at, CatchEntry entry) {
        List<Weighing> weighings = each(
                at + "/containers",
                entry.containers(),
                (where, one) -> attempt(where, () -> new Weighing(one.container(), one.gross(), one.tare())));
        return attempt(
                        at + "/scale",
                        () -> yard.scale(entry.scale()
                                .orElseThrow(() -> new InvalidInputException(
                                        RefusalCode.MISSING, "scale of a catch", "given", "nothing"))))
                .filter(scale -> weighings.size() == entry.containers().size())
                .flatMap(scale -> attempt(
                        at + "/containers",
                        () -> new CaughtMass(scale, entry.at().toLocalDate(), weighings)));
    }

    private Optional<CalibrationCatch> calibrationCatch(String at, CalibrationCatchEntry entry) {
        subject = subjectOf(entry.entry());
        Optional<CountEntry> counted = attempt(
                at + "/counted",
                () -> entry.entry()
                        .counted()
                        .orElseThrow(
                                () -> new InvalidInputException("count of a calibration catch", "given", "nothing")));
        return observation(at, entry.entry())
                .filter(read -> counted.isPresent())
                .map(read -> new CalibrationCatch(read, entry.primed(), entry.coasting()));
    }

    private Optional<CalibrationInForce> inForce(String at, InForceEntry entry) {
        subject = "calibration in force";
        requireNotAfterTheDay(
                at + "/since", "date of the calibration in force", entry.since().day());
        Optional<CalibrationFactor> factor = attempt(at + "/value", () -> CalibrationFactor.of(entry.value()));
        Optional<CalibrationPoint> point = point(at, entry.material(), settingOrOnlyOne(entry));
        return factor.isPresent() && point.isPresent()
                ? attempt(
                        at + "/value",
                        () -> new CalibrationInForce(
                                point.get(),
                                factor.get(),
                                entry.displayStep(),
                                Optional.of(entry.since()),
                                entry.slot()))
                : Optional.empty();
    }

    /** An old document may leave out the setting of a value in force: where the material was caught at one only, it is that. */
    private Optional<Quantity<?>> settingOrOnlyOne(InForceEntry entry) {
        if (entry.setting().isPresent() || metering.filter(Metering::isSettable).isEmpty()) {
            return entry.setting();
        }
        List<Setting> caught = points.values().stream()
                .filter(point -> point.material().name().equals(entry.material()))
                .map(CalibrationPoint::setting)
                .toList();
        return caught.size() == 1 ? caught.get(0).quantity() : Optional.empty();
    }

    /** A slot of the controller holds one value. */
    private void requireOneEntryASlot() {
        Map<String, InForceEntry> bySlot = new HashMap<>();
        for (int i = 0; i < truck.inForce().size(); i++) {
            InForceEntry entry = truck.inForce().get(i);
            if (entry.slot().isPresent() && bySlot.put(entry.slot().get(), entry) != null) {
                refusals.add(new Refusal(
                        root + "/inForce/" + i + "/slot",
                        "calibration in force",
                        "slot",
                        "one that holds no other value",
                        "\"" + entry.slot().get() + "\" again"));
            }
        }
        Map<CalibrationPoint, CalibrationInForce> unslotted = new HashMap<>();
        for (CalibrationInForce entry : inForce) {
            if (entry.slot().isEmpty() && unslotted.put(entry.point(), entry) != null) {
                refusals.add(new Refusal(
                        root + "/inForce",
                        "",
                        "calibration in force for " + entry.point(),
                        "one, or each in a slot that is named",
                        "two"));
            }
        }
    }

    private Optional<VerificationCatch> verificationCatch(
            String at, VerificationCatchEntry one, Observation observation) {
        subject = subjectOf(one.entry());
        Optional<CalibrationInForce> held = attempt(
                at + "/inForce",
                () -> CalibrationInForce.of(
                        observation.point(),
                        CalibrationFactor.of(one.inForce()),
                        displayStep(observation.point(), one)));
        Optional<TestRun> run = attempt(
                at, () -> new TestRun(one.target().perDistance(), one.testSpeed(), one.runTime(), one.testDistance()));
        if (held.isEmpty() || run.isEmpty()) {
            return Optional.empty();
        }
        one.slot().ifPresent(slot -> requireSlotOfValue(at, slot, held.get()));
        Optional<VerificationCatch> read =
                attempt(at + "/targetRate", () -> VerificationCatch.of(observation, held.get(), run.get()));
        return one.indicated().isEmpty()
                ? read
                : read.flatMap(undisplayed -> attempt(
                        at + "/indicatedStep",
                        () -> undisplayed.indicated(new IndicatedAmount(
                                one.indicated().get(),
                                one.indicatedStep()
                                        .orElseThrow(() -> new InvalidInputException(
                                                RefusalCode.MISSING,
                                                "indicatedStep, the step in which the display shows it,",
                                                "given with indicated, for example \"1 lb\"",
                                                "nothing"))))));
    }

    /** A slot that nobody lists may hold a new value, but not one that is listed in others. */
    private void requireSlotOfValue(String at, String slot, CalibrationInForce held) {
        List<String> slots = inForce.stream()
                .filter(entry ->
                        entry.point().equals(held.point()) && entry.factor().equals(held.factor()))
                .flatMap(entry -> entry.slot().stream())
                .toList();
        boolean isListed = truck.inForce().stream()
                .anyMatch(entry -> entry.slot().filter(slot::equals).isPresent());
        if (!slots.isEmpty() && !isListed) {
            refusals.add(new Refusal(
                    root + at + "/slot",
                    subject,
                    "slot",
                    "one that holds the value in force, as \"" + slots.get(0) + "\" does",
                    "\"" + slot + "\""));
        }
    }

    /** The step of the display belongs to the display: where the catch's own point has no entry, any entry's will do. */
    private Optional<Quantity<?>> displayStep(CalibrationPoint point, VerificationCatchEntry one) {
        return Optional.<Quantity<?>>ofNullable(stepsOfPoints.get(point))
                .or(() -> Optional.ofNullable(stepsInUnits.get(one.inForce().getUnit())));
    }

    /** What wets has no road speed of its own: the truck's is told where its grains are. */
    private Optional<RoadSpeedCheck> readRoadSpeed() {
        if (truck.roadSpeed().isEmpty()) {
            return wetted.flatMap(TruckDay::roadSpeed).flatMap(this::ofOther);
        }
        return truck.roadSpeed().flatMap(entry -> {
            subject = "road speed";
            requireNotAfterTheDay("/roadSpeed/on", "date of the road-speed check", entry.on());
            List<RoadSpeedRun> runs = each(
                    "/roadSpeed/runs",
                    entry.runs(),
                    (at, run) -> attempt(at, () -> new RoadSpeedRun(run.course(), run.pulses())));
            return runs.size() == entry.runs().size()
                    ? attempt("/roadSpeed", () -> RoadSpeedCheck.of(runs, entry.inForce(), yard.tolerance()))
                    : Optional.empty();
        });
    }

    /** What is wrong with it is told there. */
    private Optional<RoadSpeedCheck> ofOther(RoadSpeedEntry entry) {
        try {
            return Optional.of(RoadSpeedCheck.of(
                    entry.runs().stream()
                            .map(run -> new RoadSpeedRun(run.course(), run.pulses()))
                            .toList(),
                    entry.inForce(),
                    yard.tolerance()));
        } catch (InvalidInputException e) {
            return Optional.empty();
        }
    }

    /** Empty if everything can be computed with. */
    List<Refusal> refusals() {
        int more = refusals.size() - MOST_REFUSALS;
        return more <= 0
                ? List.copyOf(refusals)
                : Stream.concat(
                                refusals.stream().limit(MOST_REFUSALS),
                                Stream.of(new Refusal(
                                        root, "", "record", "one that can be computed with", more + " more reasons")))
                        .toList();
    }

    void refuse(Refusal refusal) {
        refusals.add(refusal);
    }

    /** One more, found while computing. */
    void refuse(String at, RuntimeException refused) {
        refusals.add(Refusal.of(root + at, "", refused));
    }

    List<CalibrationInForce> inForce() {
        return inForce;
    }

    List<CalibrationCatch> calibrationCatches() {
        return calibrationCatches;
    }

    List<VerificationCatch> verificationCatches() {
        return verificationCatches;
    }

    Optional<RoadSpeedCheck> roadSpeed() {
        return roadSpeed;
    }

    /** What was written down of the drive. */
    Optional<DriveReader> drive() {
        return drive;
    }

    /** What the boom shows. */
    Optional<BoomAssessment> boom() {
        return boom;
    }

    /** How the revolutions of the drive become known. */
    Optional<DriveFeedback> feedback() {
        return metering.map(Metering::feedback);
    }
}
