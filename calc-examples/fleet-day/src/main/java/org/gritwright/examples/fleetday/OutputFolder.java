package org.gritwright.examples.fleetday;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.function.Consumer;
import org.gritwright.core.record.CalibrationRecord;
import org.gritwright.core.record.Document;

/**
 * Writes the results: the report last, so that what it names is there.
 *
 * @param folder the output folder
 * @param progress told before each step
 */
record OutputFolder(Path folder, Consumer<String> progress) {
    static final String REPORT = "report.html";
    static final String PLAN = "plan.html";
    static final String TABLE = "fleet-day.csv";
    static final String RECORDS = "records";

    /** Makes the folder, so that a wrong name is found before the work. */
    static void make(Path folder) throws BadInputException {
        make(folder, folder.resolve(RECORDS));
    }

    /** The same without a place for records. */
    static void makePlain(Path folder) throws BadInputException {
        make(folder, folder);
    }

    private static void make(Path folder, Path innermost) throws BadInputException {
        try {
            Files.createDirectories(innermost);
        } catch (IOException e) {
            throw new BadInputException(List.of("can't make the output folder " + folder + ": " + Failure.words(e)));
        }
    }

    void write(FleetResult result) throws IOException {
        Path records = folder.resolve(RECORDS);
        progress.accept("Writing " + Words.count(result.trucks().size(), "record") + " into " + records);
        for (TruckResult truck : result.trucks()) {
            CalibrationRecord record = CalibrationRecord.of(result.day(), truck.assessment());
            WholeFile.write(records.resolve(truck.recordFile()), out -> Document.CALIBRATION_RECORD.write(record, out));
        }
        progress.accept("Writing " + folder.resolve(TABLE));
        String table = FleetCsv.text(result);
        WholeFile.write(folder.resolve(TABLE), out -> out.write(table.getBytes(StandardCharsets.UTF_8)));
        progress.accept("Writing " + folder.resolve(REPORT));
        String report = ReportPage.html(result);
        WholeFile.write(folder.resolve(REPORT), out -> out.write(report.getBytes(StandardCharsets.UTF_8)));
    }

    void write(DayPlan plan) throws IOException {
        progress.accept("Writing " + folder.resolve(PLAN));
        String page = PlanPage.html(plan);
        WholeFile.write(folder.resolve(PLAN), out -> out.write(page.getBytes(StandardCharsets.UTF_8)));
    }
}
