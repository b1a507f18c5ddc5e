package org.gritwright.examples.telemetry;

import java.io.IOException;
import java.util.List;
import java.util.Map;
import org.apache.hadoop.conf.Configuration;
import org.apache.hadoop.fs.FileStatus;
import org.apache.parquet.hadoop.ParquetFileReader;
import org.apache.parquet.hadoop.util.HadoopInputFile;
import org.apache.parquet.schema.MessageType;
import org.apache.spark.api.java.JavaRDD;
import org.apache.spark.api.java.JavaSparkContext;
import org.apache.spark.sql.Dataset;
import org.apache.spark.sql.Row;
import org.apache.spark.sql.SparkSession;
import org.apache.spark.sql.catalyst.InternalRow;
import org.apache.spark.sql.types.StructType;
import org.gritwright.core.telemetry.PieceAxis;

/**
 * Parquet to what each truck's rows come to, in one pass and without a shuffle: a file is one task. So a truck's rows have to lie in one
 * file, one after the other in the order of time; that is checked and never mended. Rows that are out of order get their
 * status, and trucks in two places are refused.
 */
final class SeasonRows {
    private final SparkSession spark;
    private final PieceAxis axis;

    /** @param spark gets settings of its own, so give it a session of its own */
    SeasonRows(SparkSession spark, PieceAxis axis) {
        this.spark = spark;
        this.axis = axis;
    }

    JavaRDD<FilePass.Result> evaluate(Folder folder, Map<String, TruckSetup> setups)
            throws IOException, BadInputException {
        JavaRDD<InternalRow> rows = read(folder);
        JavaSparkContext context = JavaSparkContext.fromSparkContext(spark.sparkContext());
        return rows.mapPartitions(new FilePass(context.broadcast(setups), axis));
    }

    /** The rows, file by file: as they are in the engine's own memory, without an object a row. */
    private JavaRDD<InternalRow> read(Folder folder) throws IOException, BadInputException {
        List<FileStatus> files = folder.parquetFiles();
        if (files.isEmpty()) {
            throw new BadInputException("can't read rows: " + folder + " holds no .parquet file");
        }
        long longest = 1;
        for (FileStatus file : files) {
            checkColumns(file, spark.sparkContext().hadoopConfiguration());
            longest = Math.max(longest, file.getLen());
        }
        // No file is cut, and none is put together with another.
        spark.conf().set("spark.sql.files.maxPartitionBytes", longest);
        spark.conf().set("spark.sql.files.openCostInBytes", longest);
        Dataset<Row> table = spark.read()
                .parquet(files.stream().map(file -> file.getPath().toString()).toArray(String[]::new));
        RowTable.check(folder.toString(), table.schema());
        JavaRDD<InternalRow> rows = engineRows(table.selectExpr(RowTable.SCHEMA.fieldNames()));
        if (rows.getNumPartitions() != files.size()) {
            throw new IOException("the engine reads " + files.size() + " files in " + rows.getNumPartitions()
                    + " tasks, so that a truck's rows may be cut in two");
        }
        return rows;
    }

    static JavaRDD<InternalRow> engineRows(Dataset<Row> table) {
        return ((org.apache.spark.sql.classic.Dataset<Row>) table)
                .queryExecution()
                .toRdd()
                .toJavaRDD();
    }

    /** The engine would look at one file alone, and take a column that another one lacks for empty. */
    private static void checkColumns(FileStatus file, Configuration configuration)
            throws IOException, BadInputException {
        MessageType columns;
        try (ParquetFileReader reader = ParquetFileReader.open(HadoopInputFile.fromStatus(file, configuration))) {
            columns = reader.getFileMetaData().getSchema();
        } catch (RuntimeException e) {
            throw new BadInputException(file.getPath() + " can't be used: " + e.getMessage());
        }
        StructType found = new StructType();
        for (var needed : RowTable.SCHEMA.fields()) {
            if (columns.containsField(needed.name())) {
                found = found.add(needed);
            }
        }
        RowTable.check(file.getPath().toString(), found);
    }
}
