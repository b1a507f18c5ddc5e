package org.gritwright.examples.fleetday;

import java.io.BufferedInputStream;
import java.io.FileInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.gritwright.core.document.DocumentLimits;
import org.gritwright.core.document.Problem;
import org.gritwright.core.document.RejectedDocumentException;
import org.gritwright.core.fleet.assessment.FleetAssessor;
import org.gritwright.core.fleet.day.FleetDay;
import org.gritwright.core.fleet.day.PlanEntry;
import org.gritwright.core.fleet.plan.FleetPlanner;
import org.gritwright.core.record.Document;
import org.gritwright.core.record.PlacedDocument;
import org.gritwright.core.spi.TypeRegistry;
import org.gritwright.units.InvalidInputException;

/** Reads and assesses the fleet's day, and says in a person's words why that can't be done. */
final class InputFile {
    /** Enough for 10 000 trucks: the file is the caller's own. */
    private static final DocumentLimits LIMITS =
            new DocumentLimits(256 << 20, 16, 5_000_000, 10_000, 200, 1000, 1_000_000);

    private InputFile() {}

    static PlacedDocument<FleetDay> read(Path file) throws BadInputException {
        if (Files.isDirectory(file)) {
            throw unreadable(file, "it is a folder");
        }
        if (Files.exists(file) && !Files.isRegularFile(file) && !isOpen(file)) {
            // To open a pipe waits until somebody writes into it, which may be never.
            throw unreadable(file, "it is no regular file; to pipe a document in, say --input -");
        }
        try (InputStream in = new BufferedInputStream(open(file))) {
            return Document.FLEET_DAY.readPlaced(in, LIMITS);
        } catch (RejectedDocumentException e) {
            List<String> lines = new ArrayList<>();
            lines.add(file + " can't be used: " + Words.count(e.problems().size() + (long) e.more(), "problem"));
            e.problems().stream().map(Problem::toString).map("  "::concat).forEach(lines::add);
            if (e.more() > 0) {
                lines.add("  and " + e.more() + " more");
            }
            throw new BadInputException(lines);
        } catch (IOException e) {
            throw unreadable(file, Failure.words(e));
        }
    }

    /** What the shell opened for this program, as {@code <(…)} does. */
    private static boolean isOpen(Path file) {
        return file.toString().equals("/dev/stdin") || file.startsWith("/dev/fd") || file.startsWith("/proc/self/fd");
    }

    /** A file stream and no channel: a pipe has no position. */
    private static InputStream open(Path file) throws IOException {
        if (file.toString().equals("-") || file.toString().equals("/dev/stdin")) {
            return System.in;
        }
        return isOpen(file) ? new FileInputStream(file.toFile()) : Files.newInputStream(file);
    }

    /** A truck that can't be computed with is part of the result; this fails on what all trucks share. */
    static FleetResult assess(Path file, FleetDay day, TypeRegistry types) throws BadInputException {
        try {
            return FleetResult.of(day, FleetAssessor.of(types));
        } catch (InvalidInputException e) {
            throw new BadInputException(List.of(file + " can't be used: " + e.getMessage()));
        }
    }

    /** Plans the day; a truck that can't be planned is part of the plan. */
    static DayPlan plan(Path file, FleetDay day, TypeRegistry types) throws BadInputException {
        PlanEntry wanted = day.plan()
                .orElseThrow(() -> new BadInputException(List.of(file
                        + " can't be planned with: it has no \"plan\", which says what uncertainty is wanted and which"
                        + " weighing methods there are")));
        try {
            return new DayPlan(day, FleetPlanner.of(types).plan(day, wanted));
        } catch (InvalidInputException e) {
            throw new BadInputException(List.of(file + " can't be used: " + e.getMessage()));
        }
    }

    /** Whether the day can be computed with, and planned if it says what for. */
    static DayCheck check(Path file, PlacedDocument<FleetDay> read, TypeRegistry types) throws BadInputException {
        FleetDay day = read.document();
        return DayCheck.of(
                read,
                assess(file, day, types),
                day.plan().isPresent() ? plan(file, day, types).plan().trucks() : List.of());
    }

    private static BadInputException unreadable(Path file, String reason) {
        return new BadInputException(List.of("can't read " + file + ": " + reason));
    }
}
