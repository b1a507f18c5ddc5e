package org.gritwright.examples.fleetmemory;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.IntStream;
import org.gritwright.core.calibration.CalibrationFactor;
import org.gritwright.core.history.Event;
import org.gritwright.core.history.What;
import org.gritwright.core.history.drift.DriftChart;
import org.gritwright.core.history.drift.Trend;

/**
 * A calibration point over the years: its picture, and the same as numbers.
 *
 * @param told what it says in sentences
 */
record DriftSheet(String name, List<String> told, Picture picture, List<PageTable> tables) {
    static DriftSheet of(Overview fleet, PointStory story) {
        Picture picture = Picture.of(width -> new DriftPicture(
                        story, fleet.tolerance(), fleet.at(), fleet.history().yard(), width)
                .drawn());
        List<PageTable> tables = new ArrayList<>(List.of(catches(story)));
        if (!story.events().isEmpty()) {
            tables.add(events(story));
        }
        tables.add(steps(fleet, story));
        story.line().trend().ifPresent(trend -> tables.add(line(fleet, story)));
        return new DriftSheet(story.point().name(), told(fleet, story), picture, tables);
    }

    private static List<String> told(Overview fleet, PointStory story) {
        List<String> told = new ArrayList<>();
        Drifts.OfPoint point = story.point();
        if (point.charts().isEmpty()) {
            told.add("The fleet has too few points for control charts that share the false alarms allowed.");
        } else if (!story.isCharted()) {
            told.add("The control charts have no point yet: the first value only begins them.");
        } else {
            told.add(point.signal()
                    .map(signal ->
                            "The charts alarm since the catch of " + signal.at().day() + ".")
                    .orElse("No alarm stands on the control charts."));
            DriftText.cleared(point).ifPresent(words -> told.add("Before, " + words + "."));
            if (point.isFew()) {
                told.add(
                        "Since they last began they have fewer than " + DriftChart.FEW + " points, which tell little.");
            }
        }
        told.add(point.trend()
                .map(trend -> trend(fleet, point, trend))
                .orElse("A line needs three values or more since the last change: there is none yet."));
        return told;
    }

    private static String trend(Overview fleet, Drifts.OfPoint point, Trend trend) {
        return "The line through the " + Words.count(trend.values(), "value")
                + (point.history().current().began().isPresent() ? " since the last change: " : ": ")
                + Words.error(trend.perYear()) + " a year, which "
                + (trend.isShown(fleet.drifts().trendRisk())
                        ? "is more than chance."
                        : "isn’t more than chance may bring.")
                + point.leaving(fleet.tolerance(), fleet.at())
                        .map(leaving -> leaving(fleet, leaving))
                        .orElse("");
    }

    private static String leaving(Overview fleet, Trend.Leaving leaving) {
        String what = " If it goes on, what the display holds leaves " + fleet.tolerance();
        if (leaving.earliest().isEmpty()) {
            return what + " not within ten years.";
        }
        String earliest = day(fleet, leaving.earliest().get());
        return leaving.latest()
                .map(latest -> what + " between " + earliest + " and " + day(fleet, latest) + about(fleet, leaving))
                .orElseGet(() -> what + " on " + earliest + " at the earliest" + about(fleet, leaving));
    }

    private static String about(Overview fleet, Trend.Leaving leaving) {
        return leaving.expected()
                .map(expected -> ", about " + day(fleet, expected) + " by the line itself.")
                .orElse(", and by the line itself not within ten years.");
    }

    private static String day(Overview fleet, Instant at) {
        return at.atOffset(fleet.history().yard()).toLocalDate().toString();
    }

    private static String onChart(double number) {
        String text = String.format(Locale.ROOT, "%.2f", number);
        return text.equals("-0.00") ? "0.00" : text.replace('-', '−');
    }

    private static PageTable catches(PointStory story) {
        List<String> columns = new ArrayList<>(List.of("day", "what", "what left, with 95 %", "error found"));
        if (story.isCharted()) {
            columns.addAll(List.of("EWMA (limit)", "CUSUM above, below (limit)", "control charts"));
        }
        List<PageTable.Row> rows = new ArrayList<>();
        for (PointStory.Caught one : story.catches()) {
            List<String> cells = new ArrayList<>(
                    List.of(one.isCalibration() ? "calibration" : "verification", story.text(one), error(one.by())));
            if (story.isCharted()) {
                cells.add(one.onChart()
                        .flatMap(DriftChart.Point::ewma)
                        .map(ewma -> onChart(ewma.value()) + " (±" + onChart(ewma.limit()) + ")")
                        .orElse(PageTable.NONE));
                cells.add(one.onChart()
                        .flatMap(DriftChart.Point::cusum)
                        .map(sum ->
                                onChart(sum.above()) + ", " + onChart(sum.below()) + " (" + onChart(sum.limit()) + ")")
                        .orElse(PageTable.NONE));
                cells.add(one.onChart().map(DriftSheet::charted).orElse("left out: no uncertainty is known"));
            }
            rows.add(new PageTable.Row(one.by().at().day().toString(), Optional.empty(), cells));
        }
        return new PageTable(
                "Catches",
                columns,
                rows,
                story.isCharted()
                        ? List.of("EWMA and CUSUM are in standard deviations: how far a value is from what those before"
                                + " it let expect.")
                        : List.of());
    }

    private static String charted(DriftChart.Point point) {
        return point.isFirst() ? "begin here" : point.isSignal() ? "ALARM" : "quiet";
    }

    private static String error(Event event) {
        return event.what() instanceof What.Verified verified
                ? Words.error(verified.error()) + ", " + verified.verdict().words()
                : PageTable.NONE;
    }

    private static PageTable events(PointStory story) {
        return PageTable.of(
                "Repairs, other changes and losses, as numbered in the picture",
                List.of("no.", "day", "what", "who", "from"),
                IntStream.range(0, story.events().size())
                        .mapToObj(i -> event(i + 1, story.events().get(i)))
                        .toList());
    }

    private static PageTable.Row event(int number, Event event) {
        return PageTable.Row.of(
                String.valueOf(number),
                event.at().day().toString(),
                event.what().words(),
                event.who().orElse(PageTable.NONE),
                event.source());
    }

    private static PageTable steps(Overview fleet, PointStory story) {
        return PageTable.of(
                "In the display",
                List.of("from", "in the display", "what should leave", "within the tolerance"),
                story.steps().stream()
                        .map(step -> PageTable.Row.of(
                                day(fleet, step.at()),
                                step.factor().map(CalibrationFactor::toString).orElse("nobody knows"),
                                step.value()
                                        .map(value -> story.text(value) + " " + story.symbol())
                                        .orElse(PageTable.NONE),
                                step.value()
                                        .map(value -> tolerance(fleet, story, value))
                                        .orElse(PageTable.NONE)))
                        .toList());
    }

    private static String tolerance(Overview fleet, PointStory story, double value) {
        double ratio = fleet.tolerance().ratio();
        return story.text(value / (1 + ratio)) + " to " + story.text(value / (1 - ratio)) + " " + story.symbol();
    }

    /** Where the line stands at its beginning, on the day, and a year on. */
    private static PageTable line(Overview fleet, PointStory story) {
        Instant begin = story.point().history().current().implied().get(0).at();
        return PageTable.of(
                "The line",
                List.of("day", "what leaves", "a day’s value lies within, with 95 %"),
                List.of(begin, fleet.at(), fleet.at().plus(DriftPicture.AHEAD)).stream()
                        .map(story.line()::at)
                        .map(band -> PageTable.Row.of(
                                day(fleet, band.at()),
                                story.text(band.value()) + " " + story.symbol(),
                                story.text(band.low()) + " to " + story.text(band.high()) + " " + story.symbol()))
                        .toList());
    }
}
