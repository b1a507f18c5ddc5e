package org.gritwright.examples.telemetry;

import java.util.Locale;

/** How much of each truck's way was within the target's band, beside what it laid. */
final class FleetChart {
    private static final int WIDTH = 1080;
    private static final double LEFT = 90;
    private static final double RIGHT = 720;
    private static final double TOP = 92;
    private static final double LINE = 40;
    private static final double BAR = 24;
    private static final double POUNDS_PER_TON = 2000;

    private final Summary summary;

    FleetChart(Summary summary) {
        this.summary = summary;
    }

    Drawing drawing() {
        double bottom = TOP + LINE * summary.lines().size() + 8;
        String title = "The season: how much of each truck's way was laid within the band";
        Drawing drawing = new Drawing(
                WIDTH, (int) bottom + 60, title, "A bar a truck, and the fleet's last. The summary has the numbers.");
        drawing.label("head", LEFT, 26, title);
        drawing.label("start", LEFT, 46, "of the way with spreading on, and that of which nobody knows what was laid");
        double x = TripChart.legend(drawing, "within", "within the band", LEFT);
        x = TripChart.legend(drawing, "below", "below", x);
        x = TripChart.legend(drawing, "above", "above", x);
        TripChart.legend(drawing, "unknown", "nobody knows", x);
        drawing.label("start", RIGHT + 20, 75, "laid, short tons (95 %)");
        Axis percent = new Axis(0, 100, LEFT, RIGHT);
        double y = TOP;
        for (Summary.Line line : summary.lines()) {
            bar(drawing, percent, line, y + 8);
            y += LINE;
        }
        drawing.bottom(percent, bottom, "share of the way, %");
        return drawing;
    }

    private static void bar(Drawing drawing, Axis percent, Summary.Line line, double top) {
        drawing.label("end", LEFT - 10, top + 17, line.name());
        long known =
                line.shares().below() + line.shares().within() + line.shares().above();
        double whole = Math.max(1, (double) known + line.way().unknown());
        double at = 0;
        at = part(drawing, percent, "within", at, line.shares().within() / whole, top);
        at = part(drawing, percent, "below", at, line.shares().below() / whole, top);
        at = part(drawing, percent, "above", at, line.shares().above() / whole, top);
        part(drawing, percent, "unknown", at, line.way().unknown() / whole, top);
        drawing.label("start", RIGHT + 20, top + 17, tons(line));
    }

    private static double part(Drawing drawing, Axis percent, String look, double from, double share, double top) {
        double to = from + 100 * share;
        drawing.box(look, percent.at(from), top, percent.at(to), top + BAR);
        return to;
    }

    private static String tons(Summary.Line line) {
        String off = line.badRows() == 0 ? "" : String.format(Locale.ROOT, ", %,d bad rows", line.badRows());
        return String.format(
                Locale.ROOT,
                "%.2f ± %.2f%s",
                UsUnits.pounds(line.laid().amount()) / POUNDS_PER_TON,
                line.expandedPounds() / POUNDS_PER_TON,
                off);
    }
}
