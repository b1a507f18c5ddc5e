package org.gritwright.examples.telemetry;

import java.io.PrintStream;
import java.lang.management.ManagementFactory;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Iterator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Spliterator;
import java.util.Spliterators;
import java.util.TreeMap;
import java.util.stream.StreamSupport;
import javax.measure.quantity.Length;
import javax.measure.quantity.Speed;
import javax.measure.quantity.Time;
import org.apache.spark.api.java.JavaSparkContext;
import org.apache.spark.broadcast.Broadcast;
import org.apache.spark.sql.Dataset;
import org.apache.spark.sql.Row;
import org.apache.spark.sql.RowFactory;
import org.apache.spark.sql.SparkSession;
import org.apache.spark.sql.types.DataTypes;
import org.apache.spark.sql.types.StructType;
import org.gritwright.core.judgement.Tolerance;
import org.gritwright.units.Amounts;
import org.gritwright.units.quantity.FlowRate;
import org.gritwright.units.quantity.PulseCount;
import org.gritwright.units.quantity.RotationalSpeed;

/**
 * What evaluating costs beside the plain sum of pulses × a constant that the same engine reckons in SQL from the same columns: the
 * processor's time of the whole process, on one core, grouped by truck and hour. The three take turns, and the median of each counts.
 *
 * <p>Arguments: a folder for the rows, made if it isn't there; how many million rows; how many rounds.
 */
public final class CostMeasurement {
    /** A row a second, and what a trip has beside its spreading. */
    private static final int ROWS_OF_A_TRIP = 9 * 3600 + 1650;

    private static final int HOURS = 9;
    private static final double NANOS = 1e9;
    private static final double MILLIGRAMS = 1e6;

    private static final long ROLLS_OVER_AT = 65_536;
    private static final String COUNTS = "pulses";

    /** More in a second is a restart, or a row that came late. */
    private static final long MOST_PULSES = 200;

    private static final StructType SCHEMA = RowTable.ALL.add(COUNTS, DataTypes.LongType, false);

    private final SparkSession spark;
    private final SeasonInput input;

    private CostMeasurement(SparkSession spark, SeasonInput input) {
        this.spark = spark;
        this.input = input;
    }

    /** What is done with the rows; it gives back what was laid, in kilograms. */
    private interface Way {
        double kilograms();
    }

    /**
     * Measures, and prints a line a way.
     *
     * @param arguments a folder, million rows, rounds
     * @throws Exception if rows can't be written or read
     */
    public static void main(String[] arguments) throws Exception {
        PrintStream out = new PrintStream(System.out, true, StandardCharsets.UTF_8);
        Path folder = Path.of(arguments[0]);
        double millions = Double.parseDouble(arguments[1]);
        int rounds = Integer.parseInt(arguments[2]);
        try (SparkSession spark = Engine.session("1")) {
            if (!Files.exists(folder)) {
                write(spark, folder, millions);
            }
            CostMeasurement checked =
                    new CostMeasurement(spark, input(folder, options("300 s", "80 rev/min", "65536 pulse")));
            // What was counted is taken as it is: no gap is too long, no row has too much, nothing rolls over.
            CostMeasurement ready =
                    new CostMeasurement(spark, input(folder, options("10000 h", "100000 rev/min", "4294967296 pulse")));
            SeasonRows.keepFilesWhole(spark, checked.input.longestFile());
            out.printf(
                    Locale.ROOT,
                    "%,d rows, one core, %d rounds%n",
                    checked.table().count(),
                    rounds);
            Map<String, Way> ways = new TreeMap<>();
            ways.put("1 sum(pulses x constant) in SQL", checked::plainSum);
            ways.put("2 as-of evaluation of ready counts", () -> ready.evaluated(COUNTS, true));
            ways.put("3 counters unwrapped and checked", () -> checked.evaluated("shaft_pulse", false));
            measure(ways, rounds, out);
        }
    }

    private static SeasonOptions options(String longestGap, String fastestShaft, String rollsOverAt) {
        return new SeasonOptions(
                ZoneOffset.ofHours(-6),
                Amounts.parse(RotationalSpeed.class, fastestShaft),
                Amounts.parse(Speed.class, "80 mi/h"),
                Amounts.parse(Time.class, longestGap),
                Amounts.parse(PulseCount.class, rollsOverAt),
                Amounts.parse(PulseCount.class, "16777216 pulse"),
                Amounts.parse(FlowRate.class, "20 gal/min"),
                Amounts.parse(PulseCount.class, "65536 pulse"),
                Amounts.parse(Length.class, "0.1 mi"),
                Tolerance.percent(10),
                FoundErrors.AS_FOUND);
    }

    private static SeasonInput input(Path folder, SeasonOptions options) throws Exception {
        return SeasonInput.of(
                folder.resolve(InventedFiles.ROWS).toString(),
                folder.resolve(InventedFiles.RECORDS).toString(),
                SeasonCommand.types(),
                options,
                Engine.configuration());
    }

    private static void write(SparkSession spark, Path folder, double millions) throws Exception {
        List<InventedTruck> trucks = InventedFleet.trucks();
        int trips = (int) Math.ceil(millions * 1e6 / trucks.size() / ROWS_OF_A_TRIP);
        try (NewFolder made = NewFolder.of(folder.toString(), Engine.configuration())) {
            var rows = JavaSparkContext.fromSparkContext(spark.sparkContext())
                    .parallelize(trucks, trucks.size())
                    .flatMap(truck -> rows(truck, trips));
            spark.createDataFrame(rows, SCHEMA)
                    .write()
                    .parquet(made.unfinished().child(InventedFiles.ROWS));
            InventedFleet.writeRecords(made.unfinished().inside(InventedFiles.RECORDS), SeasonCommand.types());
            made.finish();
        }
    }

    private static Iterator<Row> rows(InventedTruck truck, int trips) {
        InventedTrips season = InventedFleet.season(truck, trips, HOURS, 1);
        long[] last = {0};
        return StreamSupport.stream(Spliterators.spliteratorUnknownSize(season, Spliterator.ORDERED), false)
                .flatMap(trip -> trip.stream().map(row -> {
                    long counted = Math.floorMod(row.shaftPulses() - last[0], ROLLS_OVER_AT);
                    last[0] = row.shaftPulses();
                    Row plain = InventedFiles.row(truck.id(), row);
                    Object[] cells = new Object[SCHEMA.size()];
                    for (int i = 0; i < plain.length(); i++) {
                        cells[i] = plain.get(i);
                    }
                    cells[plain.length()] = counted > MOST_PULSES ? 0 : counted;
                    return RowFactory.create(cells);
                }))
                .iterator();
    }

    private Dataset<Row> table() {
        return spark.read().parquet(input.paths());
    }

    private static void measure(Map<String, Way> ways, int rounds, PrintStream out) {
        Map<String, List<Double>> seconds = new TreeMap<>();
        Map<String, Double> kilograms = new TreeMap<>();
        // The first round isn't counted: compilers.
        for (int round = 0; round <= rounds; round++) {
            for (Map.Entry<String, Way> way : ways.entrySet()) {
                System.gc();
                long before = processorNanos();
                kilograms.put(way.getKey(), way.getValue().kilograms());
                double taken = (processorNanos() - before) / NANOS;
                if (round > 0) {
                    seconds.computeIfAbsent(way.getKey(), none -> new ArrayList<>())
                            .add(taken);
                }
            }
        }
        double baseline = 0;
        for (Map.Entry<String, List<Double>> way : seconds.entrySet()) {
            List<Double> sorted = new ArrayList<>(way.getValue());
            Collections.sort(sorted);
            double median = sorted.get(sorted.size() / 2);
            baseline = baseline == 0 ? median : baseline;
            out.printf(
                    Locale.ROOT,
                    "%-36s %6.2f s of CPU, %.2f x (%.2f to %.2f s; %,.0f kg)%n",
                    way.getKey().substring(2),
                    median,
                    median / baseline,
                    sorted.get(0),
                    sorted.get(sorted.size() - 1),
                    kilograms.get(way.getKey()));
        }
    }

    private static long processorNanos() {
        return ((com.sun.management.OperatingSystemMXBean) ManagementFactory.getOperatingSystemMXBean())
                .getProcessCpuTime();
    }

    /** Reads the columns that evaluating needs, and has no other use for some of them. */
    private double plainSum() {
        table().createOrReplaceTempView("rows");
        return spark.sql("""
                        select truck, unix_micros(time) div 3600000000 as hour, sum(pulses * 0.0442d) as kilograms
                        from rows where slot <> '' and mode >= 0 and coalesce(gate_in, 0.0d) >= 0
                        group by truck, hour
                        """).collectAsList().stream()
                .mapToDouble(row -> row.getDouble(2))
                .sum();
    }

    private double evaluated(String counts, boolean areReady) {
        Broadcast<Map<String, TruckSetup>> setups =
                JavaSparkContext.fromSparkContext(spark.sparkContext()).broadcast(input.setups());
        return SeasonRows.engineRows(table().select("truck", "time", counts, "gate_in", "slot", "mode"))
                        .mapPartitions(part -> new HourPass(setups.value(), areReady)
                                .over(part)
                                .iterator())
                        .collect()
                        .stream()
                        .mapToLong(HourPass.Hour::milligrams)
                        .sum()
                / MILLIGRAMS;
    }
}
