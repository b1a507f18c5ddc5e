package org.gritwright.examples.fleetday;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Graphics2D;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import org.gritwright.core.judgement.Verdict;
import org.gritwright.core.verification.Judgement;
import org.gritwright.core.verification.VerificationSeries;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.knowm.xchart.XYChart;
import org.knowm.xchart.XYChartBuilder;
import org.knowm.xchart.XYSeries;
import org.knowm.xchart.style.markers.Marker;
import org.knowm.xchart.style.markers.SeriesMarkers;

/**
 * The whole fleet's calibration errors: a line a truck, in the order of the day, with a mark for each verification
 * catch and the tolerance as a band.
 *
 * <p>Shape tells the marks apart, not color, so that the chart is read in black and white too.
 */
final class ErrorChart {
    /** Beyond this many tolerances a mark stands at the edge, so that one wild truck doesn't flatten the others. */
    private static final double EDGE = 5;

    private static final int WIDTH = 400;
    private static final int LINE = 24;
    private static final int LONGEST_LABEL = 11;

    private final FleetResult result;
    private final List<TruckResult> shown;
    private final double tolerance;

    ErrorChart(FleetResult result) {
        this.result = result;
        this.shown = result.trucks().stream().filter(ErrorChart::hasError).toList();
        this.tolerance = percent(result.day().tolerance());
    }

    private static boolean hasError(TruckResult truck) {
        return truck.assessment().verifications().stream()
                .anyMatch(v -> v.calibrationError().isPresent());
    }

    /** The ids of the trucks that have no calibration error to show. */
    List<String> missing() {
        return result.trucks().stream()
                .filter(truck -> !hasError(truck))
                .map(TruckResult::id)
                .toList();
    }

    /** Marks that stand at the edge, as "T-20 +31.00 %". */
    List<String> beyondEdge() {
        List<String> beyond = new ArrayList<>();
        for (TruckResult truck : shown) {
            truck.assessment().verifications().stream()
                    .flatMap(v -> v.calibrationError().stream())
                    .filter(e -> Math.abs(percent(e)) > EDGE * tolerance)
                    .forEach(e -> beyond.add(truck.id() + " " + Figures.error(e)));
        }
        return beyond;
    }

    boolean isEmpty() {
        return shown.isEmpty();
    }

    /** The chart as an SVG element; ask only if it is not empty. */
    String svg() {
        int labels = 10 + 8 * longestLabel();
        XYChart chart = new XYChartBuilder()
                .width(WIDTH)
                .height(64 + LINE * (shown.size() + 1))
                .xAxisTitle("calibration error, %")
                .build();
        double edge = edge();
        style(chart, edge);
        band(chart);
        lines(chart, edge);
        uncertainties(chart, edge);
        marks(chart, "within", SeriesMarkers.CIRCLE, edge, true, EnumSet.of(Verdict.WITHIN_TOLERANCE));
        marks(chart, "outside", SeriesMarkers.DIAMOND, edge, true, EnumSet.of(Verdict.OUTSIDE_TOLERANCE));
        marks(
                chart,
                "can't tell",
                SeriesMarkers.SQUARE,
                edge,
                true,
                EnumSet.of(Verdict.UNDECIDED, Verdict.UNDECIDABLE));
        marks(chart, "earlier", SeriesMarkers.CROSS, edge, false, EnumSet.allOf(Verdict.class));
        return SvgPainting.of(
                "errors",
                labels + WIDTH,
                chart.getHeight(),
                graphics -> {
                    graphics.translate(labels, 0);
                    chart.paint(graphics, chart.getWidth(), chart.getHeight());
                    graphics.translate(-labels, 0);
                    labels(graphics, chart);
                },
                "Calibration errors of " + Words.count(shown.size(), "truck") + "; the table gives the numbers.");
    }

    private double edge() {
        double largest = shown.stream()
                .flatMap(truck -> truck.assessment().verifications().stream())
                .flatMap(v -> v.calibrationError().stream())
                .mapToDouble(e -> Math.abs(percent(e)))
                .max()
                .orElse(0);
        return Math.min(Math.max(largest, tolerance) * 1.2, EDGE * tolerance);
    }

    private void style(XYChart chart, double edge) {
        ChartInk.style(chart);
        chart.getStyler()
                .setDefaultSeriesRenderStyle(XYSeries.XYSeriesRenderStyle.Scatter)
                .setXAxisMin(-edge)
                .setXAxisMax(edge)
                .setYAxisMin(0.0)
                .setYAxisMax(shown.size() + 1.0)
                .setYAxisTicksVisible(false)
                .setxAxisTickLabelsFormattingFunction(ErrorChart::tick);
    }

    /** The first truck stands on top. */
    private int line(int index) {
        return shown.size() - index;
    }

    /** The trucks' ids beside the lines, as text that can be searched and read aloud. */
    private void labels(Graphics2D graphics, XYChart chart) {
        graphics.setFont(ChartInk.FONT);
        graphics.setColor(ChartInk.INK);
        for (int index = 0; index < shown.size(); index++) {
            String id = PlainText.oneLine(shown.get(index).id());
            float middle = (float) chart.getScreenYFromChart(line(index));
            graphics.drawString(cut(id), 0, middle + ChartInk.FONT.getSize2D() / 3);
        }
    }

    private int longestLabel() {
        return shown.stream()
                .map(truck -> cut(PlainText.oneLine(truck.id())))
                .mapToInt(String::length)
                .max()
                .orElse(0);
    }

    private static String cut(String text) {
        return text.codePointCount(0, text.length()) <= LONGEST_LABEL
                ? text
                : text.substring(0, text.offsetByCodePoints(0, LONGEST_LABEL - 1)) + "…";
    }

    private static String tick(double percent) {
        return (percent > 0 ? "+" : "") + ChartInk.tick(percent);
    }

    private void band(XYChart chart) {
        double top = shown.size() + 1.0;
        ChartInk.area(chart, "tolerance", new double[] {-tolerance, tolerance}, new double[] {top, top}, ChartInk.BAND);
    }

    private void lines(XYChart chart, double edge) {
        for (int index = 0; index < shown.size(); index++) {
            double[] height = {line(index), line(index)};
            ChartInk.line(
                    chart, "line " + index, new double[] {-edge, edge}, height, ChartInk.GUIDE, new BasicStroke(0.5f));
        }
        vertical(chart, "zero", 0, ChartInk.INK, new BasicStroke(1));
        vertical(chart, "lowest", -tolerance, ChartInk.FAINT, ChartInk.DASHED);
        vertical(chart, "highest", tolerance, ChartInk.FAINT, ChartInk.DASHED);
    }

    /** How far the true error of each truck's last catch may be from the mark. */
    private void uncertainties(XYChart chart, double edge) {
        for (int index = 0; index < shown.size(); index++) {
            Optional<Judgement> last = shown.get(index)
                    .judged()
                    .filter(series -> series.last().calibrationError().isPresent())
                    .map(VerificationSeries::judgement);
            if (last.isPresent()) {
                double error = percent(last.get().budget().result().value());
                double half = percent(last.get().expandedUncertainty());
                double[] height = {line(index), line(index)};
                ChartInk.line(
                        chart,
                        "uncertainty " + index,
                        new double[] {within(edge, error - half), within(edge, error + half)},
                        height,
                        ChartInk.INK,
                        new BasicStroke(1.5f));
            }
        }
    }

    private static double within(double edge, double percent) {
        return Math.max(-edge, Math.min(edge, percent));
    }

    private void vertical(XYChart chart, String name, double percent, Color color, BasicStroke stroke) {
        ChartInk.line(
                chart, name, new double[] {percent, percent}, new double[] {0, shown.size() + 1.0}, color, stroke);
    }

    private void marks(XYChart chart, String name, Marker marker, double edge, boolean last, Set<Verdict> verdicts) {
        List<Double> errors = new ArrayList<>();
        List<Double> lines = new ArrayList<>();
        for (int index = 0; index < shown.size(); index++) {
            Optional<VerificationSeries> judged = shown.get(index)
                    .judged()
                    .filter(series -> series.last().calibrationError().isPresent());
            Stream<Quantity<Dimensionless>> wanted = last
                    ? judged
                            .filter(series ->
                                    verdicts.contains(series.judgement().verdict()))
                            .map(VerificationSeries::error)
                            .stream()
                    : earlier(shown.get(index), judged);
            int line = line(index);
            wanted.forEach(error -> {
                errors.add(within(edge, percent(error)));
                lines.add((double) line);
            });
        }
        if (!errors.isEmpty()) {
            XYSeries series = chart.addSeries(name, errors, lines);
            series.setMarker(marker);
            series.setMarkerColor(ChartInk.INK);
        }
    }

    /** The single catches behind the mark: all but one that is the mark itself. */
    private static Stream<Quantity<Dimensionless>> earlier(TruckResult truck, Optional<VerificationSeries> judged) {
        return truck.assessment().verifications().stream()
                .filter(v -> judged.isEmpty()
                        || judged.get().verifications().size() > 1
                        || v != judged.get().last())
                .flatMap(v -> v.calibrationError().stream());
    }

    private static double percent(Quantity<Dimensionless> ratio) {
        return Amounts.in(ratio, SpreadingUnits.PERCENT);
    }
}
