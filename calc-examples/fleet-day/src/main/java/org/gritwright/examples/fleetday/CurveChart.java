package org.gritwright.examples.fleetday;

import java.awt.BasicStroke;
import java.awt.Color;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.ToDoubleFunction;
import javax.measure.Quantity;
import javax.measure.Unit;
import org.gritwright.core.calibration.CalibrationCatch;
import org.gritwright.core.calibration.DischargeCurve;
import org.gritwright.core.calibration.DischargePrediction;
import org.gritwright.core.spreader.OpeningReading;
import org.gritwright.units.Amounts;
import org.gritwright.units.UnitSymbol;
import org.gritwright.units.quantity.DischargePerRevolution;
import org.knowm.xchart.XYChart;
import org.knowm.xchart.XYChartBuilder;
import org.knowm.xchart.XYSeries;
import org.knowm.xchart.style.markers.SeriesMarkers;

/** A discharge curve over the gate opening, with its interval as a band and the catches on it. */
final class CurveChart {
    private static final int WIDTH = 440;
    private static final int HEIGHT = 280;
    private static final int DEVIATIONS_HEIGHT = 170;
    private static final int SAMPLES = 120;

    /** Room for the y axis, the same in both parts, so that they stand above each other. */
    private static final int LEFT = 78;

    /** The deviations' scale ends no nearer than this, in per cent, so that tiny ones look tiny. */
    private static final double LEAST_EDGE = 1;

    /** How far beyond the largest caught opening the curve is drawn. */
    private static final double BEYOND = 1.2;

    private final DischargeCurve curve;
    private final Quantity<?> like;
    private final Unit<DischargePerRevolution> unit;
    private final List<DischargePrediction> samples = new ArrayList<>();

    CurveChart(DischargeCurve curve) {
        this.curve = curve;
        this.like = curve.openings().get(0);
        this.unit = curve.predict(like).dischargePerRevolution().value().getUnit();
        double farthest =
                BEYOND * OpeningReading.si(curve.openings().get(curve.openings().size() - 1));
        double end = Math.min(
                farthest, OpeningReading.si(curve.spreader().sweptByOpening().highest()));
        for (int i = 0; i <= SAMPLES; i++) {
            CurveSheet.predict(curve, OpeningReading.ofSi(end * i / SAMPLES, like))
                    .ifPresent(samples::add);
        }
    }

    /** The chart as an SVG element: the curve, and below it the deviations from it, which are too small to see in it. */
    String svg() {
        XYChart above = curve();
        XYChart below = deviations();
        return SvgPainting.of(
                WIDTH,
                HEIGHT + DEVIATIONS_HEIGHT,
                graphics -> {
                    above.paint(graphics, WIDTH, HEIGHT);
                    graphics.translate(0, HEIGHT);
                    below.paint(graphics, WIDTH, DEVIATIONS_HEIGHT);
                    graphics.translate(0, -HEIGHT);
                },
                "Mass per revolution of " + curve.material().name() + " over the gate opening, with "
                        + curve.catches().size() + " catches"
                        + " and their deviations from the curve; the table gives the numbers.");
    }

    private XYChart curve() {
        XYChart chart = chart(HEIGHT, "mass per revolution" + inUnit(unit));
        double[] upper = values(samples, sample -> value(sample) + halfWidth(sample));
        chart.getStyler().setYAxisMin(0.0).setYAxisMax(1.05 * Math.max(largest(upper), largest(caught())));
        ChartInk.area(chart, "upper", openings(samples), upper, ChartInk.GUIDE);
        ChartInk.area(
                chart,
                "lower",
                openings(samples),
                values(samples, sample -> Math.max(0, value(sample) - halfWidth(sample))),
                Color.WHITE);
        ChartInk.line(
                chart,
                "geometry",
                openings(samples),
                values(samples, CurveChart::value),
                ChartInk.FAINT,
                ChartInk.DASHED);
        List<DischargePrediction> inside =
                samples.stream().filter(sample -> sample.findings().isEmpty()).toList();
        if (inside.size() > 1) {
            ChartInk.line(
                    chart,
                    "curve",
                    openings(inside),
                    values(inside, CurveChart::value),
                    ChartInk.INK,
                    new BasicStroke(1.6f));
        }
        marks(chart, caught());
        return chart;
    }

    private XYChart deviations() {
        XYChart chart = chart(DEVIATIONS_HEIGHT, "off the curve, %");
        double[] deviations = new double[curve.catches().size()];
        double[] caught = caught();
        for (int i = 0; i < deviations.length; i++) {
            Quantity<?> opening = curve.catches().get(i).opening().orElseThrow();
            deviations[i] = 100 * (caught[i] / value(curve.predict(opening)) - 1);
        }
        List<DischargePrediction> inside =
                samples.stream().filter(sample -> sample.findings().isEmpty()).toList();
        double[] widths = values(inside, sample -> 100 * halfWidth(sample) / value(sample));
        double edge = 1.2 * Math.max(LEAST_EDGE, Math.max(largest(widths), largest(absolute(deviations))));
        chart.getStyler().setYAxisMin(-edge).setYAxisMax(edge);
        if (inside.size() > 1) {
            ChartInk.area(chart, "band above", openings(inside), widths, ChartInk.GUIDE);
            ChartInk.area(
                    chart,
                    "band below",
                    openings(inside),
                    Arrays.stream(widths).map(width -> -width).toArray(),
                    ChartInk.GUIDE);
        }
        double end = openings(samples)[samples.size() - 1];
        ChartInk.line(chart, "zero", new double[] {0, end}, new double[] {0, 0}, ChartInk.INK, new BasicStroke(1));
        marks(chart, deviations);
        return chart;
    }

    private XYChart chart(int height, String yTitle) {
        XYChart chart = new XYChartBuilder()
                .width(WIDTH)
                .height(height)
                .xAxisTitle("gate opening" + inUnit(like.getUnit()))
                .yAxisTitle(yTitle)
                .build();
        ChartInk.style(chart);
        chart.getStyler().setYAxisLeftWidthHint(LEFT);
        chart.getStyler()
                .setXAxisMin(0.0)
                .setXAxisMax(openings(samples)[samples.size() - 1])
                .setYAxisTickMarkSpacingHint(32)
                .setxAxisTickLabelsFormattingFunction(ChartInk::tick)
                .setyAxisTickLabelsFormattingFunction(ChartInk::tick);
        return chart;
    }

    private void marks(XYChart chart, double[] heights) {
        double[] openings = curve.catches().stream()
                .mapToDouble(one -> CurveSheet.opening(curve, one))
                .toArray();
        XYSeries series = chart.addSeries("catches", openings, heights);
        series.setXYSeriesRenderStyle(XYSeries.XYSeriesRenderStyle.Scatter);
        series.setMarker(SeriesMarkers.CIRCLE);
        series.setMarkerColor(ChartInk.INK);
    }

    private double[] caught() {
        return curve.catches().stream().mapToDouble(this::ratio).toArray();
    }

    private double ratio(CalibrationCatch one) {
        double kilograms = one.caught().kilograms();
        double revolutions = one.counted().revolutions(curve.spreader().feedback());
        return CurveSheet.number(Amounts.ofSi(kilograms / revolutions, unit));
    }

    private static double value(DischargePrediction sample) {
        return CurveSheet.number(sample.dischargePerRevolution().value());
    }

    private static double halfWidth(DischargePrediction sample) {
        return sample.dischargePerRevolution()
                .halfWidth(CurveSheet.COVERAGE)
                .map(CurveSheet::number)
                .orElse(0.0);
    }

    private static double largest(double[] values) {
        return Arrays.stream(values).max().orElse(0);
    }

    private static double[] absolute(double[] values) {
        return Arrays.stream(values).map(Math::abs).toArray();
    }

    private static double[] openings(List<DischargePrediction> samples) {
        return values(samples, sample -> CurveSheet.number(sample.opening()));
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
}
