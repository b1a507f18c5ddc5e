package org.gritwright.examples.fleetday;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.function.Consumer;
import org.gritwright.core.fleet.plan.TruckPlan;

/**
 * A run's pages as PDF beside the HTML: one file with all of the day, and one a truck. What can't be set as PDF is told of and
 * left out, for the HTML has it too.
 */
final class DayPapers {
    static final String REPORT = "report.pdf";
    static final String CAB = "cab.pdf";
    static final String PLAN = "plan.pdf";
    static final String BLANK = "blank-sheets.pdf";
    static final String TRUCKS = TruckPage.FOLDER;

    private final Press press;
    private final LocalDate day;
    private final Consumer<String> progress;

    private DayPapers(Press press, LocalDate day, Consumer<String> progress) {
        this.press = press;
        this.day = day;
        this.progress = progress;
    }

    /** Sets a page, as {@link Papers#pdf} does. */
    interface Press {
        byte[] pdf(String page, LocalDate day) throws IOException;
    }

    static void write(FleetResult result, Path run, Consumer<String> progress) throws IOException {
        write(result, run, progress, Papers.load()::pdf);
    }

    static void write(FleetResult result, Path run, Consumer<String> progress, Press press) throws IOException {
        DayPapers day = new DayPapers(press, result.day().day(), progress);
        day.write(run.resolve(REPORT), "the report", ReportPage.paper(result));
        Path cabs = run.resolve(CabPage.FOLDER);
        String all = CabPage.paper(
                result,
                (truck, page) -> day.write(
                        Files.createDirectories(cabs).resolve(truck.paperFile()),
                        "the papers for the cab of " + truck.id(),
                        page));
        day.write(run.resolve(CAB), "the papers for the cabs", all);
        Path trucks = Files.createDirectories(run.resolve(TRUCKS));
        TruckPage page = TruckPage.paper(result);
        for (TruckResult truck : result.trucks()) {
            day.write(trucks.resolve(truck.paperFile()), truck.id(), page.of(truck));
        }
    }

    static void write(DayPlan plan, Path run, Consumer<String> progress) throws IOException {
        DayPapers day = new DayPapers(Papers.load()::pdf, plan.day().day(), progress);
        day.write(run.resolve(PLAN), "the plan", PlanPage.paper(plan));
        day.write(run.resolve(BLANK), "the blank sheets", BlankSheets.paper());
        Path trucks = Files.createDirectory(run.resolve(TRUCKS));
        RecordNames names = new RecordNames();
        for (TruckPlan truck : plan.plan().trucks()) {
            // A refused truck's name is taken too, so that each file is named as the truck's record will be.
            String id = truck.truck().id();
            Path file = trucks.resolve(name(names.next(id)));
            if (truck.refusal().isEmpty()) {
                day.write(file, id, PlanPage.paper(plan, truck));
            }
        }
    }

    private static String name(String recordFile) {
        return recordFile.replaceFirst("json$", "pdf");
    }

    private void write(Path file, String what, String html) throws IOException {
        byte[] pdf;
        try {
            pdf = press.pdf(html, day);
        } catch (IOException | RuntimeException e) {
            progress.accept(PlainText.oneLine("No PDF of " + what + ": " + Failure.words(e)));
            return;
        }
        WholeFile.writeUnforced(file, out -> out.write(pdf));
    }
}
