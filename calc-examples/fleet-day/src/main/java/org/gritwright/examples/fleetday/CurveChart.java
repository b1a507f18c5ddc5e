package org.gritwright.examples.fleetday;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.Stroke;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Path2D;
import java.awt.image.BufferedImage;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import javax.measure.Quantity;
import javax.measure.Unit;
import org.gritwright.core.calibration.CalibrationCatch;
import org.gritwright.core.curve.CurveModel;
import org.gritwright.core.curve.DischargeCurve;
import org.gritwright.core.curve.DischargePrediction;
import org.gritwright.core.spi.Setting;
import org.gritwright.units.Amounts;
import org.gritwright.units.UnitSymbol;
import org.gritwright.units.quantity.DischargePerRevolution;
import org.knowm.xchart.XYChart;
import org.knowm.xchart.XYChartBuilder;
import org.knowm.xchart.XYSeries;
import org.knowm.xchart.style.markers.SeriesMarkers;

/**
 * A discharge curve over the gate opening, with its interval as a band and the catches on it.
 *
 * <p>Axes are the chart library's; what stands in them is drawn here. The library draws a curve as many short lines, in
 * which no dash is seen.
 */
final class CurveChart {
    private static final int WIDTH = 440;
    private static final int HEIGHT = 260;
    private static final int DEVIATIONS_HEIGHT = 190;
    private static final int SAMPLES = 60;
    private static final double MARK_RADIUS = 4.5;

    /** The deviations' scale ends no nearer than this, in percent, so that tiny ones look tiny. */
    private static final double LEAST_EDGE = 1;

    /** How many times the shown range the scale may cover at most for the band's sake. */
    private static final double WIDEST_BAND = 3;

    /** How far beyond the largest caught opening the curve is drawn. */
    private static final double BEYOND = 1.2;

    private final DischargeCurve curve;
    private final Unit<?> settingUnit;
    private final Unit<DischargePerRevolution> unit;
    private final List<DischargePrediction> samples;
    private final List<DischargePrediction> inside;

    CurveChart(DischargeCurve curve) {
        Setting like = curve.settings().get(0);
        this.curve = curve;
        this.settingUnit = like.quantity().orElseThrow().getUnit();
        this.unit = curve.predict(like).dischargePerRevolution().value().getUnit();
        this.samples = samples(curve);
        this.inside =
                samples.stream().filter(sample -> sample.findings().isEmpty()).toList();
    }

    /** From the gate's lowest opening to a little beyond the largest caught one, the caught ones among them. */
    private static List<DischargePrediction> samples(DischargeCurve curve) {
        List<Setting> caught = curve.settings();
        Setting last = caught.get(caught.size() - 1);
        double end = Math.min(
                BEYOND * last.si(), curve.metering().sweptByOpening().highest().si());
        Stream<Setting> even = IntStream.rangeClosed(0, SAMPLES).mapToObj(i -> last.withSi(end * i / SAMPLES));
        return Stream.concat(caught.stream(), even)
                .sorted(Comparator.comparingDouble(Setting::si))
                .map(setting -> CurveSheet.predict(curve, setting, Optional.empty()))
                .flatMap(Optional::stream)
                .toList();
    }

    /**
     * The chart as an SVG element: the curve, and below it the deviations from it, which are too small to see in it.
     *
     * @param name a name that no other picture of the page has
     */
    String svg(String name) {
        String yTitle = "mass per revolution" + inUnit(unit);
        String xTitle = "gate opening" + inUnit(settingUnit);
        double highest = Math.max(largest(values(samples, CurveChart::value)), largest(caught()));
        double top = 1.05 * withBand(highest, largest(values(samples, CurveChart::upper)));
        double farthest = Math.max(LEAST_EDGE, largest(absolute(deviations())));
        double edge = 1.2 * withBand(farthest, largest(widths()));
        XYChart above = axes(HEIGHT, yTitle, 0, top);
        XYChart below = axes(DEVIATIONS_HEIGHT, "off the curve, %", -edge, edge);
        // The lower part's axis serves both.
        above.getStyler().setXAxisTitleVisible(false);
        below.setXAxisTitle(xTitle);
        return SvgPainting.of(
                name,
                WIDTH,
                HEIGHT + DEVIATIONS_HEIGHT,
                graphics -> {
                    double left = Math.max(plotStart(above), plotStart(below));
                    curve(new Plot(graphics, above, left - plotStart(above), 0), top);
                    deviations(new Plot(graphics, below, left - plotStart(below), HEIGHT), edge);
                },
                "Two charts of " + curve.material().name() + ": " + yTitle + ", over " + xTitle + ", with "
                        + curve.catches().size() + " catches; and how far each of them is off the curve, %."
                        + " The table gives the numbers.");
    }

    /** The end of a scale: a wide band runs out of the picture rather than flatten what is in it. */
    private static double withBand(double content, double band) {
        return Math.max(content, Math.min(band, WIDEST_BAND * content));
    }

    private XYChart axes(int height, String yTitle, double yMin, double yMax) {
        XYChart chart = new XYChartBuilder()
                .width(WIDTH)
                .height(height)
                .yAxisTitle(yTitle)
                .build();
        ChartInk.style(chart);
        double end = CurveSheet.number(samples.get(samples.size() - 1).setting());
        chart.getStyler()
                .setXAxisMin(0.0)
                .setXAxisMax(end)
                .setYAxisMin(yMin)
                .setYAxisMax(yMax)
                .setYAxisTickMarkSpacingHint(32)
                .setxAxisTickLabelsFormattingFunction(ChartInk::tick)
                .setyAxisTickLabelsFormattingFunction(ChartInk::tick);
        // There are no axes without a series; of equally spaced points each would be a tick.
        double range = yMax - yMin;
        XYSeries unseen = chart.addSeries(
                "unseen", new double[] {0, 0.1 * end, end}, new double[] {yMin, yMin + 0.1 * range, yMax});
        unseen.setXYSeriesRenderStyle(XYSeries.XYSeriesRenderStyle.Scatter);
        unseen.setMarker(SeriesMarkers.NONE);
        return chart;
    }

    /** Where a chart's plot begins, right of its numbers, which is known only when it has been painted. */
    private static double plotStart(XYChart chart) {
        Graphics2D sketch = new BufferedImage(1, 1, BufferedImage.TYPE_INT_RGB).createGraphics();
        chart.paint(sketch, WIDTH, chart.getHeight());
        sketch.dispose();
        return chart.getScreenXFromChart(0);
    }

    private void curve(Plot plot, double top) {
        if (CurveSheet.hasInterval(curve)) {
            // Beyond its rows a table has none.
            List<DischargePrediction> within = curve.model() == CurveModel.TABLE ? inside : samples;
            plot.band(
                    settings(within),
                    values(within, sample -> Math.max(0, value(sample) - expandedUncertainty(sample))),
                    values(within, sample -> Math.min(top, upper(sample))));
        }
        plot.line(settings(samples), values(samples, CurveChart::value), ChartInk.FAINT, ChartInk.DASHED);
        plot.line(settings(inside), values(inside, CurveChart::value), ChartInk.INK, new BasicStroke(1.6f));
        plot.marks(caughtAt(), caught());
    }

    private void deviations(Plot plot, double edge) {
        if (CurveSheet.hasInterval(curve)) {
            double[] widths =
                    Arrays.stream(widths()).map(width -> Math.min(edge, width)).toArray();
            plot.band(
                    settings(inside), Arrays.stream(widths).map(width -> -width).toArray(), widths);
        }
        plot.line(settings(inside), new double[inside.size()], ChartInk.INK, new BasicStroke(1.6f));
        plot.marks(caughtAt(), deviations());
    }

    /** The band's half-widths inside the caught openings, in percent. */
    private double[] widths() {
        return values(inside, sample -> 100 * expandedUncertainty(sample) / value(sample));
    }

    private double[] deviations() {
        double[] caught = caught();
        return IntStream.range(0, caught.length)
                .mapToDouble(i -> 100 * (caught[i] / value(curve.predict(setting(i))) - 1))
                .toArray();
    }

    private Setting setting(int index) {
        return curve.catches().get(index).point().setting();
    }

    private double[] caughtAt() {
        return curve.catches().stream()
                .mapToDouble(one -> CurveSheet.setting(curve, one))
                .toArray();
    }

    private double[] caught() {
        return curve.catches().stream().mapToDouble(this::ratio).toArray();
    }

    private double ratio(CalibrationCatch one) {
        double kilograms = one.caught().kilograms();
        double revolutions = one.revolutions();
        return CurveSheet.number(Amounts.ofSi(kilograms / revolutions, unit));
    }

    private static double value(DischargePrediction sample) {
        return CurveSheet.number(sample.dischargePerRevolution().value());
    }

    private static double expandedUncertainty(DischargePrediction sample) {
        return sample.dischargePerRevolution()
                .expandedUncertainty(Figures.COVERAGE)
                .map(CurveSheet::number)
                .orElse(0.0);
    }

    private static double upper(DischargePrediction sample) {
        return value(sample) + expandedUncertainty(sample);
    }

    private static double largest(double[] values) {
        return Arrays.stream(values).max().orElse(0);
    }

    private static double[] absolute(double[] values) {
        return Arrays.stream(values).map(Math::abs).toArray();
    }

    private static double[] settings(List<DischargePrediction> samples) {
        return values(samples, sample -> CurveSheet.number(sample.setting()));
    }

    private static double[] values(List<DischargePrediction> samples, ToDoubleFunction<DischargePrediction> value) {
        return samples.stream().mapToDouble(value).toArray();
    }

    private static String inUnit(Unit<?> unit) {
        String symbol = symbol(unit);
        return symbol.isEmpty() ? "" : ", " + symbol;
    }

    private static <Q extends Quantity<Q>> String symbol(Unit<?> unit) {
        @SuppressWarnings("unchecked") // whatever kind it is, only its symbol is asked for
        Unit<Q> typed = (Unit<Q>) unit;
        return UnitSymbol.of(typed).symbol();
    }

    /** A part of the picture: painted axes, in which things are drawn at places of the chart. */
    private static final class Plot {
        private final Graphics2D graphics;
        private final XYChart chart;
        private final double left;
        private final double top;

        Plot(Graphics2D graphics, XYChart chart, double left, double top) {
            this.graphics = graphics;
            this.chart = chart;
            this.left = left;
            this.top = top;
            Graphics2D shifted = (Graphics2D) graphics.create();
            shifted.translate(left, top);
            chart.paint(shifted, (int) Math.round(WIDTH - left), chart.getHeight());
            shifted.dispose();
        }

        void band(double[] x, double[] low, double[] high) {
            Path2D outline = path(x, high);
            for (int i = x.length - 1; i >= 0; i--) {
                outline.lineTo(screenX(x[i]), screenY(low[i]));
            }
            outline.closePath();
            graphics.setColor(ChartInk.GUIDE);
            graphics.fill(outline);
        }

        void line(double[] x, double[] y, Color color, Stroke stroke) {
            graphics.setColor(color);
            graphics.setStroke(stroke);
            graphics.draw(path(x, y));
        }

        void marks(double[] x, double[] y) {
            graphics.setColor(ChartInk.INK);
            for (int i = 0; i < x.length; i++) {
                graphics.fill(new Ellipse2D.Double(
                        screenX(x[i]) - MARK_RADIUS, screenY(y[i]) - MARK_RADIUS, 2 * MARK_RADIUS, 2 * MARK_RADIUS));
            }
        }

        private Path2D path(double[] x, double[] y) {
            Path2D path = new Path2D.Double();
            path.moveTo(screenX(x[0]), screenY(y[0]));
            for (int i = 1; i < x.length; i++) {
                path.lineTo(screenX(x[i]), screenY(y[i]));
            }
            return path;
        }

        private double screenX(double x) {
            return left + chart.getScreenXFromChart(x);
        }

        private double screenY(double y) {
            return top + chart.getScreenYFromChart(y);
        }
    }
}
