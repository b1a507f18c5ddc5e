package org.gritwright.examples.telemetry;

import java.io.IOException;
import java.util.Map;
import org.apache.spark.api.java.JavaRDD;
import org.apache.spark.api.java.JavaSparkContext;
import org.apache.spark.sql.Dataset;
import org.apache.spark.sql.Row;
import org.apache.spark.sql.SparkSession;
import org.apache.spark.sql.catalyst.InternalRow;

/**
 * Parquet to what each truck's rows come to, in one pass and without a shuffle: a file is one task. So a truck's rows have to lie in one
 * file, one after the other in the order of time; that is checked and never mended. Rows that are out of order get their
 * status, and trucks in two places are refused.
 */
final class SeasonRows {
    private final SparkSession spark;

    /** @param spark gets settings of its own, so give it a session of its own */
    SeasonRows(SparkSession spark) {
        this.spark = spark;
    }

    /** @param setups what evaluates the rows of each truck; whoever isn't there is told as unknown */
    <R> JavaRDD<FilePass.Result<R>> evaluate(SeasonInput input, Map<String, TruckSetup> setups, RowPass.Maker<R> maker)
            throws IOException, BadInputException {
        JavaRDD<InternalRow> rows = read(input);
        JavaSparkContext context = JavaSparkContext.fromSparkContext(spark.sparkContext());
        return rows.mapPartitions(new FilePass<>(context.broadcast(setups), maker));
    }

    /** The rows, file by file: as they are in the engine's own memory, without an object a row. */
    private JavaRDD<InternalRow> read(SeasonInput input) throws IOException, BadInputException {
        keepFilesWhole(spark, input.longestFile());
        // Of all files: the engine would look at one alone, and miss a column that another has.
        Dataset<Row> table = spark.read().option("mergeSchema", true).parquet(input.paths());
        RowTable.check(input.folder().toString(), table.schema());
        JavaRDD<InternalRow> rows = engineRows(RowTable.columns(table));
        if (rows.getNumPartitions() != input.files().size()) {
            throw new IOException("the engine reads " + input.files().size() + " files in " + rows.getNumPartitions()
                    + " tasks, so that a truck's rows may be cut in two");
        }
        return rows;
    }

    /** No file is cut, and none is put together with another. */
    static void keepFilesWhole(SparkSession spark, long longestFile) {
        spark.conf().set("spark.sql.files.maxPartitionBytes", longestFile);
        spark.conf().set("spark.sql.files.openCostInBytes", longestFile);
    }

    static JavaRDD<InternalRow> engineRows(Dataset<Row> table) {
        return ((org.apache.spark.sql.classic.Dataset<Row>) table)
                .queryExecution()
                .toRdd()
                .toJavaRDD();
    }
}
