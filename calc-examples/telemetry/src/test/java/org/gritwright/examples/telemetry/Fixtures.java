package org.gritwright.examples.telemetry;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.ZoneOffset;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.apache.hadoop.conf.Configuration;
import org.apache.spark.sql.Row;
import org.apache.spark.sql.SparkSession;
import org.gritwright.core.judgement.Tolerance;
import org.gritwright.core.telemetry.PieceAxis;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;

/** What several tests need. */
final class Fixtures {
    static final SeasonOptions OPTIONS = new SeasonOptions(
            ZoneOffset.ofHours(-6),
            Amounts.of(80, SpreadingUnits.REVOLUTION_PER_MINUTE),
            Amounts.of(80, SpreadingUnits.MILE_PER_HOUR),
            Amounts.of(5, SpreadingUnits.MINUTE),
            Amounts.of(65_536, SpreadingUnits.PULSE),
            Amounts.of(16_777_216, SpreadingUnits.PULSE),
            Amounts.of(20, SpreadingUnits.US_GALLON_PER_MINUTE),
            Amounts.of(65_536, SpreadingUnits.PULSE),
            Amounts.of(0.1, SpreadingUnits.MILE),
            Tolerance.percent(10),
            FoundErrors.WITH_TURNS);

    /** Two hours of spreading: every habit shows. */
    static final InventedFiles INVENTED = new InventedFiles(4, 2, 1);

    private Fixtures() {}

    static Path records(Path folder) throws IOException {
        Path records = folder.resolve("records");
        InventedFleet.writeRecords(Folder.of(records.toString(), new Configuration()), SeasonCommand.types());
        return records;
    }

    static Map<String, TruckPlan> plans(Path records) throws Exception {
        return new TruckRecords(SeasonCommand.types(), OPTIONS)
                .read(Folder.existing("records", records.toString(), new Configuration()));
    }

    /** What evaluates the invented rows in the last pass, after a first one where one is needed. */
    static Map<String, TruckSetup> setups(Path records) throws Exception {
        Map<String, TruckPlan> plans = plans(records);
        Map<String, TruckSetup> setups = new TreeMap<>();
        for (InventedTruck truck : InventedFleet.trucks()) {
            TruckPlan plan = plans.get(truck.id());
            setups.put(
                    truck.id(),
                    plan.isOfTwoPasses()
                            ? plan.secondPass(plain(plan.setup(), all(trips(truck)).stream())
                                    .totals()
                                    .sums())
                            : plan.setup());
        }
        return setups;
    }

    static InventedTruck truck(String id) {
        return InventedFleet.trucks().stream()
                .filter(truck -> truck.id().equals(id))
                .findFirst()
                .orElseThrow();
    }

    static Summary summary(Map<String, TruckSeason> seasons, Map<String, TruckSetup> setups) {
        Map<String, TruckTotals> totals = new TreeMap<>();
        seasons.forEach((id, season) -> totals.put(id, season.totals()));
        return Summary.of(totals, setups, roads(seasons.values()), List.of());
    }

    /** Roads of several trucks, added up one after the other. */
    static SortedMap<String, RoadTotals> roads(Collection<TruckSeason> seasons) {
        SortedMap<String, RoadTotals> roads = new TreeMap<>();
        seasons.forEach(season -> season.roads().forEach((name, road) -> roads.merge(name, road, RoadTotals::plus)));
        return roads;
    }

    /** A season in a plain loop, without the engine. */
    static TruckSeason plain(TruckSetup setup, Stream<InventedRow> rows) {
        TruckPass pass = new TruckPass(setup, PieceAxis.everyLength(OPTIONS.piece()), new Buffers());
        rows.forEach(row -> pass.add(
                row.millis(),
                row.shaftPulses(),
                row.roadPulses(),
                row.gateInches(),
                setup.slot(row.slot()),
                row.mode(),
                row.roadId() == null ? TruckPass.NO_ROAD : pass.road(row.roadId()),
                row.liquidPulses() == null ? BadRow.NO_READING : row.liquidPulses()));
        return pass.finish();
    }

    static InventedTrips trips(InventedTruck truck) {
        return InventedFleet.season(truck, INVENTED.trips(), INVENTED.hours(), INVENTED.seed());
    }

    static List<InventedRow> all(InventedTrips trips) {
        return Stream.iterate(trips, InventedTrips::hasNext, same -> same)
                .flatMap(one -> one.next().stream())
                .toList();
    }

    static Map<String, TruckSeason> plainFleet(Map<String, TruckSetup> setups) {
        Map<String, TruckSeason> seasons = new TreeMap<>();
        for (InventedTruck truck : InventedFleet.trucks()) {
            seasons.put(truck.id(), plain(setups.get(truck.id()), all(trips(truck)).stream()));
        }
        return seasons;
    }

    static SparkSession spark() {
        SparkSession spark = Engine.session("2");
        // As the tables' rows have their times.
        spark.conf().set("spark.sql.datetime.java8API.enabled", true);
        return spark;
    }

    /** A table as lines in the order of the alphabet: files and tasks have none. */
    static List<String> lines(SparkSession spark, Path table) {
        return spark.read().parquet(table.toString()).collectAsList().stream()
                .map(Row::toString)
                .sorted()
                .toList();
    }

    /** A run of the command line: its exit code and what it said. */
    record Run(int code, String out, String err) {
        static Run of(String... arguments) {
            StringWriter out = new StringWriter();
            StringWriter err = new StringWriter();
            int code = SeasonCommand.run(new PrintWriter(out, true), new PrintWriter(err, true), arguments);
            return new Run(code, out.toString(), err.toString());
        }
    }

    static List<String> names(Path folder) throws IOException {
        try (Stream<Path> files = Files.list(folder)) {
            return files.map(file -> file.getFileName().toString()).sorted().toList();
        }
    }
}
