package org.gritwright.examples.telemetry;

import java.io.IOException;
import java.io.Serializable;
import java.time.Instant;
import java.util.Iterator;
import java.util.List;
import java.util.Spliterator;
import java.util.Spliterators;
import java.util.stream.StreamSupport;
import org.apache.spark.api.java.JavaRDD;
import org.apache.spark.api.java.JavaSparkContext;
import org.apache.spark.sql.Row;
import org.apache.spark.sql.RowFactory;
import org.apache.spark.sql.SparkSession;
import org.gritwright.core.spi.TypeRegistry;

/**
 * Writes an invented season: {@code rows.parquet}, with the rows of each truck in one file in the order in which they came, and
 * {@code records}.
 *
 * @param trips of each truck: in each of six storms one, and then once more
 * @param hours of spreading in each trip
 */
record InventedFiles(int trips, int hours, long seed) implements Serializable {
    private static final long serialVersionUID = 1L;

    static final String ROWS = "rows.parquet";
    static final String RECORDS = "records";

    /** Writes it with a file a truck, and finishes the folder. */
    void write(SparkSession spark, TypeRegistry types, NewFolder output) throws IOException {
        List<InventedTruck> trucks = InventedFleet.trucks();
        writeRows(spark, trucks, trucks.size(), output.unfinished().child(ROWS));
        InventedFleet.writeRecords(output.unfinished().inside(RECORDS), types);
        output.finish();
    }

    /** @param files into how many files: whole trucks in each */
    void writeRows(SparkSession spark, List<InventedTruck> trucks, int files, String path) {
        JavaRDD<Row> rows = JavaSparkContext.fromSparkContext(spark.sparkContext())
                .parallelize(trucks, files)
                .flatMap(this::rows);
        spark.createDataFrame(rows, RowTable.ALL).write().parquet(path);
    }

    /** Trip by trip, so that a long season needs no more memory than a short one. */
    private Iterator<Row> rows(InventedTruck truck) {
        InventedTrips season = InventedFleet.season(truck, trips, hours, seed);
        return StreamSupport.stream(Spliterators.spliteratorUnknownSize(season, Spliterator.ORDERED), false)
                .flatMap(trip -> trip.stream().map(row -> row(truck.id(), row)))
                .iterator();
    }

    static Row row(String truck, InventedRow row) {
        return RowFactory.create(
                truck,
                Instant.ofEpochMilli(row.millis()),
                row.shaftPulses(),
                row.roadPulses(),
                Double.isNaN(row.gateInches()) ? null : row.gateInches(),
                row.slot(),
                row.mode(),
                row.roadId(),
                row.liquidPulses());
    }
}
