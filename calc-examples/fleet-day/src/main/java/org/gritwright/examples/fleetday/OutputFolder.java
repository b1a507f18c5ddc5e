package org.gritwright.examples.fleetday;

import java.io.Closeable;
import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.channels.OverlappingFileLockException;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.NotDirectoryException;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.function.Consumer;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.gritwright.core.fleet.assessment.Refusal;
import org.gritwright.core.fleet.assessment.TankAssessment;
import org.gritwright.core.fleet.assessment.TruckAssessment;
import org.gritwright.core.fleet.day.FleetDay;
import org.gritwright.core.record.CalibrationRecord;
import org.gritwright.core.record.Document;
import org.gritwright.core.record.TankRecord;
import org.gritwright.units.InvalidInputException;

/**
 * Where the results of runs go, each into a folder of its own. It gets its name when it is complete, and then the manifest that
 * names the last complete run is replaced: whenever a run is stopped, what stands there belongs together, and no earlier run is
 * changed. What a stopped run left is removed by the next.
 */
final class OutputFolder implements Closeable {
    static final String REPORT = "report.html";
    static final String PLAN = "plan.html";
    static final String TYPE_IN = "type-in.html";
    static final String BLANK = "blank-sheets.html";
    static final String TABLE = "fleet-day.csv";
    static final String TANK_TABLE = "tanks.csv";
    static final String BOOM_TABLE = "booms.csv";
    static final String CAB = "cab.html";
    static final String CAB_TABLE = "cab.csv";
    static final String RECORDS = "records";
    static final String TANK_RECORDS = "tank-records";
    static final String MANIFEST = "current.json";

    private static final String UNFINISHED = ".part";
    private static final Pattern RUN = Pattern.compile("run-([0-9]{4,9})(\\.part)?");

    private final Path folder;
    private final Consumer<String> progress;
    private final FileChannel lock;

    private OutputFolder(Path folder, Consumer<String> progress, FileChannel lock) {
        this.folder = folder;
        this.progress = progress;
        this.lock = lock;
    }

    /**
     * What a report was written of, and where it is.
     *
     * @param result the result, in which a truck is refused whose record can't be written
     * @param page the report
     */
    record Written(FleetResult result, Path page) {}

    /**
     * Makes the folder, so that a wrong name is found before the work.
     *
     * @throws BadInputException if it names something else than a folder
     * @throws IOException if it can't be made or written to, or another run is writing there
     */
    static OutputFolder open(Path folder, Consumer<String> progress) throws BadInputException, IOException {
        try {
            Files.createDirectories(folder);
        } catch (FileAlreadyExistsException | NotDirectoryException e) {
            throw new BadInputException(List.of("can't make the output folder " + folder + ": " + Failure.words(e)));
        } catch (FileSystemException e) {
            if (isBelowAFile(folder)) {
                throw new BadInputException(
                        List.of("can't make the output folder " + folder + ": " + Failure.words(e)));
            }
            throw e;
        }
        FileChannel lock =
                FileChannel.open(folder.resolve(".lock"), StandardOpenOption.CREATE, StandardOpenOption.WRITE);
        try {
            if (lock.tryLock() != null) {
                return new OutputFolder(folder, progress, lock);
            }
        } catch (OverlappingFileLockException e) {
            // Another one in this Java virtual machine: the same to the user.
        }
        lock.close();
        throw new FileSystemException(folder.toString(), null, "another run is writing there");
    }

    private static boolean isBelowAFile(Path folder) {
        for (Path part = folder; part != null; part = part.getParent()) {
            if (Files.isRegularFile(part)) {
                return true;
            }
        }
        return false;
    }

    @Override
    public void close() throws IOException {
        lock.close();
    }

    /** What is done to a new folder, which isn't yet under its name. */
    private interface Content<T> {
        T writeTo(Path unfinished, Path named) throws IOException;
    }

    private <T> T inNewFolder(String mode, String day, String page, Content<T> content) throws IOException {
        int last = 0;
        for (Path one : runs()) {
            Matcher name = RUN.matcher(one.getFileName().toString());
            if (one.toString().endsWith(UNFINISHED)) {
                remove(one);
            } else if (name.matches()) {
                last = Math.max(last, Integer.parseInt(name.group(1)));
            }
        }
        String run = String.format(Locale.ROOT, "run-%04d", last + 1);
        Path unfinished = Files.createDirectory(folder.resolve(run + UNFINISHED));
        T written;
        boolean isWhole = false;
        try {
            written = content.writeTo(unfinished, folder.resolve(run));
            WholeFile.force(unfinished);
            Files.move(unfinished, folder.resolve(run), StandardCopyOption.ATOMIC_MOVE);
            isWhole = true;
        } finally {
            if (!isWhole) {
                remove(unfinished);
            }
        }
        String manifest = "{\n  \"run\": \"" + run + "\",\n  \"mode\": \"" + mode + "\",\n  \"day\": \"" + day
                + "\",\n  \"page\": \"" + run + "/" + page + "\"\n}\n";
        WholeFile.write(folder.resolve(MANIFEST), out -> out.write(manifest.getBytes(StandardCharsets.UTF_8)));
        return written;
    }

    private static void write(Path file, String text) throws IOException {
        WholeFile.writeUnforced(file, out -> out.write(text.getBytes(StandardCharsets.UTF_8)));
    }

    private List<Path> runs() throws IOException {
        try (Stream<Path> all = Files.list(folder)) {
            return all.filter(one -> RUN.matcher(one.getFileName().toString()).matches()
                            || (one.toString().endsWith(UNFINISHED) && Files.isRegularFile(one)))
                    .toList();
        }
    }

    private static void remove(Path unfinished) throws IOException {
        List<Path> inside;
        try (Stream<Path> all = Files.walk(unfinished)) {
            inside = all.sorted(Comparator.reverseOrder()).toList();
        }
        for (Path one : inside) {
            Files.delete(one);
        }
    }

    Written write(FleetResult result, boolean withPdf) throws IOException {
        return inNewFolder("report", result.day().day().toString(), REPORT, (unfinished, run) -> {
            Path records = Files.createDirectory(unfinished.resolve(RECORDS));
            progress.accept(
                    "Writing " + Words.count(result.trucks().size(), "record") + " into " + run.resolve(RECORDS));
            List<TruckResult> trucks =
                    Parallel.each(result.trucks(), (truck, place) -> write(result, truck, records, "/trucks/" + place));
            FleetResult written =
                    new FleetResult(result.day(), trucks, writeTanks(result, unfinished.resolve(TANK_RECORDS), run));
            progress.accept("Writing " + run.resolve(TABLE));
            write(unfinished.resolve(TABLE), FleetCsv.text(written));
            if (!written.tanks().isEmpty()) {
                progress.accept("Writing " + run.resolve(TANK_TABLE));
                write(unfinished.resolve(TANK_TABLE), TankCsv.text(written));
            }
            if (BoomCsv.isWanted(written)) {
                progress.accept("Writing " + run.resolve(BOOM_TABLE));
                write(unfinished.resolve(BOOM_TABLE), BoomCsv.text(written));
            }
            progress.accept("Writing " + run.resolve(REPORT));
            write(unfinished.resolve(REPORT), ReportPage.html(written));
            if (written.isSplit()) {
                progress.accept("Writing " + Words.count(written.trucks().size(), "page") + " into "
                        + run.resolve(TruckPage.FOLDER));
                writePages(written, Files.createDirectory(unfinished.resolve(TruckPage.FOLDER)));
            }
            progress.accept("Writing " + run.resolve(CAB) + " and " + run.resolve(CAB_TABLE));
            Path cabs = unfinished.resolve(CabPage.FOLDER);
            write(
                    unfinished.resolve(CAB),
                    CabPage.html(
                            written,
                            (truck, page) -> write(Files.createDirectories(cabs).resolve(truck.pageFile()), page)));
            write(unfinished.resolve(CAB_TABLE), CabCsv.text(written));
            if (withPdf) {
                progress.accept("Writing " + run.resolve(DayPapers.REPORT) + " and " + run.resolve(DayPapers.TRUCKS));
                DayPapers.write(written, unfinished, progress);
            }
            return new Written(written, run.resolve(REPORT));
        });
    }

    private static void writePages(FleetResult result, Path folder) throws IOException {
        TruckPage page = TruckPage.html(result);
        Parallel.each(result.trucks(), (truck, place) -> {
            Path file = folder.resolve(truck.pageFile());
            write(file, page.of(truck));
            return file;
        });
    }

    /** A record that could not be read back isn't written: then the truck is refused, and that is what its record says. */
    private TruckResult write(FleetResult result, TruckResult truck, Path records, String pointer) throws IOException {
        try {
            writeRecord(result, truck, records);
            return truck;
        } catch (InvalidInputException e) {
            TruckResult refused = TruckResult.of(
                    TruckAssessment.refused(
                            truck.assessment().truck(),
                            List.of(new Refusal(pointer, "", "record", "one that can be read back", e.getMessage()))),
                    truck.recordFile());
            try {
                writeRecord(result, refused, records);
            } catch (InvalidInputException again) {
                progress.accept("No record of " + truck.id() + ": " + again.getMessage());
            }
            return refused;
        }
    }

    /** The same of tanks; a day without tanks has no folder for them. */
    private List<TankAssessment> writeTanks(FleetResult result, Path records, Path run) throws IOException {
        List<TankAssessment> tanks = new ArrayList<>();
        if (!result.tanks().isEmpty()) {
            Files.createDirectory(records);
            progress.accept("Writing " + Words.count(result.tanks().size(), "record of a tank", "records of tanks")
                    + " into " + run.resolve(TANK_RECORDS));
        }
        for (TankSheet tank : TankSheet.of(result)) {
            Path file = records.resolve(tank.recordFile());
            tanks.add(write(result.day(), tank.assessment(), file, "/tanks/" + tanks.size()));
        }
        return List.copyOf(tanks);
    }

    private TankAssessment write(FleetDay day, TankAssessment tank, Path file, String pointer) throws IOException {
        try {
            writeRecord(day, tank, file);
            return tank;
        } catch (InvalidInputException e) {
            TankAssessment refused = TankAssessment.refused(
                    tank.tank(),
                    List.of(new Refusal(pointer, "", "record", "one that can be read back", e.getMessage())));
            try {
                writeRecord(day, refused, file);
            } catch (InvalidInputException again) {
                progress.accept(
                        "No record of tank " + PlainText.oneLine(tank.tank().name()) + ": " + again.getMessage());
            }
            return refused;
        }
    }

    private static void writeRecord(FleetDay day, TankAssessment tank, Path file) throws IOException {
        TankRecord record = TankRecord.of(day, tank);
        WholeFile.writeUnforced(file, out -> Document.TANK_RECORD.write(record, out));
    }

    private static void writeRecord(FleetResult result, TruckResult truck, Path records) throws IOException {
        CalibrationRecord record = CalibrationRecord.of(result.day(), truck.assessment());
        WholeFile.writeUnforced(
                records.resolve(truck.recordFile()), out -> Document.CALIBRATION_RECORD.write(record, out));
    }

    Path write(DayPlan plan, boolean withPdf) throws IOException {
        return inNewFolder("plan", plan.day().day().toString(), PLAN, (unfinished, run) -> {
            progress.accept("Writing " + run.resolve(PLAN));
            write(unfinished.resolve(PLAN), PlanPage.html(plan));
            progress.accept("Writing " + run.resolve(TYPE_IN));
            write(unfinished.resolve(TYPE_IN), TypeInPage.html(plan));
            progress.accept("Writing " + run.resolve(BLANK));
            write(unfinished.resolve(BLANK), BlankSheets.html());
            if (withPdf) {
                progress.accept("Writing " + run.resolve(DayPapers.PLAN) + " and " + run.resolve(DayPapers.TRUCKS));
                DayPapers.write(plan, unfinished, progress);
            }
            return run.resolve(PLAN);
        });
    }
}
