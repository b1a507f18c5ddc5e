package org.gritwright.examples.fleetday;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.gritwright.core.fleet.day.FleetDay;
import org.gritwright.core.verification.VerificationSeries;
import org.gritwright.units.Amounts;

/**
 * The day on a terminal: a table of at most 100 columns, a summary, and where the results are.
 *
 * @param result the day's result
 */
record ConsoleSummary(FleetResult result) {
    static final int WIDTH = 100;

    private static final int LONGEST_ID = 14;

    List<String> lines(Path page) {
        FleetDay day = result.day();
        List<String> lines = new ArrayList<>();
        lines.addAll(TextTable.wrap(
                day.site().map(site -> site + ": ").orElse("") + "calibration day of " + day.day() + ", tolerance +/-"
                        + Amounts.format(day.tolerance()) + ", most urgent trucks first.",
                WIDTH));
        lines.add("");
        TextTable table = table();
        lines.addAll(table.row(
                List.of("Truck", "Metering", "Road speed", "In the display", "Error; chance within", "Do next")));
        lines.add("-".repeat(WIDTH));
        result.mostUrgentFirst().forEach(truck -> lines.addAll(table.row(cells(truck))));
        lines.add("-".repeat(WIDTH));
        lines.addAll(TextTable.wrap(result.summary(), WIDTH));
        TankSheet.of(result).forEach(tank -> lines.addAll(TextTable.wrap(onKeyboard(tank.line()), WIDTH)));
        lines.add("Report: " + PlainText.oneLine(page.toString()));
        lines.add("For the cabs: "
                + PlainText.oneLine(page.resolveSibling(OutputFolder.CAB).toString()));
        return lines;
    }

    private TextTable table() {
        int longest = result.trucks().stream()
                .mapToInt(truck -> truck.id().length())
                .max()
                .orElse(0);
        int id = Math.max("Truck".length(), Math.min(LONGEST_ID, longest));
        List<Integer> widths = new ArrayList<>(List.of(id, 11, 11, 12, 14));
        widths.add(WIDTH - widths.stream().mapToInt(width -> width + 2).sum());
        return new TextTable(widths);
    }

    /** With the chance that the true error is within the tolerance; of a delivery error where nothing was counted. */
    private static String error(VerificationSeries series) {
        boolean counted = series.last().calibrationError().isPresent();
        return (counted ? "" : "delivery ")
                + Figures.errorWithin(series.judgement()).replace("± ", "+/-") + "; "
                + Figures.chance(series.judgement().conformity().within());
    }

    private static List<String> cells(TruckResult truck) {
        String reason = truck.instruction().shortReason();
        return List.of(
                truck.id(),
                truck.metering().words(),
                truck.roadSpeed().words(),
                truck.display().text().orElse("-"),
                truck.judged().map(ConsoleSummary::error).orElse("-"),
                truck.instruction().text() + (reason.isEmpty() ? "" : " (" + onKeyboard(reason) + ")"));
    }

    /** Terminals show ÷ and × less surely than what is on their keyboards. */
    private static String onKeyboard(String words) {
        return words.replace('÷', '/').replace('×', 'x');
    }
}
