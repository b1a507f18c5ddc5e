package org.gritwright.examples.telemetry;

import java.io.IOException;
import java.io.OutputStreamWriter;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.util.Comparator;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import javax.measure.Quantity;
import javax.measure.quantity.Length;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;
import org.apache.spark.api.java.JavaRDD;
import org.apache.spark.api.java.function.FlatMapFunction;
import org.apache.spark.sql.Row;
import org.apache.spark.sql.SparkSession;
import org.apache.spark.sql.types.StructType;
import org.apache.spark.storage.StorageLevel;
import org.gritwright.core.telemetry.PieceAxis;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import scala.Tuple2;

/** The job: rows and records in, tables, a summary and pictures out. */
final class SeasonJob {
    static final String HOURS = "hours.parquet";
    static final String PIECES = "pieces.parquet";
    static final String ROADS = "roads.parquet";
    static final String BAD_ROWS = "bad-rows.parquet";
    static final String SUMMARY = "summary.parquet";
    static final String SUMMARY_CSV = "summary.csv";
    static final String TRIP = "trip.svg";
    static final String FLEET = "fleet.svg";
    static final String ROADS_CHART = "roads.svg";

    private final SparkSession spark;
    private final SeasonOptions options;

    SeasonJob(SparkSession spark, SeasonOptions options) {
        this.spark = spark;
        this.options = options;
    }

    /**
     * Runs the job.
     *
     * @param output the new folder that everything goes into; it is finished here
     * @param pictured the truck whose longest trip is drawn; none for the one that was least within its band
     * @return what it came to
     */
    Summary run(SeasonInput input, NewFolder output, Optional<String> pictured) throws IOException, BadInputException {
        input.checkPictured(pictured);
        SeasonRows rows = new SeasonRows(spark);
        Map<String, TruckTotals> counted = firstPass(rows, input);
        Map<String, TruckSetup> setups = input.setups();
        counted.forEach((truck, totals) -> setups.put(
                truck, Objects.requireNonNull(input.plans().get(truck), "plan").secondPass(totals.sums())));
        JavaRDD<FilePass.Result<TruckSeason>> files =
                rows.evaluate(input, setups, pass()).persist(StorageLevel.MEMORY_AND_DISK());
        Map<String, TruckTotals> trucks =
                FileTotals.byTruck(files.map(FileTotals::of).collect());
        List<Corrected> corrected = Corrected.of(input.plans(), counted, trucks);
        Summary summary = Summary.of(trucks, setups, roads(files), corrected);
        write(files, summary, output.unfinished());
        pictures(files, summary, setups, pictured, output.unfinished());
        files.unpersist(true);
        output.finish();
        return summary;
    }

    /** Counts how much errors grew with, of the trucks of which that has to be known; with nothing if there is none. */
    private Map<String, TruckTotals> firstPass(SeasonRows rows, SeasonInput input)
            throws IOException, BadInputException {
        Map<String, TruckSetup> setups = input.setupsOfTwoPasses();
        return setups.isEmpty()
                ? Map.of()
                : FileTotals.ofKnown(
                        rows.evaluate(input, setups, pass()).map(FileTotals::of).collect());
    }

    private RowPass.Maker<TruckSeason> pass() {
        PieceAxis axis = PieceAxis.everyLength(options.piece());
        return (setup, buffers) -> new TruckPass(setup, axis, buffers);
    }

    /** Trucks that were on one road are added up by the engine, in whatever order. */
    private static SortedMap<String, RoadTotals> roads(JavaRDD<FilePass.Result<TruckSeason>> files) {
        return new TreeMap<>(files.flatMap(file -> file.trucks().iterator())
                .flatMapToPair(season -> season.roads().entrySet().stream()
                        .map(road -> new Tuple2<>(road.getKey(), road.getValue()))
                        .iterator())
                .reduceByKey(RoadTotals::plus)
                .collectAsMap());
    }

    private void write(JavaRDD<FilePass.Result<TruckSeason>> files, Summary summary, Folder out) throws IOException {
        JavaRDD<TruckSeason> seasons = files.flatMap(file -> file.trucks().iterator());
        Quantity<Length> piece = options.piece();
        table(seasons, Tables::hours, Tables.HOURS, out.child(HOURS));
        table(seasons, season -> Tables.pieces(season, piece), Tables.PIECES, out.child(PIECES));
        table(seasons, Tables::badRows, Tables.BAD_ROWS, out.child(BAD_ROWS));
        List<Row> roads = Tables.roads(summary.roads());
        spark.createDataFrame(roads, Tables.ROADS).coalesce(1).write().parquet(out.child(ROADS));
        List<Row> lines = summary.lines().stream().map(Summary.Line::row).toList();
        spark.createDataFrame(lines, Summary.SCHEMA).coalesce(1).write().parquet(out.child(SUMMARY));
        try (Writer writer = writer(out, SUMMARY_CSV);
                CSVPrinter csv = new CSVPrinter(writer, CSVFormat.RFC4180)) {
            csv.printRecord((Object[]) Summary.SCHEMA.fieldNames());
            for (Row line : lines) {
                for (int i = 0; i < line.length(); i++) {
                    csv.print(line.get(i));
                }
                csv.println();
            }
        }
    }

    private void table(
            JavaRDD<TruckSeason> seasons, FlatMapFunction<TruckSeason, Row> rows, StructType schema, String path) {
        spark.createDataFrame(seasons.flatMap(rows), schema).write().parquet(path);
    }

    private static Writer writer(Folder out, String name) throws IOException {
        return new OutputStreamWriter(out.create(name), StandardCharsets.UTF_8);
    }

    private void pictures(
            JavaRDD<FilePass.Result<TruckSeason>> files,
            Summary summary,
            Map<String, TruckSetup> setups,
            Optional<String> pictured,
            Folder out)
            throws IOException {
        try (Writer writer = writer(out, FLEET)) {
            SharesChart.ofFleet(summary).drawing().writeTo(writer);
        }
        try (Writer writer = writer(out, ROADS_CHART)) {
            SharesChart.ofRoads(summary.roads()).drawing().writeTo(writer);
        }
        String truck = pictured.orElseGet(() -> leastWithin(summary));
        List<Trip> longest = files.flatMap(file -> longestTrip(file, truck)).collect();
        if (!longest.isEmpty()) {
            try (Writer writer = writer(out, TRIP)) {
                new TripChart(
                                truck,
                                Objects.requireNonNull(setups.get(truck), "setup")
                                        .target(),
                                longest.get(0),
                                Amounts.in(options.piece(), SpreadingUnits.MILE),
                                options.offset())
                        .drawing()
                        .writeTo(writer);
            }
        }
    }

    private static Iterator<Trip> longestTrip(FilePass.Result<TruckSeason> file, String truck) {
        return file.trucks().stream()
                .filter(season -> season.truck().equals(truck))
                .flatMap(season -> season.trips().stream())
                .filter(trip -> !trip.all().pieces().isEmpty())
                .max(Comparator.comparingInt(trip -> trip.all().pieces().size()))
                .stream()
                .iterator();
    }

    private static String leastWithin(Summary summary) {
        return summary.trucks().stream()
                .min(Comparator.comparingDouble(
                        line -> line.percent(line.shares().within()).orElse(Double.POSITIVE_INFINITY)))
                .orElseThrow()
                .name();
    }
}
