package org.gritwright.examples.telemetry;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.stream.IntStream;
import org.gritwright.core.document.RejectedDocumentException;
import org.gritwright.core.fleet.assessment.FleetAssessor;
import org.gritwright.core.fleet.assessment.TruckAssessment;
import org.gritwright.core.fleet.day.FleetDay;
import org.gritwright.core.record.CalibrationRecord;
import org.gritwright.core.record.Document;
import org.gritwright.core.spi.TypeRegistry;

/**
 * Six invented trucks of an invented state: their calibration days, of which records are made, and what truly falls from each. The
 * fifth has a floor whose type is a plug-in's; the second got a new chain on 12 January and was calibrated again.
 */
final class InventedFleet {
    private static final List<String> DAYS = List.of("october.json", "january.json");
    private static final Instant OCTOBER = Instant.parse("2026-10-19T15:30:00Z");
    private static final Instant NEW_CHAIN = Instant.parse("2027-01-12T12:00:00Z");
    private static final Instant JANUARY = Instant.parse("2027-01-12T16:30:00Z");
    private static final long SECONDS_PER_HOUR = 3600;
    private static final long SECONDS_BETWEEN_TRIPS = 12 * SECONDS_PER_HOUR;

    /** Six storms; each truck's first trip of one begins a few minutes after another's. */
    private static final List<Instant> STORMS = List.of(
            Instant.parse("2026-11-24T05:00:00Z"),
            Instant.parse("2026-12-09T22:30:00Z"),
            Instant.parse("2026-12-27T10:00:00Z"),
            Instant.parse("2027-01-18T03:15:00Z"),
            Instant.parse("2027-02-06T12:00:00Z"),
            Instant.parse("2027-03-03T08:45:00Z"));

    private static final InventedTruck.Habits GOOD = new InventedTruck.Habits(false, false, false, false, false);

    private InventedFleet() {}

    static List<InventedTruck> trucks() {
        return List.of(
                truck("K-01", 2.5, "1", 90, 13_204, 60, 300, 6.62, 6.62, GOOD),
                new InventedTruck(
                        "K-02",
                        2,
                        "1",
                        120,
                        13_188,
                        60,
                        250,
                        List.of(
                                new InventedTruck.Span(OCTOBER, 5.22, 5.22),
                                new InventedTruck.Span(NEW_CHAIN, 5.22, 5.05),
                                new InventedTruck.Span(JANUARY, 5.05, 5.05)),
                        new InventedTruck.Habits(false, false, true, false, false)),
                truck(
                        "K-03",
                        Double.NaN,
                        "2",
                        60,
                        8_020,
                        60,
                        250,
                        5.85,
                        5.84,
                        new InventedTruck.Habits(true, true, false, false, false)),
                truck(
                        "K-04",
                        2.5,
                        "2",
                        60,
                        13_230,
                        60,
                        300,
                        31.2,
                        31.2,
                        new InventedTruck.Habits(false, false, false, false, true)),
                truck(
                        "K-05",
                        3,
                        "1",
                        60,
                        13_195,
                        60,
                        300,
                        5.09,
                        5.09,
                        new InventedTruck.Habits(false, false, false, true, false)),
                // Its pump is worn: at speed it can't turn the shaft as fast as is asked.
                truck("K-06", Double.NaN, "1", 60, 13_212, 18.5, 250, 6.17, 6.17, GOOD));
    }

    private static InventedTruck truck(
            String id,
            double gateInches,
            String slot,
            double pulsesPerRevolution,
            double pulsesPerMile,
            double fastestShaft,
            double poundsPerMile,
            double held,
            double fallen,
            InventedTruck.Habits habits) {
        return new InventedTruck(
                id,
                gateInches,
                slot,
                pulsesPerRevolution,
                pulsesPerMile,
                fastestShaft,
                poundsPerMile,
                List.of(new InventedTruck.Span(OCTOBER, held, fallen)),
                habits);
    }

    /**
     * The season of a truck.
     *
     * @param trips in each of the storms one, and then once more, 12 hours later
     * @param hours how long it spreads in each trip
     */
    static InventedTrips season(InventedTruck truck, int trips, int hours, long seed) {
        int number = Math.floorMod(truck.id().hashCode(), 60);
        List<Instant> starts = IntStream.range(0, trips)
                .mapToObj(trip -> start(trip).plusSeconds(60L * number))
                .sorted()
                .toList();
        return new InventedTrips(truck, starts, (int) (hours * SECONDS_PER_HOUR), seed + number);
    }

    private static Instant start(int trip) {
        long later = SECONDS_BETWEEN_TRIPS * (trip / STORMS.size());
        return STORMS.get(trip % STORMS.size()).plusSeconds(later);
    }

    /** The fleet's calibration days as they were written down. */
    static List<FleetDay> days() throws IOException {
        List<FleetDay> days = new ArrayList<>();
        for (String file : DAYS) {
            try (InputStream in = Objects.requireNonNull(InventedFleet.class.getResourceAsStream(file), file)) {
                days.add(Document.FLEET_DAY.read(in));
            } catch (RejectedDocumentException e) {
                throw new IOException(file + ": " + e.getMessage(), e);
            }
        }
        return days;
    }

    /** Writes a record a truck and day. */
    static void writeRecords(Folder folder, TypeRegistry types) throws IOException {
        for (FleetDay day : days()) {
            for (TruckAssessment truck : FleetAssessor.of(types).assess(day)) {
                try (OutputStream out = folder.create(truck.truck().id() + "-" + day.day() + ".json")) {
                    Document.CALIBRATION_RECORD.write(CalibrationRecord.of(day, truck), out);
                }
            }
        }
    }
}
