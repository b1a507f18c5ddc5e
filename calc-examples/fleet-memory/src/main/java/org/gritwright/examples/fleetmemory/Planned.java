package org.gritwright.examples.fleetmemory;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import javax.measure.quantity.Mass;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.gritwright.core.history.due.DueSettings;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;

/** Reads what trucks are planned to lay: a CSV file with the columns truck, material and mass, such as "120 ton". */
final class Planned {
    private static final List<String> COLUMNS = List.of("truck", "material", "mass");

    private Planned() {}

    static List<DueSettings.Planned> read(Path file) throws BadInputException {
        List<DueSettings.Planned> planned = new ArrayList<>();
        CSVFormat format = CSVFormat.DEFAULT
                .builder()
                .setHeader()
                .setSkipHeaderRecord(true)
                .setTrim(true)
                .get();
        // Spreadsheets begin UTF-8 with a mark that nobody sees.
        try (CSVParser rows = CSVParser.parse(Files.readString(file).replaceFirst("^\uFEFF", ""), format)) {
            if (!rows.getHeaderNames().equals(COLUMNS)) {
                throw new BadInputException(file + " can't be used: its first line must be " + String.join(",", COLUMNS)
                        + ", with commas, and is: " + String.join(",", rows.getHeaderNames()));
            }
            Map<List<String>, Long> rowOf = new HashMap<>();
            for (CSVRecord row : rows) {
                DueSettings.Planned one = planned(row, file);
                Long before = rowOf.putIfAbsent(List.of(one.truck(), one.material()), row.getRecordNumber());
                if (before != null) {
                    throw new BadInputException(file + ", row " + row.getRecordNumber() + " can't be used: truck \""
                            + one.truck() + "\" with " + one.material() + " stands in row " + before
                            + " already; write one mass for both");
                }
                planned.add(one);
            }
        } catch (IOException | UncheckedIOException | IllegalArgumentException e) {
            throw new BadInputException("can't read " + file + ": " + Failure.words(e));
        }
        return planned;
    }

    private static DueSettings.Planned planned(CSVRecord row, Path file) throws BadInputException {
        String from = file + ", row " + row.getRecordNumber();
        if (!row.isConsistent()) {
            throw new BadInputException(from + " can't be used: it must have " + COLUMNS.size() + " values");
        }
        try {
            return new DueSettings.Planned(row.get(0), row.get(1), Amounts.parse(Mass.class, row.get(2)));
        } catch (InvalidInputException e) {
            throw new BadInputException(from + " can't be used: " + e.getMessage());
        }
    }
}
