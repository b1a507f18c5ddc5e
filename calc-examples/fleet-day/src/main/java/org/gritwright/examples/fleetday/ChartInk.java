package org.gritwright.examples.fleetday;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Font;
import java.math.BigDecimal;
import java.math.MathContext;
import org.knowm.xchart.XYChart;
import org.knowm.xchart.XYSeries;
import org.knowm.xchart.style.markers.SeriesMarkers;

/** What the report's charts have in common: few grays, one font, and shapes rather than colors to tell marks apart. */
final class ChartInk {
    static final Font FONT = new Font(Font.SANS_SERIF, Font.PLAIN, 13);
    static final Color INK = new Color(0x1c2024);
    static final Color BAND = new Color(0xe4e7e9);
    static final Color FAINT = new Color(0x7d848a);
    static final Color GUIDE = new Color(0xc3c8cc);
    static final BasicStroke DASHED =
            new BasicStroke(1, BasicStroke.CAP_BUTT, BasicStroke.JOIN_MITER, 10, new float[] {4, 3}, 0);

    private ChartInk() {}

    static void style(XYChart chart) {
        chart.getStyler()
                .setXAxisTickMarkSpacingHint(56)
                .setAxisTickLabelsFont(FONT)
                .setAxisTitleFont(FONT)
                .setAxisTickLabelsColor(INK)
                .setPlotGridLinesVisible(false)
                .setPlotMargin(0)
                .setPlotContentSize(1.0)
                .setLegendVisible(false)
                .setChartTitleVisible(false)
                .setChartBackgroundColor(Color.WHITE)
                .setPlotBorderVisible(false)
                .setMarkerSize(11)
                .setChartPadding(4);
    }

    /** The area under a line, filled. */
    static void area(XYChart chart, String name, double[] x, double[] y, Color color) {
        XYSeries area = chart.addSeries(name, x, y);
        area.setXYSeriesRenderStyle(XYSeries.XYSeriesRenderStyle.Area);
        area.setFillColor(color);
        area.setLineColor(color);
        area.setLineStyle(new BasicStroke(0));
        area.setMarker(SeriesMarkers.NONE);
    }

    static void line(XYChart chart, String name, double[] x, double[] y, Color color, BasicStroke stroke) {
        XYSeries line = chart.addSeries(name, x, y);
        line.setXYSeriesRenderStyle(XYSeries.XYSeriesRenderStyle.Line);
        line.setLineColor(color);
        line.setLineStyle(stroke);
        line.setMarker(SeriesMarkers.NONE);
    }

    /** An axis number without needless digits. */
    static String tick(double value) {
        return BigDecimal.valueOf(value)
                .round(new MathContext(4))
                .stripTrailingZeros()
                .toPlainString()
                .replace('-', '−');
    }
}
