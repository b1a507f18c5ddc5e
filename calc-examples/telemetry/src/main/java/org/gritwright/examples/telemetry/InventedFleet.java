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
 * Eight invented trucks of an invented state: their calibration days, of which records are made, and what truly falls from each. The
 * fifth has a floor whose type is a plug-in's; the second got a new chain on 12 January and was calibrated again. The seventh was calibrated
 * over gate openings, and its driver changes them. The eighth wore, until a verification found it on 12 January. The first and the third wet
 * their salt with brine; the third with too little.
 */
final class InventedFleet {
    private static final List<String> DAYS = List.of("october.json", "january.json");
    private static final Instant OCTOBER = Instant.parse("2026-10-19T15:30:00Z");
    private static final Instant NEW_CHAIN = Instant.parse("2027-01-12T12:00:00Z");
    private static final Instant JANUARY = Instant.parse("2027-01-12T16:30:00Z");
    private static final double WEAR = 0.08;
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

    /** When the eighth truck's corrected value was seen in its display. */
    private static final Instant CORRECTED = Instant.parse("2027-01-12T15:00:00Z");

    private static final InventedTruck.Habits GOOD = new InventedTruck.Habits(false, false, false, false, false);
    private static final InventedTruck.Work RIVER = new InventedTruck.Work(InventedRoads.RIVER, List.of(), 0, 0);
    private static final InventedTruck.Work COUNTY = new InventedTruck.Work(InventedRoads.COUNTY, List.of(), 0, 0);

    private InventedFleet() {}

    static List<InventedTruck> trucks() {
        return List.of(
                new InventedTruck(
                        "K-01",
                        2.5,
                        "1",
                        90,
                        13_204,
                        60,
                        300,
                        held(6.62, 6.62),
                        GOOD,
                        new InventedTruck.Work(InventedRoads.RIVER, List.of(), 0, 10)),
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
                        new InventedTruck.Habits(false, false, true, false, false),
                        COUNTY),
                new InventedTruck(
                        "K-03",
                        Double.NaN,
                        "2",
                        60,
                        8_020,
                        60,
                        250,
                        held(5.85, 5.84),
                        new InventedTruck.Habits(true, true, false, false, false),
                        new InventedTruck.Work(InventedRoads.COUNTY, List.of(), 0, 6.5)),
                new InventedTruck(
                        "K-04",
                        2.5,
                        "2",
                        60,
                        13_230,
                        60,
                        300,
                        held(31.2, 31.2),
                        new InventedTruck.Habits(false, false, false, false, true),
                        RIVER),
                new InventedTruck(
                        "K-05",
                        3,
                        "1",
                        60,
                        13_195,
                        60,
                        300,
                        held(5.09, 5.09),
                        new InventedTruck.Habits(false, false, false, true, false),
                        RIVER),
                // Its pump is worn: at speed it can't turn the shaft as fast as is asked.
                new InventedTruck("K-06", Double.NaN, "1", 60, 13_212, 18.5, 250, held(6.17, 6.17), GOOD, COUNTY),
                new InventedTruck(
                        "K-07",
                        3,
                        "road salt",
                        90,
                        13_210,
                        60,
                        300,
                        held(8.03, 8.008),
                        GOOD,
                        new InventedTruck.Work(InventedRoads.RIVER, List.of(2.0, 2.5, 3.0, 3.5), 0, 0)),
                new InventedTruck(
                        "K-08",
                        2.5,
                        "1",
                        90,
                        13_190,
                        60,
                        250,
                        List.of(
                                new InventedTruck.Span(OCTOBER, 5.6, 5.6),
                                new InventedTruck.Span(CORRECTED, 5.19, 5.6 / (1 + WEAR))),
                        GOOD,
                        new InventedTruck.Work(InventedRoads.COUNTY, List.of(), WEAR, 0)));
    }

    private static List<InventedTruck.Span> held(double held, double fallen) {
        return List.of(new InventedTruck.Span(OCTOBER, held, fallen));
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
        int seconds = (int) (hours * SECONDS_PER_HOUR);
        InventedTrips season = new InventedTrips(truck, starts, seconds, seed + number, Double.POSITIVE_INFINITY);
        if (truck.work().wear() == 0) {
            return season;
        }
        // How far it turned until the wear was found decides how fast it wore.
        season.forEachRemaining(trip -> {});
        return new InventedTrips(truck, starts, seconds, seed + number, season.revolutionsWearing());
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
