package org.gritwright.examples.fleetmemory;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javax.measure.quantity.Dimensionless;
import org.gritwright.core.history.History;
import org.gritwright.core.history.drift.DriftChart;
import org.gritwright.core.history.drift.Trend;
import org.gritwright.core.judgement.Tolerance;
import org.gritwright.units.Amounts;

/** What drifts, in lines. */
final class DriftText {
    private final History history;
    private final Drifts drifts;
    private final Tolerance tolerance;
    private final double allowed;
    private final Instant at;

    DriftText(History history, Drifts drifts, Tolerance tolerance, double allowed, Instant at) {
        this.history = history;
        this.drifts = drifts;
        this.tolerance = tolerance;
        this.allowed = allowed;
        this.at = at;
    }

    List<String> lines() {
        List<String> lines = new ArrayList<>();
        lines.add("What leaves per revolution, " + Words.count(drifts.points().size(), "calibration point"));
        lines.addAll(about());
        lines.add("");
        int quiet = 0;
        int few = 0;
        for (Drifts.OfPoint point : drifts.points()) {
            List<String> told = told(point);
            if (told.isEmpty()) {
                quiet++;
                few += point.isFew() ? 1 : 0;
            } else {
                lines.add(point.history().truck() + ", " + point.name() + ":");
                told.stream().map("  "::concat).forEach(lines::add);
            }
        }
        lines.add((quiet == drifts.points().size() ? "" : "No more: ") + Words.count(quiet, "point")
                + (quiet == 1 ? " shows nothing" : " show nothing")
                + (few > 0
                        ? "; " + few + " of them with fewer than " + DriftChart.FEW + " values, which tell little"
                        : "")
                + ".");
        return lines;
    }

    /** By which charts and lines drift is told. */
    List<String> about() {
        List<String> lines = new ArrayList<>();
        lines.add("From day to day, what a truck in good order lays per revolution varies by "
                + Words.percent(
                        Amounts.si(Dimensionless.class, drifts.betweenDays().relativeDeviation()))
                + (drifts.betweenDays().pairs() == 0
                        ? " (assumed; common practice, no source)."
                        : " (from " + Words.count(drifts.betweenDays().pairs(), "pair") + " of days)."));
        lines.add(
                drifts.rule().isPresent()
                        ? "On average, " + plain(allowed)
                                + (allowed == 1 ? " false alarm" : " false alarms")
                                + " of all control charts together " + (allowed == 1 ? "comes" : "come") + " within "
                                + Drifts.VALUES + " values of each point."
                        : "Too few points for charts that share " + plain(allowed) + " false alarms.");
        lines.add("The chance that a point's values are said to rise or fall although nothing drifts is 1 %.");
        return lines;
    }

    private static String plain(double number) {
        return number == Math.rint(number) ? String.valueOf((long) number) : String.valueOf(number);
    }

    /** What a point shows; nothing if it shows nothing. */
    List<String> told(Drifts.OfPoint point) {
        List<String> told = new ArrayList<>();
        point.signal()
                .ifPresent(signal ->
                        told.add("the charts alarm on " + signal.at().day()
                                + deviation(point.charts().get(point.charts().size() - 1))));
        cleared(point).ifPresent(told::add);
        point.trend().filter(line -> line.isShown(drifts.trendRisk())).ifPresent(line -> {
            told.add(Words.error(line.perYear()) + " a year, by " + Words.count(line.values(), "value"));
            point.leaving(tolerance, at).flatMap(this::leaving).ifPresent(told::add);
        });
        return told;
    }

    /** Earlier alarms, after each of which something was done, for example "the charts alarmed on 2025-01-16; ...". */
    static Optional<String> cleared(Drifts.OfPoint point) {
        List<String> days = point.cleared().stream()
                .map(signal -> signal.at().day().toString())
                .toList();
        return days.isEmpty()
                ? Optional.empty()
                : Optional.of("the charts alarmed on " + String.join(", ", days) + "; a calibration or a repair after "
                        + (days.size() == 1 ? "that" : "each") + " began them anew");
    }

    /** By how much the last value differs from the first of its chart. */
    private static String deviation(DriftChart chart) {
        List<DriftChart.Point> points = chart.points();
        int first = points.size() - 1;
        while (!points.get(first).isFirst()) {
            first--;
        }
        return ": "
                + Words.percent(Amounts.si(
                        Dimensionless.class, points.get(points.size() - 1).deviation()))
                + " since " + points.get(first).implied().by().at().day();
    }

    private Optional<String> leaving(Trend.Leaving leaving) {
        return leaving.expected()
                .map(expected -> "if it goes on, what the display holds leaves " + tolerance + " about "
                        + day(expected)
                        + leaving.earliest()
                                .map(first -> ", " + day(first) + " at the earliest")
                                .orElse(""));
    }

    private String day(Instant instant) {
        return instant.atOffset(history.yard()).toLocalDate().toString();
    }
}
