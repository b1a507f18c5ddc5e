package org.gritwright.examples.telemetry;

import java.io.IOException;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.Predicate;
import org.apache.hadoop.conf.Configuration;
import org.apache.hadoop.fs.FileStatus;
import org.apache.parquet.hadoop.ParquetFileReader;
import org.apache.parquet.hadoop.util.HadoopInputFile;
import org.apache.parquet.schema.MessageType;
import org.apache.spark.sql.types.StructField;
import org.apache.spark.sql.types.StructType;
import org.gritwright.core.spi.TypeRegistry;

/**
 * What the job reads, looked through before the engine is started.
 *
 * @param folder where the rows are
 * @param files the files of rows
 * @param plans what is known of each truck
 */
record SeasonInput(Folder folder, List<FileStatus> files, Map<String, TruckPlan> plans) {
    static SeasonInput of(
            String rows, String records, TypeRegistry types, SeasonOptions options, Configuration configuration)
            throws IOException, BadInputException {
        Folder folder = Folder.existing("rows", rows, configuration);
        Map<String, TruckPlan> plans =
                new TruckRecords(types, options).read(Folder.existing("records", records, configuration));
        List<FileStatus> files = folder.filesEndingIn(".parquet");
        if (files.isEmpty()) {
            throw new BadInputException("can't read rows: " + folder + " holds no .parquet file");
        }
        for (FileStatus file : files) {
            checkColumns(file, configuration);
        }
        return new SeasonInput(folder, files, plans);
    }

    /** The engine would look at one file alone, and take a column that another one lacks for empty. */
    private static void checkColumns(FileStatus file, Configuration configuration) throws BadInputException {
        MessageType columns;
        try (ParquetFileReader reader = ParquetFileReader.open(HadoopInputFile.fromStatus(file, configuration))) {
            columns = reader.getFileMetaData().getSchema();
        } catch (IOException | RuntimeException e) {
            throw new BadInputException(file.getPath() + " can't be used: " + e.getMessage());
        }
        StructType found = new StructType();
        for (StructField needed : RowTable.SCHEMA.fields()) {
            if (columns.containsField(needed.name())) {
                found = found.add(needed);
            }
        }
        RowTable.check(file.getPath().toString(), found);
    }

    /** What evaluates the rows of each truck, in its only pass or in the first of two. */
    Map<String, TruckSetup> setups() {
        return setups(plan -> true);
    }

    /** The same of the trucks that need two passes alone. */
    Map<String, TruckSetup> setupsOfTwoPasses() {
        return setups(TruckPlan::isOfTwoPasses);
    }

    /** What the records of each truck say that can't all be so: nobody knows then what its display held. */
    List<String> contradictions() {
        return plans.entrySet().stream()
                .flatMap(plan -> plan.getValue().contradictions().stream()
                        .map(one -> "The records of " + plan.getKey() + " contradict each other: " + one
                                + ". What is told of it is by the value that was last seen or entered."))
                .toList();
    }

    private Map<String, TruckSetup> setups(Predicate<TruckPlan> wanted) {
        Map<String, TruckSetup> setups = new TreeMap<>();
        plans.forEach((truck, plan) -> {
            if (wanted.test(plan)) {
                setups.put(truck, plan.setup());
            }
        });
        return setups;
    }

    /** The truck whose longest trip is to be drawn, if one is named. */
    void checkPictured(Optional<String> pictured) throws BadInputException {
        if (pictured.isPresent() && !plans.containsKey(pictured.get())) {
            throw new BadInputException("can't draw truck \"" + pictured.get() + "\": it has no calibration record");
        }
    }

    long longestFile() {
        return Math.max(1, files.stream().mapToLong(FileStatus::getLen).max().orElse(1));
    }

    String[] paths() {
        return files.stream().map(file -> file.getPath().toString()).toArray(String[]::new);
    }
}
