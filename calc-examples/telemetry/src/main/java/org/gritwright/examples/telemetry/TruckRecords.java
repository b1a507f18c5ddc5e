package org.gritwright.examples.telemetry;

import java.io.IOException;
import java.io.InputStream;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.NavigableMap;
import java.util.Optional;
import java.util.TreeMap;
import javax.measure.Quantity;
import org.apache.hadoop.fs.FileStatus;
import org.gritwright.core.calibration.CalibrationInForce;
import org.gritwright.core.curve.DischargeCurve;
import org.gritwright.core.document.RejectedDocumentException;
import org.gritwright.core.fleet.assessment.FleetAssessor;
import org.gritwright.core.fleet.assessment.TruckAssessment;
import org.gritwright.core.fleet.day.RouteEntry;
import org.gritwright.core.history.Contradiction;
import org.gritwright.core.record.CalibrationRecord;
import org.gritwright.core.record.Document;
import org.gritwright.core.record.RecordedTimeline;
import org.gritwright.core.spi.TypeRegistry;
import org.gritwright.core.telemetry.AsFound;
import org.gritwright.core.telemetry.Counter;
import org.gritwright.core.telemetry.RowEvaluator;
import org.gritwright.core.telemetry.Timeline;
import org.gritwright.core.telemetry.Travel;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.quantity.ApplicationRate;
import org.gritwright.units.quantity.PrewetRate;
import org.gritwright.units.quantity.PulsesPerDistance;

/** Calibration records to what evaluates rows. This runs on the driver, the only one that needs the spreader types. */
final class TruckRecords {
    /** A season is within a year after the first record; a clock that is farther off is wrong. */
    private static final int DAYS = 366;

    private final TypeRegistry types;
    private final SeasonOptions options;

    TruckRecords(TypeRegistry types, SeasonOptions options) {
        this.types = types;
        this.options = options;
    }

    /** A record, what follows from it, and the file that it is in. */
    private record Read(String file, CalibrationRecord record, TruckAssessment assessment) {
        String truck() {
            return assessment.truck().id();
        }

        Optional<String> wets() {
            return assessment.truck().wets();
        }

        LocalDate day() {
            return record.entered().day();
        }

        BadInputException refused(String why) {
            return new BadInputException("record " + file + " of " + truck() + " can't be used: " + why);
        }
    }

    /** What evaluates the rows of each truck, by its id. What wets what a truck lays is part of that truck. */
    Map<String, TruckPlan> read(Folder folder) throws IOException, BadInputException {
        List<FileStatus> files = folder.filesEndingIn(".json");
        if (files.isEmpty()) {
            throw new BadInputException("can't read calibration records: " + folder + " holds no .json file");
        }
        Map<String, List<Read>> byTruck = new TreeMap<>();
        Map<String, List<Read>> byWetted = new TreeMap<>();
        for (FileStatus file : files) {
            Read read = read(folder, file);
            Map<String, List<Read>> records = read.wets().isPresent() ? byWetted : byTruck;
            records.computeIfAbsent(read.wets().orElseGet(read::truck), none -> new ArrayList<>())
                    .add(read);
        }
        byTruck.values().forEach(records -> records.sort(Comparator.comparing(Read::day)));
        byWetted.values().forEach(records -> records.sort(Comparator.comparing(Read::day)));
        for (List<Read> wetting : byWetted.values()) {
            Read first = wetting.get(0);
            String wetted = first.wets().orElseThrow();
            if (!byTruck.containsKey(wetted)) {
                throw first.refused("it wets what " + wetted + " lays, of which there is no record");
            }
        }
        Map<String, TruckPlan> plans = new TreeMap<>();
        for (Map.Entry<String, List<Read>> truck : byTruck.entrySet()) {
            plans.put(truck.getKey(), plan(truck.getValue(), byWetted.getOrDefault(truck.getKey(), List.of())));
        }
        return plans;
    }

    private Read read(Folder folder, FileStatus file) throws IOException, BadInputException {
        String name = file.getPath().getName();
        try (InputStream in = folder.open(file)) {
            CalibrationRecord record = Document.CALIBRATION_RECORD.read(in);
            Read read = new Read(
                    name,
                    record,
                    FleetAssessor.of(types).assess(record.entered()).get(0));
            if (!read.assessment().refusals().isEmpty()) {
                throw read.refused(read.assessment().refusals().get(0).sentence());
            }
            return read;
        } catch (RejectedDocumentException e) {
            throw new BadInputException(
                    "record " + name + " can't be used: " + e.problems().get(0));
        }
    }

    private TruckPlan plan(List<Read> records, List<Read> wetting) throws BadInputException {
        Read newest = records.get(records.size() - 1);
        try {
            RecordedTimeline recorded = recorded(records);
            Timeline timeline = corrected(recorded, records);
            if (timeline.isOfLiquids()) {
                throw newest.refused(
                        "it meters a liquid that wets nothing, and this example knows grains, and what" + " wets them");
            }
            Instant from = timeline.start();
            Instant until = from.plusSeconds(DAYS * 86_400L);
            Quantity<PulsesPerDistance> perDistance = perDistance(records);
            Travel road = Travel.counted(road(perDistance), perDistance, from, until);
            Target target = target(newest);
            List<Contradiction> contradictions = new ArrayList<>(recorded.contradictions());
            Optional<TruckSetup.Liquid> liquid =
                    wetting.isEmpty() ? Optional.empty() : Optional.of(liquid(wetting, from, until, contradictions));
            return TruckPlan.of(
                    timeline,
                    shaft(newest),
                    pulsesPerTurn(newest),
                    from,
                    until,
                    contradictions,
                    shaft -> new TruckSetup(newest.truck(), shaft, road, target, liquid));
        } catch (InvalidInputException e) {
            throw newest.refused(e.getMessage());
        }
    }

    /**
     * The rows have one counter of a liquid, and its slot isn't in them.
     *
     * @param contradictions what its records say that can't all be so is added
     */
    private TruckSetup.Liquid liquid(
            List<Read> records, Instant from, Instant until, List<Contradiction> contradictions)
            throws BadInputException {
        Read newest = records.get(records.size() - 1);
        for (Read read : records) {
            if (!read.truck().equals(newest.truck())) {
                throw newest.refused("another, " + read.truck() + ", wets what the same truck lays, and rows have one"
                        + " counter of a liquid");
            }
        }
        try {
            RecordedTimeline recorded = recorded(records);
            contradictions.addAll(recorded.contradictions());
            Timeline timeline = corrected(recorded, records);
            if (!timeline.isOfLiquids() || timeline.slots().size() > 1) {
                throw newest.refused("its values aren't of one liquid: " + String.join(", ", timeline.slots()));
            }
            if (TruckPlan.isOfTwoPasses(timeline)) {
                throw newest.refused("an error of a liquid that grew with turns or amount isn't corrected here: run it"
                        + " with AS_LEFT and AS_FOUND, which are the bounds");
            }
            return new TruckSetup.Liquid(
                    RowEvaluator.compile(timeline, pump(newest), from, until), statedGallonsPerTon(newest));
        } catch (InvalidInputException e) {
            throw newest.refused(e.getMessage());
        }
    }

    private Counter pump(Read read) {
        CalibrationInForce value = read.assessment().inForceAfter().get(0);
        double cubicMeters =
                value.kilogramsPerRevolution() / value.point().material().kilogramsPerAmount();
        return Counter.ofFlow(
                        Amounts.ofSi(pulsesPerTurn(read) / cubicMeters, SpreadingUnits.PULSE_PER_US_GALLON),
                        options.mostLiquid())
                .withGapsUpTo(options.longestGap())
                .rollingOverAt(options.liquidRollsOverAt());
    }

    /** Only where all its routes ask for the same it is known. */
    private static double statedGallonsPerTon(Read read) {
        List<Optional<Quantity<PrewetRate>>> stated = read.record().entered().routes().stream()
                .map(route -> route.target().prewetRate())
                .distinct()
                .toList();
        return stated.size() == 1 && stated.get(0).isPresent()
                ? Amounts.in(stated.get(0).get(), SpreadingUnits.US_GALLON_PER_SHORT_TON)
                : Double.NaN;
    }

    private RecordedTimeline recorded(List<Read> records) throws BadInputException {
        for (Read read : records) {
            if (read.assessment().inForceAfter().isEmpty()) {
                throw read.refused("it holds no calibration in force");
            }
        }
        return RecordedTimeline.of(records.stream().map(Read::record).toList(), types, options.offset());
    }

    /** What its display held when; what verifications found is corrected back as the caller says that it came about. */
    private Timeline corrected(RecordedTimeline recorded, List<Read> records) {
        NavigableMap<LocalDate, List<DischargeCurve>> curves = new TreeMap<>();
        records.forEach(read -> curves.put(read.day(), read.assessment().curves()));
        Timeline timeline = new CurvesInForce(curves, options.offset()).in(recorded.timeline());
        for (AsFound found : recorded.found()) {
            timeline = timeline.correctedBackBy(found, options.foundErrors().onset(found));
        }
        return timeline;
    }

    private Counter shaft(Read read) {
        return Counter.ofShaft(
                        Amounts.of(pulsesPerTurn(read), SpreadingUnits.PULSE_PER_REVOLUTION), options.fastestShaft())
                .withGapsUpTo(options.longestGap())
                .rollingOverAt(options.shaftRollsOverAt());
    }

    private static double pulsesPerTurn(Read read) {
        return read.assessment()
                .inForceAfter()
                .get(0)
                .point()
                .metering()
                .feedback()
                .pulsesPerTurn()
                .orElseThrow(() -> new InvalidInputException(
                        "drive of " + read.truck(), "one with a sensor whose pulses rows count", "none"));
    }

    private Counter road(Quantity<PulsesPerDistance> perDistance) {
        return Counter.ofDistance(perDistance, options.fastestTruck())
                .withGapsUpTo(options.longestGap())
                .rollingOverAt(options.roadRollsOverAt());
    }

    /** What the newest check of the road speed measured, whatever the display held. */
    private static Quantity<PulsesPerDistance> perDistance(List<Read> records) throws BadInputException {
        Quantity<PulsesPerDistance> newest = null;
        for (Read read : records) {
            var check = read.assessment().roadSpeed();
            if (check.isPresent() && check.get().doubt().isEmpty()) {
                newest = check.get().measured().value();
            }
        }
        if (newest == null) {
            throw records.get(records.size() - 1)
                    .refused("no run over a measured course says how many pulses a mile has");
        }
        return newest;
    }

    /** Only where all its routes ask for the same, and of the same number of lanes, it is known what a piece should have got. */
    private Target target(Read read) {
        List<RouteEntry> routes = read.record().entered().routes();
        List<Target> targets = routes.stream().map(this::target).distinct().toList();
        return targets.size() == 1 ? targets.get(0) : new Target(Double.NaN, 1, options.band());
    }

    private Target target(RouteEntry route) {
        double rate =
                Amounts.in(route.target().perDistance().asType(ApplicationRate.class), SpreadingUnits.POUND_PER_MILE);
        double lanes = route.target()
                .lanes()
                .map(given -> Amounts.in(given, SpreadingUnits.LANE))
                .orElse(1.0);
        return new Target(rate, lanes, options.band());
    }
}
