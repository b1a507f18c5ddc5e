package org.gritwright.examples.fleetday;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.gritwright.core.fleet.FleetDay;
import org.gritwright.core.verification.Verification;
import org.gritwright.units.Amounts;

/**
 * The day on a terminal: a table of at most 100 columns, a summary, and where the results are.
 *
 * @param result the day's result
 */
record ConsoleSummary(FleetResult result) {
    static final int WIDTH = 100;

    private static final int LONGEST_ID = 14;

    List<String> lines(Path folder) {
        FleetDay day = result.day();
        List<String> lines = new ArrayList<>();
        lines.addAll(TextTable.wrap(
                day.site().map(site -> site + ": ").orElse("") + "calibration day of " + day.day() + ", tolerance +/-"
                        + Amounts.format(day.tolerance()) + ", most urgent trucks first.",
                WIDTH));
        lines.add("");
        TextTable table = table();
        lines.addAll(table.row(List.of("Truck", "Mass per revolution", "Calibr. error", "Verdict", "Do next")));
        lines.add("-".repeat(WIDTH));
        result.mostUrgentFirst().forEach(truck -> lines.addAll(table.row(cells(truck))));
        lines.add("-".repeat(WIDTH));
        lines.addAll(TextTable.wrap(result.summary(), WIDTH));
        lines.add("Report: "
                + PlainText.oneLine(folder.resolve(OutputFolder.REPORT).toString()));
        return lines;
    }

    private TextTable table() {
        int longest = result.trucks().stream()
                .mapToInt(truck -> truck.id().length())
                .max()
                .orElse(0);
        int id = Math.max("Truck".length(), Math.min(LONGEST_ID, longest));
        List<Integer> fixed = List.of(id, 14, 8, 25);
        int rest = WIDTH - fixed.stream().mapToInt(width -> width + 2).sum();
        return new TextTable(List.of(fixed.get(0), fixed.get(1), fixed.get(2), fixed.get(3), rest));
    }

    private static Optional<Verification> counted(TruckResult truck) {
        return truck.lastVerification()
                .filter(verification -> verification.calibrationError().isPresent());
    }

    private static List<String> cells(TruckResult truck) {
        String reason = truck.instruction().shortReason();
        return List.of(
                truck.id(),
                truck.display().massPerRevolutionText().orElse("-")
                        + truck.expandedUncertainty()
                                .map(u -> " " + Figures.within(u).replace("± ", "+/-"))
                                .orElse(""),
                counted(truck)
                        .map(v -> Figures.errorWithin(v.judgement()).replace("± ", "+/-"))
                        .orElse("-"),
                truck.verdict()
                        + truck.lastVerification()
                                .map(v -> ", " + Figures.chanceWithin(v.judgement()))
                                .orElse(""),
                truck.instruction().text() + (reason.isEmpty() ? "" : " (" + reason + ")"));
    }
}
