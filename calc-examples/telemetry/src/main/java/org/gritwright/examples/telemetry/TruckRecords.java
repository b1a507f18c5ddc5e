package org.gritwright.examples.telemetry;

import java.io.IOException;
import java.io.InputStream;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import javax.measure.Quantity;
import org.apache.hadoop.fs.FileStatus;
import org.gritwright.core.document.RejectedDocumentException;
import org.gritwright.core.fleet.assessment.FleetAssessor;
import org.gritwright.core.fleet.assessment.TruckAssessment;
import org.gritwright.core.fleet.day.RouteEntry;
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

        LocalDate day() {
            return record.entered().day();
        }

        BadInputException refused(String why) {
            return new BadInputException("record " + file + " of " + truck() + " can't be used: " + why);
        }
    }

    /** What evaluates the rows of each truck, by its id. */
    Map<String, TruckSetup> read(Folder folder) throws IOException, BadInputException {
        List<FileStatus> files = folder.filesEndingIn(".json");
        if (files.isEmpty()) {
            throw new BadInputException("can't read calibration records: " + folder + " holds no .json file");
        }
        Map<String, List<Read>> byTruck = new TreeMap<>();
        for (FileStatus file : files) {
            Read read = read(folder, file);
            byTruck.computeIfAbsent(read.truck(), none -> new ArrayList<>()).add(read);
        }
        Map<String, TruckSetup> setups = new TreeMap<>();
        for (List<Read> records : byTruck.values()) {
            records.sort(Comparator.comparing(Read::day));
            TruckSetup setup = setup(records);
            setups.put(setup.truck(), setup);
        }
        return setups;
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

    private TruckSetup setup(List<Read> records) throws BadInputException {
        Read newest = records.get(records.size() - 1);
        try {
            Timeline timeline = timeline(records);
            if (timeline.isOfLiquids()) {
                throw newest.refused("it meters a liquid, and this example knows grains alone");
            }
            Instant from = timeline.start();
            Instant until = from.plusSeconds(DAYS * 86_400L);
            Quantity<PulsesPerDistance> perDistance = perDistance(records);
            return new TruckSetup(
                    newest.truck(),
                    RowEvaluator.compile(timeline, shaft(newest), from, until),
                    Travel.counted(road(perDistance), perDistance, from, until),
                    target(newest));
        } catch (InvalidInputException e) {
            throw newest.refused(e.getMessage());
        }
    }

    /** What its display held when; what verifications found is corrected back as the caller says that it came about. */
    private Timeline timeline(List<Read> records) throws BadInputException {
        for (Read read : records) {
            if (read.assessment().inForceAfter().isEmpty()) {
                throw read.refused("it holds no calibration in force");
            }
        }
        RecordedTimeline recorded =
                RecordedTimeline.of(records.stream().map(Read::record).toList(), types, options.offset());
        Timeline timeline = recorded.timeline();
        for (AsFound found : recorded.found()) {
            timeline = timeline.correctedBackBy(found, options.foundErrors().onset(found));
        }
        return timeline;
    }

    private Counter shaft(Read read) {
        double pulses = read.assessment()
                .inForceAfter()
                .get(0)
                .point()
                .metering()
                .feedback()
                .pulsesPerTurn()
                .orElseThrow(() -> new InvalidInputException(
                        "drive of " + read.truck(), "one with a sensor whose pulses rows count", "none"));
        return Counter.ofShaft(Amounts.of(pulses, SpreadingUnits.PULSE_PER_REVOLUTION), options.fastestShaft())
                .withGapsUpTo(options.longestGap())
                .rollingOverAt(options.shaftRollsOverAt());
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
